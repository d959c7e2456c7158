/** What a rule took from the flight as asked, in the words it is told with; what says nothing to people is left out. */
import { decide, decideCrew, rulesetFor, startingPolicy, type FactSheet } from '../../../src/rules/index.js';
import { explainRequest } from '../../../src/rules/explain/request-read.js';
import { baseSheet, HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import { FORECAST, LOADING, WEATHER } from '../../../src/rules/workshop/records.js';
import { derive } from '../../../src/rules/explain/index.js';

type Flight = FactSheet['flight'];

/** The fields named, as told of the base flight with some changes. */
function told(flight: Partial<Flight>, fields: string[], crew: string[] = []): string[] {
  const sheet = baseSheet();
  sheet.people['member-1']!.name = 'Ada';
  sheet.people['member-2'] = { ...sheet.people['member-1']!, id: 'member-2', name: 'Bert' };
  sheet.flight = { ...sheet.flight, ...flight };
  return explainRequest(sheet, decideCrew(sheet.flight, { secondPilotIsPassenger: true }), {
    flight: new Set(fields),
    crew: new Set(crew),
  });
}
const one = (flight: Partial<Flight>): string[] => told(flight, Object.keys(flight));

test.each<[Partial<Flight>, string]>([
  [{ departs: '2027-03-01T18:00:00Z' }, 'departs 2027-03-01 11:00'],
  [{ arrives: '2027-03-02T05:30:00Z' }, 'arrives 2027-03-01 22:30'],
  [{ purpose: 'solo' }, 'purpose: alone'],
  [{ purpose: 'passengers' }, 'purpose: with passengers'],
  [{ purpose: 'dual' }, 'purpose: with an instructor'],
  [{ purpose: 'checkout' }, 'purpose: a checkout'],
  [{ purpose: 'maintenance' }, 'purpose: a maintenance flight'],
  [{ purpose: 'ferry-to-inspection' }, 'purpose: a ferry flight to the inspection'],
  [{ flightRules: 'IFR' }, 'IFR'],
  [{ personsOnBoard: 3 }, '3 on board'],
  [{ memberId: 'member-2' }, 'asked for Bert'],
  [{ instructorId: 'member-2' }, 'instructor Bert'],
  [{ instructorId: 'member-3' }, 'instructor somebody'],
  [{ instructorId: null }, 'no instructor named'],
  [{ secondPilotId: 'member-2' }, 'second pilot Bert'],
  [{ secondPilotId: null }, 'no second pilot named'],
  [{ actingPilotId: 'member-2' }, 'acting pilot Bert'],
  [{ secondPilotRequired: true }, 'the second pilot is required crew'],
  [{ forHire: true }, 'for hire'],
  [{ forHire: false }, 'not for hire'],
  [{ route: [HOME_FIELD, { ...HOME_FIELD, code: 'XQNR' }, HOME_FIELD] }, 'route XQHB – XQNR – XQHB'],
  [{ plannedTenths: 15 }, '1.5 h planned on the meter'],
  [{ airspace: ['D', 'E', 'G'] }, 'airspace D, E and G'],
  [{ airspace: null }, 'airspace not said'],
  [{ maxAltitudeFtMsl: 8500 }, 'highest altitude 8500 ft'],
  [{ maxAltitudeFtMsl: null }, 'highest altitude not said'],
  [{ maxSpeedKias: 120 }, 'highest speed 120 kt'],
  [{ maxSpeedKias: null }, 'highest speed not said'],
  [{ usesVor: true }, 'VOR is used'],
  [{ usesVor: false }, 'VOR is not used'],
  [{ usesVor: null }, 'whether VOR is used not said'],
  [{ usesTransponder: true }, 'transponder on'],
  [{ usesTransponder: false }, 'transponder off'],
  [{ usesTransponder: null }, 'whether the transponder is on not said'],
  [{ overWaterBeyondGlide: true }, 'over water beyond gliding distance'],
  [{ overWaterBeyondGlide: false }, 'within gliding distance of the shore'],
  [{ overWaterBeyondGlide: null }, 'whether it goes beyond gliding distance from shore not said'],
  [{ weather: null }, 'weather not said'],
  [{ destinationForecast: null }, 'forecast at the destination not said'],
  [{ destinationForecast: undefined }, 'forecast at the destination not said'],
  [{ loading: null }, 'loading not said'],
])('%j', (flight, says) => {
  expect(one(flight)).toEqual([says]);
});

test.each<[string, Partial<Flight>]>([
  ['nobody named to act as pilot', { actingPilotId: null }],
  ['a second pilot who is not required', { secondPilotRequired: false }],
])('%s is nothing to tell', (_, flight) => {
  expect(one(flight)).toEqual([]);
});

describe('what the member told', () => {
  const NO_WEATHER = Object.fromEntries(Object.keys(WEATHER).map((key) => [key, null])) as never;
  const NO_FORECAST = Object.fromEntries(Object.keys(FORECAST).map((key) => [key, null])) as never;
  const NO_LOADING = Object.fromEntries(Object.keys(LOADING).map((key) => [key, null])) as never;
  const weather = (fields: Partial<typeof WEATHER>): string =>
    one({ weather: { ...(NO_WEATHER as typeof WEATHER), ...fields } })[0]!;
  const forecast = (fields: Partial<typeof FORECAST>): string =>
    one({ destinationForecast: { ...(NO_FORECAST as typeof FORECAST), ...fields } })[0]!;
  const loading = (fields: Partial<typeof LOADING>): string =>
    one({ loading: { ...(NO_LOADING as typeof LOADING), ...fields } })[0]!;

  test('of the weather', () => {
    expect(weather(WEATHER)).toBe(
      'weather: visibility 10 SM, ceiling 5000 ft, wind from 90 degrees, 5 kt, gusts 0 kt, temperature 10 °C, altimeter 29.92 inches of mercury, runways dry, observed 2027-03-01 11:00',
    );
    expect(weather({})).toBe('weather: not said');
    // Calm is told, and so is a wind of which only half was.
    expect(weather({ windFromDeg: 0, windKt: 0 })).toBe('weather: wind from 0 degrees, 0 kt');
    expect(weather({ windKt: 12 })).toBe('weather: wind 12 kt');
    expect(weather({ windFromDeg: 90 })).toBe('weather: wind from 90 degrees');
    expect(weather({ ceilingFtAgl: 0 })).toBe('weather: ceiling 0 ft');
    // Asked for before a field of it was kept, a sheet may lack it.
    expect(weather({ visibilitySm: 10, gustKt: undefined as never })).toBe('weather: visibility 10 SM');
  });

  test('of the forecast', () => {
    expect(forecast(FORECAST)).toBe(
      'forecast at the destination: visibility 10 SM, ceiling 5000 ft, from 2027-03-01 10:00, to 2027-03-01 14:00, approach published',
    );
    expect(forecast({})).toBe('forecast at the destination: not said');
    expect(forecast({ approachPublished: false })).toBe('forecast at the destination: no approach published');
  });

  test('of the loading', () => {
    expect(loading(LOADING)).toBe('loading: everyone aboard 170 lb, baggage 10 lb, fuel 40 US gal');
    expect(loading({ baggageLb: 0 })).toBe('loading: baggage 0 lb');
    expect(loading({})).toBe('loading: not said');
  });
});

describe('who is who', () => {
  const ALL = ['picId', 'picBecause', 'instruction', 'learnerId', 'alone', 'passengers'];

  test('on a flight alone', () => {
    expect(told({}, [], ALL)).toEqual([
      'pilot in command Ada',
      'no instruction is given',
      'the member flies alone',
      'no passengers',
    ]);
  });

  test('on a lesson, before and after an instructor is named', () => {
    expect(told({ purpose: 'dual', personsOnBoard: 3 }, [], ALL)).toEqual([
      'no pilot in command named',
      'instruction is given',
      'Ada is taught',
      'the member does not fly alone',
      '1 passenger',
    ]);
    expect(told({ purpose: 'dual', instructorId: 'member-2' }, [], ['picId'])).toEqual([
      'pilot in command Bert',
    ]);
    expect(told({ purpose: 'passengers', personsOnBoard: 3 }, [], ['passengers'])).toEqual(['2 passengers']);
  });

  test('is told before what was asked for, each in the order of the request', () => {
    expect(told({}, ['plannedTenths', 'personsOnBoard'], ['passengers', 'picId'])).toEqual([
      'pilot in command Ada',
      'no passengers',
      '1 on board',
      '1.0 h planned on the meter',
    ]);
  });
});

describe('a derivation tells what the rule itself took', () => {
  const policy = startingPolicy();
  const ruleset = rulesetFor('US', policy);
  const requestOf = (rule: string, flight: Partial<Flight> = {}): string[] => {
    const sheet = baseSheet();
    sheet.flight = { ...sheet.flight, ...flight };
    const finding = decide(sheet, policy, ruleset).findings.find((one) => one.rule === rule)!;
    return derive(finding, { sheet, ruleset, asOf: sheet.flight.departs }, null).request;
  };

  test('of crew and flight', () => {
    // VFR minima look at the weather and the airspace; nothing else of the request.
    const weather = requestOf('weather.vfr_minima', { weather: WEATHER });
    expect(weather).toEqual(expect.arrayContaining([expect.stringMatching(/^weather: visibility 10 SM/)]));
    expect(weather.join()).not.toMatch(/on board|loading|instructor/);
    expect(requestOf('weather.vfr_minima')).toContain('weather not said');
    expect(requestOf('registration.validity').join()).not.toMatch(/weather|loading/);
  });
});
