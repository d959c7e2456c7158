import { addYears } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { wouldServe } from '../../common/people/plans.js';
import { CHANGE_TO_VFR } from '../../common/shared/flight-changes.js';
import { euStanding } from '../licence/standing.js';
import { ratingsOf } from './class-of.js';

const YEARS = 'eu.rating.other-years';
const WANTED = { kind: 'instrument' as const, designator: null };

/** Part-FCL, FCL.600, FCL.625: under instrument flight rules an instrument rating for the category, valid for a year. */
export const instrumentRating = defineRule({
  id: 'rating.easa.instrument',
  title: 'Instrument rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.ratings', 'aircraft.type'],
  parameters: [YEARS],
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    valid: { status: 'met', says: 'The instrument rating is valid through {through}.' },
    missing: {
      status: 'short',
      says: 'No licence in force on record carries an instrument rating for the category {category}.',
    },
    ended: {
      status: 'short',
      says: 'The instrument rating ended on {through}; renewing it takes a proficiency check, and training as needed.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.600, FCL.625(a)',
        status: 'seen',
        reading:
          'The licence says for which category the rating is, the rating until when. The basic instrument rating and the en-route rating are recorded as instrument ratings; their limits are left to the pilot, as a condition.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules === 'VFR') return take('not-ifr');
        const { category } = f.get('aircraft.type');
        const { inForce } = euStanding(f.get('pic.certificates'), moment);
        const licence = inForce.find(({ instrument }) => instrument.includes(category));
        if (!licence) return take('missing', { category }, { remedies: () => [CHANGE_TO_VFR] });
        const best = ratingsOf(f.get('pic.ratings'), WANTED, moment)[0];
        const through = need(
          best?.validThrough,
          'pic.ratings',
          'until when the instrument rating is valid is not on record',
        );
        const counted = [{ id: best!.id, on: best!.on, what: 'instrument rating' }];
        if (moment.endsOnOrBefore(through))
          return take(
            'valid',
            { through },
            {
              counted,
              conditions: ['Keep to the limits endorsed with the instrument rating, if there are any.'],
            },
          );
        const years = p.number(YEARS);
        const lasts = (on: string) => addYears(on, years, 'clamp-to-month-end');
        return take(
          'ended',
          { through },
          {
            counted,
            remedies: () => [
              CHANGE_TO_VFR,
              ...(wouldServe(moment, lasts)
                ? [
                    {
                      act: 'pass-instrument-proficiency-check',
                      title:
                        'Have the instrument rating renewed: training as needed and a proficiency check.',
                      by: 'examiner' as const,
                      effects: [
                        {
                          op: 'append' as const,
                          fact: 'pic.ratings' as const,
                          value: {
                            id: 'planned:pass-instrument-proficiency-check',
                            ...WANTED,
                            on: moment.knowledgeDate(),
                            validThrough: lasts(moment.knowledgeDate()),
                          },
                        },
                      ],
                    },
                  ]
                : []),
            ],
          },
        );
      },
    },
  ],
});
