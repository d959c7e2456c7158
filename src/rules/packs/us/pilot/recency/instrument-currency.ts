/** Instrument experience over a log: when the tasks last gave, and until when they give, instrument privileges. */
import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { LogFact, ReviewFact } from '../../../../facts/person.js';

/** The numbers of 14 CFR 61.57(c) and (d). */
export interface InstrumentNumbers {
  months: number;
  approaches: number;
  graceMonths: number;
}

/** Last day of instrument privileges, null when the record shows none; and the evidence that gives it. */
export interface InstrumentCurrency {
  through: LocalDate | null;
  by: 'tasks' | 'check' | null;
  /** Ids of the log entries, or of the check. */
  evidence: { id: string; on: LocalDate; what: string }[];
}

/** The tasks within the look-back that ends on a day. */
export interface TaskCount {
  approaches: number;
  holding: boolean;
  interceptTrack: boolean;
  complete: boolean;
  /** The oldest entry that is needed; it governs how long the set counts. */
  governs: LocalDate | null;
  used: LogFact[];
}

/** By day, then by departure, then by id. */
const order = ({ on, departedAt, id }: LogFact): string => `${on} ${departedAt} ${id}`;

/** Entries with any of the tasks, flown by the person in the category or in a device that stands for it. */
export function withTasks(log: readonly LogFact[], category: string): LogFact[] {
  return log
    .filter((entry) => entry.category === category && entry.soleManipulator)
    .filter((entry) => entry.approaches > 0 || entry.holding || entry.interceptTrack)
    .sort((a, b) => (order(a) < order(b) ? 1 : -1));
}

/** Counts the tasks that still count on `day`, of entries up to that day with the newest first; stops as soon as all are there. */
export function countTasks(
  entries: readonly LogFact[],
  day: LocalDate,
  numbers: InstrumentNumbers,
): TaskCount {
  const count: TaskCount = {
    approaches: 0,
    holding: false,
    interceptTrack: false,
    complete: false,
    governs: null,
    used: [],
  };
  for (const entry of entries) {
    if (throughCalendarMonths(entry.on, numbers.months) < day) break;
    const needed =
      (entry.approaches > 0 && count.approaches < numbers.approaches) ||
      (entry.holding && !count.holding) ||
      (entry.interceptTrack && !count.interceptTrack);
    if (!needed) continue;
    count.approaches += entry.approaches;
    count.holding ||= entry.holding;
    count.interceptTrack ||= entry.interceptTrack;
    count.used.push(entry);
    count.governs = entry.on;
    count.complete = count.approaches >= numbers.approaches && count.holding && count.interceptTrack;
    if (count.complete) break;
  }
  return count;
}

/**
 * Follows the record from its beginning. A complete set gives privileges through the calendar months from its oldest
 * needed task; flown after the grace months it gives nothing, and only a check does (61.57(d)). A record that starts
 * with a set is taken at its word: nothing in it shows a lapse.
 */
export function instrumentCurrency(
  entries: readonly LogFact[],
  checks: readonly ReviewFact[],
  numbers: InstrumentNumbers,
): InstrumentCurrency {
  // Of one day a check comes first, and what is flown then adds to it.
  const events: { order: string; on: LocalDate; check: ReviewFact | null; upTo: readonly LogFact[] }[] = [
    ...checks.map((check) => ({ order: `${check.on} 0 ${check.id}`, on: check.on, check, upTo: [] })),
    ...entries.map((entry, index) => ({
      order: `${entry.on} 1 ${order(entry)}`,
      on: entry.on,
      check: null,
      upTo: entries.slice(index),
    })),
  ];
  events.sort((a, b) => (a.order < b.order ? -1 : 1));
  let now: InstrumentCurrency = { through: null, by: null, evidence: [] };
  for (const { on, check, upTo } of events) {
    if (check) {
      const through = throughCalendarMonths(on, numbers.months);
      if (now.through === null || through > now.through) {
        const what = 'instrument proficiency check';
        now = { through, by: 'check', evidence: [{ id: check.id, on, what }] };
      }
      continue;
    }
    if (now.through !== null && on > throughCalendarMonths(now.through, numbers.graceMonths)) continue;
    const set = countTasks(upTo, on, numbers);
    if (!set.complete) continue;
    const through = throughCalendarMonths(set.governs!, numbers.months);
    if (now.through !== null && through <= now.through) continue;
    now = {
      through,
      by: 'tasks',
      evidence: set.used.map((entry) => ({ id: entry.id, on: entry.on, what: taskWords(entry) })),
    };
  }
  return now;
}

function taskWords(entry: LogFact): string {
  const parts =
    entry.approaches > 0 ? [`${entry.approaches} approach${entry.approaches === 1 ? '' : 'es'}`] : [];
  if (entry.holding) parts.push('holding');
  if (entry.interceptTrack) parts.push('intercepting and tracking');
  return parts.join(', ');
}
