/** Velocity and acceleration over the ground, from positions: local least-squares polynomials, so noise is averaged. */
import geodesic from 'geographiclib-geodesic';
import { fitPolynomial } from './fit.js';
import type { TrackPoint } from './point.js';
import type { TrackSettings } from './settings.js';

const RAD = Math.PI / 180;
export const G = 9.80665;
export const M_PER_FT = 0.3048;
export const MPS_PER_KT = 1852 / 3600;
const earth = geodesic.Geodesic.WGS84;

/** The motion at one recorded point. East and north in metres and seconds; x, y count along the track's own chain. */
export interface Motion {
  atSeconds: number;
  latitudeDeg: number;
  longitudeDeg: number;
  xM: number;
  yM: number;
  eastMps: number;
  northMps: number;
  eastMps2: number;
  northMps2: number;
  groundMps: number;
  /** Elevation as recorded, averaged over the same time; null where there is none. */
  elevationM: number | null;
  /** Counts stretches without a gap. */
  stretch: number;
}

/** Direction in degrees from true north, 0 to 360. */
export function directionDeg(east: number, north: number): number {
  const degrees = Math.atan2(east, north) / RAD;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** How far one turns from one direction to the other, -180 to 180, right positive. */
export function turnDeg(from: number, to: number): number {
  return ((((to - from) % 360) + 540) % 360) - 180;
}

/** Ground distance in metres: geodesic of the WGS 84 ellipsoid. */
export function distanceM(
  a: { latitudeDeg: number; longitudeDeg: number },
  b: { latitudeDeg: number; longitudeDeg: number },
): number {
  return earth.Inverse(
    a.latitudeDeg,
    a.longitudeDeg,
    b.latitudeDeg,
    b.longitudeDeg,
    geodesic.Geodesic.DISTANCE,
  ).s12!;
}

/**
 * The motion at every point. Steps from point to point are geodesics laid end to end in the plane; over the few seconds
 * of a fit, and over one turn or hold, the plane is the earth to a thousandth.
 */
export function motionOf(points: readonly TrackPoint[], settings: TrackSettings): Motion[] {
  const { xs, ys, stretches } = chain(points, gapOf(points, settings));
  const half = settings.smoothingSeconds;
  let [first, last] = [0, 0];
  return points.map((point, at) => {
    while (point.atSeconds - points[first]!.atSeconds > half + 1e-6 || stretches[first] !== stretches[at])
      first += 1;
    if (last < at) last = at;
    while (
      last + 1 < points.length &&
      stretches[last + 1] === stretches[at] &&
      points[last + 1]!.atSeconds - point.atSeconds <= half + 1e-6
    )
      last += 1;
    // Where points are rare the neighbours are taken all the same: a velocity needs two.
    const from = first === at && at > 0 && stretches[at - 1] === stretches[at] ? at - 1 : first;
    const to = last === at && at + 1 < points.length && stretches[at + 1] === stretches[at] ? at + 1 : last;
    const x = local(points, xs, from, to, at, half);
    const y = local(points, ys, from, to, at, half);
    return {
      atSeconds: point.atSeconds,
      latitudeDeg: point.latitudeDeg,
      longitudeDeg: point.longitudeDeg,
      xM: xs[at]!,
      yM: ys[at]!,
      eastMps: x.first,
      northMps: y.first,
      eastMps2: x.second,
      northMps2: y.second,
      groundMps: Math.hypot(x.first, y.first),
      elevationM: elevationAt(points, from, to, at, half),
      stretch: stretches[at]!,
    };
  });
}

/** A silence is a gap when it is long for this recorder, too: some write a point every half minute. */
function gapOf(points: readonly TrackPoint[], { gapSeconds }: TrackSettings): number {
  const steps = points.slice(1).map((point, at) => point.atSeconds - points[at]!.atSeconds);
  return Math.max(gapSeconds, 3 * median(steps));
}

function chain(
  points: readonly TrackPoint[],
  gapSeconds: number,
): { xs: number[]; ys: number[]; stretches: number[] } {
  const [xs, ys, stretches] = [[0], [0], [0]];
  const { DISTANCE, AZIMUTH } = geodesic.Geodesic;
  for (let at = 1; at < points.length; at += 1) {
    const [a, b] = [points[at - 1]!, points[at]!];
    const line = earth.Inverse(
      a.latitudeDeg,
      a.longitudeDeg,
      b.latitudeDeg,
      b.longitudeDeg,
      DISTANCE | AZIMUTH,
    );
    // The direction half-way: at high latitudes north turns from one point to the next.
    const azimuth = (line.azi1! + turnDeg(line.azi1!, line.azi2!) / 2) * RAD;
    xs.push(xs[at - 1]! + line.s12! * Math.sin(azimuth));
    ys.push(ys[at - 1]! + line.s12! * Math.cos(azimuth));
    const gap = b.segment !== a.segment || b.atSeconds - a.atSeconds > gapSeconds;
    stretches.push(stretches[at - 1]! + (gap ? 1 : 0));
  }
  return { xs, ys, stretches };
}

/** First and second derivative at a point: cubic where the points allow, so that a turn is not flattened. */
function local(
  points: readonly TrackPoint[],
  values: readonly number[],
  from: number,
  to: number,
  at: number,
  half: number,
): { first: number; second: number } {
  const [ts, ys]: [number[], number[]] = [[], []];
  for (let one = from; one <= to; one += 1) {
    ts.push((points[one]!.atSeconds - points[at]!.atSeconds) / half);
    ys.push(values[one]! - values[at]!);
  }
  const degree = ts.length >= 6 ? 3 : ts.length >= 3 ? 2 : 1;
  const fitted = fitPolynomial(ts, ys, degree) ?? fitPolynomial(ts, ys, 1);
  if (!fitted) return { first: 0, second: 0 };
  return { first: fitted[1]! / half, second: (2 * (fitted[2] ?? 0)) / half ** 2 };
}

function elevationAt(
  points: readonly TrackPoint[],
  from: number,
  to: number,
  at: number,
  half: number,
): number | null {
  if (points[at]!.elevationM === null) return null;
  const [ts, ys]: [number[], number[]] = [[], []];
  for (let one = from; one <= to; one += 1) {
    if (points[one]!.elevationM === null) continue;
    ts.push((points[one]!.atSeconds - points[at]!.atSeconds) / half);
    ys.push(points[one]!.elevationM!);
  }
  return fitPolynomial(ts, ys, 1)?.[0] ?? points[at]!.elevationM;
}

/** Median of some numbers; NaN of none. */
export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** The value below which a share of the numbers lies, straight in between; NaN of none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * share;
  const [low, high] = [sorted[Math.floor(at)], sorted[Math.ceil(at)]];
  return low === undefined || high === undefined ? Number.NaN : low + (high - low) * (at - Math.floor(at));
}
