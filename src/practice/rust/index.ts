export { meets, type Condition, type Flown } from './conditions.js';
export { buildPlan } from './plan.js';
export { CHECKOUT_ITEMS, DRILLS, watchedFor, type ConditionLimits } from './drills.js';
export * from './plan-types.js';
export { checkModel, DECAY_EXAMPLE, rustOf, type DecayModel, type Rust } from './rust.js';
export { conditionSaid, TASK_NAMES, write, type Said } from './words.js';
