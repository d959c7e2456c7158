import { addDays } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { StandingFact } from '../../../facts/person.js';

/**
 * Club rule: a member in good standing may book; one in arrears for a while; a suspended one not. Nor does a suspended
 * member fly as pilot in command on somebody else's booking.
 */
export const accountStanding = defineRule({
  id: 'club.standing',
  title: 'Standing with the club',
  weight: 'club',
  binds: 'member',
  reads: ['member.standing', 'pic.standing'],
  parameters: ['club.standing.arrears-days'],
  branches: {
    good: { status: 'met', says: 'The member is in good standing.' },
    tolerated: {
      status: 'met',
      says: 'The account is in arrears since {since}; the club allows bookings through {through}.',
    },
    arrears: {
      status: 'short',
      says: 'The account is in arrears since {since}, longer than the {days} days the club allows.',
    },
    suspended: { status: 'short', says: 'The member is suspended from booking since {since}.' },
    'pilot-suspended': {
      status: 'short',
      says: 'The pilot in command is suspended by the club since {since}.',
    },
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
        const pilot =
          f.crew.picId !== null && f.crew.picId !== f.flight.memberId ? f.get('pic.standing') : standing;
        if (
          pilot !== standing &&
          pilot.state === 'suspended' &&
          !moment.endsOnOrBefore(addDays(pilot.since, -1))
        ) {
          const lift = { ...restore(pilot, 'lift-suspension'), effects: lifted('pic.standing', pilot) };
          return take('pilot-suspended', { since: pilot.since }, { remedies: [lift] });
        }
        // A standing that begins only after the flight is over does not touch it.
        if (standing.state === 'good' || moment.endsOnOrBefore(addDays(since, -1))) return take('good');
        if (standing.state === 'suspended') {
          return take('suspended', { since }, { remedies: [restore(standing, 'lift-suspension')] });
        }
        const days = p.number('club.standing.arrears-days');
        const through = addDays(since, days);
        if (moment.endsOnOrBefore(through)) return take('tolerated', { since, through });
        return take('arrears', { since, days }, { remedies: [restore(standing, 'settle-account')] });
      },
    },
  ],
});

function restore(standing: StandingFact, act: 'lift-suspension' | 'settle-account'): Remedy {
  return {
    act,
    title: act === 'settle-account' ? 'Settle the account.' : 'Ask an officer to lift the suspension.',
    by: act === 'settle-account' ? 'member' : 'officer',
    effects: lifted('member.standing', standing),
  };
}

const lifted = (fact: 'member.standing' | 'pic.standing', standing: StandingFact): Remedy['effects'] => [
  { op: 'set', fact, value: { ...standing, state: 'good' } satisfies StandingFact },
];
