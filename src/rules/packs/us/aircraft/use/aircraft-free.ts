import { localClock, localDateOf, toSeconds, type Instant } from '../../../../calendar/instants.js';
import { defineRule } from '../../../../engine/rule.js';
import type { ReservationFact } from '../../../../facts/aircraft.js';

/** Nobody else has the aircraft at that time. Back-to-back bookings do not collide. */
export const aircraftFree = defineRule({
  id: 'calendar.aircraft_free',
  title: 'The aircraft is free',
  weight: 'club',
  neverOverridden: true,
  binds: 'aircraft',
  reads: ['aircraft.reservations'],
  parameters: [],
  branches: {
    free: { status: 'met', says: 'Nobody else has the aircraft at that time.' },
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
        const taken = all
          .filter((one) => moment.overlaps(one.from, one.to))
          .sort((a, b) => (order(a) < order(b) ? -1 : 1));
        const first = taken[0];
        if (!first) return take('free');
        const at = (instant: Instant): string =>
          `${localDateOf(toSeconds(instant), moment.zone)} ${localClock(toSeconds(instant), moment.zone)}`;
        const who = (one: ReservationFact): string =>
          one.kind === 'maintenance' ? `maintenance (${one.holder})` : one.holder;
        const holders = [...new Set(taken.map(who))].join(', ');
        return take(
          'taken',
          { who: who(first), from: at(first.from), to: at(first.to) },
          {
            counted: taken.map((one) => ({
              id: one.id,
              on: localDateOf(toSeconds(one.from), moment.zone),
              what: who(one),
            })),
            remedies: [
              {
                act: 'ask-for-the-aircraft',
                title: `Ask for the aircraft at that time: ${holders}.`,
                by: taken.some((one) => one.kind === 'maintenance') ? 'maintenance-coordinator' : 'member',
                effects: [
                  {
                    op: 'set',
                    fact: 'aircraft.reservations',
                    value: all.filter((one) => !taken.includes(one)),
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
