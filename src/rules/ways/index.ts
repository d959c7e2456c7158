/** Ways to yes: what the rest of the service may use of them. */
export { ACTS, catalogue, type ActEntry, type ActKind, type Catalogue } from './acts.js';
export type { Cost } from './cost.js';
export type * from './types.js';
export { findWays, waysToYes, type FoundWays } from './ways.js';
export { DEFAULT_LIMITS } from './search.js';
export { WAYS_CAUTION } from './words.js';
