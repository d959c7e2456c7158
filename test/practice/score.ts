/** Detection counted against flights whose truth is known: how much of what was flown is found, and of what is found was flown. */
import { readTrack, type TrackReading } from '../../src/practice/track/reading.js';
import { FIELD, Flight, type Recorder, type Wind } from './flight.js';

export interface Count {
  /** Flown and found; flown and not found; found and not flown. */
  hit: number;
  missed: number;
  invented: number;
}

/** One row of the table. */
export interface Row {
  what: string;
  wind: string;
  noise: string;
  count: Count;
}

export const precision = ({ hit, invented }: Count): number =>
  hit + invented === 0 ? 1 : hit / (hit + invented);
export const recall = ({ hit, missed }: Count): number => (hit + missed === 0 ? 1 : hit / (hit + missed));

export const WINDS: readonly Wind[] = [
  { fromDeg: 0, kt: 0 },
  { fromDeg: 75, kt: 15 },
  { fromDeg: 210, kt: 30 },
];
/**
 * White scatter is the harder part, and harsher than most receivers, which smooth; the wander is what they do not smooth
 * (common practice, no source).
 */
export const NOISES: readonly (Recorder & { name: string })[] = [
  { name: 'none' },
  { name: '1 m + 2 m wander', whiteM: 1, wanderM: 2 },
  { name: '3 m + 3 m wander', whiteM: 3, wanderM: 3 },
];

const nameOf = ({ fromDeg, kt }: Wind): string => (kt === 0 ? 'calm' : `${fromDeg} at ${kt}`);

export const added = (rows: readonly Row[]): Count =>
  rows.reduce(
    (sum, { count }) => ({
      hit: sum.hit + count.hit,
      missed: sum.missed + count.missed,
      invented: sum.invented + count.invented,
    }),
    { hit: 0, missed: 0, invented: 0 },
  );

interface Span {
  fromSeconds: number;
  toSeconds: number;
}

/** One to one, where more than half of what was flown is covered. */
function matched(flown: readonly Span[], found: readonly Span[]): Count {
  const left = [...found];
  let hit = 0;
  for (const truth of flown) {
    const at = left.findIndex(
      (one) =>
        Math.min(one.toSeconds, truth.toSeconds) - Math.max(one.fromSeconds, truth.fromSeconds) >
        (truth.toSeconds - truth.fromSeconds) / 2,
    );
    if (at < 0) continue;
    left.splice(at, 1);
    hit += 1;
  }
  return { hit, missed: flown.length - hit, invented: left.length };
}

/** Runs a part of the flight and tells when it was. */
export function timed(flight: Flight, fly: () => void): Span {
  const from = flight.t;
  fly();
  return { fromSeconds: flight.beginsAt + from, toSeconds: flight.beginsAt + flight.t };
}

const SEEDS = [11, 12];
/** How far recorders are off in height. */
const OFFSETS_M = [-40, 0, 35];

/** Turns of one bank, right and left, once and twice round; steep from 37.5 degrees on. */
export function steepTurnRows(banks: readonly number[]): Row[] {
  const rows: Row[] = [];
  for (const bank of banks)
    for (const wind of WINDS)
      for (const noise of NOISES) {
        const counts = SEEDS.map((seed) => {
          const flight = Flight.inTheAir(wind, 100, 900, 40 * seed);
          flight.straight(20);
          const spans = [360, -360, 720].map((degrees) => {
            const span = timed(flight, () => flight.turn(degrees, bank, 0, 2));
            flight.straight(15);
            return span;
          });
          const { steepTurns } = readTrack(flight.points({ ...noise, seed }), []);
          return matched(bank >= 37.5 ? spans : [], steepTurns);
        });
        rows.push({
          what: `${bank} deg`,
          wind: nameOf(wind),
          noise: noise.name,
          count: added(counts.map((count) => ({ what: '', wind: '', noise: '', count }))),
        });
      }
  return rows;
}

/** What is easily taken for a steep turn: spirals up and down, half turns to and fro, a turn that never settles. */
export function notSteepRows(): Row[] {
  const kinds: Record<string, (flight: Flight) => void> = {
    'steep spiral down': (flight) => flight.turn(720, 45, -6),
    'climbing turn': (flight) => flight.turn(720, 40, 5),
    'half turns': (flight) => flight.turn(180, 45).turn(-180, 45).turn(180, 45).turn(-180, 45),
    'medium turns': (flight) => flight.turn(360, 30).turn(-360, 30),
    'three quarters': (flight) => flight.turn(270, 50),
  };
  return gridOf(kinds, (flight, seed, noise) =>
    matched([], readTrack(flight.points({ ...noise, seed }), []).steepTurns),
  );
}

function gridOf(
  kinds: Record<string, (flight: Flight) => void>,
  count: (flight: Flight, seed: number, noise: Recorder, fly: (flight: Flight) => void) => Count,
): Row[] {
  const rows: Row[] = [];
  for (const [what, fly] of Object.entries(kinds))
    for (const wind of WINDS)
      for (const noise of NOISES) {
        const counts = SEEDS.map((seed) => {
          const flight = Flight.inTheAir(wind, 95, 1200, 25 * seed);
          flight.straight(20);
          fly(flight);
          flight.straight(20);
          return { what, wind: '', noise: '', count: count(flight, seed, noise, fly) };
        });
        rows.push({ what, wind: nameOf(wind), noise: noise.name, count: added(counts) });
      }
  return rows;
}

/**
 * Holds of one to three rounds to either side. In 30 kt of wind the pilot of these flights, who does not change his timing,
 * makes no pattern that anybody would call one.
 */
export function holdRows(): Row[] {
  const rows: Row[] = [];
  for (const rounds of [1, 2, 3])
    for (const wind of [WINDS[0]!, WINDS[1]!, { fromDeg: 210, kt: 20 }])
      for (const noise of NOISES) {
        const counts = SEEDS.map((seed) => {
          const flight = Flight.inTheAir(wind, 95, 900, 90);
          flight.straight(5);
          const span = timed(flight, () => flight.hold(9000, 3000, rounds, seed % 2 === 0 ? 1 : -1));
          // The way to the fix is not part of it.
          span.fromSeconds = span.toSeconds - rounds * 230;
          flight.straight(30);
          const { holds } = readTrack(flight.points({ ...noise, seed }), []);
          return { what: '', wind: '', noise: '', count: matched([span], holds) };
        });
        rows.push({ what: `${rounds} rounds`, wind: nameOf(wind), noise: noise.name, count: added(counts) });
      }
  return rows;
}

/** What is easily taken for a hold. */
export function notHoldRows(): Row[] {
  const kinds: Record<string, (flight: Flight) => void> = {
    rectangles: (flight) => {
      for (let side = 0; side < 8; side += 1) flight.straight(40).turn(-90, 20);
    },
    'half turns to and fro': (flight) => {
      for (let half = 0; half < 4; half += 1) flight.straight(50).turn(half % 2 ? 180 : -180, 15);
    },
    'whole turns': (flight) => flight.turn(720, 15),
    'steep turns': (flight) => flight.turn(360, 45).straight(30).turn(360, 45).straight(30),
    'ovals that climb': (flight) => {
      for (let half = 0; half < 4; half += 1) flight.straight(50, 2).turn(180, 15, 2);
    },
  };
  return gridOf(kinds, (flight, seed, noise) =>
    matched([], readTrack(flight.points({ ...noise, seed }), []).holds),
  );
}

/** A flight with five take-offs, three touch-and-goes, two full stops and three go-arounds. */
export function groundFlight(wind: Wind): Flight {
  const flight = new Flight(wind);
  flight.rest(40).takeOff().touchAndGo().goAround(18).touchAndGo().goAround(40).lowPass();
  flight.fullStop().taxiBack(7).rest(15).takeOff().touchAndGo().fullStop(6).taxiBack(6).rest(40);
  return flight;
}

/** How far the instant may be off: the wheels meet the runway a few seconds after the last metres of height. */
const AROUND_SECONDS = 15;
const KINDS = ['take-off', 'full stop', 'touch-and-go'] as const;

/** Landings and take-offs by kind, with recorders off by tens of metres in height. */
export function groundRows(everySeconds: number): Row[] {
  const rows: Row[] = [];
  const winds = [WINDS[0]!, { fromDeg: 60, kt: 15 }, { fromDeg: 130, kt: 10 }];
  for (const wind of winds) {
    const flight = groundFlight(wind);
    for (const noise of NOISES) {
      const sums: Record<string, Count> = {};
      for (const [at, elevationOffsetM] of OFFSETS_M.entries()) {
        const recorder = { ...noise, everySeconds, elevationOffsetM, seed: 11 + at };
        const { ground } = readTrack(flight.points(recorder), [FIELD]);
        for (const kind of KINDS) {
          const around = (one: { kind: string; atSeconds: number }): Span[] =>
            one.kind === kind
              ? [{ fromSeconds: one.atSeconds - AROUND_SECONDS, toSeconds: one.atSeconds + AROUND_SECONDS }]
              : [];
          const one = matched(flight.events.flatMap(around), ground.map(named).flatMap(around));
          const before = sums[kind] ?? { hit: 0, missed: 0, invented: 0 };
          sums[kind] = {
            hit: before.hit + one.hit,
            missed: before.missed + one.missed,
            invented: before.invented + one.invented,
          };
        }
      }
      for (const [what, count] of Object.entries(sums))
        rows.push({ what: `${what}, every ${everySeconds} s`, wind: nameOf(wind), noise: noise.name, count });
    }
  }
  return rows;
}

/** An event by the kinds flown; a landing whose stop is not settled is of no kind. */
function named(event: TrackReading['ground'][number]): { kind: string; atSeconds: number } {
  const { atSeconds } = event;
  if (event.kind !== 'landing') return { kind: event.kind, atSeconds };
  const kinds = { true: 'full stop', false: 'touch-and-go', null: 'unsettled' } as const;
  return { kind: kinds[`${event.fullStop}`], atSeconds };
}

/** The table as text, one line for what and noise, winds side by side; asked for with PRACTICE_TABLE=1. */
export function print(title: string, rows: readonly Row[]): void {
  if (process.env.PRACTICE_TABLE !== '1') return;
  const whats = [...new Set(rows.map(({ what }) => what))];
  const lines = [`${title}: precision / recall (flown, invented)`];
  for (const what of whats)
    for (const noise of new Set(rows.map((row) => row.noise))) {
      const cells = rows
        .filter((row) => row.what === what && row.noise === noise)
        .map(({ wind, count }) => {
          const figures = `${precision(count).toFixed(2)} / ${recall(count).toFixed(2)}`;
          return `${wind}: ${figures} (${count.hit + count.missed}, ${count.invented})`;
        });
      lines.push(`  ${what.padEnd(26)} ${noise.padEnd(18)} ${cells.join('   ')}`);
    }
  console.log(lines.join('\n'));
}
