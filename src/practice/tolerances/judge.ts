/** Holds measured deviations against the standard of the day: what is outside, by how much, and what was not measured. */
import type { LocalDate } from '../../rules/calendar/dates.js';
import {
  STANDARDS,
  type Edition,
  type Known,
  type Level,
  type Limits,
  type Measure,
  type Task,
} from './standards.js';

/** A value, or the span it kept within over the manoeuvre. */
export type Measured = number | { least: number; most: number };

export interface MeasureVerdict {
  measure: Measure;
  least: number;
  most: number;
  limits: Limits;
  within: boolean;
  /** Share of the tolerance used, from its middle: 1 at the limit, 0 in the middle. */
  used: number;
  /** How far outside, in the measure's unit; 0 within. Negative: below the least. */
  beyond: number;
}

export type Verdict =
  | { status: 'no-edition' | 'task-not-asked'; level: Level; task: Task; document: string | null }
  | {
      status: 'judged';
      level: Level;
      task: Task;
      document: string;
      /** Of the figures. */
      known: Known;
      /** Null: nothing measured is outside, but something needed was not measured. Never a yes. */
      within: boolean | null;
      measures: MeasureVerdict[];
      missing: Measure[];
      /** Measures given that the standard has no limit for. */
      notAsked: Measure[];
    };

/** The edition in effect on a day; null before the first one held. */
export function editionOn(level: Level, on: LocalDate): Edition | null {
  return STANDARDS[level].filter(({ from }) => from <= on).pop() ?? null;
}

/** Judges a manoeuvre. Limits are inclusive. A value that is no number counts as not measured. */
export function judgeManoeuvre(
  level: Level,
  task: Task,
  measured: Partial<Record<Measure, Measured | null>>,
  on: LocalDate,
): Verdict {
  const edition = editionOn(level, on);
  if (!edition) return { status: 'no-edition', level, task, document: null };
  const standard = edition.tasks[task];
  if (!standard) return { status: 'task-not-asked', level, task, document: edition.document };
  const given = new Map<Measure, { least: number; most: number }>();
  for (const [measure, value] of Object.entries(measured) as [Measure, Measured | null][]) {
    const span = typeof value === 'number' ? { least: value, most: value } : value;
    if (span && Number.isFinite(span.least) && Number.isFinite(span.most)) given.set(measure, span);
  }
  const measures = (Object.entries(standard.limits) as [Measure, Limits][]).flatMap(([measure, limits]) => {
    const span = given.get(measure);
    return span ? [judgeMeasure(measure, span, limits)] : [];
  });
  const missing = standard.needed.filter((measure) => !given.has(measure));
  return {
    status: 'judged',
    level,
    task,
    document: edition.document,
    known: standard.known,
    within: measures.some(({ within }) => !within) ? false : missing.length > 0 ? null : true,
    measures,
    missing,
    notAsked: [...given.keys()].filter((measure) => !standard.limits[measure]),
  };
}

function judgeMeasure(
  measure: Measure,
  { least, most }: { least: number; most: number },
  limits: Limits,
): MeasureVerdict {
  const [low, high] = limits;
  // A span turned round is still the same span.
  const [from, to] = [Math.min(least, most), Math.max(least, most)];
  const over = to - high;
  const under = low - from;
  const middle = (low + high) / 2;
  return {
    measure,
    least: from,
    most: to,
    limits,
    within: over <= 0 && under <= 0,
    used: Math.max(Math.abs(from - middle), Math.abs(to - middle)) / ((high - low) / 2),
    beyond: over <= 0 && under <= 0 ? 0 : over >= under ? over : -under,
  };
}
