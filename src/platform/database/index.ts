export { openDatabase, type Database, type OpenOptions } from './open.js';
export { TenantDb, requireUuid, type RunOptions } from './tenant.js';
export {
  databaseProblem,
  registerConstraint,
  registeredConstraints,
  sqlStateOf,
  type ConstraintProblem,
} from './constraint-problems.js';
