/** How long a medical certificate of Part-MED serves a privilege (MED.A.045(a)). */
import { addDays, addPlainMonths, addYears, ageOn, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { MedicalFact } from '../../../facts/person.js';

/** What is flown on it: for hire (class 1), on a private licence (class 2), on a light aircraft licence. */
export type MedicalPrivilege = 'hire' | 'private' | 'lapl';

/** The class that each privilege needs; a lower number serves too. */
export const CLASS_FOR: Record<MedicalPrivilege, 1 | 2 | 4> = { hire: 1, private: 2, lapl: 4 };

/** 'class 2', 'LAPL'. Class 3 is for air traffic controllers. */
export const classWords = (of: MedicalFact['class']): string => (of === 4 ? 'LAPL' : `class ${of}`);

/** Last date a certificate serves; null when its class never does. Age is that on the day of the examination. */
export function medicalThrough(
  medical: Pick<MedicalFact, 'class' | 'examOn'>,
  birthDate: LocalDate,
  privilege: MedicalPrivilege,
  p: Parameters,
): LocalDate | null {
  if (medical.class > CLASS_FOR[privilege] || medical.class === 3) return null;
  const n = (id: string) => p.number(`eu.medical.${id}`);
  const age = ageOn(birthDate, medical.examOn);
  const after = (months: number) => addPlainMonths(medical.examOn, months, 'clamp-to-month-end');
  const capped = (through: LocalDate, years: number) => {
    const lastDay = addDays(addYears(birthDate, years, 'roll-to-next-month'), -1);
    return through < lastDay ? through : lastDay;
  };
  if (privilege === 'hire')
    return after(age >= n('class-1-short-from') ? n('class-1-short-months') : n('class-1-months'));
  if (privilege === 'lapl')
    return age < n('lapl-young-until')
      ? capped(after(n('lapl-young-months')), n('lapl-young-cap'))
      : after(n('lapl-months'));
  if (age < n('class-2-young-until')) return capped(after(n('class-2-young-months')), n('class-2-young-cap'));
  if (age < n('class-2-middle-until'))
    return capped(after(n('class-2-middle-months')), n('class-2-middle-cap'));
  return after(n('class-2-late-months'));
}

/** Was this certificate, or a later one up to now, withdrawn before the flight is over? Then it serves no more. */
export function withdrawnAfter(
  medicals: readonly MedicalFact[],
  medical: MedicalFact,
  moment: Moment,
): boolean {
  return medicals.some(
    ({ withdrawnOn }) =>
      withdrawnOn !== null &&
      withdrawnOn >= medical.examOn &&
      !moment.endsOnOrBefore(addDays(withdrawnOn, -1)),
  );
}
