import { defineRule } from '../../../engine/rule.js';
import { countedCheck, showPapers, standingCheck } from './checks.js';

/**
 * Club rule, for clubs that give flight training: before a lesson somebody has seen evidence of citizenship or
 * nationality, or a valid determination that the learner is eligible (49 CFR 1552.7(a)). Nobody sets it aside: whoever
 * could may as well look at the papers.
 */
export const citizenshipEvidence = defineRule({
  id: 'club.citizenship_evidence',
  title: 'Citizenship or eligibility seen before flight training',
  weight: 'club',
  neverOverridden: true,
  binds: 'member',
  reads: ['member.checks'],
  parameters: ['club.citizenship.required-for-training', 'club.citizenship.days-good'],
  branches: {
    'not-asked': {
      status: 'not-applicable',
      says: 'The club asks for no evidence of citizenship before flight training.',
    },
    'no-instruction': { status: 'not-applicable', says: 'No instruction is given on this flight.' },
    seen: {
      status: 'met',
      says: 'Evidence of citizenship or eligibility for flight training was seen on {on}{through}.',
    },
    missing: {
      status: 'short',
      says: 'No evidence of citizenship or eligibility for flight training is recorded as good for this flight.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 2.5 (49 CFR 1552.7(a), effective 2024-07-30)',
        status: 'club paper',
        reading:
          'Asked before every lesson and checkout flight, also those that are no flight training under 49 CFR part 1552 (a flight review, recurrent training): the strict reading. The end of a determination of eligibility is entered with the check. The provider of the training answers for the verification; this only reminds.',
      },
      judge(f, moment, p, take) {
        if (!p.flag('club.citizenship.required-for-training')) return take('not-asked');
        if (!f.crew.instruction) return take('no-instruction');
        const asked = { kind: 'citizenship' as const, daysGood: p.number('club.citizenship.days-good') };
        const found = standingCheck(f.get('member.checks'), asked, moment);
        if (found === null) return take('missing', {}, { remedies: () => showPapers([asked], moment) });
        const { check, through } = found;
        return take(
          'seen',
          { on: check.on, through: through === null ? '' : `, good through ${through}` },
          { counted: [countedCheck(check)] },
        );
      },
    },
  ],
});
