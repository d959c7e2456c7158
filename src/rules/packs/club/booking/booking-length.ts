import { defineRule } from '../../../engine/rule.js';
import { shortenBooking } from './other-times.js';

const HOUR = 3600;

/** Club rule: how long an aircraft may be kept, by what it is booked for. Maintenance takes what it takes. */
export const bookingLength = defineRule({
  id: 'club.booking_length',
  title: 'Length of the booking',
  weight: 'club',
  binds: 'flight',
  reads: [],
  parameters: [
    'club.booking-length.local-hours',
    'club.booking-length.trip-days',
    'club.booking-length.instruction-hours',
  ],
  branches: {
    maintenance: { status: 'not-applicable', says: 'Flights for maintenance have no limit of length.' },
    within: { status: 'met', says: 'The booking lasts {length}; the club allows {limit} {kind}.' },
    'too-long': {
      status: 'short',
      says: 'The booking lasts {length}; the club allows {limit} {kind}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 4.1', status: 'club paper' },
      judge(f, moment, p, take) {
        const { purpose, route } = f.flight;
        if (purpose === 'maintenance' || purpose === 'ferry-to-inspection') return take('maintenance');
        const instruction = purpose === 'dual' || purpose === 'checkout';
        const trip = !instruction && route.some((field) => field.id !== route[0]?.id);
        const days = trip ? p.number('club.booking-length.trip-days') : 0;
        const hours = instruction
          ? p.number('club.booking-length.instruction-hours')
          : trip
            ? days * 24
            : p.number('club.booking-length.local-hours');
        const values = {
          length: lasting(moment.durationSeconds),
          limit: trip ? `${days} days` : `${hours} h`,
          kind: instruction
            ? 'for instruction'
            : trip
              ? 'for a trip'
              : 'for a flight that lands nowhere else',
        };
        if (moment.durationSeconds <= hours * HOUR) return take('within', values);
        return take('too-long', values, {
          remedies: () => [shortenBooking(moment, hours * HOUR, values.limit)],
        });
      },
    },
  ],
});

/** '1 h 30 min', '3 days 2 h'. */
function lasting(seconds: number): string {
  const minutes = Math.ceil(seconds / 60);
  const days = Math.floor(minutes / 1440);
  const hours = Math.floor((minutes % 1440) / 60);
  const parts = [
    days > 0 ? `${days} day${days === 1 ? '' : 's'}` : '',
    hours > 0 ? `${hours} h` : '',
    minutes % 60 > 0 ? `${minutes % 60} min` : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(' ') : 'no time';
}
