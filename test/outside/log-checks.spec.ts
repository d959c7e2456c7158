/**
 * Entries of a log held against what was printed elsewhere: an almanac's sun, published distances, the definitions of
 * 14 CFR. What is flagged must be impossible by them; what is not must be possible.
 */
import { checksOf, type Check, type Field, type Flown } from '../../src/logbook/checks/index.js';
import { nightOf } from '../../src/logbook/checks/night-of.js';
import { placed, type Placed } from '../../src/logbook/checks/check.js';
import { distanceNm } from '../../src/rules/air/distance.js';
import { isNight } from '../../src/rules/sky/nights.js';
import { sunTimes } from '../../src/rules/sky/sun.js';

const at = (instant: string) => Date.parse(instant) / 1000;
const field = (code: string, latitudeDeg: number, longitudeDeg: number, zone = 'UTC'): Field => ({
  code,
  at: { latitudeDeg, longitudeDeg, zone },
});
const NOWHERE: Field = { code: 'faraway strip', at: null };

/**
 * US Naval Observatory, 6 September 2009, 33.8 N 84.4 W, as quoted in the manual of PyEphem: morning twilight begins 10:50,
 * sunrise 11:15, sunset 23:56, evening twilight ends 00:21 UTC the next date. An hour after that sunset it is 00:56.
 */
const THERE = field('ZZAA', 33.8, -84.4, 'America/New_York');
const flown = (of: Partial<Flown> & { off: string; on_: string }): Flown => {
  const { off, on_, ...rest } = of;
  const [departs, arrives] = [at(off), at(on_)];
  return {
    ...{ departs, arrives, on: '2009-09-06', from: THERE, to: THERE, device: null },
    ...{ category: 'airplane', class: 'single-engine-land' },
    ...{ takeoffs: 1, landings: 1, fullStopLandings: 1, nightTakeoffs: 0, nightFullStopLandings: 0 },
    ...{ totalTenths: Math.round((arrives - departs) / 360), nightTenths: 0, crossCountryTenths: 0 },
    ...rest,
  };
};
const EVENING = { off: '2009-09-06T23:21:00Z', on_: '2009-09-07T01:21:00Z' };
const check = (entry: Flown, name: Check['check']): Check => {
  const found = checksOf(entry).filter((one) => one.check === name);
  expect(found).toHaveLength(1);
  return found[0]!;
};
const outcome = (entry: Flown, name: Check['check']) => check(entry, name).outcome;

describe('night hours against the printed end of evening twilight', () => {
  test('an hour before it to an hour after it: one hour of two', () => {
    const straight = nightOf(placed(flown(EVENING)) as Placed).civil.straight;
    // The almanac prints minutes.
    expect(Math.abs(straight - 3600)).toBeLessThanOrEqual(120);
    expect(check(flown({ ...EVENING, nightTenths: 10 }), 'night-hours')).toMatchObject({
      outcome: 'fits',
      written: '1.0 h',
      computed: expect.stringMatching(/^1\.0 h/),
    });
  });
  test.each([
    // 14 CFR 1.1: sunset is not the beginning of the night. From it on it would be 1.4 h, and from the departure 2.0 h.
    [10, 'fits'],
    [20, 'flagged'],
    [0, 'flagged'],
  ] as const)('%i tenths: %s', (nightTenths, is) => {
    expect(outcome(flown({ ...EVENING, nightTenths }), 'night-hours')).toBe(is);
  });
  test('by day none, and in the deep of the night all of it', () => {
    const day = { off: '2009-09-06T15:00:00Z', on_: '2009-09-06T17:00:00Z' };
    expect(check(flown(day), 'night-hours')).toMatchObject({ outcome: 'fits', computed: '0.0 h' });
    expect(outcome(flown({ ...day, nightTenths: 2 }), 'night-hours')).toBe('flagged');
    // One tenth is rounding.
    expect(outcome(flown({ ...day, nightTenths: 1 }), 'night-hours')).toBe('fits');
    const night = { off: '2009-09-07T04:00:00Z', on_: '2009-09-07T06:00:00Z' };
    for (const [nightTenths, is] of [
      [20, 'fits'],
      [19, 'fits'],
      [18, 'flagged'],
      [0, 'flagged'],
    ] as const)
      expect([nightTenths, outcome(flown({ ...night, nightTenths }), 'night-hours')]).toEqual([
        nightTenths,
        is,
      ]);
  });
  test('hours left out of the total may have been the night ones', () => {
    expect(outcome(flown({ ...EVENING, totalTenths: 10 }), 'night-hours')).toBe('fits');
    const night = { off: '2009-09-07T04:00:00Z', on_: '2009-09-07T06:00:00Z', totalTenths: 12 };
    expect(outcome(flown({ ...night, nightTenths: 4 }), 'night-hours')).toBe('flagged');
  });
  test('under the midnight sun there is none (rules reference su-05: 70 N on 21 June)', () => {
    const north = field('ZZNN', 70, 20);
    const of = {
      from: north,
      to: north,
      on: '2026-06-21',
      off: '2026-06-21T22:00:00Z',
      on_: '2026-06-22T01:00:00Z',
    };
    expect(check(flown(of), 'night-hours')).toMatchObject({
      outcome: 'fits',
      computed: expect.stringMatching(/^0\.0 h/),
    });
    expect(outcome(flown({ ...of, nightTenths: 20 }), 'night-hours')).toBe('flagged');
  });
});

describe('night take-offs and landings against an hour after the printed sunset', () => {
  const late = { off: '2009-09-07T00:45:00Z', on_: '2009-09-07T01:45:00Z' };
  test('a landing at 01:45 can be one, a take-off before 00:56 cannot (14 CFR 61.57(b))', () => {
    const by = { takeoffs: 3, landings: 3, fullStopLandings: 3 };
    expect(outcome(flown({ ...late, nightFullStopLandings: 1 }), 'night-landings')).toBe('fits');
    // Of several the first can have been at any time of the hour: blocks off are no take-off.
    expect(outcome(flown({ ...late, ...by, nightTakeoffs: 3 }), 'night-take-offs')).toBe('fits');
    // Landed at 00:50, six minutes too early.
    const early = { off: '2009-09-06T23:50:00Z', on_: '2009-09-07T00:50:00Z' };
    const refused = check(flown({ ...early, ...by, nightFullStopLandings: 3 }), 'night-landings');
    expect(refused).toMatchObject({
      outcome: 'flagged',
      written: '3 full-stop landings',
      field: 'nightFullStopLandings',
    });
    expect(refused.says).toContain('2009-09-07T00:5');
    expect(check(flown({ ...early, ...by, nightTakeoffs: 1 }), 'night-take-offs').outcome).toBe('flagged');
  });
  test('in the night from blocks to blocks, every one of them', () => {
    const night = {
      off: '2009-09-07T04:00:00Z',
      on_: '2009-09-07T05:00:00Z',
      takeoffs: 2,
      landings: 3,
      fullStopLandings: 2,
    };
    expect(outcome(flown({ ...night, nightTakeoffs: 2, nightFullStopLandings: 2 }), 'night-take-offs')).toBe(
      'fits',
    );
    expect(outcome(flown({ ...night, nightTakeoffs: 1 }), 'night-take-offs')).toBe('flagged');
    expect(check(flown({ ...night, nightFullStopLandings: 1 }), 'night-landings')).toMatchObject({
      outcome: 'flagged',
      computed: '2',
      says: expect.stringContaining('whole flight'),
    });
    // Whoever did not land has none to count.
    expect(
      outcome(flown({ ...night, takeoffs: 0, landings: 0, fullStopLandings: 0 }), 'night-landings'),
    ).toBe('fits');
  });
  test('no more than there is time for', () => {
    const short = { off: '2009-09-07T00:30:00Z', on_: '2009-09-07T00:58:00Z' };
    const many = { takeoffs: 30, landings: 30, fullStopLandings: 30 };
    expect(outcome(flown({ ...short, ...many, nightFullStopLandings: 2 }), 'night-landings')).toBe('fits');
    // Two minutes after 00:56 at the field; elsewhere within reach the sun set a little earlier.
    expect(check(flown({ ...short, ...many, nightFullStopLandings: 30 }), 'night-landings')).toMatchObject({
      outcome: 'flagged',
      says: expect.stringContaining('Too little of the flight'),
    });
  });
  test('the last landing is where the flight ended: there it was still day', () => {
    // 20 degrees of longitude are 80 minutes of the sun: at 104.4 W it sets at about 01:16 UTC (by the same printed sunset).
    const west = field('ZZWW', 33.8, -104.4);
    const of = {
      to: west,
      off: '2009-09-06T22:30:00Z',
      on_: '2009-09-07T01:50:00Z',
      nightFullStopLandings: 1,
    };
    expect(check(flown({ ...of, class: 'multi-engine-land' }), 'night-landings')).toMatchObject({
      outcome: 'flagged',
      says: expect.stringContaining('ZZWW'),
    });
  });
});

describe('bounds hold wherever it was flown', () => {
  // A small generator of its own, so that the same flights are tried each time.
  let state = 20260613;
  const random = () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
  test('80 detours at any allowed speed, by the second-by-second night of the rules', () => {
    let partly = 0;
    for (let round = 0; round < 80; round += 1) {
      const from = field('ZZFF', -60 + 120 * random(), -180 + 360 * random());
      const to =
        random() < 0.4
          ? from
          : field('ZZTT', from.at!.latitudeDeg + 3 * random(), from.at!.longitudeDeg + 3 * random());
      const day = new Date(Date.UTC(2026, 0, 1 + Math.floor(random() * 365))).toISOString().slice(0, 10);
      const { sunset } = sunTimes(day, from.at!);
      if (sunset === null) continue;
      const departs = Math.round(sunset + (random() - 0.6) * 7200);
      const direct = distanceNm(from.at!, to.at!);
      const seconds = Math.round((direct / 400) * 3600 + 600 + 7200 * random());
      const entry = {
        ...flown({ off: '2026-01-01T00:00:00Z', on_: '2026-01-01T01:00:00Z' }),
        from,
        to,
        departs,
        arrives: departs + seconds,
      };
      // Out to a place aside and on to the end: as far as 400 kt allow.
      const spare = ((400 * seconds) / 3600 - direct) / 2.2;
      const bearing = 2 * Math.PI * random();
      const turn = {
        latitudeDeg:
          (from.at!.latitudeDeg + to.at!.latitudeDeg) / 2 + (Math.cos(bearing) * spare * random()) / 60,
        longitudeDeg:
          (from.at!.longitudeDeg + to.at!.longitudeDeg) / 2 +
          ((Math.sin(bearing) * spare * random()) / 60) * Math.cos((from.at!.latitudeDeg * Math.PI) / 180),
      };
      const [out, home] = [distanceNm(from.at!, turn), distanceNm(turn, to.at!)];
      if (out + home > (400 * seconds) / 3600) continue;
      const night = nightOf(placed(entry) as Placed);
      const seen = { civil: 0, passenger: 0 };
      const steps = 90;
      for (let step = 0; step < steps; step += 1) {
        const way = ((step + 0.5) / steps) * (out + home);
        const [a, b, part] =
          way < out ? [from.at!, turn, way / (out || 1)] : [turn, to.at!, (way - out) / (home || 1)];
        const place = {
          latitudeDeg: a.latitudeDeg + (b.latitudeDeg - a.latitudeDeg) * part,
          longitudeDeg: a.longitudeDeg + (b.longitudeDeg - a.longitudeDeg) * part,
        };
        for (const kind of ['civil', 'passenger'] as const)
          if (isNight(kind, place, departs + Math.round(((step + 0.5) / steps) * seconds)))
            seen[kind] += seconds / steps;
      }
      for (const kind of ['civil', 'passenger'] as const) {
        const { least, most } = night[kind];
        // Two looks at the sun a minute and half a minute apart.
        expect(seen[kind]).toBeGreaterThanOrEqual(least - 150);
        expect(seen[kind]).toBeLessThanOrEqual(most + 150);
        if (seen[kind] > 0 && seen[kind] < seconds * 0.99) partly += 1;
      }
    }
    expect(partly).toBeGreaterThan(15);
  });
});

describe('cross-country time (14 CFR 61.1(b), as quoted on public forums)', () => {
  const day = { off: '2009-09-06T15:00:00Z', on_: '2009-09-06T17:00:00Z', crossCountryTenths: 20 };
  // Rules reference xc-01, xc-02: 40 N 100 W to 40.85 N is 51 NM, to 40.82 N 49.2 NM.
  const [origin, far, near] = [
    field('ZZOO', 40, -100),
    field('ZZXF', 40.85, -100),
    field('ZZXN', 40.82, -100),
  ];
  test('(i) a landing elsewhere at any distance; (ii) more than 50 NM towards most certificates', () => {
    expect(check(flown({ ...day, from: origin, to: far }), 'cross-country')).toMatchObject({
      ...{ outcome: 'fits', written: '2.0 h', computed: '51.0 NM' },
      says: expect.stringContaining('more than 50 NM, so it counts'),
    });
    expect(check(flown({ ...day, from: origin, to: near }), 'cross-country')).toMatchObject({
      ...{ outcome: 'fits', computed: '49.2 NM' },
      says: expect.stringContaining('it takes a landing more than 50 NM away'),
    });
  });
  test('without a landing elsewhere it is none', () => {
    expect(outcome(flown(day), 'cross-country')).toBe('flagged');
    expect(outcome(flown({ ...day, crossCountryTenths: 0 }), 'cross-country')).toBe('fits');
    // A second landing may have been elsewhere; whose landings they were, the pilot not flying cannot say.
    expect(outcome(flown({ ...day, landings: 2 }), 'cross-country')).toBe('not-checkable');
    expect(outcome(flown({ ...day, takeoffs: 0, landings: 0, fullStopLandings: 0 }), 'cross-country')).toBe(
      'not-checkable',
    );
  });
  test('nor in a training device (i)(B)', () => {
    const device = 'aviation-training-device' as const;
    expect(outcome(flown({ ...day, from: origin, to: far, device }), 'cross-country')).toBe('flagged');
    expect(outcome(flown({ ...day, crossCountryTenths: 0, device }), 'cross-country')).toBe('fits');
  });
});

describe('speed, hours and date', () => {
  // C. Karney's published geodesic test lines (GeographicLib): 2,319,004.8601 m, that is 1,252.2 NM.
  const [a, b] = [field('ZZKA', -19.79938, -174.48474), field('ZZKB', -11.99349, -154.35109)];
  const long = { from: a, to: b, on: '2026-03-01', off: '2026-03-01T00:00:00Z' };
  test('a light single does not make a published 1,252 NM in three hours, an aircraft of two engines may', () => {
    const of = {
      ...long,
      from: { ...a, at: { ...a.at!, longitudeDeg: -174.48484 } },
      on_: '2026-03-01T03:00:00Z',
    };
    expect(check(flown(of), 'speed')).toMatchObject({
      outcome: 'flagged',
      computed: expect.stringMatching(/^4(0[0-9]|1[0-9]) kt$/),
    });
    expect(outcome(flown({ ...of, class: 'multi-engine-land' }), 'speed')).toBe('fits');
    expect(outcome(flown({ ...of, on_: '2026-03-01T12:00:00Z' }), 'speed')).toBe('fits');
    // By the hours logged, where they are less than the blocks.
    expect(outcome(flown({ ...of, on_: '2026-03-01T12:00:00Z', totalTenths: 20 }), 'speed')).toBe('flagged');
  });
  test('flight time is block time (14 CFR 1.1); less than half of it is looked at', () => {
    const day = { off: '2009-09-06T15:00:00Z', on_: '2009-09-06T17:00:00Z' };
    for (const [totalTenths, is] of [
      [22, 'flagged'],
      [21, 'fits'],
      [9, 'fits'],
      [8, 'flagged'],
    ] as const)
      expect([totalTenths, outcome(flown({ ...day, totalTenths }), 'block-hours')]).toEqual([
        totalTenths,
        is,
      ]);
  });
  test('the date is that of the place: 03:00 UTC on the 7th is still the 6th in New York', () => {
    const of = { off: '2009-09-07T03:00:00Z', on_: '2009-09-07T04:30:00Z' };
    expect(check(flown(of), 'date')).toMatchObject({ outcome: 'fits', computed: '2009-09-06' });
    expect(outcome(flown({ ...of, on: '2009-09-07' }), 'date')).toBe('flagged');
  });
});

describe('what is not on record is no yes', () => {
  const day = {
    off: '2009-09-06T15:00:00Z',
    on_: '2009-09-06T17:00:00Z',
    crossCountryTenths: 20,
    nightTenths: 20,
  };
  test('an airfield the club does not know: not checkable, and it says which', () => {
    const checks = checksOf(flown({ ...day, to: NOWHERE }));
    const unknown = checks.filter((one) => one.outcome === 'not-checkable');
    expect(unknown.map((one) => one.check).sort()).toEqual(
      ['cross-country', 'night-hours', 'night-landings', 'night-take-offs', 'speed'].sort(),
    );
    for (const one of unknown) {
      expect(one.says).toContain('faraway strip');
      expect([one.computed, one.source]).toEqual([null, null]);
    }
    expect(outcome(flown({ ...day, from: NOWHERE }), 'date')).toBe('not-checkable');
  });
  test('every check is there in each case, once', () => {
    for (const entry of [day, { ...day, to: NOWHERE }, { ...day, device: 'full-flight-simulator' as const }])
      expect(new Set(checksOf(flown(entry)).map((one) => one.check)).size).toBe(7);
  });
});
