/** The winds a flight meets where it takes off and where it lands: as told, reported or forecast. */
import type { Wind } from '../../../air/wind.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { AirfieldFact, FlightFacts } from '../../../facts/flight.js';
import type { WeatherConditions } from '../../../facts/weather.js';
import type { PhaseWeather } from '../../../weather/phases.js';
import { freshWeather } from './fresh-weather.js';
import { phasesOf } from './phases.js';

/** A wind that may pass through, for a time or with a probability. */
export interface PassingWind {
  wind: Wind;
  /** The part of the forecast it stands in, as written. */
  text: string;
}

/** The winds at one end of a flight. */
export interface WindsAt {
  airfield: AirfieldFact;
  /** 'XQRD for the arrival, as forecast'; the departure as told or reported is the airfield's code alone. */
  where: string;
  /** Each of these may blow then: more than one while the weather changes. */
  winds: Wind[];
  /** Something speaks of the time, and each thing that does tells its wind. */
  known: boolean;
  passing: PassingWind[];
}

/**
 * The winds of departure and arrival. What was told or reported for the departure stands while it is fresh; else what is forecast for
 * then. The arrival has what reports and forecasts say of it; it is left out where a flight comes back to its own airfield and nothing
 * tells another wind then. Null where the flight names no airfield.
 *
 * @param toldHours hours for which weather told for the departure speaks
 */
export function windsOf(
  flight: Pick<FlightFacts, 'route' | 'reports' | 'weather'>,
  moment: Moment,
  p: Parameters,
  toldHours: number,
): [departure: WindsAt, ...arrival: WindsAt[]] | null {
  const [first] = flight.route;
  if (!first) return null;
  const phases = (flight.reports ?? []).length === 0 ? [] : phasesOf(flight, moment, p);
  const of = (wanted: PhaseWeather['phase']): PhaseWeather | undefined =>
    phases.find(({ phase }) => phase === wanted);
  const seen = freshWeather(flight.weather, moment, toldHours);
  const departure = windsAt(first, of('departure'), 'departure');
  if (seen && seen.windKt !== null) {
    departure.winds = [{ fromDegTrue: seen.windFromDeg, kt: seen.windKt, gustKt: seen.gustKt }];
    departure.known = true;
    departure.where = first.code;
  }
  const weather = of('arrival');
  const arrival = windsAt(flight.route.at(-1)!, weather, 'arrival');
  const silent = weather === undefined || weather.prevailing.length === 0;
  return (silent || arrival.known) && sameAs(arrival, departure) ? [departure] : [departure, arrival];
}

/** Codes of airfields of the route of which the wind is not known when the flight is there. */
export function openFields(
  route: readonly AirfieldFact[],
  ends: readonly WindsAt[],
  isKnown: (end: WindsAt) => boolean,
): string[] {
  const codes = [...new Set(route.map(({ code }) => code))];
  return codes.filter((code) => {
    const there = ends.filter(({ airfield }) => airfield.code === code);
    return there.length === 0 || !there.every(isKnown);
  });
}

function windsAt(
  airfield: AirfieldFact,
  weather: PhaseWeather | undefined,
  phase: 'departure' | 'arrival',
): WindsAt {
  const { prevailing = [], passing = [], from = [] } = weather ?? {};
  const winds = prevailing.flatMap((one) => windIn(one) ?? []);
  // A report that counts stands first.
  const forecast = from[0]?.kind === 'taf';
  const said = forecast ? ', as forecast' : '';
  return {
    ...{ airfield, winds },
    where: phase === 'departure' && !forecast ? airfield.code : `${airfield.code} for the ${phase}${said}`,
    known: winds.length > 0 && winds.length === prevailing.length,
    passing: passing.flatMap(({ conditions, text }) => {
      const wind = windIn(conditions);
      return wind ? [{ wind, text }] : [];
    }),
  };
}

/** A wind that keeps to no direction may come from anywhere. Null where none is told. */
function windIn({ windFromDeg, windKt, gustKt, windVaries }: WeatherConditions): Wind | null {
  return windKt === null
    ? null
    : { fromDegTrue: windVaries === null ? windFromDeg : null, kt: windKt, gustKt };
}

/** Back at the same airfield, with nothing told beyond what is told of the departure. */
function sameAs(arrival: WindsAt, departure: WindsAt): boolean {
  const among = (all: readonly Wind[], one: Wind): boolean =>
    all.some(
      ({ fromDegTrue, kt, gustKt }) =>
        fromDegTrue === one.fromDegTrue && kt === one.kt && (gustKt ?? 0) === (one.gustKt ?? 0),
    );
  const parts = new Set(departure.passing.map(({ text }) => text));
  return (
    arrival.airfield.code === departure.airfield.code &&
    arrival.winds.every((one) => among(departure.winds, one)) &&
    arrival.passing.every(({ text }) => parts.has(text))
  );
}
