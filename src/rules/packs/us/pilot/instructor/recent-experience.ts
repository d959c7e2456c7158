import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Effect, Remedy } from '../../../../engine/remedy.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { InstructorFact } from '../../../../facts/person.js';
import { wouldServe } from '../../../common/people/plans.js';
import { plannedReview } from '../../../planned-review.js';

type Branch = 'no-instruction' | 'no-certificate' | 'current' | 'lapsed-refresher' | 'lapsed-practical-test';
type Reads = 'instructor.instructor';

/**
 * 14 CFR 61.197, 61.199: instructor privileges last 24 calendar months from the month of issue or of the newest recent
 * experience. Since 2024-12-01 a lapse of up to three calendar months is cured by a refresher course, with no
 * instruction meanwhile; a longer one by a practical test. Before, certificates expired and only the test restored them.
 */
export const instructorRecentExperience = defineRule({
  id: 'instructor.recent_experience',
  title: 'Recent experience of the instructor',
  weight: 'law',
  binds: 'instructor',
  reads: ['instructor.instructor'],
  parameters: ['us.instructor.calendar-months', 'us.instructor.refresher-calendar-months'],
  branches: {
    'no-instruction': { status: 'not-applicable', says: 'No instruction is given on this flight.' },
    'no-certificate': {
      status: 'not-applicable',
      says: 'The person named holds no instructor certificate on record; the rule on the instructor’s certificate decides.',
    },
    current: { status: 'met', says: 'The instructor’s privileges run through {through}.' },
    'lapsed-refresher': {
      status: 'short',
      says: 'The instructor’s privileges ran to {through}; a refresher course by {refresherThrough} restores them.',
    },
    'lapsed-practical-test': {
      status: 'short',
      says: 'The instructor’s privileges ran to {through}; only an instructor practical test restores them.',
    },
  },
  bodies: [
    body(1, null, '2024-12-01', '14 CFR 61.19(d), 61.197, 61.199 as before 89 FR 80020', false),
    body(2, '2024-12-01', '2027-03-01', '14 CFR 61.197, 61.199 (89 FR 80020)', true),
    body(3, '2027-03-01', null, '14 CFR 61.197, 61.199 (89 FR 80020, amendatory instruction 10)', true),
  ],
});

function body(
  version: number,
  from: LocalDate | null,
  to: LocalDate | null,
  text: string,
  refresher: boolean,
) {
  return {
    version,
    from,
    to,
    citation: {
      text,
      status: 'seen' as const,
      reading:
        'An end date printed on a certificate binds until a certificate without one replaces it, also after the transition of 2027-03-01. The choice to count from the end of the current period (61.197(a)(3)) is entered as the date of the experience.',
    },
    judge: (f: FactView<Reads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, refresher),
  };
}

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  refresherRestores: boolean,
): Judgement {
  if (!f.crew.instruction) return take('no-instruction');
  const certificates = f
    .get('instructor.instructor')
    .filter((certificate) => moment.startsOnOrAfter(certificate.issuedOn));
  if (certificates.length === 0) return take('no-certificate');
  const months = p.number('us.instructor.calendar-months');
  const grace = p.number('us.instructor.refresher-calendar-months');
  const terms = certificates.flatMap((certificate) => {
    const through = instructionThrough(certificate, months, moment);
    return through === null ? [] : [{ certificate, through }];
  });
  terms.sort((a, b) =>
    a.through !== b.through ? (a.through < b.through ? 1 : -1) : a.certificate.id < b.certificate.id ? -1 : 1,
  );
  const best = terms[0];
  if (best && moment.endsOnOrBefore(best.through)) {
    const { certificate, through } = best;
    const on = certificate.recentExperienceOn;
    const counted = [{ id: certificate.id, on, what: 'recent experience' }];
    return take('current', { through }, { counted });
  }
  if (!best || terms.length < certificates.length)
    need(
      null,
      'instructor.instructor',
      'when the instructor last met the recent experience is not on record',
    );
  const { certificate, through } = best!;
  const test = () => restore(certificate, moment, months, 'pass-instructor-practical-test');
  const refresherThrough = throughCalendarMonths(through, grace);
  if (refresherRestores && moment.endsOnOrBefore(refresherThrough)) {
    const course = () => restore(certificate, moment, months, 'complete-instructor-refresher');
    const remedies = () => [...course(), ...test()];
    return take('lapsed-refresher', { through, refresherThrough }, { remedies });
  }
  return take('lapsed-practical-test', { through }, { remedies: test });
}

/** Last day of privileges: counted from the experience, and never past an end date that is printed. */
export function instructionThrough(
  certificate: InstructorFact,
  months: number,
  moment: Moment,
): LocalDate | null {
  const { recentExperienceOn: on, printedEndOn } = certificate;
  const counted =
    on === null
      ? null
      : throughCalendarMonths(moment.startsOnOrAfter(on) ? on : certificate.issuedOn, months);
  if (counted === null || printedEndOn === null) return counted ?? printedEndOn;
  return printedEndOn < counted ? printedEndOn : counted;
}

const TITLES = {
  'complete-instructor-refresher': 'The instructor completes an approved refresher course before teaching.',
  'pass-instructor-practical-test': 'The instructor passes an instructor practical test.',
};

function restore(
  certificate: InstructorFact,
  moment: Moment,
  months: number,
  act: keyof typeof TITLES,
): Remedy[] {
  if (!wouldServe(moment, (today) => throughCalendarMonths(today, months))) return [];
  const on = moment.knowledgeDate();
  const renewed: Effect = {
    op: 'append',
    fact: 'instructor.instructor',
    value: { ...certificate, id: `planned:${act}`, issuedOn: on, recentExperienceOn: on, printedEndOn: null },
  };
  const review: Effect = {
    op: 'append',
    fact: 'instructor.reviews',
    value: plannedReview(act, 'instructor-practical-test', moment),
  };
  const test = act === 'pass-instructor-practical-test';
  return [
    {
      act,
      title: TITLES[act],
      by: test ? 'examiner' : 'instructor',
      effects: test ? [renewed, review] : [renewed],
    },
  ];
}
