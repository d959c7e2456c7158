/** What a sport pilot flies on: a medical certificate, BasicMed, or by day a driver's licence (14 CFR 61.23(c), 61.303). */
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { FactView } from '../../../../engine/rule.js';
import {
  asOne,
  basicMedStanding,
  examThroughCalendarMonths,
  licenceStanding,
  STANDING_PARAMETERS,
  usesBasicMed,
} from '../medical/basicmed-standing.js';
import { DURATION_PARAMETERS, lastWithdrawn, passMedicalExam, servingMedical } from '../medical/durations.js';
import type { Shortfall } from '../../../common/people/shortfalls.js';

export const SPORT_MEDICAL_PARAMETERS = [...DURATION_PARAMETERS, ...STANDING_PARAMETERS] as const;

/** `licence` serves by day alone. `missing` names what is not on record where nothing is known to serve. */
export interface SportMedical {
  on: 'medical certificate' | 'BasicMed' | 'driver’s licence' | null;
  missing: string[];
  wrong: string[];
}

/** The best of what is on record for the flight. */
export function sportMedical(
  f: FactView<'pic.medicals' | 'pic.basicMed' | 'pic.birthDate'>,
  moment: Moment,
  p: Parameters,
): SportMedical {
  const medicals = f.get('pic.medicals');
  if (medicals.length > 0 && servingMedical(medicals, f.get('pic.birthDate'), 'third', moment, p))
    return { on: 'medical certificate', missing: [], wrong: [] };
  const withdrawn = lastWithdrawn(medicals, moment);
  if (withdrawn !== null)
    return { on: null, missing: [], wrong: [`the medical certificate was withdrawn on ${withdrawn}`] };
  const records = f.get('pic.basicMed');
  const one = asOne(records, moment);
  if (usesBasicMed(records)) {
    const { wrong, missing } = basicMedStanding(one, moment, p, examThroughCalendarMonths);
    if (wrong.length === 0 && missing.length === 0) return { on: 'BasicMed', missing, wrong: [] };
  }
  if (records.length === 0) return { on: null, missing: [], wrong: ['no driver’s licence is on record'] };
  const { wrong, missing } = licenceStanding(one, moment);
  const on = wrong.length === 0 && missing.length === 0 ? ('driver’s licence' as const) : null;
  return { on, missing, wrong: wrong.map(({ what }) => what) };
}

/** A medical examination, as the cure that always serves. */
export function examinedFor(
  f: FactView<'pic.medicals' | 'pic.birthDate'>,
  what: string,
  moment: Moment,
  p: Parameters,
): Shortfall {
  const cures = () => {
    const birthDate = f.peek('pic.birthDate');
    if (!birthDate.known) return [];
    const person = { medicals: f.get('pic.medicals'), birthDate: birthDate.value };
    return passMedicalExam({ ...person, privilege: 'third' }, moment, p);
  };
  return { what, cures };
}
