/** Cells read as what their column holds. Pure: a cell reads one way or is refused with the reason, nothing is guessed. */
import { Temporal } from 'temporal-polyfill';
import type { LocalDate } from '../../rules/calendar/dates.js';
import type { DateOrder, DecimalSign } from './choices.js';
import type { HoursForm } from './fields.js';

export type Read<T> = { value: T } | { refused: string };

/** What stands for nothing. */
export const EMPTY = /^(?:[-–—]+|n\/?a)?$/i;

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH_WORD =
  /^(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)$/i;

/** A date as it is written, before it is known which figure is which. */
export type Written =
  | { kind: 'sure'; year: number; month: number; day: number }
  | { kind: 'figures'; first: number; second: number; year: number; shortYear: boolean };

/** The parts of a date; null: no date. A time of midnight behind it, which spreadsheets add, says nothing. */
export function writtenDate(cell: string): Written | null {
  const date = cell.replace(/[T ]0?0:00(?::00(?:\.0+)?)?$/, '');
  const iso = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/.exec(date);
  if (iso) return { kind: 'sure', year: Number(iso[1]), month: Number(iso[3]), day: Number(iso[4]) };
  const named = /^(\d{1,2})\.?[ -]+([a-z]{3,9})\.?[ ,-]+(\d{4})$/i.exec(date);
  if (named && MONTH_WORD.test(named[2]!))
    return { kind: 'sure', year: Number(named[3]), month: monthNamed(named[2]!), day: Number(named[1]) };
  const monthBefore = /^([a-z]{3,9})\.? +(\d{1,2}),? +(\d{4})$/i.exec(date);
  if (monthBefore && MONTH_WORD.test(monthBefore[1]!))
    return {
      ...{ kind: 'sure', year: Number(monthBefore[3]) },
      ...{ month: monthNamed(monthBefore[1]!), day: Number(monthBefore[2]) },
    };
  const figures = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})$/.exec(date);
  if (!figures) return null;
  const year = Number(figures[4]);
  return {
    ...{ kind: 'figures', first: Number(figures[1]), second: Number(figures[3]) },
    ...{ year, shortYear: figures[4]!.length === 2 },
  };
}

const monthNamed = (word: string): number => MONTHS.indexOf(word.slice(0, 3).toLowerCase()) + 1;

/**
 * A calendar date.
 * @param order which figure comes first; null where no cell needs it
 * @param today the newest date a log can hold; a year of two figures is the newest that is not after it
 */
export function readDay(cell: string, order: DateOrder | null, today: LocalDate): Read<LocalDate> {
  const written = writtenDate(cell);
  if (written === null)
    return {
      refused: /^\d{5}(?:[.,]\d+)?$/.test(cell)
        ? 'is a number of days as spreadsheets count them. Format the column as a date before saving.'
        : 'is no date that can be read. Write it as 2026-03-09 or 9 Mar 2026.',
    };
  if (written.kind === 'sure') return dayOf(written.year, written.month, written.day);
  if (order === null || order === 'year-first')
    return { refused: 'can be read two ways. Say whether the day or the month comes first.' };
  const { first, second } = written;
  const [day, month] = order === 'day-first' ? [first, second] : [second, first];
  if (!written.shortYear) return dayOf(written.year, month, day);
  const century = Number(today.slice(0, 2)) * 100;
  const near = dayOf(century + written.year, month, day);
  if ('value' in near && near.value > today) return dayOf(century - 100 + written.year, month, day);
  return near;
}

function dayOf(year: number, month: number, day: number): Read<LocalDate> {
  try {
    return { value: Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' }).toString() };
  } catch {
    return { refused: 'is no date of the calendar.' };
  }
}

/** A time of a day, with the date where the cell holds both, and the instant where it names its offset. */
export type When = { instant: string } | { clock: string; date: string | null; utc: boolean };

/** '14:05', '1405', '2:05 PM', '14:05Z', '2026-03-09 14:05', '2026-03-09T14:05:00-06:00'. */
export function readWhen(cell: string): Read<When> {
  if (/^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)? ?(?:Z|[+-]\d{2}:?\d{2})$/i.test(cell)) {
    try {
      const instant = Temporal.Instant.from(cell.replace(' ', 'T').replace(' ', ''));
      return {
        value: { instant: instant.round({ smallestUnit: 'second', roundingMode: 'floor' }).toString() },
      };
    } catch {
      return NO_TIME;
    }
  }
  const parts =
    /^(?:(\S.*\S)[T ]+)?(\d{1,2}):?(\d{2})(?::(\d{2})(?:\.\d+)?)?( ?[ap]\.?m\.?)?( ?Z| ?UTC)?$/i.exec(cell);
  if (!parts) return NO_TIME;
  const [, date = null, hour, minute, second = '00', half, zulu] = parts;
  if (half !== undefined && (Number(hour) < 1 || Number(hour) > 12)) return NO_TIME;
  const late = half === undefined ? Number(hour) : (Number(hour) % 12) + (/p/i.test(half) ? 12 : 0);
  if (late > 23 || Number(minute) > 59 || Number(second) > 59) return NO_TIME;
  const clock = `${String(late).padStart(2, '0')}:${minute}:${second}`;
  return { value: { clock, date, utc: zulu !== undefined } };
}

const NO_TIME = { refused: 'is no time that can be read. Write it as 14:05, or as 2026-03-09T14:05:00Z.' };

/** Hours, exactly as written. */
export function readHours(cell: string, form: HoursForm, decimal: DecimalSign | null): Read<number> {
  const clock = /^(\d{1,5})[:+h](\d{2})(?::00)?$/i.exec(cell);
  if (clock && form !== 'decimal' && form !== 'minutes') {
    if (Number(clock[2]) > 59) return { refused: 'has more than 59 minutes.' };
    return { value: Number(clock[1]) + Number(clock[2]) / 60 };
  }
  if (clock) return { refused: 'is in hours and minutes, unlike what was chosen for its column.' };
  if (form === 'clock' && !/^\d{1,5}$/.test(cell))
    return { refused: 'is not in hours and minutes, as was chosen for its column.' };
  const read = readNumber(cell, decimal);
  if ('refused' in read) return read;
  if (read.value < 0) return { refused: 'is less than nothing.' };
  if (read.value > 99_999) return { refused: 'is more hours than a log holds.' };
  if (form === 'minutes')
    return Number.isInteger(read.value)
      ? { value: read.value / 60 }
      : { refused: 'is no whole number of minutes.' };
  if (form !== 'point-clock') return read;
  const minutes = Math.round((read.value % 1) * 100);
  if (minutes > 59 || !/^\d+(?:[.,]\d{2})?$/.test(cell))
    return { refused: 'is not in hours and minutes, as was chosen for its column.' };
  return { value: Math.floor(read.value) + minutes / 60 };
}

/** '1,234.5' or '1.234,5', by the sign of the decimals. */
export function readNumber(cell: string, decimal: DecimalSign | null): Read<number> {
  const text = cell.replace(/^−/, '-').replace(/[\s\u00a0\u202f]/g, ' ');
  if (/^-?\d{1,9}$/.test(text)) return { value: Number(text) };
  if (decimal === null && /[.,]\d{3}$/.test(text))
    return { refused: 'can be read two ways. Say whether the point or the comma begins the decimals.' };
  const [groups, sign] = decimal === 'comma' ? ['. ', ','] : [', ', '.'];
  const plain = new RegExp(`^-?\\d{1,9}[${sign}]\\d{1,6}$`);
  const grouped = new RegExp(`^-?\\d{1,3}(?:[${groups}]\\d{3})+(?:[${sign}]\\d{1,6})?$`);
  if (!plain.test(text) && !grouped.test(text))
    return {
      refused: `is no number that can be read. Write it as ${decimal === 'comma' ? '1040,5' : '1040.5'}.`,
    };
  const bare = [...text].filter((letter) => !groups.includes(letter)).join('');
  return { value: Number(bare.replace(sign, '.')) };
}

/** A count of take-offs, landings or approaches. */
export function readCount(cell: string): Read<number> {
  if (!/^\d{1,6}(?:[.,]0+)?$/.test(cell)) return { refused: 'is no whole number.' };
  const value = Number(cell.replace(/[.,].*$/, ''));
  return value > 200 ? { refused: 'is more than a flight has: 200 at most.' } : { value };
}

const YES = ['yes', 'y', 'true', 'x', '✓', '✔', 'ja', 'oui', 'si'];
const NO = ['no', 'n', 'false', 'nein', 'non'];

/** Yes or no; a number is yes where it is more than nothing. */
export function readFlag(cell: string): Read<boolean> {
  const word = cell.toLowerCase();
  if (YES.includes(word)) return { value: true };
  if (NO.includes(word)) return { value: false };
  const count = /^\d{1,3}$/.test(word) ? Number(word) : null;
  return count === null ? { refused: 'is neither yes nor no.' } : { value: count > 0 };
}

/** A text, at most so long. */
export const readText = (cell: string, most: number): Read<string> =>
  cell.length > most ? { refused: `is longer than ${most} characters.` } : { value: cell };
