import type { Citation } from '../../engine/rule.js';
import type { Citations } from '../common/cited.js';

const memory = (text: string, reading?: string): Citation => ({
  text,
  status: 'from memory',
  ...(reading !== undefined && { reading }),
});

/** The Canadian law behind the rules that hold everywhere. */
export const CA_COMMON_CITATIONS: Citations = {
  'ad.recurring': memory(
    'CARs 605.84(1)(b), 507.04',
    "The directive's text governs. Plain months run to the same day number; a flight that ends exactly at the hours limit " +
      'is allowed. A specific-purpose flight permit is recorded as a special flight permit.',
  ),
  'squawk.grounding': memory(
    'CARs 605.03, 605.08, 605.10, 507.04',
    'A specific-purpose flight permit is recorded as a special flight permit. It covers what was reported before the first ' +
      'day it holds.',
  ),
  'work.return_to_service': memory(
    'CARs 571.10, 605.85(1)',
    'A maintenance release is recorded as the signature under the work.',
  ),
  'work.check_flight': memory(
    'CARs 605.85(3)',
    'A release on condition of a test flight is recorded as work with a check flight to be made; nobody but required crew goes along.',
  ),
  'aircraft.kinds_of_operation': memory(
    'CARs 602.07',
    'Night is that of CARs 101.01, at any airfield of the route; IFR at night needs both IFR and night.',
  ),
  'load.persons': memory(
    'CARs 605.22, 602.07',
    'Infants in arms are counted as persons. A second pilot whom the request names as required crew is taken to be a ' +
      'safety pilot; that the pilot may act as one is a condition.',
  ),
  'load.weight': memory(
    'CARs 602.07',
    'Fuel is counted at a usual weight per gallon; nothing is taken off for taxi fuel.',
  ),
  'load.balance': memory(
    'CARs 602.07',
    'Tanks are filled in the order of the sheet and emptied in the opposite one. Between take-off and landing the centre of gravity is taken to lie within the limits where it does at both. A point on the edge is within. Nothing is taken off for taxi fuel.',
  ),
};
