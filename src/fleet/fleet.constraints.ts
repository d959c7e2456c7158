/** What people are told when the database refuses a row of the fleet. Imported for its effect by the module. */
import { registerConstraint } from '../platform/database/constraint-problems.js';
import { FLEET_CHECKS } from './constraints/checks.js';
import { FLEET_REFERENCES } from './constraints/references.js';
import { FLEET_UNIQUES } from './constraints/uniques.js';

for (const problem of [...FLEET_CHECKS, ...FLEET_REFERENCES, ...FLEET_UNIQUES]) registerConstraint(problem);
