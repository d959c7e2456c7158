import { defineRule } from '../../../engine/rule.js';
import { CHECK_WORDS, countedCheck, showPapers, standingCheck, type Asked } from './checks.js';

/** Club rule: an officer has seen who the member is, and has looked into the background, where the club asks for it. */
export const identityChecks = defineRule({
  id: 'club.identity_checks',
  title: 'Identity and background seen by the club',
  weight: 'club',
  binds: 'member',
  reads: ['member.checks'],
  parameters: [
    'club.identity.required',
    'club.identity.days-good',
    'club.background.required',
    'club.background.days-good',
  ],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no check of identity or background.' },
    seen: { status: 'met', says: 'An officer has seen what the club asks for: {what}{through}.' },
    missing: { status: 'short', says: 'No officer has recorded, as good for this flight: {what}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 2.4',
        status: 'club paper',
        reading: 'An end that the document itself names can only shorten the days that the club gives.',
      },
      judge(f, moment, p, take) {
        const asked: Asked[] = [];
        if (p.flag('club.identity.required'))
          asked.push({ kind: 'identity', daysGood: p.number('club.identity.days-good') });
        if (p.flag('club.background.required'))
          asked.push({ kind: 'background', daysGood: p.number('club.background.days-good') });
        if (asked.length === 0) return take('not-asked');
        const checks = f.get('member.checks');
        const found = asked.map((one) => ({ one, standing: standingCheck(checks, one, moment) }));
        const words = (all: typeof found): string =>
          all.map(({ one }) => CHECK_WORDS[one.kind]).join(' and ');
        const missing = found.filter(({ standing }) => standing === null);
        if (missing.length > 0)
          return take(
            'missing',
            { what: words(missing) },
            {
              remedies: () =>
                showPapers(
                  missing.map(({ one }) => one),
                  moment,
                ),
            },
          );
        const standing = found.map((one) => one.standing!);
        const first = standing
          .flatMap(({ through }) => through ?? [])
          .sort()
          .at(0);
        return take(
          'seen',
          { what: words(found), through: first === undefined ? '' : `, good through ${first}` },
          { counted: standing.map(({ check }) => countedCheck(check)) },
        );
      },
    },
  ],
});
