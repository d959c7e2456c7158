import { defineRule } from '../../../engine/rule.js';
import type { CommitmentFact } from '../../../facts/person.js';
import { countedCommitment } from '../booking/commitments.js';
import { shortenBooking } from '../booking/other-times.js';
import { asksNothing, FAIR_USE_BRANCHES, giveBack, lengthSeconds, ownOpen } from './open.js';

const HOUR = 3600;
/** The shortest time that can be booked. */
const SHORTEST = 900;

/** Club rule: how many hours a member may have booked ahead, from booking to booking's end. Asked when a booking is made. */
export const hoursAhead = defineRule({
  id: 'club.fair_use.hours_ahead',
  title: 'Hours booked ahead',
  weight: 'club',
  binds: 'member',
  onlyWhenBooking: true,
  reads: ['member.commitments'],
  parameters: ['club.fair-use.hours-ahead'],
  branches: {
    ...FAIR_USE_BRANCHES,
    within: {
      status: 'met',
      says: 'With this flight the member has {total} h booked ahead; the club allows {limit} h.',
    },
    'too-many': {
      status: 'short',
      says: 'With this flight the member would have {total} h booked ahead; the club allows {limit} h.',
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
        reading:
          'Hours are those the aircraft is kept, whole bookings until they end. Lessons given to others do not count.',
      },
      judge(f, moment, p, take) {
        const limit = p.number('club.fair-use.hours-ahead');
        const nothing = asksNothing(f.flight, limit);
        if (nothing) return take(nothing);
        const all = f.get('member.commitments');
        const open = ownOpen(all);
        const left = limit * HOUR - open.reduce((sum, one) => sum + lengthSeconds(one), 0);
        const over = moment.durationSeconds - left;
        const total = Math.ceil((limit * HOUR + over) / 360) / 10;
        const counted = open.map((one) => countedCommitment(one, moment.zone));
        if (over <= 0) return take('within', { total, limit }, { counted });
        const given = enough(open, over);
        return take(
          'too-many',
          { total, limit },
          {
            counted,
            remedies: () => [
              ...(left >= SHORTEST
                ? [shortenBooking(moment, Math.floor(left / 60) * 60, `${Math.floor(left / 60)} minutes`)]
                : []),
              ...(given ? [giveBack(all, given, moment.zone)] : []),
            ],
          },
        );
      },
    },
  ],
});

/** The last bookings that together take so long; null where all do not. */
function enough(open: readonly CommitmentFact[], seconds: number): CommitmentFact[] | null {
  const given: CommitmentFact[] = [];
  let missing = seconds;
  for (const one of [...open].reverse()) {
    if (missing <= 0) break;
    given.unshift(one);
    missing -= lengthSeconds(one);
  }
  return missing <= 0 ? given : null;
}
