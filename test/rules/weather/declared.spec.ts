/**
 * Reports put where weather told by hand stands. The hour before and after the arrival is that of 14 CFR 91.167(b) and 91.169(b)
 * (from memory); the letters of falling weather are those of the code (FAA-H-8083-28, from memory).
 */
import { withReports } from '../../../src/rules/index.js';
import { weatherOf } from '../../../src/rules/weather/declared.js';
import { WEATHER } from '../../../src/rules/workshop/weather-records.js';
import { field, flight, forecast, seen, type Part } from './reports.js';

describe('weather told by hand and reported', () => {
  const report = seen('XQHB', { windKt: 7, phenomena: ['-RA'] });
  const reported = weatherOf(report)!;
  const nothing = Object.fromEntries(
    Object.keys(WEATHER).map((key) => [key, null]),
  ) as never as typeof WEATHER;

  test('only reports of the route are kept, those of departure and destination read', () => {
    const [of, elsewhere] = [[report, seen('XQPV', { windKt: 9 })], seen('XQZZ', {})];
    const found = withReports(flight(), [...of, elsewhere]);
    expect(found.reports).toEqual(of);
    expect(found.weather).toEqual(reported);
    const before = flight();
    expect(withReports(before, [elsewhere])).toBe(before);
    expect(withReports(before, [])).toBe(before);
  });

  test('a forecast for the field of departure is no weather there, and a report of the destination no forecast', () => {
    const found = withReports(flight(), [forecast('XQHB', [{}]), seen('XQPV', {})]);
    expect(found).toMatchObject({ weather: null, destinationForecast: null });
  });

  test.each([
    ['told whole', WEATHER, WEATHER],
    ['told in one word', { ...nothing, windKt: 3 }, { ...nothing, windKt: 3 }],
    ['only whether it is wet', { ...nothing, wet: false }, { ...reported, wet: false }],
    ['only when', { ...nothing, observedAt: WEATHER.observedAt }, reported],
    ['nothing of it', nothing, reported],
    ['not at all', null, reported],
  ])('%s', (_, told, is) => {
    expect(withReports(flight({ weather: told }), [report]).weather).toEqual(is);
  });
  test('told, and the report says nothing', () => {
    const told = { ...nothing, wet: true };
    expect(withReports(flight({ weather: told }), [seen('XQHB', null)]).weather).toBe(told);
    expect(withReports(flight(), [seen('XQHB', null)]).weather).toBeNull();
  });
  test('a stored sheet without a word of wet runways', () => {
    const { wet: _wet, ...rest } = nothing;
    expect(withReports(flight({ weather: rest as typeof WEATHER }), [report]).weather).toEqual(reported);
    const dry = seen('XQHB', { phenomena: [] });
    expect(withReports(flight({ weather: rest as typeof WEATHER }), [dry]).weather!.wet).toBeNull();
  });
});

describe('a report as weather told', () => {
  test('figure by figure', () => {
    expect(weatherOf(seen('XQHB', { gustKt: 12, temperatureC: -3, altimeterInHg: 30.01 }))).toEqual({
      ...{ observedAt: '2027-03-01T17:00:00Z', windFromDeg: 90, windKt: 5, gustKt: 12 },
      ...{ ceilingFtAgl: 5000, visibilitySm: 10, temperatureC: -3, altimeterInHg: 30.01, wet: null },
    });
  });
  test('a wind that varies comes from nowhere in particular', () => {
    const windVaries = { fromDeg: 60, toDeg: 130 };
    expect(weatherOf(seen('XQHB', { windVaries }))!.windFromDeg).toBeNull();
  });
  test.each([
    ['less-than', 0.25, 0],
    ['at-least', 6, 6],
    ['exactly', 3, 3],
    [null, 3, 3],
    ['less-than', null, null],
  ] as const)('a visibility that is %s %p is relied on as %p', (visibilityIs, visibilitySm, is) => {
    expect(weatherOf(seen('XQHB', { visibilityIs, visibilitySm }))!.visibilitySm).toBe(is);
  });
  test.each(['DZ', 'RA', 'SN', 'SG', 'PL', 'GR', 'GS', 'UP', '+TSRA', '-SHSN', 'FZDZ', 'BR RA'])(
    '%s wets a runway',
    (codes) => {
      expect(weatherOf(seen('XQHB', { phenomena: codes.split(' ') }))!.wet).toBe(true);
    },
  );
  test.each(['VCSH', 'VCTSRA', 'BR', 'FG HZ', ''])('%s wets none that one could tell', (codes) => {
    const phenomena = codes.split(' ').filter((code) => code !== '');
    expect(weatherOf(seen('XQHB', { phenomena }))!.wet).toBeNull();
  });
});

describe('the forecast for the destination', () => {
  const of = (parts: Part[], more: Parameters<typeof flight>[0] = {}, taf = {}) =>
    withReports(flight(more), [forecast('XQPV', parts, taf)]).destinationForecast;
  const untold = { from: null, to: null, ceilingFtAgl: null, visibilitySm: null, approachPublished: null };

  test('an hour before the arrival to an hour after, by the last field of the route', () => {
    const is = {
      ...{ from: '2027-03-01T18:00:00Z', to: '2027-03-01T20:00:00Z' },
      ...{ ceilingFtAgl: 5000, visibilitySm: 10, approachPublished: null },
    };
    expect(of([{}])).toEqual(is);
    const route = ['XQHB', 'XQMD', 'XQPV'].map((code) => field(code));
    expect(of([{}], { route })).toEqual(is);
  });
  test.each([
    ['2027-03-01T18:00:00Z', '2027-03-01T20:00:00Z', true],
    ['2027-03-01T18:00:01Z', '2027-03-01T20:00:00Z', false],
    ['2027-03-01T18:00:00Z', '2027-03-01T19:59:59Z', false],
    [null, '2027-03-01T20:00:00Z', false],
    ['2027-03-01T18:00:00Z', null, false],
  ])('a forecast from %s to %s reaches: %p', (from, to, reaches) => {
    expect(of([{}], {}, { from, to }) !== null).toBe(reaches);
  });
  test.each([
    ['2027-03-01T17:00:00Z', '2027-03-01T18:00:00Z', 5000],
    ['2027-03-01T17:00:00Z', '2027-03-01T18:00:01Z', 300],
    ['2027-03-01T20:00:00Z', '2027-03-01T21:00:00Z', 300],
    ['2027-03-01T20:00:01Z', '2027-03-01T21:00:00Z', 5000],
  ])('a low part from %s to %s: %i ft', (from, to, ceilingFtAgl) => {
    expect(of([{}, { from, to, conditions: { ceilingFtAgl: 300 } }])).toMatchObject({ ceilingFtAgl });
  });
  test.each([
    ['VFR', 5000, 10],
    ['IFR', 800, 2],
  ] as const)(
    'under %s what may pass through leaves %i ft and %d SM',
    (flightRules, ceilingFtAgl, visibilitySm) => {
      const passing: Part = { change: 'temporary', conditions: { ceilingFtAgl: 800, visibilitySm: 2 } };
      expect(of([{}, passing], { flightRules })).toMatchObject({ ceilingFtAgl, visibilitySm });
    },
  );
  test('what passes through differs in what it names alone', () => {
    const passing: Part = { change: 'probable', conditions: { ceilingFtAgl: null, visibilitySm: null } };
    const high: Part = { change: 'probable', conditions: { ceilingFtAgl: 9000, visibilitySm: 11 } };
    const less: Part = { change: 'probable', conditions: { visibilitySm: 1, visibilityIs: 'less-than' } };
    const ifr = { flightRules: 'IFR' } as const;
    expect(of([{}, passing], ifr)).toMatchObject({ ceilingFtAgl: 5000, visibilitySm: 10 });
    expect(of([{}, high], ifr)).toMatchObject({ ceilingFtAgl: 5000, visibilitySm: 10 });
    expect(of([{}, less], ifr)).toMatchObject({ visibilitySm: 0 });
    const open: Part = { conditions: { ceilingFtAgl: null } };
    expect(of([open, { ...high, conditions: { ceilingFtAgl: 900 } }], ifr)).toMatchObject({
      ceilingFtAgl: null,
    });
  });
  test('told by hand it stands; the approach alone is laid over the report', () => {
    const told = { ...untold, approachPublished: true };
    expect(of([{}], { destinationForecast: told })).toMatchObject({
      approachPublished: true,
      ceilingFtAgl: 5000,
    });
    for (const one of [
      { ...told, from: '2027-03-01T18:00:00Z' },
      { ...told, to: '2027-03-01T20:00:00Z' },
    ])
      expect(of([{}], { destinationForecast: one })).toBe(one);
    expect(of([{}], { destinationForecast: told }, { to: '2027-03-01T19:00:00Z' })).toBe(told);
  });
  test('no forecast leaves what was told', () => {
    const told = { ...untold, approachPublished: true };
    expect(withReports(flight({ destinationForecast: told }), [seen('XQHB', {})]).destinationForecast).toBe(
      told,
    );
    const { destinationForecast: _none, ...old } = flight();
    expect(withReports(old as never, [seen('XQHB', {})]).destinationForecast).toBeNull();
  });
});
