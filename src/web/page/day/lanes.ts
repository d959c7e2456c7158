/** A day of one aircraft: what is booked, what is free between, and where each lies on the lane. */
import type { Booking } from '../api/types.js';
import { at, type Day } from '../timeline/days.js';

/** A part of the day; `left` and `width` are shares of it, in percent. */
export interface Part {
  from: number;
  to: number;
  left: number;
  width: number;
  booking: Booking | null;
}

/** The shortest time that can be booked. */
const SHORTEST_MS = 15 * 60_000;

/** The day from end to end, booked and free by turns; free time that has passed or is too short to book is left out. */
export function partsOf(day: Day, bookings: readonly Booking[], now: number): Part[] {
  const parts: Part[] = [];
  const push = (from: number, to: number, booking: Booking | null): void => {
    const [begin, end] = [Math.max(from, day.from), Math.min(to, day.to)];
    const whole = day.to - day.from;
    parts.push({
      ...{ from: begin, to: end, booking },
      ...{ left: (100 * (begin - day.from)) / whole, width: (100 * (end - begin)) / whole },
    });
  };
  const free = (from: number, to: number): void => {
    const begin = Math.max(from, Math.ceil(now / 900_000) * 900_000);
    if (to - begin >= SHORTEST_MS) push(begin, to, null);
  };
  let reached = day.from;
  for (const booking of [...bookings].sort((a, b) => at(a.departs) - at(b.departs))) {
    free(reached, Math.min(at(booking.departs), day.to));
    push(at(booking.departs), at(booking.arrives), booking);
    reached = Math.max(reached, at(booking.arrives));
  }
  free(reached, day.to);
  return parts;
}
