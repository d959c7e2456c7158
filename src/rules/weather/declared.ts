/**
 * Reports in the form in which the member tells weather by hand, which the rules about wind, ceilings and distances read.
 * Pure: the same reports always make the same facts.
 */
import { toInstant, toSeconds } from '../calendar/instants.js';
import type { DeclaredForecast, DeclaredWeather, FlightFacts } from '../facts/flight.js';
import type { WeatherReport } from '../facts/weather.js';
import { newest } from './phases.js';
import { sureVisibilitySm, worstOf } from './worst.js';

const HOUR_SECONDS = 3600;
const FALLING = /DZ|RA|SN|SG|PL|GR|GS|UP/;

/**
 * The flight with its reports, and with weather and forecast from them where the member told none. What was told by hand
 * stands as it is: whoever tells it has looked.
 */
export function withReports(flight: FlightFacts, reports: readonly WeatherReport[]): FlightFacts {
  const codes = new Set(flight.route.map(({ code }) => code));
  const ofRoute = reports.filter(({ airfield }) => codes.has(airfield));
  if (ofRoute.length === 0) return flight;
  const [first, last] = [flight.route[0]!.code, flight.route.at(-1)!.code];
  const metar = newest(ofRoute, first, 'metar');
  const taf = newest(ofRoute, last, 'taf');
  return {
    ...flight,
    reports: ofRoute,
    weather: withRunways(flight.weather, metar ? weatherOf(metar) : null),
    destinationForecast: forecastOf(flight, taf),
  };
}

/** Weather told by hand stands; where it says of the runways alone, which no report does, it is laid over the report. */
function withRunways(told: DeclaredWeather | null, reported: DeclaredWeather | null): DeclaredWeather | null {
  if (!told || !reported) return told ?? reported;
  const { observedAt: _observedAt, wet = null, ...rest } = told;
  const more = Object.values(rest).some((value) => value !== null);
  return more ? told : { ...reported, wet: wet ?? reported.wet ?? null };
}

/** A report as weather told; null where it says nothing (NIL). */
export function weatherOf({ issuedAt, observed }: WeatherReport): DeclaredWeather | null {
  if (!observed) return null;
  // A wind between two directions may come from either: none is relied on.
  const { windFromDeg, windVaries, windKt, gustKt, ceilingFtAgl, temperatureC, altimeterInHg } = observed;
  return {
    observedAt: issuedAt,
    windFromDeg: windVaries === null ? windFromDeg : null,
    ...{ windKt, gustKt, ceilingFtAgl, temperatureC, altimeterInHg },
    visibilitySm: sureVisibilitySm(observed),
    // Rain that fell before is not told: only what falls is known.
    wet: observed.phenomena.some((code) => !code.startsWith('VC') && FALLING.test(code)) ? true : null,
  };
}

/**
 * The worst that the forecast for the destination says from an hour before the arrival to an hour after. Under IFR what
 * may pass through counts as well, since the need of an alternate hangs on it; under VFR it becomes a condition.
 */
function forecastOf(flight: FlightFacts, taf: WeatherReport | null): DeclaredForecast | null {
  const told = flight.destinationForecast ?? null;
  if (!taf?.from || !taf.to || (told !== null && (told.from !== null || told.to !== null))) return told;
  const [from, to] = [toSeconds(flight.arrives) - HOUR_SECONDS, toSeconds(flight.arrives) + HOUR_SECONDS];
  if (from < toSeconds(taf.from) || to > toSeconds(taf.to)) return told;
  const during = taf.periods.filter((one) => toSeconds(one.from) <= to && toSeconds(one.to) > from);
  const prevailing = worstOf(
    during.filter(({ change }) => change === 'prevailing').map(({ conditions }) => conditions),
  );
  const passing = during
    .filter(({ change }) => change !== 'prevailing' && flight.flightRules === 'IFR')
    .map(({ conditions }) => conditions);
  return {
    ...{ from: toInstant(from), to: toInstant(to), approachPublished: told?.approachPublished ?? null },
    ceilingFtAgl: lower(
      prevailing.ceilingFtAgl,
      passing.map((one) => one.ceilingFtAgl),
    ),
    visibilitySm: lower(prevailing.visibilitySm, passing.map(sureVisibilitySm)),
  };
}

/** What passes through names what differs only: null is no difference. */
const lower = (prevailing: number | null, passing: readonly (number | null)[]): number | null =>
  prevailing === null
    ? null
    : Math.min(prevailing, ...passing.filter((value): value is number => value !== null));
