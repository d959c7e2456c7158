import { addPlainMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import { exercised, standingOf } from '../shared/certificates.js';
import { wouldServe } from '../../../common/people/plans.js';
import { curesOf, saysAll } from '../../../common/people/shortfalls.js';
import { basicMedLimits, LIMIT_PARAMETERS } from './basicmed-limits.js';
import {
  asOne,
  basicMedStanding,
  examThroughCalendarMonths,
  STANDING_PARAMETERS,
  usesBasicMed,
  type BasicMedStanding,
  type ExamThrough,
} from './basicmed-standing.js';
import { DURATION_PARAMETERS, lastWithdrawn, passMedicalExam, servingMedical } from './durations.js';

type Branch = 'not-used' | 'sport-pilot' | 'met' | 'short';
type Reads = 'pic.medicals' | 'pic.birthDate' | 'pic.basicMed' | 'pic.certificates' | 'aircraft.type';

/**
 * 14 CFR 61.23(c)(3), 61.113(i), part 68: flying on a physician's examination, a course and a driver's licence. Judged
 * only when no medical certificate serves the flight and BasicMed has been taken up; otherwise `medical.certificate`
 * judges.
 */
export const medicalBasicMed = defineRule({
  id: 'medical.basicmed',
  title: 'BasicMed',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.medicals', 'pic.birthDate', 'pic.basicMed', 'pic.certificates', 'aircraft.type'],
  parameters: [...DURATION_PARAMETERS, ...STANDING_PARAMETERS, ...LIMIT_PARAMETERS],
  branches: {
    'not-used': {
      status: 'not-applicable',
      says: 'The flight does not rest on BasicMed; the medical certificate decides.',
    },
    'sport-pilot': {
      status: 'not-applicable',
      says: 'For a sport pilot the sport pilot limits decide.',
    },
    met: {
      status: 'met',
      says: 'BasicMed serves this flight through {through}, within the United States and without hire.',
    },
    short: { status: 'short', says: 'BasicMed does not serve this flight: {wrong}.' },
  },
  bodies: [
    body(1, '2017-05-01', '2024-11-18', '14 CFR 61.23(c)(3), 61.113(i), part 68 (82 FR 3149)', false),
    body(2, '2024-11-18', null, '14 CFR 61.23(c)(3), 61.113(i), part 68 (89 FR 90572)', true),
  ],
});

function body(version: number, from: LocalDate, to: LocalDate | null, text: string, amended: boolean) {
  // Before the amendment the examination counted plain months, and transport rotorcraft were not named.
  const plain: ExamThrough = (examOn, months) => addPlainMonths(examOn, months, 'clamp-to-month-end');
  return {
    version,
    from,
    to,
    citation: {
      text,
      status: 'seen' as const,
      reading:
        'The seats counted are those the aircraft is certificated for, not the people aboard. Of several records the newest dates count, and a denial on any of them stands. That the flight stays within the United States is left to the pilot.',
    },
    judge: (f: FactView<Reads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, amended ? examThroughCalendarMonths : plain, amended),
  };
}

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  examThrough: ExamThrough,
  amended: boolean,
): Judgement {
  const type = f.get('aircraft.type');
  const held = f.peek('pic.medicals');
  const born = f.peek('pic.birthDate');
  // Where these are not on record the medical certificate rule says so.
  if (type.category === 'glider' || !held.known || !born.known) return take('not-used');
  const person = { medicals: held.value, birthDate: born.value };
  const privilege = f.flight.forHire ? 'second' : 'third';
  if (servingMedical(person.medicals, person.birthDate, privilege, moment, p)) return take('not-used');
  if (exercised(standingOf(f.get('pic.certificates'), moment), type)?.level === 'sport')
    return take('sport-pilot');
  const records = f.get('pic.basicMed');
  if (!usesBasicMed(records)) return take('not-used');

  const standing = basicMedStanding(asOne(records, moment), moment, p, examThrough);
  const withdrawn = lastWithdrawn(person.medicals, moment);
  if (withdrawn !== null) {
    standing.wrong.push({ part: 'history', what: `a medical certificate was withdrawn on ${withdrawn}` });
  }
  const limits = basicMedLimits(f, type, p, amended);
  const wrong = [...standing.wrong, ...limits.shortfalls];
  if (wrong.length > 0) {
    const clear = standing.missing.length === 0 && limits.missing.length === 0;
    const remedies = () => [
      ...(clear && standing.wrong.length === 0
        ? curesOf(limits.shortfalls, 'keep-within-basicmed-limits')
        : []),
      ...(clear && limits.shortfalls.length === 0 ? renewBasicMed(standing, moment, p, examThrough) : []),
      ...passMedicalExam({ ...person, privilege }, moment, p),
    ];
    return take('short', { wrong: saysAll(wrong) }, { remedies });
  }
  const missing = [...standing.missing, ...limits.missing];
  if (missing.length > 0) need(null, 'pic.basicMed', `not on record for BasicMed: ${missing.join(', ')}`);
  const counted = [...records]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ id, examOn }) => ({ id, on: examOn, what: 'BasicMed record' }));
  return take('met', { through: standing.through! }, { counted, conditions: limits.conditions });
}

/** A new examination or course, where that is all that is wrong. */
function renewBasicMed(
  standing: BasicMedStanding,
  moment: Moment,
  p: Parameters,
  examThrough: ExamThrough,
): Remedy[] {
  const parts = standing.wrong.map(({ part }) => part);
  if (!parts.every((part) => part === 'exam' || part === 'course')) return [];
  const today = moment.knowledgeDate();
  const course = p.number('us.basicmed.course-calendar-months');
  const serves =
    (!parts.includes('exam') ||
      wouldServe(moment, (day) => examThrough(day, p.number('us.basicmed.exam-months')))) &&
    (!parts.includes('course') || wouldServe(moment, (day) => examThroughCalendarMonths(day, course)));
  if (!serves) return [];
  const words = parts.map((part) => (part === 'exam' ? 'see a physician' : 'complete the course'));
  return [
    {
      act: 'renew-basicmed',
      title: `For BasicMed: ${words.join(' and ')} again.`,
      by: 'member',
      effects: [
        {
          op: 'append',
          fact: 'pic.basicMed',
          value: {
            id: 'planned:renew-basicmed',
            examOn: parts.includes('exam') ? today : null,
            courseOn: parts.includes('course') ? today : null,
            licenceValidThrough: null,
            heldMedicalAfter20060714: null,
            lastApplicationDenied: null,
            lastCertificateRevokedOrSuspended: null,
          },
        },
      ],
    },
  ];
}
