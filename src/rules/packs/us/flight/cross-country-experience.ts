import { defineRule } from '../../../engine/rule.js';
import { CROSS_COUNTRY_EXPERIENCE } from '../../../parameters/us/flight.js';
import { fromOrigin, roundNm } from '../../common/shared/distance.js';

/**
 * 14 CFR 61.1(b), cross-country time (i) and (ii): towards most certificates and ratings of airplane pilots a flight counts
 * as cross-country where it lands more than 50 nautical miles in a straight line from where it began. Advice for the
 * log: nothing hangs on it for the flight itself, and a student's solo limits are another rule's.
 */
export const crossCountryExperience = defineRule({
  id: 'distance.straight_line_50nm',
  title: 'Cross-country time for the log',
  weight: 'advice',
  binds: 'flight',
  reads: ['aircraft.type'],
  parameters: CROSS_COUNTRY_EXPERIENCE.map(({ id }) => id),
  branches: {
    'lands-nowhere-else': { status: 'not-applicable', says: 'The flight lands nowhere else.' },
    'other-category': {
      status: 'not-applicable',
      says: 'For this category of aircraft the distance is another one.',
    },
    counts: {
      status: 'met',
      says: 'The flight lands {nm} NM from {origin} at the farthest: more than {limit}, so it counts as cross-country time towards most certificates and ratings.',
    },
    'too-near': {
      status: 'not-applicable',
      says: 'The flight lands {nm} NM from {origin} at the farthest; cross-country time towards most certificates and ratings asks for more than {limit}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.1(b), cross-country time (ii)',
        status: 'from memory',
        reading:
          'The distance is that between the airfield of departure and a landing in a straight line, not the way flown or the length of a leg; exactly 50 NM does not count. The shorter distances for rotorcraft, sport pilots and others are not held.',
      },
      judge(f, _moment, p, take) {
        const { origin, elsewhere, farthestNm } = fromOrigin(f.flight.route);
        if (elsewhere.length === 0) return take('lands-nowhere-else');
        if (f.get('aircraft.type').category !== 'airplane') return take('other-category');
        const limit = p.number('us.cross-country.experience-nm');
        const values = { nm: roundNm(farthestNm), origin: origin.code, limit };
        return take(farthestNm > limit ? 'counts' : 'too-near', values);
      },
    },
  ],
});
