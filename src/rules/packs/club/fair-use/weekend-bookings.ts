import { addDays, type LocalDate } from '../../../calendar/dates.js';
import { localDateOf, toSeconds } from '../../../calendar/instants.js';
import { isoWeekday } from '../../../calendar/weekdays.js';
import { defineRule } from '../../../engine/rule.js';
import { countedCommitment } from '../booking/commitments.js';
import { asksNothing, FAIR_USE_BRANCHES, giveBack, ownOpen } from './open.js';

const SATURDAY = 6;

/** Club rule: how many bookings on weekends a member may have open. Asked when a booking is made. */
export const weekendBookings = defineRule({
  id: 'club.fair_use.weekend_bookings',
  title: 'Open bookings on weekends',
  weight: 'club',
  binds: 'member',
  onlyWhenBooking: true,
  reads: ['member.commitments'],
  parameters: ['club.fair-use.weekend-bookings'],
  branches: {
    ...FAIR_USE_BRANCHES,
    weekday: { status: 'not-applicable', says: 'The flight keeps off Saturdays and Sundays.' },
    within: {
      status: 'met',
      says: 'This would be weekend booking {count} of the {limit} the club allows at once.',
    },
    'too-many': {
      status: 'short',
      says: 'The member has {open} on weekends already; the club allows {limit} at once.',
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
          'A booking counts that has any part on a Saturday or Sunday in the club’s zone. Lessons given to others do not.',
      },
      judge(f, moment, p, take) {
        const limit = p.number('club.fair-use.weekend-bookings');
        const nothing = asksNothing(f.flight, limit);
        if (nothing) return take(nothing);
        if (!hasWeekend(moment.departureDate(), moment.arrivalDate())) return take('weekday');
        const { zone } = moment;
        const all = f.get('member.commitments');
        const open = ownOpen(all).filter(({ from, to }) =>
          // The last instant of a booking is no longer its own.
          hasWeekend(localDateOf(toSeconds(from), zone), localDateOf(toSeconds(to) - 1, zone)),
        );
        const counted = open.map((one) => countedCommitment(one, zone));
        const count = open.length + 1;
        if (count <= limit) return take('within', { count, limit }, { counted });
        return take(
          'too-many',
          { open: open.length, limit },
          { counted, remedies: () => [giveBack(all, open.slice(limit - 1), zone)] },
        );
      },
    },
  ],
});

/** Whether a Saturday or Sunday lies between two dates, both counted. */
function hasWeekend(first: LocalDate, last: LocalDate): boolean {
  const weekday = isoWeekday(first);
  return weekday >= SATURDAY || addDays(first, SATURDAY - weekday) <= last;
}
