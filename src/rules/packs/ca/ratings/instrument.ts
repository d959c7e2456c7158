import { defineRule } from '../../../engine/rule.js';
import { CHANGE_TO_VFR } from '../../common/shared/flight-changes.js';
import { caStanding } from '../licence/standing.js';

/** CARs 401.46: under instrument flight rules the licence carries an instrument rating for the category. */
export const instrumentRating = defineRule({
  id: 'rating.canada.instrument',
  title: 'Instrument rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [],
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    held: { status: 'met', says: 'The licence carries an instrument rating ({category}).' },
    missing: {
      status: 'short',
      says: 'No licence in force on record carries an instrument rating for the category {category}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.46, 401.47',
        status: 'from memory',
        reading:
          'The rating has no end of its own (exemption NCR-040-2015, since in the regulations); recent experience is judged apart. Groups of ratings are left to the pilot, as a condition.',
      },
      judge(f, moment, _p, take) {
        if (f.flight.flightRules === 'VFR') return take('not-ifr');
        const { category } = f.get('aircraft.type');
        const { inForce } = caStanding(f.get('pic.certificates'), moment);
        const held = inForce.find(({ instrument }) => instrument.includes(category));
        if (!held) return take('missing', { category }, { remedies: () => [CHANGE_TO_VFR] });
        return take(
          'held',
          { category },
          {
            counted: [{ id: held.id, on: held.issuedOn, what: 'instrument rating' }],
            conditions: [
              'Make sure that the group of the instrument rating includes this class of aircraft.',
            ],
          },
        );
      },
    },
  ],
});
