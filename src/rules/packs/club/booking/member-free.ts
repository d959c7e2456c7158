import { defineRule } from '../../../engine/rule.js';
import { countedCommitment, inWords, nextInWords, overlapping } from './commitments.js';

/** The member is not promised to another flight at the same time. Back-to-back bookings do not collide. */
export const memberFree = defineRule({
  id: 'calendar.member_free',
  title: "The member's calendar",
  weight: 'club',
  neverOverridden: true,
  binds: 'member',
  reads: ['member.commitments'],
  parameters: [],
  branches: {
    free: { status: 'met', says: 'The member has nothing else at that time{next}.' },
    busy: { status: 'short', says: 'The member is already down for {what} from {from} until {to}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 4.3', status: 'club paper' },
      judge(f, moment, _p, take) {
        const all = f.get('member.commitments');
        const clashes = overlapping(all, moment);
        const first = clashes[0];
        if (!first) return take('free', { next: nextInWords(all, moment) });
        const kept = all.filter((one) => !clashes.includes(one)).sort((a, b) => (a.id < b.id ? -1 : 1));
        return take('busy', inWords(first, moment.zone), {
          counted: clashes.map((one) => countedCommitment(one, moment.zone)),
          remedies: () => [
            {
              act: 'give-up-commitment',
              title: `Give up ${clashes.map((one) => one.what).join(' and ')}.`,
              by: 'member',
              effects: [{ op: 'set', fact: 'member.commitments', value: kept }],
            },
          ],
        });
      },
    },
  ],
});
