import { addDays, ageOn, throughCalendarMonths, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { MedicalFact } from '../../../facts/person.js';
import { CA_MEDICAL } from '../../../parameters/ca/medical.js';
import { caStanding, flownOn } from '../licence/standing.js';

/** What is flown on the certificate, and the categories that serve it, the least first (CARs 404.10). */
export type Privilege = 'hire' | 'private' | 'recreational' | 'student';
export const CATEGORIES: Record<Privilege, readonly MedicalFact['class'][]> = {
  hire: [1],
  private: [3, 1],
  recreational: [4, 3, 1],
  student: [4, 3, 1],
};

/**
 * CARs 404.03, 404.04, 404.10: a medical certificate of a category that fits the permit or licence, within its validity
 * period, which runs to the end of the month.
 */
export const medicalCertificate = defineRule({
  id: 'medical.canada.certificate',
  title: 'Medical certificate',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.medicals', 'pic.birthDate', 'pic.certificates', 'aircraft.type'],
  parameters: CA_MEDICAL.map(({ id }) => id),
  branches: {
    valid: {
      status: 'met',
      says: 'Category {category} medical certificate of {examOn}, good for this flight through {through}.',
    },
    none: {
      status: 'short',
      says: 'No medical certificate of category {categories} is valid for this flight.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 404.03, 404.04(6) to (8), 404.10',
        status: 'from memory',
        reading:
          'The age on the day of the examination decides. A renewal within 90 days before the end is not credited with the days left (404.04(8)). The holder of a commercial licence who carries nobody for hire flies on private privileges. Category 2 is for air traffic controllers. A declaration is recorded as category 4 with its day. A withdrawal ends earlier certificates too.',
      },
      judge(f, moment, p, take) {
        const medicals = f.get('pic.medicals');
        const birthDate = f.get('pic.birthDate');
        const level = flownOn(caStanding(f.get('pic.certificates'), moment), f.get('aircraft.type'))?.level;
        const privilege: Privilege = f.flight.forHire
          ? 'hire'
          : level === 'student' || level === 'recreational'
            ? level
            : 'private';
        const best = medicals
          .flatMap((medical) => {
            if (!CATEGORIES[privilege].includes(medical.class)) return [];
            if (!moment.startsOnOrAfter(medical.examOn) || withdrawn(medicals, medical, moment)) return [];
            const through = medicalLasts(medical.examOn, birthDate, privilege, p);
            return moment.endsOnOrBefore(through) ? [{ medical, through }] : [];
          })
          .sort((a, b) =>
            a.through !== b.through ? (a.through < b.through ? 1 : -1) : a.medical.id < b.medical.id ? -1 : 1,
          )[0];
        if (best) {
          const { medical, through } = best;
          return take(
            'valid',
            { category: medical.class, examOn: medical.examOn, through },
            {
              counted: [
                { id: medical.id, on: medical.examOn, what: `category ${medical.class} examination` },
              ],
              conditions: medical.limitations.map(
                (one) => `Keep to the limitation on the medical certificate: ${one.replace(/\.$/, '')}.`,
              ),
            },
          );
        }
        const categories = [...CATEGORIES[privilege]].sort().join(' or ');
        const remedies = () => passExam({ medicals, birthDate, privilege }, moment, p);
        return take('none', { categories }, { remedies });
      },
    },
  ],
});

/** Last day of a certificate for what is flown on it. */
export function medicalLasts(
  examOn: LocalDate,
  birthDate: LocalDate,
  privilege: Privilege,
  p: Parameters,
): LocalDate {
  if (privilege === 'student') return throughCalendarMonths(examOn, p.number('ca.medical.student'));
  const older = ageOn(birthDate, examOn) >= p.number('ca.medical.age-years');
  return throughCalendarMonths(examOn, p.number(`ca.medical.${privilege}-${older ? 'older' : 'younger'}`));
}

function withdrawn(medicals: readonly MedicalFact[], medical: MedicalFact, moment: Moment): boolean {
  return medicals.some(
    ({ withdrawnOn }) =>
      withdrawnOn !== null &&
      withdrawnOn >= medical.examOn &&
      !moment.endsOnOrBefore(addDays(withdrawnOn, -1)),
  );
}

function passExam(
  of: { medicals: readonly MedicalFact[]; birthDate: LocalDate; privilege: Privilege },
  moment: Moment,
  p: Parameters,
): Remedy[] {
  const { medicals, birthDate, privilege } = of;
  const planned: MedicalFact = {
    id: 'planned:pass-medical-exam',
    class: CATEGORIES[privilege][0]!,
    examOn: moment.knowledgeDate(),
    limitations: [],
    withdrawnOn: null,
  };
  const serves =
    moment.startsOnOrAfter(planned.examOn) &&
    !withdrawn([...medicals, planned], planned, moment) &&
    moment.endsOnOrBefore(medicalLasts(planned.examOn, birthDate, privilege, p));
  if (!serves) return [];
  return [
    {
      act: 'pass-medical-exam',
      title: `Obtain a medical certificate of category ${planned.class}.`,
      by: 'medical-examiner',
      effects: [{ op: 'append', fact: 'pic.medicals', value: planned }],
    },
  ];
}
