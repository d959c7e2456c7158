import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import { defineRule } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { ReviewFact, ReviewKind } from '../../../../facts/person.js';
import { isStudent, standingOf } from '../shared/certificates.js';
import { countedEndorsement, endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';
import { wouldServe } from '../../../common/people/plans.js';

/** Events that stand for a review whole, in words. */
const SUBSTITUTES: Partial<Record<ReviewKind, string>> = {
  'practical-test': 'practical test',
  'proficiency-check': 'pilot proficiency check',
  'faa-proficiency-phase': 'phase of a pilot proficiency programme',
  'instructor-practical-test': 'instructor practical test',
};

/**
 * 14 CFR 61.56: since the beginning of the 24th calendar month before the month of flight, a flight review (an hour on
 * the ground and an hour in the air, endorsed) or an event that stands for one. It gates acting as pilot in command, not
 * being taught; a review in any aircraft the pilot is rated for serves for all.
 */
export const flightReview = defineRule({
  id: 'review.flight_24_months',
  title: 'Flight review',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.reviews', 'pic.certificates', 'pic.endorsements', 'aircraft.type'],
  parameters: [
    'us.flight-review.calendar-months',
    'us.flight-review.ground-hours',
    'us.flight-review.flight-hours',
    'us.student.solo-days',
  ],
  branches: {
    student: {
      status: 'not-applicable',
      says: 'A student pilot with a current solo endorsement ({on}) needs no flight review.',
    },
    reviewed: { status: 'met', says: 'The {what} of {on} serves as flight review through {through}.' },
    due: {
      status: 'short',
      says: 'No flight review, or event that stands for one, within {months} calendar months{why}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.56',
        status: 'seen',
        reading:
          'A review whose hours are not on record is not taken for one. An instrument proficiency check serves only when it was also endorsed as a flight review, with its hours. The renewal of an instructor certificate waives the hour on the ground and no more.',
      },
      judge(f, moment, p, take) {
        const months = p.number('us.flight-review.calendar-months');
        const leastTenths = {
          ground: p.number('us.flight-review.ground-hours') * 10,
          flight: p.number('us.flight-review.flight-hours') * 10,
        };
        const recent = f
          .get('pic.reviews')
          .filter((review) => moment.startsOnOrAfter(review.on))
          .filter((review) => moment.endsOnOrBefore(throughCalendarMonths(review.on, months)));
        const assessed = recent.map((review) => assessReview(review, recent, leastTenths));
        const good = assessed.flatMap(({ review, since, what }) =>
          since === null ? [] : [{ review, what, through: throughCalendarMonths(since, months) }],
        );
        good.sort((a, b) =>
          a.through !== b.through ? (a.through < b.through ? 1 : -1) : a.review.id < b.review.id ? -1 : 1,
        );
        const best = good[0];
        if (best) {
          const { review, what, through } = best;
          const counted = [{ id: review.id, on: review.on, what }];
          return take('reviewed', { what, on: review.on, through }, { counted });
        }
        const days = p.number('us.student.solo-days');
        const student = isStudent(standingOf(f.get('pic.certificates'), moment));
        const solo = student
          ? endorsementFor(f.get('pic.endorsements'), moment, { kind: 'solo', withinDays: days })
          : null;
        if (solo) return take('student', { on: solo.on }, { counted: [countedEndorsement(solo, 'solo')] });
        const unclear = assessed
          .filter(({ unclear: yes }) => yes)
          .sort((a, b) => (a.review.id < b.review.id ? -1 : 1));
        if (unclear[0])
          need(
            null,
            'pic.reviews',
            `the hours of the flight review of ${unclear[0].review.on} are not on record`,
          );
        const scant = assessed.some(({ review }) => review.kind === 'flight-review');
        const { makeModel } = f.get('aircraft.type');
        return take(
          'due',
          {
            months,
            why: scant ? '; the one on record was shorter than an hour on the ground or in the air' : '',
          },
          {
            remedies: () => [
              ...(student
                ? getEndorsement(
                    moment,
                    { kind: 'solo', makeModel, withinDays: days },
                    `Train with an instructor and be endorsed for solo flight in the ${makeModel}.`,
                  )
                : []),
              ...flyReview(moment, months, leastTenths),
            ],
          },
        );
      },
    },
  ],
});

/** What a review on record is worth. */
export interface Assessed {
  review: ReviewFact;
  what: string;
  /** Date from which it serves as a review, or null when it does not. */
  since: LocalDate | null;
  /** It may serve, but its hours are not on record. */
  unclear: boolean;
}

/** @param recent reviews beside it: an instructor renewal among them waives the hour on the ground */
export function assessReview(
  review: ReviewFact,
  recent: readonly ReviewFact[],
  tenths: { ground: number; flight: number },
): Assessed {
  const substitute = SUBSTITUTES[review.kind];
  if (substitute) return { review, what: substitute, since: review.on, unclear: false };
  const given =
    review.kind === 'flight-review' ||
    (review.kind === 'instrument-proficiency-check' && review.endorsedAsReview);
  const what = review.kind === 'flight-review' ? 'flight review' : 'proficiency check endorsed as review';
  if (!given) return { review, what, since: null, unclear: false };
  const { groundTenths, flightTenths } = review;
  const flown = flightTenths === null ? null : flightTenths >= tenths.flight;
  const taught = groundTenths === null ? null : groundTenths >= tenths.ground;
  if (flown === true && taught === true) return { review, what, since: review.on, unclear: false };
  // An instructor renewal in the same months waives the ground hour; then the older of the two governs.
  const renewal = recent
    .filter(({ kind }) => kind === 'instructor-renewal')
    .map(({ on }) => on)
    .sort()
    .at(-1);
  if (flown === true && renewal !== undefined)
    return { review, what, since: renewal < review.on ? renewal : review.on, unclear: false };
  const unclear = flown !== false && (flown === null || taught === null);
  return { review, what, since: null, unclear: unclear && !(taught === false && renewal === undefined) };
}

function flyReview(moment: Moment, months: number, tenths: { ground: number; flight: number }): Remedy[] {
  if (!wouldServe(moment, (today) => throughCalendarMonths(today, months))) return [];
  return [
    {
      act: 'fly-flight-review',
      title: 'Fly a flight review with an instructor.',
      by: 'instructor',
      effects: [
        {
          op: 'append',
          fact: 'pic.reviews',
          value: {
            id: 'planned:fly-flight-review',
            kind: 'flight-review',
            on: moment.knowledgeDate(),
            groundTenths: tenths.ground,
            flightTenths: tenths.flight,
            category: null,
            endorsedAsReview: false,
          },
        },
      ],
    },
  ];
}
