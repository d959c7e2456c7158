import { addPlainMonths, type LocalDate } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import type { ReviewFact, ReviewKind } from '../../../facts/person.js';
import { canadaRecurrent1 } from '../../../versions/past/canada-recurrent-1.js';
import { wouldServe } from '../../common/people/plans.js';
import { caStanding } from '../licence/standing.js';

/** The ways that standard 421.05(2) lists, as the club's records show them. */
export const COUNTS: readonly ReviewKind[] = [
  'flight-review',
  'safety-seminar',
  'self-paced-study',
  'written-examination',
  'practical-test',
  'proficiency-check',
  'instrument-proficiency-check',
];

/** CARs 401.05(2)(a): a recurrent training programme within the preceding 24 months. */
export const recurrentTraining = defineRule({
  id: 'recency.canada.recurrent_24_months',
  title: 'Recurrent training in 24 months',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.reviews', 'pic.certificates'],
  parameters: ['ca.recurrent-training.months'],
  branches: {
    student: {
      status: 'not-applicable',
      says: 'A student is in training, so no recurrent training is asked for.',
    },
    recent: { status: 'met', says: 'Recurrent training ({what}) on {on}; good through {through}.' },
    lapsed: {
      status: 'short',
      says: 'No recurrent training is on record for the preceding {months} months.',
    },
  },
  bodies: [
    {
      version: 2,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.05(2)(a), standard 421.05(2)',
        status: 'seen',
        reading:
          'Twenty-four months run day for day. A student under instruction is not asked: our reading, as the training for a permit or licence is itself one of the ways.',
      },
      judge(f, moment, p, take) {
        const months = p.number('ca.recurrent-training.months');
        const through = (on: LocalDate) => recurrentThrough(on, months);
        const newest = f
          .get('pic.reviews')
          .filter((review) => COUNTS.includes(review.kind))
          .filter((review) => moment.startsOnOrAfter(review.on) && moment.endsOnOrBefore(through(review.on)))
          .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1))[0];
        if (newest) {
          const what = newest.kind.replaceAll('-', ' ');
          return take(
            'recent',
            { what, on: newest.on, through: through(newest.on) },
            { counted: [{ id: newest.id, on: newest.on, what }] },
          );
        }
        const { inForce } = caStanding(f.get('pic.certificates'), moment);
        if (inForce[0]?.level === 'student') return take('student');
        return take(
          'lapsed',
          { months },
          {
            remedies: () =>
              wouldServe(moment, through)
                ? [
                    {
                      act: 'complete-self-paced-study',
                      title: 'Complete the self-paced study programme of the year and keep it.',
                      by: 'member',
                      effects: [
                        planned('complete-self-paced-study', 'self-paced-study', moment.knowledgeDate()),
                      ],
                    },
                    {
                      act: 'fly-flight-review',
                      title: 'Fly a flight review with an instructor.',
                      by: 'instructor',
                      effects: [planned('fly-flight-review', 'flight-review', moment.knowledgeDate())],
                    },
                  ]
                : [],
          },
        );
      },
    },
  ],
  superseded: [canadaRecurrent1 as never],
  changed:
    'Seminars, self-paced study and written examinations are on record now and count; a student is not asked.',
});

function planned(act: string, kind: ReviewKind, on: string) {
  const value: ReviewFact = {
    id: `planned:${act}`,
    ...{ kind, on, groundTenths: 10, flightTenths: 10, category: null, endorsedAsReview: false },
  };
  return { op: 'append' as const, fact: 'pic.reviews' as const, value };
}

/** Last day of a review of a day: day for day, clamped to the end of the month. */
export const recurrentThrough = (on: LocalDate, months: number): LocalDate =>
  addPlainMonths(on, months, 'clamp-to-month-end');
