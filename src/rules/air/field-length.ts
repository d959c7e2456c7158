/**
 * Take-off and landing distance as the handbooks work it: from the tables at the aircraft's weight, the pressure altitude
 * and the temperature, then wind, slope, surface and wet by the handbook's factors, in that order. Nothing is read beyond
 * the printed figures, but for a weight below the lightest table, where that table counts.
 */
import type { DistanceFact, DistanceFactors, DistanceTableFact } from '../facts/loading.js';
import type { RunwayFact } from '../facts/flight.js';
import { readTable, tableFaults, type TableAnswer } from './performance-table.js';

/** Under which conditions. Headwind negative: from behind. */
export interface FieldConditions {
  weightLb: number;
  pressureAltitudeFt: number;
  oatC: number;
  headwindKt: number;
  surface: RunwayFact['surface'];
  wet: boolean;
  /** Percent of slope against the aircraft: up at take-off, down at landing. Negative helps, and is not counted on. */
  slopeAgainstPercent: number;
}

/** Ground roll, and the distance over 50 ft. */
export interface Distances {
  groundRollFt: number;
  over50Ft: number;
}

/** One step of the working: both distances after it. */
export interface DistanceStep extends Distances {
  step: 'table' | 'headwind' | 'tailwind' | 'slope' | 'surface' | 'wet';
  /** Percent added (taken off: negative); null for the table. */
  percent: number | null;
}

export type DistanceAnswer =
  ({ found: true; steps: DistanceStep[] } & Distances) | { found: false; because: string };

/** No more than this share of a distance is taken off for wind: a factor for a few knots says nothing of a gale. Own caution. */
const LEAST_SHARE = 0.5;

/** What is wrong with the tables; empty when they can be read. */
export function distanceFaults(tables: readonly DistanceTableFact[]): string[] {
  if (tables.length === 0) return ['at least one table is needed'];
  const faults = tables.flatMap((table) =>
    [
      ...new Set([...tableFaults(column(table, 'groundRollFt')), ...tableFaults(column(table, 'over50Ft'))]),
    ].map((fault) => `${table.weightLb} lb: ${fault}`),
  );
  if (!tables.every(({ weightLb }, at) => weightLb > 0 && (at === 0 || weightLb > tables[at - 1]!.weightLb)))
    faults.push('the weights of the tables must ascend');
  if (faults.length === 0 && tables.some((table) => !rollsLess(table)))
    faults.push('a ground roll is never longer than the distance over 50 ft');
  return faults;
}

const rollsLess = (table: DistanceTableFact): boolean =>
  table.groundRollFt.every((row, i) => row.every((roll, j) => roll <= table.over50Ft[i]![j]!));

type Which = 'groundRollFt' | 'over50Ft';
const column = (
  { weightLb, pressureAltitudesFt, temperaturesC, ...table }: DistanceTableFact,
  which: Which,
) => ({
  weightLb,
  pressureAltitudesFt,
  temperaturesC,
  distancesFt: table[which],
});

/**
 * Reads a distance between the tables of several weights; each of them must answer. Lighter than the lightest, it reads
 * as for the lightest.
 */
export function distanceBetweenTables(
  tables: readonly DistanceTableFact[],
  which: Which,
  at: Pick<FieldConditions, 'weightLb' | 'pressureAltitudeFt' | 'oatC'>,
): TableAnswer {
  const above = tables.find(({ weightLb }) => at.weightLb <= weightLb);
  const heaviest = tables.at(-1);
  if (!above) return readTable(column(heaviest!, which), at);
  const upper = readTable(column(above, which), at);
  const below = tables[tables.indexOf(above) - 1];
  if (!below || !upper.found) return upper;
  const lower = readTable(column(below, which), { ...at, weightLb: below.weightLb });
  if (!lower.found) return lower;
  const part = (at.weightLb - below.weightLb) / (above.weightLb - below.weightLb);
  return { found: true, distanceFt: lower.distanceFt + part * (upper.distanceFt - lower.distanceFt) };
}

/** Tables found to be without faults: they are read many times over. */
const sound = new WeakSet<DistanceFact>();

/** The distances of one manoeuvre, with every step; or why they cannot be worked out. RangeError on faulty tables. */
export function workDistances(of: DistanceFact, at: FieldConditions): DistanceAnswer {
  if (!sound.has(of)) {
    const faults = distanceFaults(of.tables);
    if (faults.length > 0) throw new RangeError(`the tables cannot be read: ${faults.join('; ')}`);
    sound.add(of);
  }
  const roll = distanceBetweenTables(of.tables, 'groundRollFt', at);
  if (!roll.found) return roll;
  const over = distanceBetweenTables(of.tables, 'over50Ft', at);
  if (!over.found) return over;
  let now: Distances = { groundRollFt: roll.distanceFt, over50Ft: over.distanceFt };
  const steps: DistanceStep[] = [{ step: 'table', percent: null, ...now }];
  for (const change of changesFor(of.factors, at)) {
    if ('because' in change) return { found: false, because: change.because };
    now = changed(now, change, of.factors.surfaceIsOf);
    steps.push({ step: change.step, percent: change.percent, ...now });
  }
  return { found: true, ...now, steps };
}

interface Change {
  step: Exclude<DistanceStep['step'], 'table'>;
  percent: number;
}

function changed(
  now: Distances,
  { step, percent }: Change,
  surfaceIsOf: DistanceFactors['surfaceIsOf'],
): Distances {
  const ofRoll = surfaceIsOf === 'ground-roll' && step !== 'headwind' && step !== 'tailwind';
  const factor = Math.max(LEAST_SHARE, 1 + percent / 100);
  const groundRollFt = now.groundRollFt * factor;
  return {
    groundRollFt,
    over50Ft: ofRoll ? now.over50Ft + (groundRollFt - now.groundRollFt) : now.over50Ft * factor,
  };
}

function changesFor(by: DistanceFactors, at: FieldConditions): (Change | { because: string })[] {
  const silent = (what: string) => ({ because: `the handbook says nothing of ${what}` });
  const changes: (Change | { because: string })[] = [];
  const { headwindKt } = at;
  if (headwindKt > 0 && by.headwindPercentPerKt !== null)
    changes.push({ step: 'headwind', percent: -headwindKt * by.headwindPercentPerKt });
  if (headwindKt < -1e-9) {
    if (by.tailwindPercentPerKt === null || by.tailwindMaxKt === null)
      changes.push(silent('wind from behind'));
    else if (-headwindKt > by.tailwindMaxKt + 1e-9)
      changes.push(silent(`more than ${by.tailwindMaxKt} kt from behind`));
    else changes.push({ step: 'tailwind', percent: -headwindKt * by.tailwindPercentPerKt });
  }
  if (at.slopeAgainstPercent > 0)
    changes.push(
      by.slopePercentPerPercent === null
        ? silent('sloping runways')
        : { step: 'slope', percent: at.slopeAgainstPercent * by.slopePercentPerPercent },
    );
  if (at.surface === 'water') changes.push(silent('water'));
  if (at.surface === 'grass' || at.surface === 'gravel') {
    const percent = at.surface === 'grass' ? by.grassPercent : by.gravelPercent;
    changes.push(percent === null ? silent(at.surface) : { step: 'surface', percent });
  }
  if (at.wet) {
    const percent = at.surface === 'paved' ? by.wetPavedPercent : by.wetUnpavedPercent;
    changes.push(percent === null ? silent('wet runways') : { step: 'wet', percent });
  }
  return changes;
}
