/** The United States pack: 14 CFR, and what holds everywhere. */
import type { Rule } from '../../engine/rule.js';
import type { Parameter } from '../../parameters/parameter.js';
import { COMMON_PARAMETERS, COMMON_RULES } from '../common/index.js';
import { US_PILOT_RULES, US_PILOT_PARAMETERS } from './pilot/index.js';
import { US_AIRCRAFT_RULES, US_AIRCRAFT_PARAMETERS } from './aircraft/index.js';
import { US_FLIGHT_RULES, US_FLIGHT_PARAMETERS } from './flight/index.js';

export const US_RULES: readonly Rule[] = [
  ...US_PILOT_RULES,
  ...US_AIRCRAFT_RULES,
  ...COMMON_RULES,
  ...US_FLIGHT_RULES,
];
export const US_PARAMETERS: readonly Parameter[] = [
  ...US_PILOT_PARAMETERS,
  ...US_AIRCRAFT_PARAMETERS,
  ...COMMON_PARAMETERS,
  ...US_FLIGHT_PARAMETERS,
];
