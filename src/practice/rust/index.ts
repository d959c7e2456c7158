export { meets, type Condition, type Flown } from './conditions.js';
export { buildPlan } from './plan.js';
export * from './plan-types.js';
export { DECAY_EXAMPLE, rustOf, type DecayModel, type Rust } from './rust.js';
export { write, type Said } from './words.js';
