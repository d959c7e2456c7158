/** What people are told when the database refuses a row of the fleet. Imported for its effect by the module. */
import { registerConstraint, registerWords } from '../platform/database/constraint-problems.js';
import { FLEET_CHECKS } from './constraints/checks.js';
import { FLEET_REFERENCES } from './constraints/references.js';
import { FLEET_UNIQUES } from './constraints/uniques.js';

registerWords({ code: 'value-refused', status: 422, title: 'Value not possible' }, FLEET_CHECKS);
registerConstraint(...FLEET_REFERENCES, ...FLEET_UNIQUES);
