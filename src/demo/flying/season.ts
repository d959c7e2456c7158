import { weekday } from '../when.js';
import type { LocalDate } from '../../rules/index.js';
import type { Draw } from '../draw.js';

/** How much is flown in each month, January first; the long light evenings carry the most. */
const MONTHS = [0.55, 0.6, 0.8, 0.95, 1.1, 1.25, 1.25, 1.2, 1.15, 1, 0.7, 0.55] as const;
/** Monday to Sunday. */
const DAYS = [0.6, 0.65, 0.7, 0.7, 0.95, 1.8, 1.65] as const;

/** Flights to try on a date: season, day of the week, and a day's weather. */
export function busyness(date: LocalDate, mean: number, weather: Draw): number {
  const season = MONTHS[Number(date.slice(5, 7)) - 1]!;
  const grounded = weather.chance(0.12);
  const fair = 0.6 + weather.next() * 0.8;
  return Math.round(mean * season * DAYS[weekday(date) - 1]! * (grounded ? 0.08 : fair));
}
