/** Does a meter run as fast as the aircraft is flown? Readings held against the time in the log between them. */
import type { MeterKind } from '../../rules/index.js';

/** A reading that stands, running total in tenths of an hour; `at` in seconds since the epoch. */
export interface RateReading {
  id: string;
  kind: MeterKind;
  at: number;
  totalTenths: number;
}

/** A logged flight, seconds since the epoch. Two people who log one flight make one. */
export interface FlownSpan {
  from: number;
  to: number;
}

/** How a stretch between two readings looks. */
export type RateLook = 'as-usual' | 'more-than-flown' | 'less-than-flown' | 'nothing-logged';

/** A stretch between two readings of one meter. */
export interface MeterStretch {
  kind: MeterKind;
  fromReadingId: string;
  toReadingId: string;
  from: number;
  to: number;
  meterTenths: number;
  flownTenths: number;
  /** Meter hours for each hour flown; null where nothing is logged. */
  ratio: number | null;
  look: RateLook;
}

/** Meter hours an hour flown gives, and how many stretches say so; from the fallback where too few do. */
export interface UsualRate {
  kind: MeterKind;
  ratio: number;
  stretches: number;
}

/** What is usual of a meter before its own record says so: common practice, no source. */
const FALLBACK: Record<MeterKind, number> = { hobbs: 1.05, tachometer: 0.85, airframe: 0.95 };
/** Stretches with at least so much flown count towards what is usual, from so many on. */
const COUNTS_FROM_TENTHS = 10;
const ENOUGH_STRETCHES = 5;
/** How far off is worth a look, and the hours that readings noted before and after a flight may differ by: common practice, no source. */
const TOO_FAST = 1.35;
const TOO_SLOW = 0.65;
const SLACK_TENTHS = 5;

/** Looks at every stretch, oldest first, meter by meter. A flight belongs to the stretch it ended in. */
export function meterRates(
  readings: readonly RateReading[],
  flown: readonly FlownSpan[],
): { stretches: MeterStretch[]; usual: UsualRate[] } {
  const spans = merged(flown);
  const kinds = [...new Set(readings.map(({ kind }) => kind))];
  const raw = kinds.flatMap((kind) =>
    stretchesOf(
      readings.filter((one) => one.kind === kind),
      spans,
    ),
  );
  const usual = kinds.map((kind): UsualRate => {
    const ratios = raw
      .filter((one) => one.kind === kind && one.flownTenths >= COUNTS_FROM_TENTHS)
      .map(({ ratio }) => ratio!);
    const known = ratios.length >= ENOUGH_STRETCHES;
    return { kind, ratio: known ? median(ratios) : FALLBACK[kind], stretches: known ? ratios.length : 0 };
  });
  const stretches = raw.map((one) => ({
    ...one,
    look: lookOf(one, usual.find(({ kind }) => kind === one.kind)!.ratio),
  }));
  return { stretches, usual };
}

function stretchesOf(readings: RateReading[], spans: readonly FlownSpan[]): MeterStretch[] {
  const sorted = [...readings].sort((a, b) => a.at - b.at);
  return sorted.slice(1).map((next, index) => {
    const last = sorted[index]!;
    const seconds = spans
      .filter(({ to }) => to > last.at && to <= next.at)
      .reduce((sum, { from, to }) => sum + (to - from), 0);
    const meterTenths = next.totalTenths - last.totalTenths;
    const flownTenths = seconds / 360;
    return {
      ...{ kind: next.kind, fromReadingId: last.id, toReadingId: next.id, from: last.at, to: next.at },
      ...{ meterTenths, flownTenths, ratio: flownTenths === 0 ? null : meterTenths / flownTenths },
      look: 'as-usual',
    };
  });
}

function lookOf({ meterTenths, flownTenths }: MeterStretch, usual: number): RateLook {
  if (flownTenths === 0) return meterTenths > SLACK_TENTHS ? 'nothing-logged' : 'as-usual';
  const expected = flownTenths * usual;
  if (meterTenths > expected * TOO_FAST + SLACK_TENTHS) return 'more-than-flown';
  return meterTenths < expected * TOO_SLOW - SLACK_TENTHS ? 'less-than-flown' : 'as-usual';
}

/** One span for flights that overlap: pilot and instructor log the same one. */
function merged(flown: readonly FlownSpan[]): FlownSpan[] {
  const spans: FlownSpan[] = [];
  for (const { from, to } of [...flown].sort((a, b) => a.from - b.from)) {
    const last = spans.at(-1);
    if (last && from < last.to) last.to = Math.max(last.to, to);
    else spans.push({ from, to });
  }
  return spans;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
