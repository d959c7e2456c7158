/** How long a medical certificate supports each privilege (14 CFR 61.23(d)), and which one serves a flight. */
import {
  addDays,
  ageOn,
  laterOf,
  throughCalendarMonths,
  type LocalDate,
} from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { MedicalFact } from '../../../../facts/person.js';
import { wouldServe } from '../../../common/people/plans.js';

/** Privileges in the order of the class they need. Instructors acting as pilot in command need the third. */
export type MedicalPrivilege = 'first' | 'second' | 'third';

/** Parameters that whoever asks for durations must declare. */
export const DURATION_PARAMETERS = [
  'us.medical.age-years',
  'us.medical.first-younger',
  'us.medical.first-older',
  'us.medical.second',
  'us.medical.third-younger',
  'us.medical.third-older',
] as const;

/** Parameters of the months each privilege lasts, by age. */
const MONTHS = {
  first: { younger: 'us.medical.first-younger', older: 'us.medical.first-older' },
  second: { younger: 'us.medical.second', older: 'us.medical.second' },
  third: { younger: 'us.medical.third-younger', older: 'us.medical.third-older' },
} as const satisfies Record<MedicalPrivilege, Record<'younger' | 'older', string>>;

const CLASS: Record<MedicalPrivilege, 1 | 2 | 3> = { first: 1, second: 2, third: 3 };

/** What a privilege lets a pilot do, in words. */
export const PRIVILEGE_WORDS: Record<MedicalPrivilege, string> = {
  first: 'airline transport',
  second: 'commercial',
  third: 'private, recreational, student or instructor',
};

/**
 * Last day on which the certificate supports the privilege, or null when its class never does. A certificate steps down:
 * past its first- or second-class time it goes on as a lower class. The age on the day of the examination decides.
 */
export function medicalThrough(
  medical: Pick<MedicalFact, 'class' | 'examOn'>,
  birthDate: LocalDate,
  privilege: MedicalPrivilege,
  p: Parameters,
): LocalDate | null {
  if (medical.class > CLASS[privilege]) return null;
  const older = ageOn(birthDate, medical.examOn) >= p.number('us.medical.age-years');
  return throughCalendarMonths(medical.examOn, p.number(MONTHS[privilege][older ? 'older' : 'younger']));
}

/** A certificate that supports the privilege on the flight, and until when. */
export interface ServingMedical {
  medical: MedicalFact;
  through: LocalDate;
}

/**
 * The certificate that supports the privilege on the flight: the one that lasts longest, of two the newer.
 * A withdrawal ends every examination before it, not only the certificate it names (strict reading): the person must
 * pass a new one.
 */
export function servingMedical(
  medicals: readonly MedicalFact[],
  birthDate: LocalDate,
  privilege: MedicalPrivilege,
  moment: Moment,
  p: Parameters,
): ServingMedical | null {
  const withdrawn = withdrawnBefore(medicals, moment);
  const serving = medicals.flatMap((medical): ServingMedical[] => {
    const through = medicalThrough(medical, birthDate, privilege, p);
    if (through === null || !moment.startsOnOrAfter(medical.examOn) || !moment.endsOnOrBefore(through))
      return [];
    return withdrawn !== null && medical.examOn < withdrawn ? [] : [{ medical, through }];
  });
  const order = ({ medical, through }: ServingMedical): string => `${through} ${medical.examOn}`;
  serving.sort((a, b) =>
    order(a) !== order(b) ? (order(a) < order(b) ? 1 : -1) : a.medical.id < b.medical.id ? -1 : 1,
  );
  return serving[0] ?? null;
}

/** The newest withdrawal that has taken effect by the end of the flight. */
export function withdrawnBefore(medicals: readonly MedicalFact[], moment: Moment): LocalDate | null {
  let newest: LocalDate | null = null;
  for (const { withdrawnOn } of medicals) {
    if (withdrawnOn !== null && !moment.endsOnOrBefore(addDays(withdrawnOn, -1)))
      newest = laterOf(newest, withdrawnOn);
  }
  return newest;
}

/**
 * The withdrawal of the most recent certificate: null once a later examination was passed. BasicMed and flying on a
 * driver's licence ask for the most recently issued certificate alone (61.23(c)(2)(iii), (c)(3)(i)).
 */
export function lastWithdrawn(medicals: readonly MedicalFact[], moment: Moment): LocalDate | null {
  const withdrawn = withdrawnBefore(medicals, moment);
  if (withdrawn === null) return null;
  const passedSince = medicals.some(
    ({ examOn, withdrawnOn }) =>
      withdrawnOn === null && examOn >= withdrawn && moment.startsOnOrAfter(examOn),
  );
  return passedSince ? null : withdrawn;
}

/** Pass an examination for the class the privilege needs. */
export function passMedicalExam(
  of: { medicals: readonly MedicalFact[]; birthDate: LocalDate; privilege: MedicalPrivilege },
  moment: Moment,
  p: Parameters,
): Remedy[] {
  const { medicals, birthDate, privilege } = of;
  // An examination before a withdrawal that is still to come would not count.
  const examOn = laterOf(moment.knowledgeDate(), withdrawnBefore(medicals, moment))!;
  const exam = { class: CLASS[privilege], examOn };
  const through = medicalThrough(exam, birthDate, privilege, p);
  if (through === null || !moment.startsOnOrAfter(examOn) || !wouldServe(moment, () => through)) return [];
  return [
    {
      act: 'pass-medical-exam',
      title: `Pass a medical examination for class ${exam.class}.`,
      by: 'medical-examiner',
      effects: [
        {
          op: 'append',
          fact: 'pic.medicals',
          value: { id: 'planned:pass-medical-exam', ...exam, limitations: [], withdrawnOn: null },
        },
      ],
    },
  ];
}
