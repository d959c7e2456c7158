/**
 * Steep turns. In a turn of steady airspeed the ground velocities lie on a circle: its centre is the wind and its radius
 * the true airspeed. Headings follow from velocity less wind, and the bank from rate and speed: tan(bank) = V omega / g,
 * as for any coordinated level turn (FAA-H-8083-25). Slip and skid are not seen, and a bank of short duration is averaged.
 */
import { confidence, slope, type Confidence } from './confidence.js';
import { fitCircle, fitPolynomial } from './fit.js';
import { directionDeg, G, M_PER_FT, median, MPS_PER_KT, quantile, turnDeg, type Motion } from './motion.js';
import type { TrackSettings } from './settings.js';

const RAD = Math.PI / 180;

/** Least and greatest of something over a manoeuvre. */
export interface Range {
  least: number;
  most: number;
}

/** The wind at the height of a turn, from its drift. True direction it comes from. */
export interface TurnWind {
  fromDegTrue: number;
  kt: number;
}

export interface SteepTurn {
  kind: 'steep-turn';
  fromSeconds: number;
  toSeconds: number;
  direction: 'left' | 'right';
  /** Heading turned through, whole turns included. */
  turnedDeg: number;
  /** Middle value over the steady part, and all but its outermost twentieths. */
  bankDeg: number;
  bankRangeDeg: Range;
  trueAirspeedKt: number;
  airspeedDevKt: Range;
  /** From the elevation when the turn began; null without elevations. */
  altitudeDevFt: Range | null;
  /** Heading on rolling out less heading on rolling in; null where the flight was not straight before and after. */
  rolloutDevDeg: number | null;
  wind: TurnWind;
  confidence: Confidence;
}

/** Every steep turn of the flight, in order. */
export function findSteepTurns(motion: readonly Motion[], settings: TrackSettings): SteepTurn[] {
  const banks = motion.map(signedBankDeg);
  const from = settings.steepTurn.candidateBankDeg;
  const found: SteepTurn[] = [];
  for (let at = 0; at < motion.length; at += 1) {
    if (Math.abs(banks[at]!) < from) continue;
    const sign = Math.sign(banks[at]!);
    let end = at;
    while (
      end + 1 < motion.length &&
      sign * banks[end + 1]! >= from &&
      motion[end + 1]!.stretch === motion[at]!.stretch
    )
      end += 1;
    const turn = measure(motion, banks, at, end, settings);
    if (turn) found.push(turn);
    at = end;
  }
  return found;
}

/** Bank that the acceleration alone would need, right positive: enough to see that the aircraft turns. */
function signedBankDeg({ eastMps, northMps, eastMps2, northMps2 }: Motion): number {
  const cross = eastMps2 * northMps - northMps2 * eastMps;
  return Math.sign(cross) * (Math.atan(Math.hypot(eastMps2, northMps2) / G) / RAD);
}

function measure(
  motion: readonly Motion[],
  banks: readonly number[],
  start: number,
  end: number,
  settings: TrackSettings,
): SteepTurn | null {
  const { steepTurn: limits, smoothingSeconds: half } = settings;
  const run = motion.slice(start, end + 1);
  const seconds = motion[end]!.atSeconds - motion[start]!.atSeconds;
  const spacing = run.length > 1 ? seconds / (run.length - 1) : Number.POSITIVE_INFINITY;
  if (run.length < 8 || spacing > limits.coarsestSeconds) return null;
  const circle = fitCircle(
    run.map((one) => one.eastMps),
    run.map((one) => one.northMps),
  );
  if (!circle) return null;
  const heading = (one: Motion): number => directionDeg(one.eastMps - circle.x, one.northMps - circle.y);
  const [first, last] = widen(motion, banks, start, end);
  const headings = unwrap(motion.slice(first, last + 1).map(heading));
  const turned = headings[headings.length - 1]! - headings[0]!;
  if (Math.abs(turned) < limits.leastTurnedDeg) return null;
  // The rate of the turn itself, without the rolling in and out.
  const omega = (Math.abs(headings[end - first]! - headings[start - first]!) * RAD) / seconds;
  const shrunk = shrinkage(omega, spacing, half);
  const airspeed = circle.radius / shrunk;
  const trim = Math.min(5, seconds / 5);
  const steady = run.flatMap((one, at) =>
    one.atSeconds - run[0]!.atSeconds >= trim && motion[end]!.atSeconds - one.atSeconds >= trim
      ? [start + at]
      : [],
  );
  const rated = steady.map((at) => bankAt(motion, headings, first, last, at, airspeed, half));
  const bankDeg = median(rated);
  if (!(bankDeg >= limits.leastBankDeg && bankDeg <= limits.mostBankDeg)) return null;
  const height = heightRange(motion, first, start, last);
  const net = netHeight(motion, start, end);
  if (net !== null && net > limits.mostHeightChangeM) return null;
  const speeds = steady.map((at) => {
    const one = motion[at]!;
    return (Math.hypot(one.eastMps - circle.x, one.northMps - circle.y) - circle.radius) / MPS_PER_KT;
  });
  const wholes = Math.abs(Math.abs(turned) - 360 * Math.max(1, Math.round(Math.abs(turned) / 360)));
  return {
    kind: 'steep-turn',
    fromSeconds: motion[first]!.atSeconds,
    toSeconds: motion[last]!.atSeconds,
    direction: turned > 0 ? 'right' : 'left',
    turnedDeg: Math.abs(turned),
    bankDeg,
    bankRangeDeg: { least: quantile(rated, 0.05), most: quantile(rated, 0.95) },
    trueAirspeedKt: airspeed / MPS_PER_KT,
    airspeedDevKt: { least: quantile(speeds, 0.05), most: quantile(speeds, 0.95) },
    altitudeDevFt: height,
    rolloutDevDeg: rollout(motion, banks, first, last, heading),
    wind: {
      fromDegTrue: directionDeg(-circle.x, -circle.y),
      kt: Math.hypot(circle.x, circle.y) / MPS_PER_KT,
    },
    confidence: confidence([
      { because: 'sampling', factor: slope(spacing, 1.1, limits.coarsestSeconds, 0.5) },
      { because: 'circle-fit', factor: slope(circle.rms / circle.radius, 0.015, 0.15, 0.2) },
      { because: 'clear-of-limit', factor: slope(bankDeg - limits.leastBankDeg, 6, 0, 0.5) },
      { because: 'whole-turns', factor: slope(wholes, 15, 90, 0.6) },
      net === null
        ? { because: 'no-elevation', factor: 0.7 }
        : { because: 'level', factor: slope(net, 45, limits.mostHeightChangeM, 0.5) },
    ]),
  };
}

/** The run with its rolling in and out: to where the wings are nearly level, at most eight seconds on either side. */
function widen(
  motion: readonly Motion[],
  banks: readonly number[],
  start: number,
  end: number,
): [number, number] {
  const sign = Math.sign(banks[start]!);
  const { stretch } = motion[start]!;
  const [begins, ends] = [motion[start]!.atSeconds - 8, motion[end]!.atSeconds + 8];
  let [first, last] = [start, end];
  const turning = (at: number): boolean => motion[at]?.stretch === stretch && sign * banks[at]! > 6;
  while (turning(first - 1) && motion[first - 1]!.atSeconds >= begins) first -= 1;
  while (turning(last + 1) && motion[last + 1]!.atSeconds <= ends) last += 1;
  return [first, last];
}

function unwrap(degrees: readonly number[]): number[] {
  const out: number[] = [];
  for (const [at, one] of degrees.entries())
    out.push(at === 0 ? one : out[at - 1]! + turnDeg(degrees[at - 1]!, one));
  return out;
}

/** By how much the fitted velocity of a steady turn comes out small: what the same fit makes of a sine. */
function shrinkage(omega: number, spacing: number, half: number): number {
  const each = Math.floor(half / spacing + 1e-6);
  if (each < 3) return 1;
  const ts = Array.from({ length: 2 * each + 1 }, (_one, at) => (at - each) * spacing);
  const sines = ts.map((t) => Math.sin(omega * t));
  const slopeOf = fitPolynomial(
    ts.map((t) => t / half),
    sines,
    3,
  );
  return slopeOf ? Math.max(0.5, slopeOf[1]! / half / omega) : 1;
}

/** Bank at a point from the rate of the heading about it. */
function bankAt(
  motion: readonly Motion[],
  headings: readonly number[],
  first: number,
  last: number,
  at: number,
  airspeed: number,
  half: number,
): number {
  const [ts, ys]: [number[], number[]] = [[], []];
  for (let one = first; one <= last; one += 1) {
    const t = (motion[one]!.atSeconds - motion[at]!.atSeconds) / half;
    if (Math.abs(t) > 1 + 1e-6) continue;
    ts.push(t);
    ys.push(headings[one - first]!);
  }
  const rate = Math.abs((fitPolynomial(ts, ys, 1)?.[1] ?? 0) / half) * RAD;
  return Math.atan((airspeed * rate) / G) / RAD;
}

function heightRange(motion: readonly Motion[], first: number, start: number, last: number): Range | null {
  const entry = motion
    .slice(first, start + 1)
    .flatMap(({ elevationM }) => (elevationM === null ? [] : [elevationM]));
  const during = motion
    .slice(first, last + 1)
    .flatMap(({ elevationM }) => (elevationM === null ? [] : [elevationM]));
  if (entry.length === 0 || during.length < 2) return null;
  const began = median(entry);
  return {
    least: (Math.min(...during) - began) / M_PER_FT,
    most: (Math.max(...during) - began) / M_PER_FT,
  };
}

function netHeight(motion: readonly Motion[], start: number, end: number): number | null {
  const [a, b] = [motion[start]!.elevationM, motion[end]!.elevationM];
  return a === null || b === null ? null : Math.abs(b - a);
}

/** Heading after less heading before, over four seconds each; null where it was not straight there. */
function rollout(
  motion: readonly Motion[],
  banks: readonly number[],
  first: number,
  last: number,
  heading: (one: Motion) => number,
): number | null {
  const straight = (from: number, to: number): number | null => {
    const found: number[] = [];
    for (const [at, one] of motion.entries()) {
      if (one.atSeconds < from || one.atSeconds > to || one.stretch !== motion[first]!.stretch) continue;
      if (Math.abs(banks[at]!) > 10) return null;
      found.push(heading(one));
    }
    if (found.length < 3) return null;
    return found[0]! + median(found.map((one) => turnDeg(found[0]!, one)));
  };
  const before = straight(motion[first]!.atSeconds - 5, motion[first]!.atSeconds - 1);
  const after = straight(motion[last]!.atSeconds + 1, motion[last]!.atSeconds + 5);
  return before === null || after === null ? null : turnDeg(before, after);
}
