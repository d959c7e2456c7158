/** Days of a month, hours and minutes of the code as instants. */
import { toInstant, toSeconds, type Instant } from '../../rules/index.js';

const DAY_SECONDS = 86_400;

/** The instant with this day of the month and time that lies nearest to `near`; null where there is none within a month. */
export function nearestInstant(
  { day, hour, minute }: { day?: number; hour?: number; minute?: number },
  near: Instant,
): Instant | null {
  if (day === undefined || hour === undefined || minute === undefined) return null;
  if (day < 1 || day > 31 || hour > 23 || minute > 59) return null;
  const middle = toSeconds(near);
  const found: number[] = [];
  for (let days = -16; days <= 16; days += 1) {
    const date = new Date((middle + days * DAY_SECONDS) * 1000);
    if (date.getUTCDate() !== day) continue;
    found.push(Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), day, hour, minute) / 1000);
  }
  found.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  return found[0] === undefined ? null : toInstant(found[0]);
}

/** The parser's dates, in whole seconds. */
export const instantOf = (date: Date): Instant => toInstant(Math.floor(date.getTime() / 1000));
