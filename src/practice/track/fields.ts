/** Which airfield a point is at, and how high above it: the recorder's elevation is checked where the aircraft rests. */
import type { AirfieldFact, RunwayFact } from '../../rules/facts/flight.js';
import { distanceM, M_PER_FT, median, turnDeg, type Motion } from './motion.js';
import type { TrackSettings } from './settings.js';

/** What the detection needs of an airfield. */
export type TrackAirfield = Pick<AirfieldFact, 'code' | 'latitudeDeg' | 'longitudeDeg' | 'elevationFt'> & {
  runways: readonly Pick<RunwayFact, 'designator' | 'trueHeadingDeg' | 'lengthFt'>[];
};

/** A point against the airfields. */
export interface Whereabouts {
  field: TrackAirfield | null;
  /** Above the airfield's elevation; null away from one, or without an elevation. */
  heightM: number | null;
}

/** By how much the recorder's elevation was off, and whether that was seen at rest on an airfield. */
export interface Elevations {
  checked: boolean;
  offsetAtM(atSeconds: number): number;
}

const DEG_PER_M = 1 / 111_000;
/** Used where no runway is on record. */
const REACH_M = 2000;

const reachM = (field: TrackAirfield, marginM: number): number =>
  field.runways.length === 0
    ? REACH_M
    : Math.max(...field.runways.map(({ lengthFt }) => lengthFt)) * M_PER_FT + marginM;

/** The nearest airfield within its reach, for every point. */
export function fieldsAt(
  motion: readonly Motion[],
  airfields: readonly TrackAirfield[],
  settings: TrackSettings,
): (TrackAirfield | null)[] {
  const reaches = airfields.map((field) => reachM(field, settings.ground.marginM));
  return motion.map((one) => {
    let best: TrackAirfield | null = null;
    let bestM = Number.POSITIVE_INFINITY;
    for (const [at, field] of airfields.entries()) {
      // A degree of latitude is 111 km everywhere: most airfields need no geodesic.
      if (Math.abs(one.latitudeDeg - field.latitudeDeg) > reaches[at]! * DEG_PER_M * 1.02) continue;
      const away = distanceM(one, field);
      if (away > reaches[at]! || away >= bestM) continue;
      [best, bestM] = [field, away];
    }
    return best;
  });
}

/** A rest on an airfield: when, and how far the recorder was off. */
interface Rest {
  at: number;
  offsetM: number;
}

/**
 * The recorder's error over the flight, straight between rests: pressure changes in flight, and many receivers give the
 * height above the ellipsoid, tens of metres from mean sea level.
 */
export function elevationsOf(
  motion: readonly Motion[],
  fields: readonly (TrackAirfield | null)[],
  settings: TrackSettings,
): Elevations {
  const { restMps, restSeconds, mostOffsetM } = settings.ground;
  const rests: Rest[] = [];
  for (let at = 0; at < motion.length; at += 1) {
    const field = fields[at];
    if (!field || motion[at]!.groundMps > restMps) continue;
    let end = at;
    while (
      end + 1 < motion.length &&
      fields[end + 1] === field &&
      motion[end + 1]!.groundMps <= restMps &&
      motion[end + 1]!.stretch === motion[at]!.stretch
    )
      end += 1;
    const offsets = motion
      .slice(at, end + 1)
      .flatMap(({ elevationM }) => (elevationM === null ? [] : [elevationM - field.elevationFt * M_PER_FT]));
    const seconds = motion[end]!.atSeconds - motion[at]!.atSeconds;
    const offsetM = median(offsets);
    if (seconds >= restSeconds && Math.abs(offsetM) <= mostOffsetM)
      rests.push({ at: (motion[at]!.atSeconds + motion[end]!.atSeconds) / 2, offsetM });
    at = end;
  }
  return { checked: rests.length > 0, offsetAtM: (at) => between(rests, at) };
}

function between(rests: readonly Rest[], at: number): number {
  const after = rests.findIndex((rest) => rest.at >= at);
  if (rests.length === 0) return 0;
  if (after === 0) return rests[0]!.offsetM;
  if (after < 0) return rests[rests.length - 1]!.offsetM;
  const [a, b] = [rests[after - 1]!, rests[after]!];
  return a.offsetM + ((b.offsetM - a.offsetM) * (at - a.at)) / (b.at - a.at);
}

/** The runway a direction of motion lies along; null when it lies along none. */
export function runwayAlong(
  field: TrackAirfield,
  directionDeg: number,
  withinDeg: number,
): { designator: string; offDeg: number } | null {
  let best: { designator: string; offDeg: number } | null = null;
  for (const { designator, trueHeadingDeg } of field.runways) {
    const offDeg = Math.abs(turnDeg(trueHeadingDeg, directionDeg));
    if (offDeg <= withinDeg && (best === null || offDeg < best.offDeg)) best = { designator, offDeg };
  }
  return best;
}
