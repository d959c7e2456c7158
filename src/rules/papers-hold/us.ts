/** 14 CFR: until when medical certificates, BasicMed, reviews, instructor certificates and endorsements hold. */
import { addDays, throughCalendarMonths, type LocalDate } from '../calendar/dates.js';
import { examThroughCalendarMonths } from '../packs/us/pilot/medical/basicmed-standing.js';
import {
  DURATION_PARAMETERS,
  medicalThrough,
  PRIVILEGE_WORDS,
  type MedicalPrivilege,
} from '../packs/us/pilot/medical/durations.js';
import { instructionThrough } from '../packs/us/pilot/instructor/recent-experience.js';
import { assessReview } from '../packs/us/pilot/recency/flight-review.js';
import {
  certificatesHold,
  endorsementsHold,
  hold,
  listOf,
  medicalsHold,
  ratingsHold,
  type PaperHold,
  type Papers,
} from './hold.js';

export const US_HOLD_PARAMETERS = [
  ...DURATION_PARAMETERS,
  'us.basicmed.exam-months',
  'us.basicmed.course-calendar-months',
  'us.flight-review.calendar-months',
  'us.flight-review.ground-hours',
  'us.flight-review.flight-hours',
  'us.instructor.calendar-months',
  'us.student.solo-days',
];

export const usPapersHold = (of: Papers): PaperHold[] => [
  ...certificatesHold(listOf(of.person.certificates)),
  ...medicals(of),
  ...basicMedHolds(of),
  ...reviewsHold(of),
  ...instructorHolds(of),
  ...endorsementsHold(listOf(of.person.endorsements), ({ kind, on }) =>
    // 14 CFR 61.87(n), (o).
    kind === 'solo' || kind === 'solo-night' ? addDays(on, of.p.number('us.student.solo-days')) : null,
  ),
  ...ratingsHold(listOf(of.person.ratings)),
];

const PRIVILEGES: readonly MedicalPrivilege[] = ['first', 'second', 'third'];

/** A certificate steps down: each privilege has its day. */
const medicals = ({ person, p }: Papers): PaperHold[] =>
  medicalsHold(person, { sameDayToo: false }, (medical, born) =>
    PRIVILEGES.flatMap((privilege) => {
      const through = medicalThrough(medical, born, privilege, p);
      return through === null ? [] : [hold(`${PRIVILEGE_WORDS[privilege]} privileges`, through)];
    }),
  );

function basicMedHolds({ person, p }: Papers): PaperHold[] {
  return listOf(person.basicMed).map(({ id, examOn, courseOn, licenceValidThrough }) => {
    const exam =
      examOn === null ? null : examThroughCalendarMonths(examOn, p.number('us.basicmed.exam-months'));
    const course =
      courseOn === null
        ? null
        : throughCalendarMonths(courseOn, p.number('us.basicmed.course-calendar-months'));
    const parts: [string, LocalDate | null][] = [
      ['physician’s examination', exam],
      ['medical education course', course],
      ['driver’s licence', licenceValidThrough],
    ];
    const missing = parts.flatMap(([what, through]) => (through === null ? [what] : []));
    const ends = parts.flatMap(([, through]) => through ?? []).sort();
    const whole =
      missing.length > 0
        ? hold('flying on BasicMed', null, `Not on record: ${missing.join(', ')}.`)
        : hold('flying on BasicMed', ends[0]!);
    return {
      paperId: id,
      holds: [whole, ...parts.flatMap(([what, through]) => (through === null ? [] : [hold(what, through)]))],
    };
  });
}

function reviewsHold({ person, p }: Papers): PaperHold[] {
  const reviews = listOf(person.reviews);
  const months = p.number('us.flight-review.calendar-months');
  const least = {
    ground: p.number('us.flight-review.ground-hours') * 10,
    flight: p.number('us.flight-review.flight-hours') * 10,
  };
  return reviews.map((review): PaperHold => {
    const { since, unclear } = assessReview(review, reviews, least);
    const purpose = 'acting as pilot in command (flight review)';
    if (since !== null)
      return { paperId: review.id, holds: [hold(purpose, throughCalendarMonths(since, months))] };
    const note = unclear
      ? 'Its hours are not on record.'
      : 'It does not stand for a flight review by itself.';
    return { paperId: review.id, holds: [hold(purpose, null, note)] };
  });
}

function instructorHolds({ person, moment, p }: Papers): PaperHold[] {
  const months = p.number('us.instructor.calendar-months');
  return listOf(person.instructor).map((certificate) => {
    const through = instructionThrough(certificate, months, moment);
    const note = through === null ? 'When the recent experience was last met is not on record.' : null;
    return { paperId: certificate.id, holds: [hold('giving instruction', through, note)] };
  });
}
