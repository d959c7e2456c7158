/** The personal side of BasicMed (14 CFR 61.23(c)(3), part 68): what the pilot must hold, whatever the flight. */
import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { BasicMedFact } from '../../../../facts/person.js';

/** Parameters that whoever asks for the standing must declare. */
export const STANDING_PARAMETERS = [
  'us.basicmed.held-after',
  'us.basicmed.exam-months',
  'us.basicmed.course-calendar-months',
] as const;

/** All records as one: the newest of each date, and an adverse answer on any of them stands. */
export type BasicMedAsOne = Omit<BasicMedFact, 'id'>;

export function asOne(records: readonly BasicMedFact[], moment: Moment): BasicMedAsOne {
  const newest = (pick: (record: BasicMedFact) => LocalDate | null, happened: boolean) =>
    records
      .flatMap((record) => pick(record) ?? [])
      .filter((date) => !happened || moment.startsOnOrAfter(date))
      .sort()
      .at(-1) ?? null;
  const any = (pick: (record: BasicMedFact) => boolean | null, wins: boolean): boolean | null => {
    const answers = records.map(pick);
    if (answers.includes(wins)) return wins;
    return answers.includes(!wins) ? !wins : null;
  };
  return {
    examOn: newest((record) => record.examOn, true),
    courseOn: newest((record) => record.courseOn, true),
    licenceValidThrough: newest((record) => record.licenceValidThrough, false),
    heldMedicalAfter20060714: any((record) => record.heldMedicalAfter20060714, true),
    lastApplicationDenied: any((record) => record.lastApplicationDenied, true),
    lastCertificateRevokedOrSuspended: any((record) => record.lastCertificateRevokedOrSuspended, true),
  };
}

/** Has the person taken up BasicMed? A driver's licence alone is no examination and no course. */
export function usesBasicMed(records: readonly BasicMedFact[]): boolean {
  return records.some(({ examOn, courseOn }) => examOn !== null || courseOn !== null);
}

/** Calendar months through 2024-11-18, plain ones before: the body in force says how the examination counts. */
export type ExamThrough = (examOn: LocalDate, months: number) => LocalDate;

export const examThroughCalendarMonths: ExamThrough = throughCalendarMonths;

/** What is wrong or not on record; `through` is the last day on which all that is known holds. */
export interface BasicMedStanding {
  wrong: { part: 'exam' | 'course' | 'licence' | 'history'; what: string }[];
  missing: string[];
  through: LocalDate | null;
}

/** The part that a driver's licence alone must meet too: the licence, and no adverse last application or certificate. */
export function licenceStanding(
  one: BasicMedAsOne,
  moment: Moment,
): Pick<BasicMedStanding, 'wrong' | 'missing'> {
  const wrong: BasicMedStanding['wrong'] = [];
  const missing: string[] = [];
  if (one.licenceValidThrough === null) missing.push('the driver’s licence');
  else if (!moment.endsOnOrBefore(one.licenceValidThrough))
    wrong.push({ part: 'licence', what: `the driver’s licence ends on ${one.licenceValidThrough}` });
  if (one.lastApplicationDenied === null) missing.push('the outcome of the last medical application');
  else if (one.lastApplicationDenied)
    wrong.push({ part: 'history', what: 'the last application for a medical certificate was denied' });
  if (one.lastCertificateRevokedOrSuspended === null)
    missing.push('the fate of the last medical certificate');
  else if (one.lastCertificateRevokedOrSuspended)
    wrong.push({ part: 'history', what: 'the last medical certificate was suspended, revoked or withdrawn' });
  return { wrong, missing };
}

/** All that BasicMed asks of the person. */
export function basicMedStanding(
  one: BasicMedAsOne,
  moment: Moment,
  p: Parameters,
  examThrough: ExamThrough,
): BasicMedStanding {
  const { wrong, missing } = licenceStanding(one, moment);
  const ends: LocalDate[] = one.licenceValidThrough === null ? [] : [one.licenceValidThrough];
  const last = (part: 'exam' | 'course', words: string, on: LocalDate | null, through: () => LocalDate) => {
    if (on === null) {
      missing.push(words);
      return;
    }
    ends.push(through());
    if (!moment.endsOnOrBefore(through()))
      wrong.push({ part, what: `${words} of ${on} ran to ${through()}` });
  };
  last('exam', 'the physician’s examination', one.examOn, () =>
    examThrough(one.examOn!, p.number('us.basicmed.exam-months')),
  );
  last('course', 'the medical education course', one.courseOn, () =>
    throughCalendarMonths(one.courseOn!, p.number('us.basicmed.course-calendar-months')),
  );
  if (one.heldMedicalAfter20060714 === null) missing.push('whether a medical certificate was ever held');
  else if (!one.heldMedicalAfter20060714) {
    const what = `no medical certificate was held after ${p.text('us.basicmed.held-after')}`;
    wrong.push({ part: 'history', what });
  }
  return { wrong, missing, through: ends.sort()[0] ?? null };
}
