/**
 * What the member tells of weather and loading. It is seldom told when the flight is booked; what a rule asks of it then
 * becomes a condition where the rule says one.
 */
import { bestRunway, type RunwayWind } from '../../air/wind.js';
import { plusSeconds } from '../../calendar/instants.js';
import { need } from '../../engine/unknown.js';
import type { AirfieldFact, DeclaredWeather } from '../../facts/flight.js';
import { tell } from '../unknowns.js';
import type { Entry, Reading } from './entry.js';

/**
 * Hours for which an observation speaks of a departure; old weather is no weather. Common practice, no source, and the same
 * as the law packs take.
 */
export const OBSERVATION_HOURS = 2;

type Get = (r: Reading) => number;
type Range = readonly [number, number];

/** Weather speaks of departures near the observation only, so it changes with the departure; loading does not. */
const observed = (name: string, unit: string, says: string, get: Get, range: Range): Entry => ({
  ...loading(name, unit, says, get, range),
  overTime: true,
});

const loading = (name: string, unit: string, says: string, get: Get, range: Range = [0, 100_000]): Entry => ({
  ...{ name, type: 'double', unit, range, toldLate: true, says, get },
});

export const WIND: readonly Entry[] = [
  observed('speedKt', 'kt', 'Wind as told.', (r) => wind(r).kt, [0, 300]),
  observed('gustKt', 'kt', 'Gusts as told; the wind itself when none are.', (r) => strongest(r), [0, 300]),
  observed(
    'crosswindKt',
    'kt',
    'Wind across the best runway of the airfield of departure, gusts counted; a wind without a direction counts wholly across.',
    (r) => Math.abs(onRunway(r, 0).crosswindKt),
    [0, 300],
  ),
  observed(
    'headwindKt',
    'kt',
    'Wind along the best runway of the airfield of departure, gusts counted; negative from behind.',
    (r) => onRunway(r, 0).headwindKt,
    [-300, 300],
  ),
  observed(
    'landingCrosswindKt',
    'kt',
    'The same wind across the best runway of the destination.',
    (r) => Math.abs(onRunway(r, -1).crosswindKt),
    [0, 300],
  ),
  observed(
    'landingTailwindKt',
    'kt',
    'The same wind from behind on the best runway of the destination; 0 when it is not from behind.',
    (r) => Math.max(0, -onRunway(r, -1).headwindKt),
    [0, 300],
  ),
];

export const WEATHER: readonly Entry[] = [
  observed(
    'visibilitySm',
    'statute miles',
    'Visibility as told.',
    (r) => told(r, 'visibilitySm', 'visibility'),
    [0, 1000],
  ),
  observed(
    'ceilingFt',
    'ft above ground',
    'Ceiling as told.',
    (r) => told(r, 'ceilingFtAgl', 'ceiling'),
    [0, 100_000],
  ),
  observed(
    'temperatureC',
    'degrees Celsius',
    'Temperature as told.',
    (r) => told(r, 'temperatureC', 'temperature'),
    [-100, 100],
  ),
];

export const LOADING: readonly Entry[] = [
  loading('occupantsLb', 'lb', 'Weight of everybody aboard.', (r) =>
    loaded(r, 'occupantsLb', 'weight of the occupants'),
  ),
  loading('baggageLb', 'lb', 'Weight of the baggage.', (r) =>
    loaded(r, 'baggageLb', 'weight of the baggage'),
  ),
  loading('fuelUsGal', 'US gal', 'Fuel at departure.', (r) => loaded(r, 'fuelUsGal', 'fuel')),
  {
    ...loading('fuelHours', 'h', 'Fuel at departure in hours at normal cruise.', (r) => {
      const burn = r.aircraft('type').fuelBurnUsGalPerHour;
      const fuel = loaded(r, 'fuelUsGal', 'fuel');
      return fuel / need(burn || null, 'loading.fuelHours', 'the fuel burned in cruise is not on record');
    }),
    aircraft: ['type'],
  },
];

function fresh({ flight, moment }: Reading): DeclaredWeather {
  const { weather } = flight;
  const observedAt = weather?.observedAt ?? null;
  const speaks =
    observedAt !== null &&
    moment.departsAtOrAfter(observedAt) &&
    moment.departsAtOrBefore(plusSeconds(observedAt, OBSERVATION_HOURS * 3600));
  return tell(speaks ? weather : null, 'weather', 'no weather observed shortly before departure is told');
}

function told(r: Reading, key: 'visibilitySm' | 'ceilingFtAgl' | 'temperatureC', words: string): number {
  return tell(fresh(r)[key], `weather.${key}`, `the ${words} is not told`);
}

function loaded({ flight }: Reading, key: 'occupantsLb' | 'baggageLb' | 'fuelUsGal', words: string): number {
  return tell(flight.loading?.[key], `loading.${key}`, `the ${words} is not told`);
}

function wind(r: Reading): { fromDegTrue: number | null; kt: number; gustKt: number | null } {
  const weather = fresh(r);
  const kt = tell(weather.windKt, 'wind.speedKt', 'the wind is not told');
  return { fromDegTrue: weather.windFromDeg, kt, gustKt: weather.gustKt };
}

function strongest(r: Reading): number {
  const { kt, gustKt } = wind(r);
  return Math.max(kt, gustKt ?? 0);
}

function onRunway(r: Reading, at: 0 | -1): RunwayWind {
  const field: AirfieldFact | undefined = r.flight.route.at(at);
  const best = bestRunway(field?.runways ?? [], wind(r));
  return need(best, 'wind', `no runway of ${field ? field.name : 'the airfield'} is on record`);
}
