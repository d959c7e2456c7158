/**
 * What reports and forecasts say of each phase of a flight, to the second. The hour before and after the arrival is that of 14 CFR
 * 91.167(b) and 91.169(b) (from memory); for how long a report speaks is the club handbook's, section 6.3.
 */
import { toSeconds, type WeatherReport } from '../../../src/rules/index.js';
import { Moment } from '../../../src/rules/engine/moment.js';
import {
  newest,
  PHASE_WORDS,
  weatherByPhase,
  type Phase,
  type PhaseWeather,
} from '../../../src/rules/weather/phases.js';
import { countedReports } from '../../../src/rules/packs/common/shared/phases.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import { CONDITIONS, REPORT } from '../../../src/rules/workshop/weather-records.js';

const [HOME, AWAY, MID] = ['XQHB', 'XQPV', 'XQMD'].map((code) => ({ ...HOME_FIELD, id: code, code })) as [
  typeof HOME_FIELD,
  typeof HOME_FIELD,
  typeof HOME_FIELD,
];
const seen = (airfield: string, issuedAt: string, of: Partial<WeatherReport> = {}): WeatherReport => ({
  ...REPORT,
  ...{ id: `metar ${airfield} ${issuedAt}`, airfield, issuedAt, periods: [], ...of },
});
type Part = Partial<WeatherReport['periods'][number]>;
/** A forecast of one day, or of the parts given. */
const forecast = (
  airfield: string,
  of: Partial<WeatherReport> = {},
  parts: Part[] = [{}],
): WeatherReport => ({
  ...REPORT,
  ...{ id: `taf ${airfield}`, kind: 'taf', airfield, observed: null, issuedAt: '2027-03-01T17:30:00Z' },
  ...{ from: '2027-03-01T12:00:00Z', to: '2027-03-02T12:00:00Z' },
  ...of,
  periods: parts.map((part) => ({
    ...REPORT.periods[0]!,
    ...{ from: of.from ?? '2027-03-01T12:00:00Z', to: of.to ?? '2027-03-02T12:00:00Z' },
    ...part,
  })),
});

interface Asked {
  route?: (typeof HOME_FIELD)[];
  departs?: string;
  minutes?: number;
}
/** The flight leaves at 18:00 for two hours; reports speak for two hours, forecasts are followed after six. */
function asked(reports: WeatherReport[], { route, departs, minutes = 120 }: Asked = {}) {
  const moment = new Moment({
    departs: toSeconds(departs ?? '2027-03-01T18:00:00Z'),
    durationSeconds: minutes * 60,
    knownAt: toSeconds('2027-03-01T17:00:00Z'),
    zone: 'America/Denver',
  });
  const flight = { route: route ?? [HOME, AWAY], reports };
  return weatherByPhase(flight, moment, { reportHours: 2, forecastHours: 6 });
}
const phase = (all: PhaseWeather[], of: Phase, airfield?: string): PhaseWeather =>
  all.find((one) => one.phase === of && (airfield === undefined || one.airfield === airfield))!;
const used = (all: PhaseWeather[]) =>
  all.filter(({ from }) => from.length > 0).map((one) => `${one.phase} ${one.airfield}`);

test('each phase at its airfield, each airfield en route once', () => {
  const all = asked([], { route: [HOME, MID, HOME, AWAY] });
  expect(all.map((one) => [one.phase, one.airfield])).toEqual([
    ['departure', 'XQHB'],
    ['en-route', 'XQHB'],
    ['en-route', 'XQMD'],
    ['en-route', 'XQPV'],
    ['arrival', 'XQPV'],
  ]);
  for (const one of all)
    expect(one).toMatchObject({ prevailing: [], passing: [], trend: null, from: [], oldForecast: false });
  expect(asked([], { route: [] })).toEqual([]);
  expect(PHASE_WORDS).toEqual({
    departure: 'the departure',
    'en-route': 'the time en route',
    arrival: 'the arrival',
  });
});

test('a flight with no list of reports is one of which nothing speaks', () => {
  const moment = new Moment({ departs: 0, durationSeconds: 60, knownAt: 0, zone: 'America/Denver' });
  const all = weatherByPhase({ route: [HOME] } as never, moment, { reportHours: 2, forecastHours: 6 });
  expect(all.map(({ prevailing }) => prevailing)).toEqual([[], [], []]);
});

describe('the newest', () => {
  const [old, late, later] = [
    seen('XQHB', '2027-03-01T16:00:00Z', { obtainedAt: '2027-03-01T17:00:00Z' }),
    seen('XQHB', '2027-03-01T17:00:00Z', { id: 'first', obtainedAt: '2027-03-01T17:01:00Z' }),
    seen('XQHB', '2027-03-01T17:00:00Z', { id: 'again', obtainedAt: '2027-03-01T17:02:00Z' }),
  ];
  test.each([[[old, late, later]], [[later, late, old]], [[late, later, old]]])(
    'by its time, then by when it came %#',
    (all) => {
      expect(newest(all, 'XQHB', 'metar')!.id).toBe('again');
    },
  );
  test('of the airfield and kind asked for alone', () => {
    const all = [seen('XQPV', '2027-03-01T17:30:00Z'), forecast('XQHB'), old];
    expect(newest(all, 'XQHB', 'metar')).toBe(old);
    expect(newest(all, 'XQHB', 'taf')!.id).toBe('taf XQHB');
    expect(newest(all, 'XQPV', 'taf')).toBeNull();
  });
});

describe('a report', () => {
  test.each([
    // Two hours, both ends included.
    ['2027-03-01T15:59:59Z', []],
    ['2027-03-01T16:00:00Z', ['departure XQHB']],
    ['2027-03-01T18:00:00Z', ['departure XQHB', 'en-route XQHB']],
    ['2027-03-01T18:00:01Z', []],
  ])('of the field of departure at %s', (at, speaks) => {
    expect(used(asked([seen('XQHB', at)]))).toEqual(speaks);
  });
  test.each([
    // The flight arrives at 20:00.
    ['2027-03-01T17:59:59Z', []],
    ['2027-03-01T18:00:00Z', ['en-route XQPV', 'arrival XQPV']],
    ['2027-03-01T18:00:01Z', ['arrival XQPV']],
    ['2027-03-01T20:00:00Z', ['arrival XQPV']],
    ['2027-03-01T20:00:01Z', []],
  ])('of the field of arrival at %s', (at, speaks) => {
    expect(used(asked([seen('XQPV', at)]))).toEqual(speaks);
  });
  test('speaks by what was observed, and tells what it adds', () => {
    const all = asked([seen('XQHB', '2027-03-01T18:00:00Z', { trend: 'NOSIG' })]);
    expect(phase(all, 'departure')).toMatchObject({ prevailing: [CONDITIONS], trend: 'NOSIG' });
  });
  test('that says nothing speaks of nothing', () => {
    expect(used(asked([seen('XQHB', '2027-03-01T17:00:00Z', { observed: null })]))).toEqual([]);
  });
});

describe('a forecast', () => {
  // Departure: 18:00 to 19:00. En route: 18:00 to 20:00. Arrival: 19:00 to 21:00.
  test.each<[string, string, string[]]>([
    ['2027-03-01T18:00:00Z', '2027-03-01T19:00:00Z', ['departure XQHB']],
    ['2027-03-01T18:00:01Z', '2027-03-01T19:00:00Z', []],
    ['2027-03-01T18:00:00Z', '2027-03-01T18:59:59Z', []],
    ['2027-03-01T18:00:00Z', '2027-03-01T20:00:00Z', ['departure XQHB', 'en-route XQHB']],
    ['2027-03-01T18:00:00Z', '2027-03-01T19:59:59Z', ['departure XQHB']],
  ])('of the field of departure, from %s to %s', (from, to, speaks) => {
    expect(used(asked([forecast('XQHB', { from, to })]))).toEqual(speaks);
  });
  test.each<[string, string, string[]]>([
    ['2027-03-01T19:00:00Z', '2027-03-01T21:00:00Z', ['arrival XQPV']],
    ['2027-03-01T19:00:01Z', '2027-03-01T21:00:00Z', []],
    ['2027-03-01T19:00:00Z', '2027-03-01T20:59:59Z', []],
    ['2027-03-01T18:00:00Z', '2027-03-01T21:00:00Z', ['en-route XQPV', 'arrival XQPV']],
  ])('of the field of arrival, from %s to %s', (from, to, speaks) => {
    expect(used(asked([forecast('XQPV', { from, to })]))).toEqual(speaks);
  });
  test('for a flight of half an hour the arrival begins with the flight', () => {
    const whole = { from: '2027-03-01T18:00:00Z', to: '2027-03-01T19:30:00Z' };
    expect(used(asked([forecast('XQPV', whole)], { minutes: 30 }))).toContain('arrival XQPV');
  });
  test.each<Partial<WeatherReport>>([{ from: null }, { to: null }])('without an end: %j', (of) => {
    const all = asked([{ ...forecast('XQPV'), ...of }]);
    expect(used(all)).toEqual([]);
  });

  test.each([
    // The parts that share time with 19:00 to 21:00, whose last instant counts and whose first belongs to what begins then.
    ['2027-03-01T18:00:00Z', '2027-03-01T19:00:00Z', 0],
    ['2027-03-01T18:00:00Z', '2027-03-01T19:00:01Z', 1],
    ['2027-03-01T20:59:59Z', '2027-03-01T22:00:00Z', 1],
    ['2027-03-01T21:00:00Z', '2027-03-01T22:00:00Z', 0],
  ])('a part from %s to %s', (from, to, count) => {
    const all = asked([forecast('XQPV', {}, [{}, { change: 'temporary', from, to }])]);
    expect(phase(all, 'arrival').passing).toHaveLength(count);
  });

  test('what prevails and what may pass through are told apart', () => {
    const low = { ...CONDITIONS, ceilingFtAgl: 300 };
    const parts: Part[] = [
      {},
      { conditions: low },
      { change: 'temporary', text: 'TEMPO' },
      { change: 'probable', text: 'PROB30' },
    ];
    const found = phase(asked([forecast('XQPV', {}, parts)]), 'arrival');
    expect(found.prevailing).toEqual([CONDITIONS, low]);
    expect(found.passing.map(({ text }) => text)).toEqual(['TEMPO', 'PROB30']);
    expect(found.trend).toBeNull();
  });

  test.each([
    ['2027-03-01T11:59:59Z', true],
    ['2027-03-01T12:00:00Z', false],
  ])('issued at %s has been followed by another: %p', (issuedAt, old) => {
    expect(phase(asked([forecast('XQPV', { issuedAt })]), 'arrival').oldForecast).toBe(old);
  });
  test('that says nothing of the phase is not old either', () => {
    const issuedAt = '2027-03-01T01:00:00Z';
    const all = asked([forecast('XQPV', { issuedAt, to: '2027-03-01T20:00:00Z' })]);
    expect(phase(all, 'arrival').oldForecast).toBe(false);
  });
});

describe('a report and a forecast of one field', () => {
  const low = { ...CONDITIONS, ceilingFtAgl: 300 };
  const both = (of: typeof HOME_FIELD) => [
    seen(of.code, '2027-03-01T18:00:00Z', { observed: low, trend: 'BECMG' }),
    forecast(of.code),
  ];
  test('at the departure what is seen goes before what was forecast, and both are told', () => {
    const found = phase(asked(both(HOME)), 'departure');
    expect(found).toMatchObject({ prevailing: [low], trend: 'BECMG' });
    expect(found.from.map(({ id }) => id)).toEqual(['metar XQHB 2027-03-01T18:00:00Z', 'taf XQHB']);
  });
  test('later what is forecast does, and the report is not told', () => {
    for (const name of ['en-route', 'arrival'] as const) {
      const found = phase(asked(both(AWAY)), name, 'XQPV');
      expect(found).toMatchObject({ prevailing: [CONDITIONS], trend: null });
      expect(found.from.map(({ id }) => id)).toEqual(['taf XQPV']);
    }
  });
  test('a forecast of what passes through alone leaves it to the report', () => {
    const parts: Part[] = [{ change: 'temporary' }];
    const [metar] = both(AWAY);
    const found = phase(asked([metar!, forecast('XQPV', {}, parts)]), 'arrival');
    expect(found).toMatchObject({ prevailing: [low], trend: 'BECMG' });
    expect(found.from).toHaveLength(2);
  });
});

test('each report is evidence once, with what it is and where it came from', () => {
  const metar = seen('XQHB', '2027-03-01T18:00:00Z', { source: 'pasted' });
  expect(countedReports(asked([metar, forecast('XQPV')]))).toEqual([
    { id: metar.id, on: '2027-03-01', what: 'report for XQHB, pasted' },
    { id: 'taf XQPV', on: '2027-03-01', what: 'forecast for XQPV, fetched' },
  ]);
});

test('the answer is asked of the moment: it changes when the report grows too old', () => {
  const moment = new Moment({
    departs: toSeconds('2027-03-01T18:00:00Z'),
    durationSeconds: 3600,
    knownAt: 0,
    zone: 'America/Denver',
  });
  weatherByPhase({ route: [HOME], reports: [seen('XQHB', '2027-03-01T17:00:00Z')] }, moment, {
    ...{ reportHours: 2.5, forecastHours: 6 },
  });
  // 17:00 and 2.5 h: en route and at the arrival it speaks of flights that are over by 19:30, so that leave by 18:30.
  expect(moment.nextChange).toBe(toSeconds('2027-03-01T18:30:01Z'));
});
