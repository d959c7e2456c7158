/**
 * Take-offs, landings and go-arounds, from visits to the ground. A visit is a stretch at an airfield between two times
 * well above it. Ground effect, a float and a low pass look alike to within a few metres, so every event says how sure it
 * is, and a landing is called a full stop only where the track shows the stop.
 */
import { confidence, slope, type Confidence, type ConfidencePart } from './confidence.js';
import { elevationsOf, fieldsAt, runwayAlong, type Elevations, type TrackAirfield } from './fields.js';
import { directionDeg, MPS_PER_KT, type Motion } from './motion.js';
import type { TrackSettings } from './settings.js';

interface AtRunway {
  atSeconds: number;
  airfield: string;
  /** Null: no runway of record lies along the motion. */
  runway: string | null;
  groundKt: number;
  confidence: Confidence;
}

export interface TakeOff extends AtRunway {
  kind: 'take-off';
}

export interface Landing extends AtRunway {
  kind: 'landing';
  /** True: it stopped. False: it rolled on and flew again. Null: it slowed to a taxi, or the recording ends in the roll. */
  fullStop: boolean | null;
  slowestKt: number;
  /** Seconds close above or on the ground. */
  lowSeconds: number;
}

/** Down to the runway and away again without landing on it. */
export interface LowApproach extends AtRunway {
  kind: 'low-approach';
  lowestFt: number | null;
}

export type GroundEvent = TakeOff | Landing | LowApproach;

/** A stretch near the ground of one airfield. */
export interface Visit {
  field: TrackAirfield;
  first: number;
  last: number;
  /** The recording begins, or a gap ends, within it: how it got there was not seen. */
  beginsUnseen: boolean;
  endsUnseen: boolean;
}

/** Everything about the ground in one flight. */
export interface GroundReading {
  events: GroundEvent[];
  visits: Visit[];
  elevations: Elevations;
  /** Without elevations touch-and-goes are not looked for. */
  withoutElevation: boolean;
  /** Stops of a minute or more where no airfield of record is. */
  stopsElsewhere: { fromSeconds: number; toSeconds: number }[];
}

/** How a point stands to the ground. */
interface Level {
  high: boolean;
  low: boolean;
  touch: boolean;
  heightM: number | null;
}

const M_TO_FT = 1 / 0.3048;

export function readGround(
  motion: readonly Motion[],
  airfields: readonly TrackAirfield[],
  settings: TrackSettings,
): GroundReading {
  const fields = fieldsAt(motion, airfields, settings);
  const elevations = elevationsOf(motion, fields, settings);
  const withoutElevation = motion.some(({ elevationM }, at) => fields[at] !== null && elevationM === null);
  const levels = motion.map((one, at) =>
    levelOf(one, fields[at] ?? null, elevations, withoutElevation, settings),
  );
  const visits = visitsOf(motion, fields, levels);
  const events = visits.flatMap((visit) =>
    eventsOf(visit, motion, levels, elevations, withoutElevation, settings),
  );
  return {
    events,
    visits,
    elevations,
    withoutElevation,
    stopsElsewhere: stopsElsewhere(motion, fields, settings),
  };
}

function levelOf(
  one: Motion,
  field: TrackAirfield | null,
  elevations: Elevations,
  withoutElevation: boolean,
  { ground }: TrackSettings,
): Level {
  if (!field) return { high: true, low: false, touch: false, heightM: null };
  if (withoutElevation || one.elevationM === null) {
    const slow = one.groundMps <= ground.rollMps;
    return { high: one.groundMps >= ground.flyingMps, low: slow, touch: slow, heightM: null };
  }
  const heightM = one.elevationM - elevations.offsetAtM(one.atSeconds) - field.elevationFt / M_TO_FT;
  // At a walk the aircraft is on the ground whatever the elevation says.
  const rests = one.groundMps <= ground.restMps;
  return {
    high: heightM >= ground.highM && !rests,
    low: heightM <= ground.lowM || rests,
    touch: heightM <= ground.touchM || rests,
    heightM,
  };
}

function visitsOf(
  motion: readonly Motion[],
  fields: readonly (TrackAirfield | null)[],
  levels: readonly Level[],
): Visit[] {
  const visits: Visit[] = [];
  for (let at = 0; at < motion.length; at += 1) {
    const field = fields[at];
    if (!field || levels[at]!.high) continue;
    let end = at;
    while (
      end + 1 < motion.length &&
      fields[end + 1] === field &&
      !levels[end + 1]!.high &&
      motion[end + 1]!.stretch === motion[at]!.stretch
    )
      end += 1;
    const broken = (one: number): boolean =>
      motion[one] === undefined || motion[one]!.stretch !== motion[at]!.stretch;
    visits.push({ field, first: at, last: end, beginsUnseen: broken(at - 1), endsUnseen: broken(end + 1) });
    at = end;
  }
  return visits;
}

function eventsOf(
  visit: Visit,
  motion: readonly Motion[],
  levels: readonly Level[],
  elevations: Elevations,
  withoutElevation: boolean,
  settings: TrackSettings,
): GroundEvent[] {
  const { ground } = settings;
  const indices = Array.from({ length: visit.last - visit.first + 1 }, (_one, k) => visit.first + k);
  const low = indices.filter((at) => levels[at]!.touch);
  const braked = brakedIn(visit, indices, motion, levels, settings);
  const touching = [...new Set([...low, ...braked])].sort((a, b) => a - b);
  const lowSeconds = timeOf(indices, motion, (at) => levels[at]!.low || braked.includes(at));
  const first = touching[0];
  const last = touching[touching.length - 1];
  if (first === undefined || last === undefined || lowSeconds < ground.contactSeconds)
    return lowApproach(visit, indices, motion, levels, elevations, settings);
  const bySpeed: ConfidencePart[] = low.length === 0 ? [{ because: 'by-speed-alone', factor: 0.8 }] : [];
  const shared: ConfidencePart[] = withoutElevation
    ? [{ because: 'no-elevation', factor: 0.6 }]
    : elevations.checked
      ? []
      : [{ because: 'elevation-unchecked', factor: 0.5 }];
  const events: GroundEvent[] = [];
  if (!visit.beginsUnseen) {
    const onGround = indices.filter((at) => at >= first && at <= last);
    const slowest = Math.min(...onGround.map((at) => motion[at]!.groundMps));
    const stopped = timeOf(onGround, motion, (at) => motion[at]!.groundMps <= ground.stopMps);
    const fullStop =
      stopped >= ground.stopSeconds
        ? true
        : slowest > ground.rollMps && !visit.endsUnseen && !withoutElevation
          ? false
          : null;
    const lands = alongRunway(visit.field, motion[first]!, settings);
    events.push({
      kind: 'landing',
      atSeconds: motion[first]!.atSeconds,
      airfield: visit.field.code,
      runway: lands.runway,
      groundKt: motion[first]!.groundMps / MPS_PER_KT,
      fullStop,
      slowestKt: slowest / MPS_PER_KT,
      lowSeconds,
      confidence: confidence([
        ...shared,
        ...bySpeed,
        ...lands.parts,
        // A stop leaves no doubt that it landed.
        ...(fullStop === true
          ? []
          : [
              {
                because: 'time-on-ground' as const,
                factor: slope(lowSeconds, 2 * ground.contactSeconds, ground.contactSeconds, 0.6),
              },
              { because: 'speed-between' as const, factor: fullStop === null ? 0.7 : 0.9 },
            ]),
        ...(visit.endsUnseen && fullStop !== true
          ? [{ because: 'recording-ends' as const, factor: 0.7 }]
          : []),
      ]),
    });
  }
  if (!visit.endsUnseen) {
    const leaves = alongRunway(visit.field, motion[last]!, settings);
    events.push({
      kind: 'take-off',
      atSeconds: motion[last]!.atSeconds,
      airfield: visit.field.code,
      runway: leaves.runway,
      groundKt: motion[last]!.groundMps / MPS_PER_KT,
      confidence: confidence([...shared, ...bySpeed, ...leaves.parts]),
    });
  }
  return events;
}

/**
 * Points at which the aircraft must have been braked by its wheels: low, and slower by a good part than on the way in. An
 * aircraft that goes around gains speed instead. Only for a visit whose beginning was seen.
 */
function brakedIn(
  visit: Visit,
  indices: readonly number[],
  motion: readonly Motion[],
  levels: readonly Level[],
  { ground }: TrackSettings,
): number[] {
  if (visit.beginsUnseen) return [];
  const entry = motion[visit.first]!.groundMps * ground.brakedShare;
  return indices.filter((at) => {
    const { heightM } = levels[at]!;
    return heightM !== null && heightM <= ground.brakedM && motion[at]!.groundMps <= entry;
  });
}

function lowApproach(
  visit: Visit,
  indices: readonly number[],
  motion: readonly Motion[],
  levels: readonly Level[],
  elevations: Elevations,
  settings: TrackSettings,
): LowApproach[] {
  if (visit.beginsUnseen || visit.endsUnseen) return [];
  let lowest = indices[0]!;
  for (const at of indices)
    if ((levels[at]!.heightM ?? Infinity) < (levels[lowest]!.heightM ?? Infinity)) lowest = at;
  const along = alongRunway(visit.field, motion[lowest]!, settings);
  // Low and across every runway is no approach to one.
  if (visit.field.runways.length > 0 && along.runway === null) return [];
  const { heightM } = levels[lowest]!;
  if (heightM === null) return [];
  return [
    {
      kind: 'low-approach',
      atSeconds: motion[lowest]!.atSeconds,
      airfield: visit.field.code,
      runway: along.runway,
      groundKt: motion[lowest]!.groundMps / MPS_PER_KT,
      lowestFt: heightM * M_TO_FT,
      confidence: confidence([
        ...along.parts,
        ...(elevations.checked ? [] : [{ because: 'elevation-unchecked' as const, factor: 0.5 }]),
      ]),
    },
  ];
}

/** Seconds for which something holds, each point standing for the time half-way to its neighbours. */
function timeOf(
  indices: readonly number[],
  motion: readonly Motion[],
  holds: (at: number) => boolean,
): number {
  let sum = 0;
  for (const [k, at] of indices.entries()) {
    if (!holds(at)) continue;
    const before = indices[k - 1] ?? at;
    const after = indices[k + 1] ?? at;
    sum += (motion[after]!.atSeconds - motion[before]!.atSeconds) / 2;
  }
  return sum;
}

function alongRunway(
  field: TrackAirfield,
  one: Motion,
  settings: TrackSettings,
): { runway: string | null; parts: ConfidencePart[] } {
  if (field.runways.length === 0)
    return { runway: null, parts: [{ because: 'no-runway-along', factor: 0.8 }] };
  const direction = directionDeg(one.eastMps, one.northMps);
  const found = runwayAlong(field, direction, settings.ground.runwayDeg);
  if (found) return { runway: found.designator, parts: [] };
  return { runway: null, parts: [{ because: 'no-runway-along', factor: 0.5 }] };
}

/** At least a minute at a walk away from every airfield given: a landing there would otherwise go unsaid. */
function stopsElsewhere(
  motion: readonly Motion[],
  fields: readonly (TrackAirfield | null)[],
  { ground }: TrackSettings,
): { fromSeconds: number; toSeconds: number }[] {
  const found: { fromSeconds: number; toSeconds: number }[] = [];
  for (let at = 0; at < motion.length; at += 1) {
    if (fields[at] || motion[at]!.groundMps > ground.restMps) continue;
    let end = at;
    while (end + 1 < motion.length && !fields[end + 1] && motion[end + 1]!.groundMps <= ground.restMps)
      end += 1;
    const [fromSeconds, toSeconds] = [motion[at]!.atSeconds, motion[end]!.atSeconds];
    if (toSeconds - fromSeconds >= 60) found.push({ fromSeconds, toSeconds });
    at = end;
  }
  return found;
}
