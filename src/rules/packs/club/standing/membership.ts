import { defineRule } from '../../../engine/rule.js';
import type { StandingFact } from '../../../facts/person.js';

/** Club rule: the membership covers the whole flight. */
export const membership = defineRule({
  id: 'club.membership',
  title: 'Membership',
  weight: 'club',
  binds: 'member',
  reads: ['member.standing'],
  parameters: [],
  branches: {
    covered: { status: 'met', says: 'The membership covers the whole flight{through}.' },
    'not-begun': { status: 'short', says: 'The membership begins only on {from}.' },
    ended: { status: 'short', says: 'The membership ends on {through}, before the flight is over.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 2.1', status: 'club paper' },
      judge(f, moment, _p, take) {
        const standing = f.get('member.standing');
        const { membershipFrom: from, membershipThrough: through } = standing;
        if (through !== null && !moment.endsOnOrBefore(through)) {
          return take(
            'ended',
            { through },
            {
              remedies: () => {
                const today = moment.knowledgeDate();
                const membershipFrom = from < today ? from : today;
                const value: StandingFact = { ...standing, membershipFrom, membershipThrough: null };
                return [
                  {
                    act: 'renew-membership',
                    title: 'Have the membership renewed.',
                    by: 'administrator',
                    effects: [{ op: 'set', fact: 'member.standing', value }],
                  },
                ];
              },
            },
          );
        }
        // Nobody can bring the first day of a membership forward; a later flight is the way.
        if (!moment.startsOnOrAfter(from)) return take('not-begun', { from });
        return take('covered', { through: through === null ? '' : `; it runs through ${through}` });
      },
    },
  ],
});
