import { addDays, addPlainMonths, addYears, ageOn, type LocalDate } from '../../calendar/dates.js';
import type { Moment } from '../../engine/moment.js';
import type { Parameters } from '../../engine/parameters.js';
import { defineRule } from '../../engine/rule.js';
import type { MedicalFact } from '../../facts/person.js';
import { EU_MEDICAL } from '../../parameters/eu/medical.js';

/**
 * Part-MED, MED.A.030 and MED.A.045: class 2 for private flying, class 1 where passengers or goods are carried for hire.
 * A class 1 certificate gives class 2 privileges for as long as class 2 would last.
 */
export const easaMedical1 = defineRule({
  id: 'medical.easa.certificate',
  title: 'Medical certificate',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.medicals', 'pic.birthDate'],
  parameters: EU_MEDICAL.map((parameter) => parameter.id),
  branches: {
    valid: {
      status: 'met',
      says: 'Class {class} medical certificate of {examOn}, good for this flight through {through}.',
    },
    none: { status: 'short', says: 'No medical certificate of class {needed} is valid for this flight.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, MED.A.030, MED.A.045(a)',
        status: 'seen',
        reading:
          'Months run from the examination, day for day; an examination up to 45 days early is not credited with the days ' +
          'left. A certificate capped at an age ends the day before that birthday. An examination on a birthday counts as ' +
          'that age. For hire means single-pilot transport of passengers. A withdrawal ends earlier certificates too. The ' +
          'LAPL certificate is not on record here and class 3 gives nothing.',
      },
      judge(f, moment, p, take) {
        const medicals = f.get('pic.medicals');
        const birthDate = f.get('pic.birthDate');
        const hire = f.flight.forHire;
        const valid = medicals
          .filter((medical) => !withdrawnAfter(medicals, medical, moment))
          .map((medical) => ({ medical, through: medicalThrough(medical, birthDate, hire, p) }))
          .filter(
            (one): one is { medical: MedicalFact; through: LocalDate } =>
              one.through !== null &&
              moment.startsOnOrAfter(one.medical.examOn) &&
              moment.endsOnOrBefore(one.through),
          )
          .sort((a, b) =>
            a.through !== b.through ? (a.through < b.through ? 1 : -1) : a.medical.id < b.medical.id ? -1 : 1,
          );
        const best = valid[0];
        if (best) {
          const { medical, through } = best;
          return take(
            'valid',
            { class: medical.class, examOn: medical.examOn, through },
            {
              counted: [{ id: medical.id, on: medical.examOn, what: `class ${medical.class} examination` }],
              conditions: medical.limitations.map(
                (limitation) =>
                  `Keep to the limitation on the medical certificate: ${limitation.replace(/\.$/, '')}.`,
              ),
            },
          );
        }
        const planned: MedicalFact = {
          id: 'planned:pass-medical-exam',
          class: hire ? 1 : 2,
          examOn: moment.knowledgeDate(),
          limitations: [],
          withdrawnOn: null,
        };
        const serves =
          !withdrawnAfter([...medicals, planned], planned, moment) &&
          moment.endsOnOrBefore(medicalThrough(planned, birthDate, hire, p)!);
        return take(
          'none',
          { needed: planned.class },
          {
            remedies: () =>
              serves
                ? [
                    {
                      act: 'pass-medical-exam',
                      title: `Pass a class ${planned.class} medical examination.`,
                      by: 'medical-examiner',
                      effects: [{ op: 'append', fact: 'pic.medicals', value: planned }],
                    },
                  ]
                : [],
          },
        );
      },
    },
  ],
});

/** Was this certificate, or a later one up to now, withdrawn before the flight is over? Then it serves no more. */
function withdrawnAfter(medicals: readonly MedicalFact[], medical: MedicalFact, moment: Moment): boolean {
  return medicals.some(
    ({ withdrawnOn }) =>
      withdrawnOn !== null &&
      withdrawnOn >= medical.examOn &&
      !moment.endsOnOrBefore(addDays(withdrawnOn, -1)),
  );
}

/** Last date a certificate serves; null when its class never does. Age is that on the day of the examination. */
function medicalThrough(
  medical: MedicalFact,
  birthDate: LocalDate,
  hire: boolean,
  p: Parameters,
): LocalDate | null {
  const n = (id: string) => p.number(`eu.medical.${id}`);
  const age = ageOn(birthDate, medical.examOn);
  const after = (months: number) => addPlainMonths(medical.examOn, months, 'clamp-to-month-end');
  if (hire) {
    if (medical.class !== 1) return null;
    return after(age >= n('class-1-short-from') ? n('class-1-short-months') : n('class-1-months'));
  }
  if (medical.class === 3) return null;
  const capped = (through: LocalDate, years: number) => {
    const lastDay = addDays(addYears(birthDate, years, 'roll-to-next-month'), -1);
    return through < lastDay ? through : lastDay;
  };
  if (age < n('class-2-young-until')) return capped(after(n('class-2-young-months')), n('class-2-young-cap'));
  if (age < n('class-2-middle-until'))
    return capped(after(n('class-2-middle-months')), n('class-2-middle-cap'));
  return after(n('class-2-late-months'));
}
