/** Where the time axis has its marks, and what stands at them. */
import { LOCALE } from '../parts/locale.js';
import type { Day } from './days.js';

export interface Tick {
  day: number;
  /** What stands at it, longest form first; the first that fits is written. */
  labels: string[];
  /** A mark that begins a day, a week or a month. */
  strong: boolean;
}

const written = (date: string, format: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat(LOCALE, { timeZone: 'UTC', ...format }).format(new Date(`${date}T12:00:00Z`));
const isMonday = (date: string): boolean => new Date(`${date}T12:00:00Z`).getUTCDay() === 1;

/** Days up to a fortnight, weeks up to a quarter, months beyond. */
export function ticksOf(days: readonly Day[]): Tick[] {
  const all = days.map(({ date }, day) => ({ date, day }));
  if (days.length <= 14) {
    return all.map(({ date, day }) => ({
      ...{ day, strong: true },
      labels: [
        written(date, { weekday: 'short', day: 'numeric' }),
        `${written(date, { weekday: 'narrow' })} ${written(date, { day: 'numeric' })}`,
      ],
    }));
  }
  if (days.length <= 92) {
    return all.map(({ date, day }) => ({
      ...{ day, strong: isMonday(date) },
      labels: isMonday(date)
        ? [written(date, { day: 'numeric', month: 'short' }), written(date, { day: 'numeric' })]
        : [],
    }));
  }
  return all
    .filter(({ date }) => date.endsWith('-01'))
    .map(({ date, day }) => ({
      ...{ day, strong: true },
      labels: [written(date, { month: 'short' }), written(date, { month: 'narrow' })],
    }));
}

/** Pixels a letter takes, generously. */
const LETTER = 7.5;

/** The form of each tick's label that ends before the next one; '' where none does. */
export function fitting(ticks: readonly Tick[], column: number, days: number): string[] {
  return ticks.map(({ day, labels }, index) => {
    const next = ticks.slice(index + 1).find((tick) => tick.labels.length > 0)?.day ?? days;
    return labels.find((label) => 4 + label.length * LETTER <= (next - day) * column) ?? '';
  });
}
