/** Conditions a manoeuvre was flown in. What was not recorded does not count as flown in them. */
import type { LocalDate } from '../../rules/calendar/dates.js';
import type { Task } from '../tolerances/standards.js';

/** A manoeuvre as practised on a day. Null: not recorded. */
export interface Flown {
  id: string;
  manoeuvre: Task;
  on: LocalDate;
  /** To standard, as measured or as an instructor saw it. */
  good: boolean | null;
  crosswindKt: number | null;
  /** Gust less steady wind. */
  gustSpreadKt: number | null;
  night: boolean | null;
  runwayFt: number | null;
  /** Groups of equipment used, as the club names them; null: not recorded. */
  equipment: readonly string[] | null;
}

/** A condition to be practised in; limits come from the caller (personal limits, club policy). */
export type Condition =
  | { kind: 'any' }
  | { kind: 'crosswind'; atLeastKt: number }
  | { kind: 'gust'; atLeastKt: number }
  | { kind: 'night' }
  | { kind: 'short-field'; atMostFt: number }
  | { kind: 'equipment'; group: string };

/** What a flight has of conditions. */
export type Conditions = Pick<Flown, 'crosswindKt' | 'gustSpreadKt' | 'night' | 'runwayFt' | 'equipment'>;

/** Was, or is, it in that condition? Null where that is not known. */
export function meets(of: Conditions, condition: Condition): boolean | null {
  const at = (value: number | null, holds: (value: number) => boolean): boolean | null =>
    value === null || !Number.isFinite(value) ? null : holds(value);
  switch (condition.kind) {
    case 'any':
      return true;
    case 'crosswind':
      // From either side.
      return at(of.crosswindKt, (kt) => Math.abs(kt) >= condition.atLeastKt);
    case 'gust':
      return at(of.gustSpreadKt, (kt) => kt >= condition.atLeastKt);
    case 'night':
      return of.night;
    case 'short-field':
      return at(of.runwayFt, (ft) => ft <= condition.atMostFt);
    case 'equipment':
      return of.equipment === null ? null : of.equipment.includes(condition.group);
  }
}

/** One name for each manoeuvre in a condition. */
export function pairKey(manoeuvre: Task, condition: Condition): string {
  const { kind, ...rest } = condition;
  return [manoeuvre, kind, ...Object.values(rest)].join('|');
}
