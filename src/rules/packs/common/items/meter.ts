/** The inspection meter at the end of the flight, as far as it can be foreseen. */
import type { Moment } from '../../../engine/moment.js';
import type { Counted, FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { MeterFact } from '../../../facts/aircraft.js';

/** Tenths of an hour on the inspection meter. */
export interface Projection {
  now: number;
  /** Expected of the bookings between now and this flight. */
  between: number;
  bookings: number;
  planned: number;
  /** Reading when the flight is over: now, the bookings in between, and the flight itself. */
  atEnd: number;
  counted: Counted[];
}

type Reads = FactView<'aircraft.meters' | 'aircraft.reservations'>;

/** The newest reading of the meter that inspections count by; of two at the same instant the higher. */
export function inspectionMeter(meters: readonly MeterFact[]): MeterFact | null {
  const order = (meter: MeterFact): string =>
    `${meter.readAt} ${String(meter.tenths).padStart(9, '0')} ${meter.id}`;
  const counting = meters.filter((meter) => meter.countsForInspections);
  return counting.sort((a, b) => (order(a) < order(b) ? 1 : -1))[0] ?? null;
}

/** The current reading, or null when there is none on record; for hypothetical sign-offs. */
export function readingNow(f: FactView<'aircraft.meters'>): number | null {
  const meters = f.peek('aircraft.meters');
  return meters.known ? (inspectionMeter(meters.value)?.tenths ?? null) : null;
}

/**
 * Adds to the reading what the bookings still ahead (or under way) when the facts were gathered are expected to use
 * before this departure, and the flight's own planned hours.
 */
export function projectMeter(f: Reads, moment: Moment): Projection {
  const meter = need(
    inspectionMeter(f.get('aircraft.meters')),
    'aircraft.meters',
    'no reading of the meter that inspections count by is on record',
  );
  const knownAt = moment.hoursFromKnowledge(0);
  const ahead = f
    .get('aircraft.reservations')
    .filter(({ expectedTenths, to }) => expectedTenths > 0 && to > knownAt && moment.departsAtOrAfter(to))
    .sort((a, b) => (a.from !== b.from ? (a.from < b.from ? -1 : 1) : a.id < b.id ? -1 : 1));
  const between = ahead.reduce((sum, booking) => sum + booking.expectedTenths, 0);
  const planned = f.flight.plannedTenths;
  return {
    now: meter.tenths,
    between,
    bookings: ahead.length,
    planned,
    atEnd: meter.tenths + between + planned,
    counted: [
      { id: meter.id, on: null, what: `meter reads ${hours(meter.tenths)} h` },
      ...ahead.map((booking) => ({
        id: booking.id,
        on: null,
        what: `booking by ${booking.holder}, expected ${hours(booking.expectedTenths)} h`,
      })),
    ],
  };
}

/**
 * What must hold for a verdict that rests on bookings in between. It does when they could eat up what is left by taking
 * twice what is expected of them; with more than that in hand, nobody needs to be told.
 */
export function projectionConditions(projection: Projection, throughTenths: number): string[] {
  const left = throughTenths - projection.atEnd;
  if (projection.between === 0 || left >= projection.between) return [];
  const several = projection.bookings === 1 ? 'the booking' : `the ${projection.bookings} bookings`;
  const atDeparture = hours(throughTenths - projection.planned);
  return [
    `Read the meter before the flight: ${several} before it must have left it at ${atDeparture} h or less.`,
  ];
}

/** Tenths as hours, '1098.0'. */
export const hours = (tenths: number): string => (tenths / 10).toFixed(1);
