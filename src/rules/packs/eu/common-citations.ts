import type { Citation } from '../../engine/rule.js';
import type { Citations } from '../common/cited.js';

const memory = (text: string, reading?: string): Citation => ({
  text,
  status: 'from memory',
  ...(reading !== undefined && { reading }),
});

/** The European law behind the rules that hold everywhere. */
export const EU_COMMON_CITATIONS: Citations = {
  'ad.recurring': memory(
    'Regulation (EU) No 1321/2014, M.A.301(e), ML.A.303; Regulation (EU) No 748/2012, 21.A.701',
    "The directive's text governs. Plain months run to the same day number; a flight that ends exactly at the hours limit " +
      'is allowed. A permit to fly is recorded as a special flight permit.',
  ),
  'squawk.grounding': memory(
    'Regulation (EU) No 965/2012, NCO.GEN.105; Regulation (EU) No 1321/2014, M.A.403, ML.A.403',
    'A permit to fly is recorded as a special flight permit. It covers what was reported before the first day it holds.',
  ),
  'work.return_to_service': memory(
    'Regulation (EU) No 1321/2014, M.A.801, ML.A.801',
    'A certificate of release to service is recorded as the signature under the work.',
  ),
  'work.check_flight': memory(
    'Regulation (EU) No 1321/2014, M.A.301(i), ML.A.301(f); Regulation (EU) No 965/2012, NCO.SPEC.MCF',
    'A maintenance check flight is recorded as a check flight to be made; nobody but required crew goes along.',
  ),
  'aircraft.kinds_of_operation': memory(
    'Regulation (EU) 2018/1139, annex V, 4.1',
    'Night is that of FCL.010, at any airfield of the route; IFR at night needs both IFR and night.',
  ),
  'load.persons': memory(
    'Regulation (EU) No 965/2012, NCO.IDE.A.140; Regulation (EU) 2018/1139, annex V, 4.1',
    'Children under two on a lap are counted as persons. A second pilot whom the request names as required crew is taken ' +
      'to be a safety pilot; that the pilot may act as one is a condition.',
  ),
  'load.weight': memory(
    'Regulation (EU) No 965/2012, NCO.POL.100, NCO.POL.105',
    'Fuel is counted at a usual weight per gallon; nothing is taken off for taxi fuel.',
  ),
  'load.balance': memory(
    'Regulation (EU) No 965/2012, NCO.POL.100, NCO.POL.105; Regulation (EU) 2018/1139, annex V, 4.1',
    'Tanks are filled in the order of the sheet and emptied in the opposite one. Between take-off and landing the centre of gravity is taken to lie within the limits where it does at both. A point on the edge is within. Nothing is taken off for taxi fuel.',
  ),
};
