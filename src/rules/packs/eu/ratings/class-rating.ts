import { addYears } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { wouldServe } from '../../common/people/plans.js';
import { euStanding, flownOn } from '../licence/standing.js';
import { isSingleEngine, ratingFor, ratingsOf, ratingWords, type RatingWanted } from './class-of.js';

const YEARS = ['eu.rating.single-engine-years', 'eu.rating.other-years'] as const;

/**
 * Part-FCL, FCL.700, FCL.740: a valid class or type rating for the aircraft. The day it ends is the one endorsed in the
 * licence: two years for single-pilot single-engine classes, one for the others. Light aircraft licences have none that
 * ends; FCL.140.A decides there.
 */
export const classRating = defineRule({
  id: 'rating.easa.class',
  title: 'Class or type rating',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.ratings', 'aircraft.type'],
  parameters: [...YEARS],
  branches: {
    'no-rating-asked': {
      status: 'not-applicable',
      says: 'The pilot in command is flying on no licence that asks for a rating with an end.',
    },
    valid: { status: 'met', says: 'The rating {rating} is valid through {through}.' },
    ended: {
      status: 'short',
      says: 'The rating {rating} ended on {through}; renewing it takes a proficiency check, and training as needed.',
    },
    none: { status: 'short', says: 'No rating {rating} is on record.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.700(a), FCL.740(a), (b)',
        status: 'seen',
        reading:
          'The last day endorsed counts whole. Of several entries the one that ends last counts. Flights for the renewal itself are flown with an instructor.',
      },
      judge(f, moment, p, take) {
        const type = f.get('aircraft.type');
        const licence = flownOn(euStanding(f.get('pic.certificates'), moment), type);
        if (!licence || licence.level === 'lapl' || licence.level === 'student')
          return take('no-rating-asked');
        const wanted = need(
          ratingFor(type),
          'aircraft.type',
          'which rating the aircraft asks for is not known here',
        );
        const rating = ratingWords(wanted);
        const held = ratingsOf(f.get('pic.ratings'), wanted, moment);
        const best = held[0];
        const remedies = (act: string, title: string) => () => renewed(act, title, wanted, moment, p);
        if (!best)
          return take(
            'none',
            { rating },
            {
              remedies: remedies(
                'pass-class-rating-test',
                `Train for the rating ${rating} and pass its skill test.`,
              ),
            },
          );
        const through = need(
          best.validThrough,
          'pic.ratings',
          `until when the rating ${rating} is valid is not on record`,
        );
        const counted = [{ id: best.id, on: best.on, what: `rating ${rating}` }];
        if (moment.endsOnOrBefore(through)) return take('valid', { rating, through }, { counted });
        return take(
          'ended',
          { rating, through },
          {
            counted,
            remedies: remedies(
              'renew-class-rating',
              `Have the rating ${rating} renewed: training as needed and a proficiency check.`,
            ),
          },
        );
      },
    },
  ],
});

/** The rating endorsed today for its usual time; nothing when that would no longer serve the flight. */
function renewed(act: string, title: string, wanted: RatingWanted, moment: Moment, p: Parameters): Remedy[] {
  const years = p.number(isSingleEngine(wanted) ? YEARS[0] : YEARS[1]);
  const through = (on: string) => addYears(on, years, 'clamp-to-month-end');
  if (!wouldServe(moment, through)) return [];
  const on = moment.knowledgeDate();
  return [
    {
      act,
      title,
      by: 'examiner',
      effects: [
        {
          op: 'append',
          fact: 'pic.ratings',
          value: { id: `planned:${act}`, ...wanted, on, validThrough: through(on) },
        },
      ],
    },
  ];
}
