import { PART_FCL_FROM } from '../../parameters/eu/licences.js';
import { keptAirworthyRule } from '../common/held/kept-airworthy.js';

/** Continuing airworthiness (Part-M, Part-ML) and equipment (Part-NCO), which this pack does not hold. */
export const airworthiness = keptAirworthyRule({
  id: 'law.easa.airworthiness',
  title: 'Airworthiness and equipment under European law',
  citation: {
    text: 'Regulation (EU) No 1321/2014, annexes I and Vb; Regulation (EU) No 965/2012, NCO.IDE',
    status: 'from memory',
    reading:
      'A pack that does not hold the law cannot say that it is met. The club records the paper (policy club.airworthiness.kept-under); what it says is looked at before each flight.',
  },
  heldFrom: PART_FCL_FROM,
  toCheck:
    'the airworthiness review certificate, what is due of the maintenance programme, and the equipment for this kind of flight',
});
