/** What people are told when the database refuses a row of the fleet. Imported for its effect by the module. */
import { registerConstraint } from '../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { FLEET_CHECKS } from './constraints/checks.js';
import { FLEET_REFERENCES } from './constraints/references.js';
import { FLEET_UNIQUES } from './constraints/uniques.js';

registerChecks(FLEET_CHECKS);
registerReferences(FLEET_REFERENCES);
registerConstraint(...FLEET_UNIQUES);
