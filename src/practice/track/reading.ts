/** Everything a track shows, and what it was not asked for want of data. */
import { readGround, type GroundEvent } from './ground.js';
import { findHolds, type Hold } from './holds.js';
import { median, motionOf, type Motion } from './motion.js';
import type { TrackAirfield } from './fields.js';
import type { TrackPoint } from './point.js';
import { TRACK_SETTINGS, type TrackSettings } from './settings.js';
import { findSteepTurns, type SteepTurn } from './turns.js';

/** Why something may be missing from a reading. */
export type Unseen =
  /** Points too far apart for steep turns. */
  | { what: 'steep-turns'; because: 'points-too-far-apart'; medianSeconds: number; coarsestSeconds: number }
  | { what: 'touch-and-goes'; because: 'no-elevation' }
  | { what: 'heights'; because: 'elevation-unchecked' }
  | { what: 'everything'; because: 'gap'; fromSeconds: number; toSeconds: number }
  /** So many gaps that they are told as one, from the first to the last. */
  | { what: 'everything'; because: 'many-gaps'; fromSeconds: number; toSeconds: number; count: number }
  | { what: 'landings'; because: 'stop-at-no-known-airfield'; fromSeconds: number; toSeconds: number };

export interface TrackReading {
  fromSeconds: number;
  toSeconds: number;
  ground: GroundEvent[];
  steepTurns: SteepTurn[];
  holds: Hold[];
  /** First and last movement, null where the recording begins or ends moving. */
  movement: { beginsSeconds: number | null; endsSeconds: number | null };
  unseen: Unseen[];
}

/** Gaps told one by one. */
const MOST_GAPS = 20;

/** Reads a track against airfields. The points are in order of time, as `readGpx` gives them. */
export function readTrack(
  points: readonly TrackPoint[],
  airfields: readonly TrackAirfield[],
  settings: TrackSettings = TRACK_SETTINGS,
): TrackReading {
  if (points.length < 2) throw new RangeError('a track has at least two points');
  const motion = motionOf(points, settings);
  const ground = readGround(motion, airfields, settings);
  const unseen: Unseen[] = [];
  const steps: number[] = [];
  const gaps: { fromSeconds: number; toSeconds: number }[] = [];
  for (let at = 1; at < motion.length; at += 1) {
    const [a, b] = [motion[at - 1]!, motion[at]!];
    steps.push(b.atSeconds - a.atSeconds);
    if (a.stretch !== b.stretch) gaps.push({ fromSeconds: a.atSeconds, toSeconds: b.atSeconds });
  }
  const [first, last] = [gaps[0], gaps[gaps.length - 1]];
  if (first && last && gaps.length > MOST_GAPS)
    unseen.push({
      what: 'everything',
      because: 'many-gaps',
      fromSeconds: first.fromSeconds,
      toSeconds: last.toSeconds,
      count: gaps.length,
    });
  else unseen.push(...gaps.map((gap) => ({ what: 'everything' as const, because: 'gap' as const, ...gap })));
  const medianSeconds = median(steps);
  const { coarsestSeconds } = settings.steepTurn;
  if (!(medianSeconds <= coarsestSeconds))
    unseen.push({ what: 'steep-turns', because: 'points-too-far-apart', medianSeconds, coarsestSeconds });
  if (ground.withoutElevation) unseen.push({ what: 'touch-and-goes', because: 'no-elevation' });
  else if (!ground.elevations.checked) unseen.push({ what: 'heights', because: 'elevation-unchecked' });
  for (const stop of ground.stopsElsewhere)
    unseen.push({ what: 'landings', because: 'stop-at-no-known-airfield', ...stop });
  return {
    fromSeconds: motion[0]!.atSeconds,
    toSeconds: motion[motion.length - 1]!.atSeconds,
    ground: ground.events,
    steepTurns: findSteepTurns(motion, settings),
    holds: findHolds(motion, settings),
    movement: movementOf(motion, ground.events, settings),
    unseen,
  };
}

/**
 * From the last stillness before the first take-off to the first one after the last landing: the aircraft moves under its
 * own power for flight until it comes to rest after landing (14 CFR 1.1, flight time).
 */
function movementOf(
  motion: readonly Motion[],
  events: readonly GroundEvent[],
  settings: TrackSettings,
): TrackReading['movement'] {
  const takeOff = events.find(({ kind }) => kind === 'take-off')?.atSeconds;
  const landing = events.filter(({ kind }) => kind === 'landing').pop()?.atSeconds;
  const { restMps, restSeconds } = settings.ground;
  const rests: [number, number][] = [];
  let since: number | null = null;
  for (const [at, { groundMps, atSeconds }] of motion.entries()) {
    const still = groundMps <= restMps;
    if (still) since ??= atSeconds;
    const over = !still || at === motion.length - 1;
    if (over && since !== null) {
      if (atSeconds - since >= restSeconds) rests.push([since, atSeconds]);
      since = null;
    }
  }
  // Run-up and waiting at the runway are stillness too; off blocks is the end of the first rest before the take-off.
  const before = takeOff === undefined ? undefined : rests.find(([, to]) => to <= takeOff);
  const after = landing === undefined ? undefined : rests.filter(([from]) => from >= landing).pop();
  return { beginsSeconds: before?.[1] ?? null, endsSeconds: after?.[0] ?? null };
}
