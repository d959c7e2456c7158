import { addPlainMonths, addYears } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { LogFact, ReviewFact, ReviewKind } from '../../../facts/person.js';
import { canadaFiveYears1 } from '../../../versions/past/canada-five-years-1.js';
import { wouldServe } from '../../common/people/plans.js';
import { plannedReview } from '../../planned-review.js';
import { caStanding } from '../licence/standing.js';

const COMMAND: readonly LogFact['role'][] = ['pilot-in-command', 'second-in-command', 'solo', 'instructor'];

/**
 * CARs 401.05(1): a flight as pilot in command or co-pilot of an aircraft within the preceding five years; or, within the
 * preceding twelve months, a flight review and the examination of the standard.
 */
export const fiveYears = defineRule({
  id: 'recency.canada.five_years',
  title: 'A flight in command or as co-pilot in five years',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'pic.reviews', 'pic.certificates', 'aircraft.type'],
  parameters: ['ca.recent-command.years', 'ca.recent-command.regain-months'],
  branches: {
    student: {
      status: 'not-applicable',
      says: 'A student flies as an instructor authorises; nobody asks for earlier flights in command.',
    },
    recent: { status: 'met', says: 'In command or co-pilot on {on}; good through {through}.' },
    regained: {
      status: 'met',
      says: 'Privileges regained by the flight review of {review} and the examination of {examination}; good through {through}.',
    },
    lapsed: {
      status: 'short',
      says: 'No flight in command or as co-pilot in the preceding {years} years; a flight review and the examination within {months} months regain the privileges.',
    },
  },
  bodies: [
    {
      version: 2,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.05(1), standard 421.05(1)',
        status: 'seen',
        reading:
          'Years and months run day for day. The review is recorded as a flight review, the examination (PSTAR) as a written examination; a review recorded for another category of aircraft does not count. The holder of a student permit alone is not asked (the permit is used under supervision, 401.19): our reading.',
      },
      judge(f, moment, p, take) {
        const years = p.number('ca.recent-command.years');
        const newest = f
          .get('pic.log')
          .filter((entry) => entry.device === null && COMMAND.includes(entry.role))
          .map((entry) => ({ entry, through: addYears(entry.on, years, 'clamp-to-month-end') }))
          .filter(
            ({ entry, through }) =>
              moment.departsAtOrAfter(entry.departedAt) && moment.endsOnOrBefore(through),
          )
          .sort((a, b) => (order(a.entry) < order(b.entry) ? 1 : -1))[0];
        if (newest) {
          const { entry, through } = newest;
          const counted = [{ id: entry.id, on: entry.on, what: entry.role.replaceAll('-', ' ') }];
          return take('recent', { on: entry.on, through }, { counted });
        }
        const { inForce } = caStanding(f.get('pic.certificates'), moment);
        if (inForce[0]?.level === 'student') return take('student');
        const months = p.number('ca.recent-command.regain-months');
        const lasts = (on: string) => addPlainMonths(on, months, 'clamp-to-month-end');
        const { category } = f.get('aircraft.type');
        const of = (kind: ReviewKind): ReviewFact | undefined =>
          f
            .get('pic.reviews')
            .filter(
              (review) => review.kind === kind && (review.category === null || review.category === category),
            )
            .filter(({ on }) => moment.startsOnOrAfter(on) && moment.endsOnOrBefore(lasts(on)))
            .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1))[0];
        const review = of('flight-review');
        const examination = of('written-examination');
        if (review && examination) {
          const older = review.on < examination.on ? review.on : examination.on;
          return take(
            'regained',
            { review: review.on, examination: examination.on, through: lasts(older) },
            {
              counted: [
                { id: review.id, on: review.on, what: 'flight review' },
                { id: examination.id, on: examination.on, what: 'written examination' },
              ],
            },
          );
        }
        return take(
          'lapsed',
          { years, months },
          { remedies: () => regain(review, examination, moment, lasts) },
        );
      },
    },
  ],
  superseded: [canadaFiveYears1 as never],
  changed:
    'Regaining the privileges by flight review and examination is judged, and a student is not asked for earlier flights.',
});

const order = (entry: LogFact): string => `${entry.departedAt} ${entry.id}`;

function regain(
  review: ReviewFact | undefined,
  examination: ReviewFact | undefined,
  moment: Moment,
  lasts: (on: string) => string,
): Remedy[] {
  if (!wouldServe(moment, lasts)) return [];
  const act = 'regain-privileges';
  const made = (kind: ReviewKind): ReviewFact => plannedReview(`${act}-${kind}`, kind, moment);
  const missing: ReviewFact[] = [
    ...(review ? [] : [made('flight-review')]),
    ...(examination ? [] : [made('written-examination')]),
  ];
  const words = [
    ...(review ? [] : ['fly a flight review']),
    ...(examination ? [] : ['pass the examination']),
  ];
  return [
    {
      act,
      title: `To regain the privileges, ${words.join(' and ')}.`,
      by: 'instructor',
      effects: missing.map((value) => ({ op: 'append', fact: 'pic.reviews', value })),
    },
  ];
}
