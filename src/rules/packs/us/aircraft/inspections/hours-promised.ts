import { defineRule, type Counted } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { AircraftUse, ReservationFact } from '../../../../facts/aircraft.js';
import { dateAndClock, dateOf } from '../../../when.js';
import { hundredHourDue } from '../../../common/items/due.js';
import { hours, projectMeter } from '../../../common/items/meter.js';
import { shorten } from './hundred-hour-remedies.js';
import { doneBefore } from './calendar-inspection.js';
import { inspectionsCounted } from './inspections-counted.js';
import { PROGRAMME_MONTHS } from './programme.js';

/** Is this booking one that 14 CFR 91.409(b) binds? */
const bound = (booking: ReservationFact, use: AircraftUse): boolean =>
  booking.kind === 'flight' &&
  (booking.forHire ||
    (use.instructionForHire && (booking.purpose === 'dual' || booking.purpose === 'checkout')));

/**
 * A lesson that is booked keeps the hours it was booked on: a flight before it may not use them up. Without this rule the
 * later lesson would be booked as legal and become illegal by somebody else's booking. Bookings behind the next
 * maintenance are taken to follow an inspection.
 */
export const hoursPromised = defineRule({
  id: 'club.hours_promised',
  title: 'Hours promised to later bookings',
  weight: 'club',
  binds: 'aircraft',
  reads: ['aircraft.use', 'aircraft.items', 'aircraft.meters', 'aircraft.reservations'],
  parameters: ['us.inspection.hundred-hour.hours', PROGRAMME_MONTHS],
  branches: {
    'none-promised': {
      status: 'not-applicable',
      says: 'No later booking needs the 100-hour inspection to last.',
    },
    enough: {
      status: 'met',
      says: "After this flight {left} h are left for later bookings that need them, the last of them {holder}'s of {from}.",
    },
    'takes-promised': {
      status: 'short',
      says: "With this flight {holder}'s booking of {from} would pass the 100-hour inspection due at {due} h, by {over} h.",
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club rule: who books first keeps the hours (behind it 14 CFR 91.409(b))',
        status: 'club paper',
      },
      judge(f, moment, p, take) {
        const use = f.get('aircraft.use');
        const later = f
          .get('aircraft.reservations')
          .filter((booking) => !moment.departsAtOrAfter(booking.to))
          .sort((a, b) => (`${a.from} ${a.id}` < `${b.from} ${b.id}` ? -1 : 1));
        const untilShop = later.slice(
          0,
          indexOrEnd(later, (booking) => booking.kind === 'maintenance'),
        );
        const last = untilShop.findLast((booking) => bound(booking, use));
        if (!last) return take('none-promised');
        const items = inspectionsCounted(f, moment, p);
        if (items === null) return take('none-promised');
        const interval = Math.round(p.number('us.inspection.hundred-hour.hours') * 10);
        const due = need(
          hundredHourDue(doneBefore(items, moment), interval),
          'aircraft.items',
          'a later booking needs the 100-hour inspection, and neither an annual nor a 100-hour inspection is on record with its hours',
        );
        const projection = projectMeter(f, moment);
        let total = projection.atEnd;
        const counted: Counted[] = [];
        for (const booking of untilShop) {
          total += booking.expectedTenths;
          if (!bound(booking, use)) continue;
          const on = dateOf(booking.from, moment.zone);
          counted.push({
            id: booking.id,
            on,
            what: `booking by ${booking.holder}, ends at ${hours(total)} h`,
          });
          if (total <= due.throughTenths) continue;
          const over = total - due.throughTenths;
          const values = {
            holder: booking.holder,
            from: dateAndClock(booking.from, moment.zone),
            due: hours(due.throughTenths),
            over: hours(over),
          };
          return take('takes-promised', values, {
            counted,
            remedies: () => shorten(projection, due.throughTenths - (total - projection.atEnd)),
          });
        }
        const left = due.throughTenths - projection.atEnd;
        const from = dateAndClock(last.from, moment.zone);
        return take('enough', { left: hours(left), holder: last.holder, from }, { counted });
      },
    },
  ],
});

const indexOrEnd = <T>(list: readonly T[], found: (one: T) => boolean): number => {
  const index = list.findIndex(found);
  return index === -1 ? list.length : index;
};
