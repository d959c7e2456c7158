/** Whole flights, from file to proposals. Flight time: 14 CFR 1.1; night: 14 CFR 1.1 and 61.57(b) (from memory). */
import fc from 'fast-check';
import { propose } from '../../src/practice/track/propose.js';
import { nightSeconds } from '../../src/practice/track/night.js';
import { readGpx } from '../../src/practice/track/gpx.js';
import { readTrack } from '../../src/practice/track/reading.js';
import { judgeManoeuvre } from '../../src/practice/tolerances/judge.js';
import { sunTimes } from '../../src/rules/sky/sun.js';
import type { TrackPoint } from '../../src/practice/track/point.js';
import { FIELD, FIELD_M, Flight, gpxOf, KT, type Recorder } from './flight.js';

const WIND = { fromDeg: 60, kt: 12 };
const recorder: Recorder = { whiteM: 1, wanderM: 1, elevationOffsetM: -31, seed: 3 };

function proposalsOf(points: readonly TrackPoint[], airfields = [FIELD]) {
  const reading = readTrack(points, airfields);
  return { reading, ...propose(points, airfields, reading) };
}

function lesson(beginsAt?: number): Flight {
  const flight = new Flight(WIND, beginsAt);
  flight.rest(60).takeOff().touchAndGo().goAround(10).fullStop().taxiBack(7).rest(30).takeOff(900);
  flight.tas = 100 * KT;
  flight.straight(20).turn(360, 45).straight(15).turn(-360, 47).straight(20);
  flight.tas = 90 * KT;
  flight.hold(6000, 6000, 2);
  flight.tas = 85 * KT;
  return flight.fullStop(6).taxiBack(6).rest(60);
}

const LESSON = lesson();

test('a lesson from its file: log entry and practice, each with its evidence', () => {
  const flown = LESSON;
  const read = readGpx(gpxOf(flown.points(recorder)));
  if (!read.ok) throw new Error('not read');
  const { log, practice, events } = proposalsOf(read.points);
  expect(log.takeoffs.value).toBe(3);
  expect(log.landings.value).toBe(3);
  expect(log.fullStopLandings.value).toBe(2);
  expect(log.fromAirfield.value).toBe('ZZHB');
  expect(log.toAirfield.value).toBe('ZZHB');
  expect(log.holding).toMatchObject({
    value: true,
    evidence: ['hold-1'],
    caveats: ['instrument-conditions-not-seen'],
  });
  expect(log.landings.evidence).toEqual(['landing-1', 'landing-2', 'landing-3']);
  expect(log.landings.caveats).toContain('go-arounds-seen');
  expect(log.landings.caveats).toContain('manipulator-not-seen');
  for (const proposed of Object.values(log))
    for (const id of proposed.evidence) expect(events[id]).toBeDefined();
  expect(practice.map(({ task }) => task)).toEqual([
    'landing',
    'go_around',
    'landing',
    'steep_turn',
    'steep_turn',
    'holding',
    'landing',
  ]);
  const [right, left] = practice.filter(({ task }) => task === 'steep_turn');
  expect(Object.keys(right!.measured).sort()).toEqual([
    'airspeedDevKt',
    'altitudeDevFt',
    'bankDeg',
    'rolloutDevDeg',
  ]);
  expect(left!.measured.bankDeg).toMatchObject({ least: expect.any(Number) });
  expect(right!.caveats).toContain('airspeed-about-its-mean');
  // Flown at 45 and 47 degrees: to the private standard, and the first of them not to the commercial one throughout.
  expect(judgeManoeuvre('private', 'steep_turn', right!.measured, '2026-06-20')).toMatchObject({
    within: true,
  });
  expect(judgeManoeuvre('commercial', 'steep_turn', right!.measured, '2026-06-20')).toMatchObject({
    within: false,
    measures: expect.arrayContaining([expect.objectContaining({ measure: 'bankDeg', within: false })]),
  });
  // Off blocks when it first moves, on blocks when it stands for good: 60 s after the start and before the end.
  const seconds = flown.t - 120;
  expect(Math.abs(log.totalTenths.value! - seconds / 360)).toBeLessThanOrEqual(0.6);
  expect(log.nightTenths.value).toBe(0);
  expect(log.nightTakeoffs.value).toBe(0);
});

test('runways are told by the direction of motion', () => {
  const { reading } = proposalsOf(LESSON.points(recorder));
  expect(reading.ground.map(({ runway }) => runway)).toEqual(Array(reading.ground.length).fill('09'));
  const crossing = { ...FIELD, runways: [{ designator: '18', trueHeadingDeg: 180, lengthFt: 3600 }] };
  const other = proposalsOf(LESSON.points(recorder), [crossing]).reading.ground.filter(
    ({ kind }) => kind === 'take-off',
  );
  expect(other[0]!.runway).toBeNull();
  expect(other[0]!.confidence.parts).toContainEqual({ because: 'no-runway-along', factor: 0.5 });
});

test('a recorder tens of metres off changes no event', () => {
  const kinds = (offset: number): string[] =>
    proposalsOf(LESSON.points({ elevationOffsetM: offset })).reading.ground.map(({ kind }) => kind);
  for (const offset of [-60, 25, 80]) expect(kinds(offset)).toEqual(kinds(0));
});

test('a recording that begins and ends in the air proposes no times and no places', () => {
  const points = LESSON.points();
  const up = points.findIndex((one) => one.elevationM! > 600);
  const { log, reading } = proposalsOf(points.slice(up, up + 300));
  expect(reading.movement).toEqual({ beginsSeconds: null, endsSeconds: null });
  expect(log.departedAt).toEqual({
    value: null,
    evidence: [],
    confidence: 0,
    caveats: ['recording-begins-moving'],
  });
  expect(log.totalTenths.value).toBeNull();
  expect(log.nightTenths.value).toBeNull();
  expect(log.fromAirfield.value).toBeNull();
  expect(reading.unseen).toContainEqual({ what: 'heights', because: 'elevation-unchecked' });
});

test('a recording that begins in the taxi has no time off blocks, although it stands later', () => {
  const points = LESSON.points();
  const { reading, log } = proposalsOf(points.filter((_one, at) => at >= 63));
  expect(reading.ground[0]!.kind).toBe('take-off');
  expect(reading.movement.beginsSeconds).toBeNull();
  expect(reading.movement.endsSeconds).not.toBeNull();
  expect(log.totalTenths).toMatchObject({ value: null, caveats: ['recording-begins-moving'] });
});

test('a receiver that finds its height only after a while makes no landing of it', () => {
  const points = LESSON.points().map((one, at) =>
    at < 22 ? { ...one, elevationM: one.elevationM! + 70 } : one,
  );
  const { ground } = proposalsOf(points).reading;
  expect(ground[0]!.kind).toBe('take-off');
  expect(ground).toHaveLength(proposalsOf(LESSON.points()).reading.ground.length);
});

test('a recording cut off in the landing roll does not claim a full stop', () => {
  const flight = new Flight(WIND).rest(40).takeOff().circuit(4).touchDown().wheels(20, 1.8);
  const { log, reading } = proposalsOf(flight.points());
  const landing = reading.ground.find(({ kind }) => kind === 'landing');
  expect(landing).toMatchObject({ fullStop: null });
  expect(log.landings.value).toBe(1);
  expect(log.fullStopLandings).toMatchObject({ value: 0, caveats: ['unsettled-left-out'] });
});

test('without elevations: landings to a stop only, and that is said', () => {
  const points = LESSON.points({ ...recorder, withoutElevation: true });
  const { log, reading } = proposalsOf(points);
  expect(reading.unseen).toContainEqual({ what: 'touch-and-goes', because: 'no-elevation' });
  expect(log.fullStopLandings.value).toBe(2);
  expect(log.landings.caveats).toContain('may-be-more');
  expect(log.landings.confidence).toBeLessThanOrEqual(0.6);
});

test('a stop where no airfield is known is told', () => {
  const { log, reading } = proposalsOf(LESSON.points(recorder), []);
  expect(reading.ground).toEqual([]);
  expect(reading.unseen.some(({ because }) => because === 'stop-at-no-known-airfield')).toBe(true);
  expect(log.landings.caveats).toContain('may-be-more');
});

test('a recorder that writes twice a minute has no gaps; one that stops has; many are told as one', () => {
  const rare = proposalsOf(LESSON.points({ everySeconds: 30 })).reading;
  expect(rare.unseen.map(({ because }) => because)).toEqual(['points-too-far-apart']);
  const points = LESSON.points();
  const pierced = points.filter((_one, at) => at % 100 > 25);
  const { unseen } = proposalsOf(pierced).reading;
  expect(unseen.filter(({ what }) => what === 'everything')).toMatchObject([
    { because: 'many-gaps', count: Math.floor(points.length / 100) },
  ]);
});

test('whatever was recorded, it is read without a word that is no number', () => {
  const step = fc.record({
    seconds: fc.constantFrom(0.5, 1, 1, 1, 2, 7, 40, 900),
    north: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
    east: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
    elevationM: fc.oneof(fc.double({ min: 300, max: 600, noNaN: true }), fc.constant(null)),
    still: fc.boolean(),
    breaks: fc.constantFrom(0, 0, 0, 0, 1),
  });
  fc.assert(
    fc.property(fc.array(step, { minLength: 2, maxLength: 60 }), (steps) => {
      let at: TrackPoint = { ...FIELD, atSeconds: 1_781_967_600, elevationM: FIELD_M, segment: 0 };
      const points = steps.map(({ seconds, north, east, elevationM, still, breaks }) => {
        at = {
          atSeconds: at.atSeconds + seconds,
          latitudeDeg: at.latitudeDeg + (still ? 0 : north),
          longitudeDeg: at.longitudeDeg + (still ? 0 : east),
          elevationM,
          segment: at.segment + breaks,
        };
        return at;
      });
      const { log, practice, reading } = proposalsOf(points);
      for (const { confidence } of [...Object.values(log), ...practice]) {
        expect(confidence).toBeGreaterThanOrEqual(0);
        expect(confidence).toBeLessThanOrEqual(1);
      }
      for (const { groundKt } of reading.ground) expect(Number.isFinite(groundKt)).toBe(true);
      expect(log.fullStopLandings.value).toBeLessThanOrEqual(log.landings.value!);
      expect(log.nightFullStopLandings.value).toBeLessThanOrEqual(log.fullStopLandings.value!);
    }),
    { seed: 20261126, numRuns: 200 },
  );
});

describe('night', () => {
  const date = '2026-11-20';
  const place = { latitudeDeg: FIELD.latitudeDeg, longitudeDeg: FIELD.longitudeDeg };
  const { sunset, civilDusk } = sunTimes(date, place);

  test('counts from the end of evening civil twilight, at the place', () => {
    const standing: TrackPoint[] = Array.from({ length: 121 }, (_one, minute) => ({
      atSeconds: civilDusk! - 3600 + minute * 60,
      ...place,
      elevationM: 0,
      segment: 0,
    }));
    expect(Math.abs(nightSeconds(standing, civilDusk! - 3600, civilDusk! + 3600) - 3600)).toBeLessThan(30);
    expect(nightSeconds(standing, civilDusk! - 3600, civilDusk! - 60)).toBe(0);
    expect(nightSeconds([], 0, 1)).toBe(0);
  });

  // Printed times, to the minute: the evening of the first as quoted in the manual of PyEphem from the US Naval
  // Observatory, the morning and evening of the second from memory (the same cases as in test/outside/sun.spec.ts).
  test.each([
    ['evening', '2009-09-07T00:21:00Z', 33.8, -84.4],
    ['morning', '2026-09-22T05:29:00Z', 0, 0],
    ['evening', '2026-09-22T18:17:00Z', 0, 0],
  ])(
    'turns at the %s civil twilight of the almanac: %s at %d, %d',
    (when, printed, latitudeDeg, longitudeDeg) => {
      const at = Date.parse(printed) / 1000;
      const flown: TrackPoint[] = Array.from({ length: 121 }, (_one, minute) => ({
        ...{ atSeconds: at - 3600 + minute * 60, latitudeDeg, longitudeDeg, elevationM: 0, segment: 0 },
      }));
      const [dark, light] = when === 'evening' ? [at, at - 3600] : [at - 3600, at];
      expect(Math.abs(nightSeconds(flown, dark, dark + 3600) - 3600)).toBeLessThanOrEqual(120);
      expect(nightSeconds(flown, light, light + 3600)).toBeLessThanOrEqual(120);
    },
  );

  test('take-offs and full stops count as night from an hour after sunset, the hours from civil dusk', () => {
    const late = proposalsOf(lesson(sunset! + 3600).points(recorder)).log;
    expect(late.nightTakeoffs.value).toBe(3);
    expect(late.nightFullStopLandings.value).toBe(2);
    expect(late.nightTenths.value).toBe(late.totalTenths.value);
    // Begun at civil dusk, half an hour before the hour after sunset: first landings by the old night, all hours at night.
    const dusk = proposalsOf(lesson(civilDusk! - 30).points(recorder)).log;
    expect(dusk.nightTakeoffs.value).toBeLessThan(3);
    expect(dusk.nightTenths.value).toBe(dusk.totalTenths.value);
    const before = proposalsOf(lesson(civilDusk! - 1500).points(recorder)).log;
    expect(before.nightTenths.value).toBeGreaterThan(0);
    expect(before.nightTenths.value).toBeLessThan(before.totalTenths.value!);
  });
});
