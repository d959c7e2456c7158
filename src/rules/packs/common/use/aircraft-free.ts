import { defineRule } from '../../../engine/rule.js';
import type { ReservationFact } from '../../../facts/aircraft.js';
import { dateAndClock, dateOf } from '../../when.js';

/** Nobody else has the aircraft at that time. Back-to-back bookings do not collide. */
export const aircraftFree = defineRule({
  id: 'calendar.aircraft_free',
  title: 'Aircraft availability',
  weight: 'club',
  neverOverridden: true,
  binds: 'aircraft',
  reads: ['aircraft.reservations'],
  parameters: [],
  branches: {
    free: { status: 'met', says: 'Nobody else has the aircraft at that time{next}.' },
    taken: { status: 'short', says: '{who} has the aircraft from {from} until {to}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, one aircraft, one booking at a time',
        status: 'club paper',
        reading: 'The database refuses an overlap whatever an officer says.',
      },
      judge(f, moment, _p, take) {
        const all = f.get('aircraft.reservations');
        const order = (one: ReservationFact): string => `${one.from} ${one.id}`;
        const inOrder = [...all].sort((a, b) => (order(a) < order(b) ? -1 : 1));
        const taken = inOrder.filter((one) => moment.overlaps(one.from, one.to));
        const first = taken[0];
        if (!first) {
          const next = inOrder.find((one) => !moment.aside().departsAtOrAfter(one.from));
          return take('free', {
            next: next ? `; the next booking begins at ${dateAndClock(next.from, moment.zone)}` : '',
          });
        }
        const who = (one: ReservationFact): string =>
          one.kind === 'maintenance' ? `Maintenance (${one.holder})` : one.holder;
        return take(
          'taken',
          {
            who: who(first),
            from: dateAndClock(first.from, moment.zone),
            to: dateAndClock(first.to, moment.zone),
          },
          {
            counted: taken.map((one) => ({
              id: one.id,
              on: dateOf(one.from, moment.zone),
              what: who(one),
            })),
            remedies: () => [
              {
                act: 'ask-for-the-aircraft',
                title: [...new Set(taken.map(asking))].join(' '),
                by: taken.some((one) => one.kind === 'maintenance') ? 'maintenance-coordinator' : 'member',
                effects: [
                  {
                    op: 'set',
                    fact: 'aircraft.reservations',
                    value: inOrder.filter((one) => !taken.includes(one)),
                  },
                ],
              },
            ],
          },
        );
      },
    },
  ],
});

/** Whom to ask for what. */
function asking({ kind, holder }: ReservationFact): string {
  if (kind === 'maintenance') return `Ask the maintenance coordinator to move the maintenance (${holder}).`;
  if (kind === 'club') return `Ask the club to move its own use (${holder}).`;
  return `Ask ${holder} to move or give up the booking.`;
}
