import { defineRule } from '../../../engine/rule.js';
import { countedCommitment } from '../booking/commitments.js';
import { asksNothing, FAIR_USE_BRANCHES, giveBack, ownOpen } from './open.js';

/** Club rule: how many bookings a member may have open. It is about making a booking: one that stands is not asked again. */
export const openBookings = defineRule({
  id: 'club.fair_use.open_bookings',
  title: 'Open bookings',
  weight: 'club',
  binds: 'member',
  onlyWhenBooking: true,
  reads: ['member.commitments'],
  parameters: ['club.fair-use.open-bookings'],
  branches: {
    ...FAIR_USE_BRANCHES,
    within: { status: 'met', says: 'This would be open booking {count} of the {limit} the club allows.' },
    'too-many': {
      status: 'short',
      says: 'The member has {open} open already; the club allows {limit} at once.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 4.4',
        status: 'club paper',
        reading: 'A booking is open until it ends. Lessons given to others do not count.',
      },
      judge(f, moment, p, take) {
        const limit = p.number('club.fair-use.open-bookings');
        const nothing = asksNothing(f.flight, limit);
        if (nothing) return take(nothing);
        const all = f.get('member.commitments');
        const open = ownOpen(all);
        const counted = open.map((one) => countedCommitment(one, moment.zone));
        const count = open.length + 1;
        if (count <= limit) return take('within', { count, limit }, { counted });
        return take(
          'too-many',
          { open: open.length, limit },
          { counted, remedies: () => [giveBack(all, open.slice(limit - 1), moment.zone)] },
        );
      },
    },
  ],
});
