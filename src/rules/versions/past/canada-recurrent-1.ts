import { addPlainMonths } from '../../calendar/dates.js';
import { defineRule } from '../../engine/rule.js';
import type { ReviewFact, ReviewKind } from '../../facts/person.js';

/** Of the ways that standard 421.05(2) lists, those that the club's records can show. */
const COUNTS: readonly ReviewKind[] = [
  'flight-review',
  'practical-test',
  'proficiency-check',
  'instrument-proficiency-check',
];

/** CARs 401.05(2)(a): a recurrent training programme within the preceding 24 months. */
export const canadaRecurrent1 = defineRule({
  id: 'recency.canada.recurrent_24_months',
  title: 'Recurrent training in 24 months',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.reviews'],
  parameters: ['ca.recurrent-training.months'],
  branches: {
    recent: { status: 'met', says: 'Recurrent training on {on}; good through {through}.' },
    lapsed: {
      status: 'short',
      says: 'No recurrent training is on record for the preceding {months} months.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.05(2)(a), standard 421.05(2)',
        status: 'seen',
        reading:
          'Twenty-four months run day for day. Seminars, self-paced study and written examinations, which the standard also ' +
          'takes, are not on record here.',
      },
      judge(f, moment, p, take) {
        const months = p.number('ca.recurrent-training.months');
        const through = (on: string) => addPlainMonths(on, months, 'clamp-to-month-end');
        const newest = f
          .get('pic.reviews')
          .filter((review) => COUNTS.includes(review.kind))
          .filter((review) => moment.startsOnOrAfter(review.on) && moment.endsOnOrBefore(through(review.on)))
          .sort((a, b) => (a.on !== b.on ? (a.on < b.on ? 1 : -1) : a.id < b.id ? 1 : -1))[0];
        if (newest) {
          return take(
            'recent',
            { on: newest.on, through: through(newest.on) },
            { counted: [{ id: newest.id, on: newest.on, what: newest.kind.replaceAll('-', ' ') }] },
          );
        }
        const today = moment.knowledgeDate();
        const planned: ReviewFact = {
          id: 'planned:fly-flight-review',
          kind: 'flight-review',
          on: today,
          groundTenths: 10,
          flightTenths: 10,
          category: null,
          endorsedAsReview: false,
        };
        const serves = moment.startsOnOrAfter(today) && moment.endsOnOrBefore(through(today));
        return take(
          'lapsed',
          { months },
          {
            remedies: () =>
              serves
                ? [
                    {
                      act: 'fly-flight-review',
                      title: 'Fly a flight review with an instructor.',
                      by: 'instructor',
                      effects: [{ op: 'append', fact: 'pic.reviews', value: planned }],
                    },
                  ]
                : [],
          },
        );
      },
    },
  ],
});
