/**
 * Limits suggested from what was really flown: the most wind across, the strongest gusts and the shortest runway of a
 * landing that went well lately, and the night where it was landed in. Never more than was flown, and nothing where
 * nothing is on record. A figure at which a landing went wrong since is not suggested. Common practice, no source; that
 * limits begin at what was comfortably flown lately is the advice of the FAA personal minimums worksheet.
 */
import type { LocalDate } from '../../rules/calendar/dates.js';
import type { Task } from '../tolerances/standards.js';

/** A practice record. */
export interface Practised {
  id: string;
  on: LocalDate;
  manoeuvre: Task;
  /** To standard; null: not judged. */
  good: boolean | null;
  crosswindKt: number | null;
  gustSpreadKt: number | null;
  runwayFt: number | null;
  night: boolean | null;
}

/** A flight in the log, flown in command with hands on the controls. */
export interface Logged {
  id: string;
  on: LocalDate;
  /** Code of the airfield where it ended. */
  airfield: string;
  /** The longest runway there; null: none is on record. Whichever was used is no longer. */
  longestRunwayFt: number | null;
  landings: number;
  nightFullStopLandings: number;
}

/** What a suggestion rests on. */
export interface Evidence {
  kind: 'practice' | 'log';
  id: string;
  on: LocalDate;
}

export type Suggested =
  | { limit: 'crosswindKt' | 'gustSpreadKt' | 'runwayFt'; value: number; evidence: Evidence[] }
  | { limit: 'night'; value: true; evidence: Evidence[] };

/** Limits of which flights on record tell nothing. */
export const NOT_RECORDED = [
  'windKt',
  'ceilingDayFtAgl',
  'ceilingNightFtAgl',
  'visibilityDaySm',
  'visibilityNightSm',
] as const;

export type LimitName = Suggested['limit'] | (typeof NOT_RECORDED)[number];

const LANDINGS: readonly Task[] = [
  'normal_landing',
  'short_field_landing',
  'soft_field_landing',
  'forward_slip_landing',
  'power_off_180_landing',
];
/** Flights named as evidence at most. */
const NAMED = 5;

interface Found extends Evidence {
  figure: number;
}

const newestFirst = (a: Evidence, b: Evidence): number => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1);

const evidenceOf = (found: readonly Evidence[]): Evidence[] =>
  [...found]
    .sort(newestFirst)
    .slice(0, NAMED)
    .map(({ kind, id, on }) => ({ kind, id, on }));

/** Landings of a figure that went well, and those that did not. */
function landings(
  practised: readonly Practised[],
  field: 'crosswindKt' | 'gustSpreadKt' | 'runwayFt',
  good: boolean,
): Found[] {
  return practised.flatMap((one): Found[] => {
    const figure = one[field];
    if (!LANDINGS.includes(one.manoeuvre) || one.good !== good || figure === null) return [];
    return [{ kind: 'practice', id: one.id, on: one.on, figure }];
  });
}

/** The hardest figure flown well, with nothing as easy or easier gone wrong on that day or since. */
function hardest(
  good: readonly Found[],
  bad: readonly Found[],
  harder: (a: number, b: number) => boolean,
): { figure: number; evidence: Evidence[] } | null {
  const stands = good.filter(
    (one) => !bad.some((other) => other.on >= one.on && !harder(other.figure, one.figure)),
  );
  const [first, ...rest] = stands;
  if (!first) return null;
  const { figure } = rest.reduce((most, one) => (harder(one.figure, most.figure) ? one : most), first);
  return { figure, evidence: evidenceOf(stands.filter((one) => one.figure === figure)) };
}

/** Suggestions from what was flown within the days looked at; limits without one are left out. */
export function suggestLimits(practised: readonly Practised[], logged: readonly Logged[]): Suggested[] {
  const suggested: Suggested[] = [];
  for (const limit of ['crosswindKt', 'gustSpreadKt'] as const) {
    const found = hardest(
      landings(practised, limit, true),
      landings(practised, limit, false),
      (a, b) => a > b,
    );
    // Whole knots, never more than flown; still air says nothing.
    const value = found ? Math.floor(found.figure) : 0;
    if (found && value > 0) suggested.push({ limit, value, evidence: found.evidence });
  }
  const flown = logged.flatMap(({ id, on, longestRunwayFt: figure, landings: count }): Found[] =>
    figure === null || count === 0 ? [] : [{ kind: 'log', id, on, figure }],
  );
  const shortest = hardest(
    [...landings(practised, 'runwayFt', true), ...flown],
    landings(practised, 'runwayFt', false),
    (a, b) => a < b,
  );
  if (shortest)
    suggested.push({ limit: 'runwayFt', value: Math.ceil(shortest.figure), evidence: shortest.evidence });
  const nights: Evidence[] = [
    ...logged
      .filter(({ nightFullStopLandings }) => nightFullStopLandings > 0)
      .map(({ id, on }) => ({ kind: 'log' as const, id, on })),
    ...practised
      .filter(({ manoeuvre, good, night }) => LANDINGS.includes(manoeuvre) && good === true && night === true)
      .map(({ id, on }) => ({ kind: 'practice' as const, id, on })),
  ];
  if (nights.length > 0) suggested.push({ limit: 'night', value: true, evidence: evidenceOf(nights) });
  return suggested;
}
