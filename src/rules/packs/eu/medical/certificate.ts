import type { LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { MedicalFact } from '../../../facts/person.js';
import { EU_LAPL_MEDICAL } from '../../../parameters/eu/lapl-medical.js';
import { EU_MEDICAL } from '../../../parameters/eu/medical.js';
import { easaMedical1 } from '../../../versions/past/easa-medical-1.js';
import { euStanding, flownOn } from '../licence/standing.js';
import { CLASS_FOR, classWords, medicalThrough, withdrawnAfter, type MedicalPrivilege } from './durations.js';

/**
 * Part-MED, MED.A.030 and MED.A.045: class 2 for private flying, LAPL or better on a light aircraft licence, class 1 where
 * passengers or goods are carried for hire. A higher class gives the privileges of the lower for as long as that would
 * last.
 */
export const medicalCertificate = defineRule({
  id: 'medical.easa.certificate',
  title: 'Medical certificate',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.medicals', 'pic.birthDate', 'pic.certificates', 'aircraft.type'],
  parameters: [...EU_MEDICAL, ...EU_LAPL_MEDICAL].map((parameter) => parameter.id),
  branches: {
    valid: {
      status: 'met',
      says: 'Medical certificate ({class}) of {examOn}, good for this flight through {through}.',
    },
    none: { status: 'short', says: 'No medical certificate ({needed} or better) is valid for this flight.' },
  },
  bodies: [
    {
      version: 2,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, MED.A.030, MED.A.045(a)',
        status: 'seen',
        reading:
          'Months run from the examination, day for day; an examination up to 45 days early is not credited with the days ' +
          'left. A certificate capped at an age ends the day before that birthday. An examination on a birthday counts as ' +
          'that age. For hire means single-pilot transport of passengers. A withdrawal ends earlier certificates too. A ' +
          'student flies on a LAPL certificate or better; that it fits the licence trained for is a condition. Class 3 is ' +
          'for air traffic controllers and gives nothing.',
      },
      judge(f, moment, p, take) {
        const medicals = f.get('pic.medicals');
        const birthDate = f.get('pic.birthDate');
        const level = flownOn(euStanding(f.get('pic.certificates'), moment), f.get('aircraft.type'))?.level;
        const light = level === 'lapl' || level === 'student';
        const privilege: MedicalPrivilege = f.flight.forHire ? 'hire' : light ? 'lapl' : 'private';
        const best = medicals
          .flatMap((medical) => {
            const through = medicalThrough(medical, birthDate, privilege, p);
            return through !== null &&
              moment.startsOnOrAfter(medical.examOn) &&
              moment.endsOnOrBefore(through) &&
              !withdrawnAfter(medicals, medical, moment)
              ? [{ medical, through }]
              : [];
          })
          .sort((a, b) =>
            a.through !== b.through ? (a.through < b.through ? 1 : -1) : a.medical.id < b.medical.id ? -1 : 1,
          )[0];
        if (best) {
          const { medical, through } = best;
          const limits = medical.limitations.map(
            (limitation) =>
              `Keep to the limitation on the medical certificate: ${limitation.replace(/\.$/, '')}.`,
          );
          const student =
            level === 'student' && medical.class === 4
              ? ['Make sure that you train for a light aircraft licence: its certificate serves no other.']
              : [];
          return take(
            'valid',
            { class: classWords(medical.class), examOn: medical.examOn, through },
            {
              counted: [
                { id: medical.id, on: medical.examOn, what: `${classWords(medical.class)} examination` },
              ],
              conditions: [...limits, ...student],
            },
          );
        }
        const person = { medicals, birthDate, privilege };
        return take(
          'none',
          { needed: classWords(CLASS_FOR[privilege]) },
          { remedies: () => passExam(person, moment, p) },
        );
      },
    },
  ],
  superseded: [easaMedical1 as never],
  changed: 'Light aircraft licences are judged on LAPL certificates too, which were not on record before.',
});

/** Pass the examination; nothing when it would not serve the flight. */
function passExam(
  of: { medicals: readonly MedicalFact[]; birthDate: LocalDate; privilege: MedicalPrivilege },
  moment: Moment,
  p: Parameters,
): Remedy[] {
  const { medicals, birthDate, privilege } = of;
  const planned: MedicalFact = {
    id: 'planned:pass-medical-exam',
    class: CLASS_FOR[privilege],
    examOn: moment.knowledgeDate(),
    limitations: [],
    withdrawnOn: null,
  };
  const through = medicalThrough(planned, birthDate, privilege, p)!;
  const serves =
    !withdrawnAfter([...medicals, planned], planned, moment) &&
    moment.startsOnOrAfter(planned.examOn) &&
    moment.endsOnOrBefore(through);
  if (!serves) return [];
  return [
    {
      act: 'pass-medical-exam',
      title: `Pass a medical examination (${classWords(planned.class)}).`,
      by: 'medical-examiner',
      effects: [{ op: 'append', fact: 'pic.medicals', value: planned }],
    },
  ];
}
