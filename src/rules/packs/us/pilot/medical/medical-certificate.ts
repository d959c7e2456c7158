import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import type { MedicalFact } from '../../../../facts/person.js';
import { exercised, standingOf } from '../shared/certificates.js';
import { wouldServe } from '../../../common/people/plans.js';
import { usesBasicMed } from './basicmed-standing.js';
import {
  DURATION_PARAMETERS,
  medicalThrough,
  passMedicalExam,
  PRIVILEGE_WORDS,
  servingMedical,
  withdrawnBefore,
  type MedicalPrivilege,
} from './durations.js';

type Branch = 'valid' | 'not-asked' | 'sport-pilot' | 'relies-on-basicmed' | 'none';
type Reads = 'pic.medicals' | 'pic.birthDate' | 'pic.basicMed' | 'pic.certificates' | 'aircraft.type';

/**
 * 14 CFR 61.3(c), 61.23: a medical certificate for the privilege exercised. Carriage for hire exercises commercial
 * privileges; every other flight of a club, an instructor's too, needs the third class. Exactly one of this rule,
 * `medical.basicmed` and (for sport pilots) `sport.limits` judges a flight.
 */
export const medicalCertificate = defineRule({
  id: 'medical.certificate',
  title: 'Medical certificate',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.medicals', 'pic.birthDate', 'pic.basicMed', 'pic.certificates', 'aircraft.type'],
  parameters: [...DURATION_PARAMETERS, 'us.basicmed.held-after', 'us.basicmed.course-calendar-months'],
  branches: {
    valid: {
      status: 'met',
      says: 'Class {class} medical certificate of {examOn}: good for {privilege} privileges through {through}.',
    },
    'not-asked': { status: 'not-applicable', says: 'A glider needs no medical certificate.' },
    'sport-pilot': {
      status: 'not-applicable',
      says: 'A sport pilot may fly without a medical certificate; the sport pilot limits decide.',
    },
    'relies-on-basicmed': {
      status: 'not-applicable',
      says: 'No medical certificate serves this flight, so BasicMed decides.',
    },
    none: {
      status: 'short',
      says: 'No medical certificate serves this flight for {privilege} privileges{why}.',
    },
  },
  bodies: [
    body(1, null, '2017-05-01', '14 CFR 61.23(a), (d)', false),
    body(2, '2017-05-01', null, '14 CFR 61.23(a), (c)(3), (d)', true),
  ],
});

function body(
  version: number,
  from: LocalDate | null,
  to: LocalDate | null,
  text: string,
  basicMed: boolean,
) {
  return {
    version,
    from,
    to,
    citation: {
      text,
      status: 'seen' as const,
      reading:
        'Airline transport privileges are never needed in a club. Balloons are asked for one like any aircraft but gliders. An examination on the 40th birthday counts as 40. A withdrawn certificate ends earlier examinations too. Limitations of the certificate that serves, and of the newest examination, become conditions, and 61.53 (a known deficiency) stands over every date.',
    },
    judge: (f: FactView<Reads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, basicMed),
  };
}

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  basicMedExists: boolean,
): Judgement {
  const type = f.get('aircraft.type');
  if (type.category === 'glider') return take('not-asked');
  const privilege: MedicalPrivilege = f.flight.forHire ? 'second' : 'third';
  const medicals = f.get('pic.medicals');
  const birthDate = f.get('pic.birthDate');
  const serving = servingMedical(medicals, birthDate, privilege, moment, p);
  if (serving) {
    const { medical, through } = serving;
    return take(
      'valid',
      { class: medical.class, examOn: medical.examOn, privilege: PRIVILEGE_WORDS[privilege], through },
      {
        counted: [{ id: medical.id, on: medical.examOn, what: `class ${medical.class} examination` }],
        conditions: limitations(medical, medicals, moment).map(
          (one) => `Keep to the limitation on the medical certificate: ${one.replace(/\.$/, '')}.`,
        ),
      },
    );
  }
  if (exercised(standingOf(f.get('pic.certificates'), moment), type)?.level === 'sport')
    return take('sport-pilot');
  const records = basicMedExists ? f.get('pic.basicMed') : [];
  if (usesBasicMed(records)) return take('relies-on-basicmed');
  const remedies = () => [
    ...passMedicalExam({ medicals, birthDate, privilege }, moment, p),
    ...(basicMedExists && privilege === 'third' ? completeBasicMed(medicals, moment, p) : []),
  ];
  const values = {
    privilege: PRIVILEGE_WORDS[privilege],
    why: why(medicals, birthDate, privilege, moment, p),
  };
  return take('none', values, { remedies });
}

/** Limitations on the certificate that serves, and those found at the newest examination since. */
function limitations(serving: MedicalFact, medicals: readonly MedicalFact[], moment: Moment): string[] {
  if (medicals.every((one) => one.limitations.length === 0)) return [];
  const since = medicals.filter(({ examOn }) => examOn >= serving.examOn && moment.startsOnOrAfter(examOn));
  const newest = since
    .map(({ examOn }) => examOn)
    .sort()
    .at(-1);
  const found = since.filter(({ examOn }) => examOn === newest).flatMap((one) => one.limitations);
  return [...new Set([...serving.limitations, ...found.sort()])];
}

/** What stands nearest: the newest examination and why it does not serve. */
function why(
  medicals: readonly MedicalFact[],
  birthDate: LocalDate,
  privilege: MedicalPrivilege,
  moment: Moment,
  p: Parameters,
): string {
  const newest = [...medicals]
    .filter((medical) => moment.startsOnOrAfter(medical.examOn))
    .sort((a, b) => (a.examOn < b.examOn ? 1 : a.examOn > b.examOn ? -1 : a.class - b.class))[0];
  if (!newest) return '';
  const withdrawn = withdrawnBefore(medicals, moment);
  if (withdrawn !== null && newest.examOn < withdrawn) return `; the last was withdrawn on ${withdrawn}`;
  const through = medicalThrough(newest, birthDate, privilege, p);
  return through === null
    ? `; a class ${newest.class} certificate never does`
    : `; the one of ${newest.examOn} ran to ${through}`;
}

/** BasicMed taken up now, open to whoever is known to have held a certificate late enough that was not withdrawn. */
function completeBasicMed(medicals: readonly MedicalFact[], moment: Moment, p: Parameters): Remedy[] {
  const held = medicals.some(
    ({ examOn }) => examOn > p.text('us.basicmed.held-after') && moment.startsOnOrAfter(examOn),
  );
  if (!held || withdrawnBefore(medicals, moment) !== null) return [];
  const months = p.number('us.basicmed.course-calendar-months');
  const through = (today: LocalDate) => throughCalendarMonths(today, months);
  if (!wouldServe(moment, through)) return [];
  const today = moment.knowledgeDate();
  return [
    {
      act: 'complete-basicmed',
      title:
        'With a valid driver’s licence and no application denied: see a physician for the BasicMed examination and complete the course.',
      by: 'member',
      effects: [
        {
          op: 'append',
          fact: 'pic.basicMed',
          value: {
            id: 'planned:complete-basicmed',
            examOn: today,
            courseOn: today,
            licenceValidThrough: through(today),
            heldMedicalAfter20060714: true,
            lastApplicationDenied: false,
            lastCertificateRevokedOrSuspended: false,
          },
        },
      ],
    },
  ];
}
