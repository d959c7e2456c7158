/** Days across the width of a chart. */
import { Temporal } from 'temporal-polyfill';
import { LOCALE } from '../parts/locale.js';

export interface Scale {
  from: string;
  days: number;
}

const plain = (date: string) => Temporal.PlainDate.from(date);

/** Where a day lies, 0 at the left edge and 100 at the right; days outside are put at the edge. */
export function across({ from, days }: Scale, date: string): number {
  const day = plain(from).until(plain(date), { largestUnit: 'days' }).days;
  return Math.min(100, Math.max(0, (day / days) * 100));
}

/** The last day a chart shows. */
export const lastDay = ({ from, days }: Scale): string => plain(from).add({ days }).toString();

/** Firsts of months inside the span, for ticks. */
export function monthsOf(scale: Scale): string[] {
  const months: string[] = [];
  const end = plain(lastDay(scale));
  for (
    let first = plain(scale.from).with({ day: 1 }).add({ months: 1 });
    Temporal.PlainDate.compare(first, end) < 0;
    first = first.add({ months: 1 })
  )
    months.push(first.toString());
  return months;
}

const written = (date: string, parts: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat(LOCALE, { ...parts, timeZone: 'UTC' }).format(new Date(`${date}T12:00:00Z`));

/** 'Nov' */
export const monthOf = (date: string): string => written(date, { month: 'short' });
/** '26 Nov' */
export const dayOf = (date: string): string => written(date, { day: 'numeric', month: 'short' });
