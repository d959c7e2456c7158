import { CARS_FROM } from '../../parameters/ca/licences.js';
import { keptAirworthyRule } from '../common/held/kept-airworthy.js';

/** Airworthiness (parts V and VI, subpart 5), which this pack does not hold. */
export const airworthiness = keptAirworthyRule({
  id: 'law.canada.airworthiness',
  title: 'Airworthiness and equipment under Canadian law',
  citation: {
    text: 'CARs 605.03, 605.06, 605.84, 605.86, 571',
    status: 'from memory',
    reading:
      'A pack that does not hold the law cannot say that it is met. The club records the paper (policy club.airworthiness.kept-under); what it says is looked at before each flight.',
  },
  heldFrom: CARS_FROM,
  toCheck:
    'the certificate of airworthiness, what is due of the maintenance schedule in the journey log, and the equipment for this kind of flight',
});
