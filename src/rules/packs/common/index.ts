/**
 * Rules that hold whatever country the club flies in: the aircraft's state as the club knows it, its loading, its
 * calendar and the club's own items. They cite 14 CFR; other packs take them with citations of their own (cited.ts).
 */
import { ruleList } from '../../engine/rule.js';
import { FUEL_WEIGHT, NIGHT } from '../../parameters/common/planning.js';
import type { Parameter } from '../../parameters/parameter.js';
import { adviceItems, clubItems } from './items/club-items.js';
import { directives } from './items/directives.js';
import { loadBalance } from './loading/balance.js';
import { loadPersons } from './loading/persons.js';
import { loadWeight } from './loading/weight.js';
import { squawkGrounding } from './squawks/grounding.js';
import { aircraftFree } from './use/aircraft-free.js';
import { aircraftInService } from './use/in-service.js';
import { kindsOfOperation } from './use/kinds-of-operation.js';
import { checkFlight } from './work/check-flight.js';
import { returnToService } from './work/return-to-service.js';

export const COMMON_RULES = ruleList(
  directives,
  clubItems,
  adviceItems,
  squawkGrounding,
  returnToService,
  checkFlight,
  kindsOfOperation,
  loadPersons,
  loadWeight,
  loadBalance,
  aircraftInService,
  aircraftFree,
);
export const COMMON_PARAMETERS: readonly Parameter[] = [...NIGHT, ...FUEL_WEIGHT];
