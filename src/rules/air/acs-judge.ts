/** Holds one practised manoeuvre against the standard in force on its day. */
import type { LocalDate } from '../calendar/dates.js';
import {
  ACS_EDITIONS,
  type AcsEdition,
  type AcsLevel,
  type AcsMeasure,
  type AcsTask,
  type Limits,
} from './acs.js';

/** What came of it. `within` null: nothing measured is outside, but something needed was not measured. */
export interface AcsVerdict {
  within: boolean | null;
  /** Measures outside their limits. */
  outside: { measure: AcsMeasure; value: number; limits: Limits }[];
  /** Needed and not measured. */
  missing: AcsMeasure[];
  limits: Partial<Record<AcsMeasure, Limits>>;
  document: string;
  status: 'seen' | 'from memory';
}

/** The edition in force on a date; the oldest one known for dates before it. */
export function acsEdition(level: AcsLevel, on: LocalDate): AcsEdition {
  const editions = ACS_EDITIONS[level];
  return editions.filter((edition) => edition.from <= on).pop() ?? editions[0]!;
}

/** Judges what was measured; null when the level does not ask for the task. Limits are inclusive. */
export function judgeAcs(
  level: AcsLevel,
  task: AcsTask,
  measured: Partial<Record<AcsMeasure, number | null>>,
  on: LocalDate,
): AcsVerdict | null {
  const edition = acsEdition(level, on);
  const tolerance = edition.tasks[task];
  if (!tolerance) return null;
  const outside: AcsVerdict['outside'] = [];
  for (const [measure, limits] of Object.entries(tolerance.limits) as [AcsMeasure, Limits][]) {
    const value = measured[measure];
    if (value === null || value === undefined) continue;
    if (!(value >= limits[0] && value <= limits[1])) outside.push({ measure, value, limits });
  }
  const missing = tolerance.needed.filter(
    (measure) => measured[measure] === null || measured[measure] === undefined,
  );
  return {
    within: outside.length > 0 ? false : missing.length > 0 ? null : true,
    outside,
    missing,
    limits: tolerance.limits,
    document: edition.document,
    status: tolerance.status,
  };
}
