/**
 * Weather worked out for people to read. The standard pressure is 29.92126 inHg and 15 C at sea level (ICAO Doc 7488); a wind is taken
 * apart as on the crosswind chart of FAA-H-8083-25.
 */
import { rulesetFor, startingPolicy, type FactSheet, type FlightFacts } from '../../../src/rules/index.js';
import { workWeather } from '../../../src/rules/weather/worked.js';
import { conditionWords, worstOf } from '../../../src/rules/weather/worst.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { CONDITIONS } from '../../../src/rules/workshop/weather-records.js';
import { field, flight, forecast, seen } from './reports.js';

const US = rulesetFor('US', startingPolicy());
const sheet = (of: Partial<FlightFacts>): FactSheet => ({
  ...baseSheet(),
  ...{ knownAt: '2027-03-01T17:10:00Z', flight: flight(of) },
});
const work = (of: Partial<FlightFacts>, ruleset = US) => workWeather(sheet(of), ruleset);

describe('the words of conditions', () => {
  const NOTHING = {
    ...{ windFromDeg: null, windKt: null, gustKt: null, windVaries: null, visibilitySm: null },
    ...{ visibilityIs: null, ceilingFtAgl: null, ceilingIs: null, phenomena: [] },
    ...{ temperatureC: null, dewPointC: null, altimeterInHg: null },
  };
  test.each([
    [{}, ''],
    [{ windKt: 0 }, 'calm'],
    [{ windKt: 0, gustKt: 12 }, 'variable wind at 0 kt, gusts 12 kt'],
    [{ windKt: 4, windVaries: 'any' as const }, 'variable wind at 4 kt'],
    [{ windFromDeg: 140, windKt: 21, gustKt: 26 }, 'wind from 140° at 21 kt, gusts 26 kt'],
    [
      { windFromDeg: 140, windKt: 8, windVaries: { fromDeg: 110, toDeg: 170 } },
      'wind from 140°, between 110° and 170° at 8 kt',
    ],
    [{ windFromDeg: 140, windKt: 8, windVaries: 'any' as const }, 'wind from 140° at 8 kt'],
    [{ visibilitySm: 3 }, 'visibility 3 SM'],
    [{ visibilitySm: 3, visibilityIs: 'exactly' as const }, 'visibility 3 SM'],
    [{ visibilitySm: 6, visibilityIs: 'at-least' as const }, 'visibility 6 SM or more'],
    [{ visibilitySm: 0.25, visibilityIs: 'less-than' as const }, 'visibility less than 0.25 SM'],
    [{ ceilingFtAgl: 800, ceilingIs: 'base' as const }, 'ceiling 800 ft'],
    [{ ceilingFtAgl: 12000, ceilingIs: 'none-below' as const }, 'no ceiling below 12000 ft'],
    [{ phenomena: ['+TSRA', 'BR'] }, '+TSRA BR'],
    [
      { windKt: 0, visibilitySm: 2, ceilingFtAgl: 300, phenomena: ['FG'] },
      'calm; visibility 2 SM; ceiling 300 ft; FG',
    ],
  ])('%j', (of, words) => {
    expect(conditionWords({ ...NOTHING, ...of })).toBe(words);
  });
});

test('the worst is of each the lowest, and open where one leaves it open', () => {
  const of = (ceilingFtAgl: number | null, visibilitySm: number | null) => ({
    ...{ ...CONDITIONS, ceilingFtAgl, visibilitySm },
  });
  expect(worstOf([])).toEqual({ ceilingFtAgl: null, visibilitySm: null });
  expect(worstOf([of(800, 5), of(3000, 2)])).toEqual({ ceilingFtAgl: 800, visibilitySm: 2 });
  expect(worstOf([of(800, null), of(null, 2)])).toEqual({ ceilingFtAgl: null, visibilitySm: null });
});

describe('the newest report of a field', () => {
  const SEA = field('XQHB', { elevationFt: 0, runways: [{ ...field('X').runways[0]!, trueHeadingDeg: 90 }] });
  const at = (of: Parameters<typeof seen>[1]) =>
    work({ route: [SEA, SEA], reports: [seen('XQHB', of)] }).fields;

  test('its age at the asking and before the departure, in minutes', () => {
    expect(at({})[0]).toMatchObject({
      ...{ airfield: 'XQHB', report: 'metar XQHB', ageMinutes: 10, minutesBeforeDeparture: 60 },
    });
  });
  test.each([
    // The standard day at sea level, and one at 120 ft for each degree (FAA-H-8083-25).
    [29.92126, 15, 0, 0],
    [null, 15, null, null],
    [29.92126, null, 0, null],
  ])(
    '%p inHg and %p C: pressure altitude %p ft, density altitude %p ft',
    (altimeterInHg, temperatureC, pa, da) => {
      const [found] = at({ altimeterInHg, temperatureC });
      expect([found!.pressureAltitudeFt, found!.densityAltitudeFt].map((one) => one && one + 0)).toEqual([
        pa,
        da,
      ]);
    },
  );
  test('a warm day at low pressure is high', () => {
    const [found] = at({ altimeterInHg: 28.92126, temperatureC: 30 });
    expect(found!.pressureAltitudeFt).toBeGreaterThan(900);
    expect(found!.densityAltitudeFt).toBeGreaterThan(found!.pressureAltitudeFt! + 1500);
    expect(Number.isInteger(found!.pressureAltitudeFt) && Number.isInteger(found!.densityAltitudeFt)).toBe(
      true,
    );
  });
  test.each([
    [{ windFromDeg: 90, windKt: 10, gustKt: 20 }, [10, 0, 20, 0]],
    [{ windFromDeg: 180, windKt: 10, gustKt: null }, [0, 10, null, null]],
    [{ windFromDeg: 0, windKt: 10, gustKt: 12 }, [0, -10, 0, -12]],
    [{ windFromDeg: 360, windKt: 10, gustKt: null }, [0, -10, null, null]],
    [{ windFromDeg: 120, windKt: 10, gustKt: null }, [8.7, 5, null, null]],
    [{ windFromDeg: null, windKt: 10, gustKt: 12 }, [null, null, null, null]],
    [{ windFromDeg: 90, windKt: null, gustKt: null }, [null, null, null, null]],
    [
      { windFromDeg: 90, windKt: 10, gustKt: null, windVaries: { fromDeg: 60, toDeg: 120 } },
      [null, null, null, null],
    ],
  ])('%j along and across runway 09: %j', (of, is) => {
    const [found] = at(of);
    expect(found!.runways.map(Object.values)).toEqual([[SEA.runways[0]!.designator, ...is]]);
    expect([found!.windKt, found!.gustKt]).toEqual([of.windKt, of.gustKt]);
  });
  test('is none where it says nothing, or where there is none', () => {
    expect(at(null)).toEqual([]);
    expect(work({ reports: [forecast('XQHB', [{}])] }).fields).toEqual([]);
    expect(work({ reports: null as never }).fields).toEqual([]);
  });
  test('each field once, in the order of the route', () => {
    const route = ['XQHB', 'XQPV', 'XQHB'].map((code) => field(code));
    const reports = [seen('XQPV', {}), seen('XQHB', {})];
    expect(work({ route, reports }).fields.map(({ airfield }) => airfield)).toEqual(['XQHB', 'XQPV']);
  });
});

describe('what is shown', () => {
  test('of a report', () => {
    const more = { trend: 'NOSIG', unread: [], text: 'as written', source: 'pasted' as const };
    const [found] = work({ reports: [seen('XQHB', { phenomena: ['BR'] }, more)] }).reports;
    expect(found).toEqual({
      ...{ id: 'metar XQHB', kind: 'metar', airfield: 'XQHB', text: 'as written', source: 'pasted' },
      ...{ issuedAt: '2027-03-01T17:00:00Z', obtainedAt: '2027-03-01T17:05:00Z', from: null, to: null },
      unread: [],
      says: 'wind from 90° at 5 kt; visibility 10 SM; ceiling 5000 ft; BR; NOSIG',
    });
  });
  test.each([
    [
      'a report without a trend',
      seen('XQHB', {}),
      'wind from 90° at 5 kt; visibility 10 SM; ceiling 5000 ft',
    ],
    ['a report without a word', seen('XQHB', null), 'says nothing'],
    ['a report with a trend alone', seen('XQHB', null, { trend: 'NOSIG' }), 'says nothing'],
    ['a forecast, by its parts below', forecast('XQHB', [{}]), ''],
    ['a forecast without a part', forecast('XQHB', []), 'says nothing'],
    [
      'a report of which nothing could be read',
      seen('XQHB', {
        ...{ windKt: null, visibilitySm: null, ceilingFtAgl: null, phenomena: [] },
      }),
      '',
    ],
  ])('%s', (_, report, says) => {
    expect(work({ reports: [report] }).reports[0]!.says).toBe(says);
  });
  test('nothing of which could be read but its trend', () => {
    const bare = { windKt: null, visibilitySm: null, ceilingFtAgl: null, phenomena: [] };
    expect(work({ reports: [seen('XQHB', bare, { trend: 'NOSIG' })] }).reports[0]!.says).toBe('NOSIG');
  });

  test('of the wind on runways: what is forecast for departure and arrival, each wind that may prevail', () => {
    const runway = (designator: string, trueHeadingDeg: number) => ({
      ...{ ...field('X').runways[0]!, designator, trueHeadingDeg },
    });
    const [home, away] = [field('XQHB'), field('XQPV', { runways: [runway('09', 90), runway('36', 0)] })];
    const { phases } = work({
      route: [home, away],
      reports: [
        seen('XQHB', {}, { issuedAt: '2027-03-01T17:50:00Z' }),
        forecast('XQHB', [{}]),
        forecast('XQPV', [
          { conditions: { windFromDeg: 120, windKt: 10, gustKt: 20 } },
          { conditions: { windFromDeg: null, windKt: 6 } },
        ]),
      ],
    });
    // Half of a wind thirty degrees off the runway blows across it (FAA-H-8083-25, crosswind chart), from memory.
    const fromTheRight = { headwindKt: 8.7, crosswindKt: 5, gustHeadwindKt: 17.3, gustCrosswindKt: 10 };
    const acrossNorth = { headwindKt: -5, crosswindKt: 8.7, gustHeadwindKt: -10, gustCrosswindKt: 17.3 };
    const any = { headwindKt: null, crosswindKt: null, gustHeadwindKt: null, gustCrosswindKt: null };
    expect(phases.map(({ phase, airfield, winds }) => [`${phase} ${airfield}`, winds])).toEqual([
      ['departure XQHB', []],
      ['en-route XQHB', []],
      ['en-route XQPV', []],
      [
        'arrival XQPV',
        [
          {
            ...{ windKt: 10, gustKt: 20 },
            runways: [
              { runway: '09', ...fromTheRight },
              { runway: '36', ...acrossNorth },
            ],
          },
          {
            ...{ windKt: 6, gustKt: null },
            runways: [
              { runway: '09', ...any },
              { runway: '36', ...any },
            ],
          },
        ],
      ],
    ]);
  });

  test('of the phases', () => {
    const low = { ceilingFtAgl: 800, visibilitySm: 2 };
    const bare = { windKt: null, visibilitySm: null, ceilingFtAgl: null, phenomena: [] };
    const part = { change: 'probable', probabilityPercent: 30, from: '2027-03-01T18:30:00Z' } as const;
    const { phases } = work({
      reports: [
        seen('XQHB', bare, { issuedAt: '2027-03-01T17:50:00Z' }),
        forecast('XQPV', [
          {},
          { conditions: low },
          { ...part, conditions: bare },
          { ...part, conditions: low },
        ]),
      ],
    });
    expect(phases.map(({ phase, airfield }) => `${phase} ${airfield}`)).toEqual([
      ...['departure XQHB', 'en-route XQHB', 'en-route XQPV', 'arrival XQPV'],
    ]);
    expect(phases[0]).toMatchObject({
      ...{ prevailing: ['says nothing'], ceilingFtAgl: null, visibilitySm: null, passing: [] },
      ...{ reportIds: ['metar XQHB'], oldForecast: false },
    });
    const span = { from: '2027-03-01T18:30:00Z', to: '2027-03-02T12:00:00Z' };
    const probable = { change: 'probable', probabilityPercent: 30, ...span };
    const { winds, ...arrival } = phases[3]!;
    expect(winds).toHaveLength(2);
    expect(arrival).toEqual({
      ...{ phase: 'arrival', airfield: 'XQPV', ceilingFtAgl: 800, visibilitySm: 2 },
      prevailing: [
        'wind from 90° at 5 kt; visibility 10 SM; ceiling 5000 ft',
        'wind from 90° at 5 kt; visibility 2 SM; ceiling 800 ft',
      ],
      passing: [
        { ...probable, says: 'could not be read' },
        { ...probable, says: 'wind from 90° at 5 kt; visibility 2 SM; ceiling 800 ft' },
      ],
      ...{ oldForecast: false, reportIds: ['taf XQPV'] },
    });
  });
});

describe('what is not known is told', () => {
  test('fields of which nothing is at hand, and groups that could not be read', () => {
    const reports = [seen('XQHB', {}, { unread: ['Q//', 'R09'] }), seen('XQZZ', {}, { unread: ['////'] })];
    expect(work({ reports }).unknown).toEqual([
      'no report or forecast for XQPV is at hand',
      'of XQHB could not be read: Q// R09',
      'of XQZZ could not be read: ////',
    ]);
    expect(work({ reports: [seen('XQHB', {}), forecast('XQPV', [{}])] }).unknown).toEqual([]);
  });
  test('for how long a report speaks, where the club has no number for it', () => {
    const policy = startingPolicy();
    policy.values = policy.values.filter(({ id }) => id !== 'club.weather.report-hours');
    const reports = [seen('XQHB', {}), forecast('XQPV', [{}])];
    const { phases, unknown } = work({ reports }, rulesetFor('US', policy));
    expect(phases).toEqual([]);
    expect(unknown).toHaveLength(1);
    expect(unknown[0]).toContain('has no value on the day of the flight');
  });
  test('but what is wrong is not told as unknown', () => {
    const reports = [seen('XQHB', null, { issuedAt: 'yesterday' }), forecast('XQHB', [{}], { from: 'noon' })];
    expect(() => work({ reports })).toThrow('noon');
  });
});
