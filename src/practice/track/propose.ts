/**
 * What a member might enter, made from a track: proposals to be confirmed, never entries. Each number carries the events
 * it was counted from and how sure they are. What a track cannot show is null, and not counted as a yes.
 */
import { toInstant, type Instant } from '../../rules/calendar/instants.js';
import { isNight } from '../../rules/sky/nights.js';
import type { Range } from './turns.js';
import type { TrackAirfield } from './fields.js';
import type { GroundEvent, Landing, TakeOff } from './ground.js';
import { nightSeconds } from './night.js';
import type { TrackPoint } from './point.js';
import type { TrackReading } from './reading.js';

/** A proposed value; null where the track does not tell. `evidence` names events by their ids. */
export interface Proposed<T> {
  value: T | null;
  evidence: string[];
  /** The least sure of the evidence; 1 where it rests on recorded times and places alone; 0 where there is no value. */
  confidence: number;
  /** What the member should know before taking it over. */
  caveats: Caveat[];
}

export type Caveat =
  /** The recording begins or ends while the aircraft moves. */
  | 'recording-begins-moving'
  | 'recording-ends-moving'
  /** Something within the flight was not recorded, so there may be more. */
  | 'may-be-more'
  /** A go-around may have touched the runway; in a recording that wanders in height the two look alike. */
  | 'go-arounds-seen'
  /** Events whose kind is not settled were left out. */
  | 'unsettled-left-out'
  /** Holding counts towards instrument recency only by instruments, actual or simulated (14 CFR 61.57(c)). */
  | 'instrument-conditions-not-seen'
  /** Airspeed deviations are of true airspeed about its own mean, not against the speed meant. */
  | 'airspeed-about-its-mean'
  /** Who was at the controls a track does not show (14 CFR 61.57(a)(1)(i)). */
  | 'manipulator-not-seen';

/** A log entry as far as a track can fill it. Hours in tenths. */
export interface LogProposal {
  departedAt: Proposed<Instant>;
  arrivedAt: Proposed<Instant>;
  fromAirfield: Proposed<string>;
  toAirfield: Proposed<string>;
  takeoffs: Proposed<number>;
  landings: Proposed<number>;
  fullStopLandings: Proposed<number>;
  nightTakeoffs: Proposed<number>;
  nightFullStopLandings: Proposed<number>;
  holding: Proposed<boolean>;
  totalTenths: Proposed<number>;
  nightTenths: Proposed<number>;
}

/** A manoeuvre flown, as measured. Values may be a span; what was not measured is absent. */
export interface PracticeProposal {
  id: string;
  task: 'steep_turn' | 'holding' | 'landing' | 'go_around';
  at: Instant;
  until: Instant;
  measured: Partial<Record<'altitudeDevFt' | 'airspeedDevKt' | 'bankDeg' | 'rolloutDevDeg', number | Range>>;
  airfield: string | null;
  night: boolean | null;
  confidence: number;
  caveats: Caveat[];
}

export interface Proposals {
  log: LogProposal;
  practice: PracticeProposal[];
  /** Ids of the events: `landing-2` is the second landing. */
  events: Record<string, GroundEvent | TrackReading['steepTurns'][number] | TrackReading['holds'][number]>;
}

export function propose(
  points: readonly TrackPoint[],
  airfields: readonly TrackAirfield[],
  reading: TrackReading,
): Proposals {
  const events: Proposals['events'] = {};
  const named = <E extends GroundEvent | Proposals['events'][string]>(found: readonly E[]): Named<E>[] => {
    const counts: Record<string, number> = {};
    return found.map((event) => {
      const number = (counts[event.kind] = (counts[event.kind] ?? 0) + 1);
      const id = `${event.kind}-${number}`;
      events[id] = event;
      return { id, event };
    });
  };
  const ground = named(reading.ground);
  const turns = named(reading.steepTurns);
  const holds = named(reading.holds);
  const nightAt = (one: GroundEvent): boolean | null => {
    const field = airfields.find(({ code }) => code === one.airfield);
    return field ? isNight('passenger', field, Math.round(one.atSeconds)) : null;
  };
  const log = logOf(points, reading, ground, holds, nightAt);
  const span = (from: number, to: number): Pick<PracticeProposal, 'at' | 'until'> => ({
    at: toInstant(Math.round(from)),
    until: toInstant(Math.round(to)),
  });
  const practice: PracticeProposal[] = [
    ...turns.map(({ id, event }) => ({
      id,
      task: 'steep_turn' as const,
      ...span(event.fromSeconds, event.toSeconds),
      measured: {
        bankDeg: event.bankRangeDeg,
        airspeedDevKt: event.airspeedDevKt,
        ...(event.altitudeDevFt === null ? {} : { altitudeDevFt: event.altitudeDevFt }),
        ...(event.rolloutDevDeg === null ? {} : { rolloutDevDeg: event.rolloutDevDeg }),
      },
      airfield: null,
      night: null,
      confidence: event.confidence.value,
      caveats: ['airspeed-about-its-mean' as const, 'manipulator-not-seen' as const],
    })),
    ...holds.map(({ id, event }) => ({
      id,
      task: 'holding' as const,
      ...span(event.fromSeconds, event.toSeconds),
      measured: {},
      airfield: null,
      night: null,
      confidence: event.confidence.value,
      caveats: ['instrument-conditions-not-seen' as const, 'manipulator-not-seen' as const],
    })),
    ...ground.flatMap(({ id, event }) =>
      event.kind === 'take-off'
        ? []
        : [
            {
              id,
              task: event.kind === 'landing' ? ('landing' as const) : ('go_around' as const),
              ...span(event.atSeconds, event.atSeconds),
              // Where the wheels touched is not known to a runway's length in time and height, so no distance is given.
              measured: {},
              airfield: event.airfield,
              night: nightAt(event),
              confidence: event.confidence.value,
              caveats: ['manipulator-not-seen' as const],
            },
          ],
    ),
  ];
  practice.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1));
  return { log, practice, events };
}

interface Named<E> {
  id: string;
  event: E;
}

function logOf(
  points: readonly TrackPoint[],
  reading: TrackReading,
  ground: readonly Named<GroundEvent>[],
  holds: readonly Named<TrackReading['holds'][number]>[],
  nightAt: (one: GroundEvent) => boolean | null,
): LogProposal {
  const takeOffs = ground.filter((one): one is Named<TakeOff> => one.event.kind === 'take-off');
  const landings = ground.filter((one): one is Named<Landing> => one.event.kind === 'landing');
  const unseen = reading.unseen.some(
    ({ what }) => what === 'everything' || what === 'touch-and-goes' || what === 'landings',
  );
  const more: Caveat[] = unseen ? ['may-be-more'] : [];
  const unsettled: Caveat[] = landings.some(({ event }) => event.fullStop === null)
    ? ['unsettled-left-out']
    : [];
  const count = (found: readonly Named<GroundEvent>[], extra: Caveat[] = []): Proposed<number> => ({
    value: found.length,
    evidence: found.map(({ id }) => id),
    confidence: leastOf(found.map(({ event }) => event.confidence.value)),
    caveats: [...more, ...extra, ...(found.length > 0 ? ['manipulator-not-seen' as const] : [])],
  });
  const place = (one: Named<GroundEvent> | undefined): Proposed<string> =>
    one
      ? { value: one.event.airfield, evidence: [one.id], confidence: one.event.confidence.value, caveats: [] }
      : missing([]);
  const fullStops = landings.filter(({ event }) => event.fullStop === true);
  const { beginsSeconds: begins, endsSeconds: ends } = reading.movement;
  const moving: Caveat[] = [
    ...(begins === null ? ['recording-begins-moving' as const] : []),
    ...(ends === null ? ['recording-ends-moving' as const] : []),
  ];
  const when = (at: number | null, caveat: Caveat): Proposed<Instant> =>
    at === null ? missing([caveat]) : certain(toInstant(Math.round(at)));
  const whole = begins === null || ends === null ? null : ([begins, ends] as const);
  const firstUp = takeOffs[0];
  const lastDown = landings[landings.length - 1];
  return {
    departedAt: when(begins, 'recording-begins-moving'),
    arrivedAt: when(ends, 'recording-ends-moving'),
    // A flight that was in the air when the recording began left from somewhere else.
    fromAirfield: place(firstUp && ground[0] === firstUp ? firstUp : undefined),
    toAirfield: place(lastDown && ground[ground.length - 1] === lastDown ? lastDown : undefined),
    takeoffs: count(takeOffs),
    landings: count(
      landings,
      ground.some(({ event }) => event.kind === 'low-approach') ? ['go-arounds-seen'] : [],
    ),
    fullStopLandings: count(fullStops, unsettled),
    nightTakeoffs: count(takeOffs.filter(({ event }) => nightAt(event) === true)),
    nightFullStopLandings: count(
      fullStops.filter(({ event }) => nightAt(event) === true),
      unsettled,
    ),
    holding: {
      value: holds.length > 0,
      evidence: holds.map(({ id }) => id),
      confidence: leastOf(holds.map(({ event }) => event.confidence.value)),
      caveats: [...more, ...(holds.length > 0 ? ['instrument-conditions-not-seen' as const] : [])],
    },
    totalTenths: whole ? certain(tenths(whole[1] - whole[0])) : missing(moving),
    nightTenths: whole ? certain(tenths(nightSeconds(points, ...whole))) : missing(moving),
  };
}

const tenths = (seconds: number): number => Math.round(seconds / 360);
const leastOf = (values: readonly number[]): number => Math.min(1, ...values);
const certain = <T>(value: T): Proposed<T> => ({ value, evidence: [], confidence: 1, caveats: [] });
const missing = <T>(caveats: Caveat[]): Proposed<T> => ({
  value: null,
  evidence: [],
  confidence: 0,
  caveats,
});
