import { addDays } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { StandingFact } from '../../../facts/person.js';

/** Club rule: a member in good standing may book; one in arrears for a while; a suspended one not. */
export const accountStanding = defineRule({
  id: 'club.standing',
  title: 'Standing with the club',
  weight: 'club',
  binds: 'member',
  reads: ['member.standing'],
  parameters: ['club.standing.arrears-days'],
  branches: {
    good: { status: 'met', says: 'The member is in good standing{ahead}.' },
    tolerated: {
      status: 'met',
      says: 'The account is in arrears since {since}; the club allows bookings through {through}.',
    },
    arrears: {
      status: 'short',
      says: 'The account is in arrears since {since}, longer than the {days} days the club allows.',
    },
    suspended: { status: 'short', says: 'The member is suspended from booking since {since}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 2.2', status: 'club paper' },
      judge(f, moment, p, take) {
        const standing = f.get('member.standing');
        const { since } = standing;
        // A standing that begins only after the flight is over does not touch it.
        if (standing.state === 'good') return take('good', { ahead: '' });
        if (moment.endsOnOrBefore(addDays(since, -1)))
          return take('good', {
            ahead: ` until ${standing.state === 'suspended' ? 'the suspension' : 'the arrears'} of ${since}`,
          });
        if (standing.state === 'suspended') {
          return take('suspended', { since }, { remedies: () => [restore(standing, 'lift-suspension')] });
        }
        const days = p.number('club.standing.arrears-days');
        const through = addDays(since, days);
        if (moment.endsOnOrBefore(through)) return take('tolerated', { since, through });
        return take('arrears', { since, days }, { remedies: () => [restore(standing, 'settle-account')] });
      },
    },
  ],
});

function restore(standing: StandingFact, act: 'lift-suspension' | 'settle-account'): Remedy {
  const value: StandingFact = { ...standing, state: 'good' };
  return {
    act,
    title: act === 'settle-account' ? 'Settle the account.' : 'Ask an officer to lift the suspension.',
    by: act === 'settle-account' ? 'member' : 'officer',
    effects: [{ op: 'set', fact: 'member.standing', value }],
  };
}
