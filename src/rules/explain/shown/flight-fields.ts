/** What a rule took from the flight as asked, in a few words a field. */
import type {
  AirfieldFact,
  DeclaredForecast,
  DeclaredLoading,
  DeclaredWeather,
  FlightFacts,
} from '../../facts/flight.js';
import type { Crew } from '../../engine/crew.js';
import { counted, listed, PURPOSE_WORD } from '../words.js';
import { dayAndClock, hours, parts } from './shown.js';
import type { FieldWords } from './type-fields.js';

/** Finds a person's name by id. */
export type NameOf = (id: string) => string;

const NOT_SAID = 'not said';
const said = (value: number | null | undefined, unit: string, name: string): string | false =>
  value !== null && value !== undefined && `${name} ${value} ${unit}`;

const wind = ({ windFromDeg, windKt }: DeclaredWeather): string | false => {
  const from = said(windFromDeg, 'degrees', 'wind from');
  const speed = said(windKt, 'kt', 'wind');
  return from && speed ? `${from}, ${windKt} kt` : from || speed;
};

const weather = (of: DeclaredWeather, zone: string): string =>
  parts(
    said(of.visibilitySm, 'SM', 'visibility'),
    said(of.ceilingFtAgl, 'ft', 'ceiling'),
    wind(of),
    said(of.gustKt, 'kt', 'gusts'),
    said(of.temperatureC, '°C', 'temperature'),
    said(of.altimeterInHg, 'inches of mercury', 'altimeter'),
    of.wet !== null && of.wet !== undefined && (of.wet ? 'runways wet' : 'runways dry'),
    of.observedAt && `observed ${dayAndClock(of.observedAt, zone)}`,
  ) || NOT_SAID;

const forecast = (of: DeclaredForecast, zone: string): string =>
  parts(
    said(of.visibilitySm, 'SM', 'visibility'),
    said(of.ceilingFtAgl, 'ft', 'ceiling'),
    of.from && `from ${dayAndClock(of.from, zone)}`,
    of.to && `to ${dayAndClock(of.to, zone)}`,
    of.approachPublished !== null && (of.approachPublished ? 'approach published' : 'no approach published'),
  ) || NOT_SAID;

const byPlace = (weights: readonly number[] | null | undefined, what: string): string | false =>
  !!weights && weights.length > 1 && `by ${what} ${weights.join(' + ')} lb`;

const loading = (of: DeclaredLoading): string =>
  parts(
    said(of.occupantsLb, 'lb', 'everyone aboard'),
    byPlace(of.rowsLb, 'rows'),
    said(of.baggageLb, 'lb', 'baggage'),
    byPlace(of.compartmentsLb, 'compartments'),
    said(of.fuelUsGal, 'US gal', 'fuel'),
  ) || NOT_SAID;

const route = (fields: readonly AirfieldFact[]): string => fields.map(({ code }) => code).join(' – ');

/** Words for each field of the request. */
export const flightWords = (nameOf: NameOf, zone: string): FieldWords<FlightFacts> => ({
  departs: (value) => `departs ${dayAndClock(value, zone)}`,
  arrives: (value) => `arrives ${dayAndClock(value, zone)}`,
  purpose: (value) => `purpose: ${PURPOSE_WORD[value]}`,
  flightRules: (value) => value,
  personsOnBoard: (value) => `${value} on board`,
  memberId: (value) => `asked for ${nameOf(value)}`,
  instructorId: (value) => `instructor ${nameOf(value)}`,
  secondPilotId: (value) => `second pilot ${nameOf(value)}`,
  actingPilotId: (value) => `acting pilot ${nameOf(value)}`,
  secondPilotRequired: (value) => (value ? 'the second pilot is required crew' : null),
  forHire: (value) => (value ? 'for hire' : 'not for hire'),
  route: (value) => `route ${route(value)}`,
  runways: (value) => `runways ${listed(value.map((one) => `${one.runway} at ${one.airfield}`))}`,
  plannedTenths: (value) => `${hours(value)} planned on the meter`,
  airspace: (value) => `airspace ${listed(value)}`,
  maxAltitudeFtMsl: (value) => `highest altitude ${value} ft`,
  maxSpeedKias: (value) => `highest speed ${value} kt`,
  usesVor: (value) => (value ? 'VOR is used' : 'VOR is not used'),
  usesTransponder: (value) => (value ? 'transponder on' : 'transponder off'),
  overWaterBeyondGlide: (value) =>
    value ? 'over water beyond gliding distance' : 'within gliding distance of the shore',
  weather: (value) => `weather: ${weather(value, zone)}`,
  reports: (value) =>
    `reports and forecasts: ${listed(value.map((one) => `${one.kind === 'metar' ? 'report' : 'forecast'} ${one.airfield} of ${dayAndClock(one.issuedAt, zone)}`))}`,
  destinationForecast: (value) => `forecast at the destination: ${forecast(value, zone)}`,
  loading: (value) => `loading: ${loading(value)}`,
  planned: (value) => (value ? 'asked ahead of making a booking' : 'asked to book it'),
});

/** Phrases for parts of a request that may be left out. */
export const FLIGHT_MISSING: Partial<Record<keyof FlightFacts, string>> = {
  instructorId: 'no instructor named',
  secondPilotId: 'no second pilot named',
  runways: 'no runway chosen',
  airspace: 'airspace not said',
  maxAltitudeFtMsl: 'highest altitude not said',
  maxSpeedKias: 'highest speed not said',
  usesVor: 'whether VOR is used not said',
  usesTransponder: 'whether the transponder is on not said',
  overWaterBeyondGlide: 'whether it goes beyond gliding distance from shore not said',
  weather: 'weather not said',
  reports: 'no reports and forecasts at hand',
  destinationForecast: 'forecast at the destination not said',
  loading: 'loading not said',
  planned: 'asked to book it',
};

/** Words for what a rule took from the crew. */
export const crewWords = (nameOf: NameOf): FieldWords<Crew> => ({
  picId: (value) => `pilot in command ${nameOf(value)}`,
  picBecause: () => null,
  instruction: (value) => (value ? 'instruction is given' : 'no instruction is given'),
  learnerId: (value) => `${nameOf(value)} is taught`,
  alone: (value) => (value ? 'the member flies alone' : 'the member does not fly alone'),
  passengers: (value) => (value === 0 ? 'no passengers' : counted(value, 'passenger')),
});
