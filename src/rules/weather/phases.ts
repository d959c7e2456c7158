/** What reports and forecasts say of each phase of a flight. All questions about time go through the moment. */
import { plusSeconds, toSeconds } from '../calendar/instants.js';
import type { Moment } from '../engine/moment.js';
import type { FlightFacts } from '../facts/flight.js';
import type { ForecastPeriod, WeatherConditions, WeatherReport } from '../facts/weather.js';

export type Phase = 'departure' | 'en-route' | 'arrival';

/** How the phases are told of. */
export const PHASE_WORDS: Record<Phase, string> = {
  departure: 'the departure',
  'en-route': 'the time en route',
  arrival: 'the arrival',
};

/** What is known of one phase at one airfield. */
export interface PhaseWeather {
  phase: Phase;
  /** The airfield's code. */
  airfield: string;
  /** What may prevail then; more than one where the weather changes meanwhile. Empty: nobody says. */
  prevailing: WeatherConditions[];
  /** Parts of a forecast that may pass through: for a time, or with a probability. */
  passing: ForecastPeriod[];
  /** What a report adds about the two hours after it. */
  trend: string | null;
  /** Reports and forecasts that were used. */
  from: WeatherReport[];
  /** The forecast was issued so long before the departure that a newer one will be there. */
  oldForecast: boolean;
}

/** For how long reports speak. */
export interface Speaks {
  /** Hours after an observation through which it still says something. */
  reportHours: number;
  /** Hours after its issue after which a forecast has been followed by another. */
  forecastHours: number;
}

const HOUR_SECONDS = 3600;

/** Seconds from the departure at which a phase begins and ends. */
interface Window {
  begins: number;
  ends: number;
}

/**
 * Departure: the hour from then on. Arrival: an hour before and after, as 14 CFR 91.167(b) and 91.169(b) look at a
 * destination. En route: the whole flight, by the airfields of the route, since reports are of airfields.
 */
export function weatherByPhase(
  flight: Pick<FlightFacts, 'route' | 'reports'>,
  moment: Moment,
  speaks: Speaks,
): PhaseWeather[] {
  const length = moment.durationSeconds;
  const codes = [...new Set(flight.route.map(({ code }) => code))];
  const [first, last] = [flight.route[0]?.code, flight.route.at(-1)?.code];
  if (first === undefined || last === undefined) return [];
  const at = (phase: Phase, airfield: string, window: Window): PhaseWeather =>
    phaseAt({ phase, airfield, window, reports: flight.reports ?? [], moment, speaks });
  return [
    at('departure', first, { begins: 0, ends: HOUR_SECONDS }),
    ...codes.map((code) => at('en-route', code, { begins: 0, ends: length })),
    at('arrival', last, { begins: Math.max(0, length - HOUR_SECONDS), ends: length + HOUR_SECONDS }),
  ];
}

/** The newest of a kind for an airfield; of two of one time the one that came later. */
export function newest(
  reports: readonly WeatherReport[],
  airfield: string,
  kind: WeatherReport['kind'],
): WeatherReport | null {
  const order = (one: WeatherReport): string => `${one.issuedAt} ${one.obtainedAt}`;
  const found = reports
    .filter((one) => one.airfield === airfield && one.kind === kind)
    .sort((a, b) => (order(a) < order(b) ? 1 : -1));
  return found[0] ?? null;
}

interface At {
  phase: Phase;
  airfield: string;
  window: Window;
  reports: readonly WeatherReport[];
  moment: Moment;
  speaks: Speaks;
}

function phaseAt({ phase, airfield, window, reports, moment, speaks }: At): PhaseWeather {
  const metar = newest(reports, airfield, 'metar');
  const taf = newest(reports, airfield, 'taf');
  const parts = taf && covers(taf, window, moment) ? taf.periods : [];
  const during = parts.filter(({ from, to }) => meets(from, to, window, moment));
  const forecast = during.filter(({ change }) => change === 'prevailing').map(({ conditions }) => conditions);
  const observed = metar?.observed && fresh(metar, phase, moment, speaks) ? metar.observed : null;
  // At the departure what is seen goes before what was forecast; later a forecast does.
  const sees = observed !== null && (phase === 'departure' || forecast.length === 0);
  const prevailing = sees ? [observed] : forecast;
  return {
    ...{ phase, airfield, prevailing },
    passing: during.filter(({ change }) => change !== 'prevailing'),
    trend: sees ? metar!.trend : null,
    from: [...(sees ? [metar!] : []), ...(during.length > 0 ? [taf!] : [])],
    oldForecast:
      during.length > 0 &&
      !moment.departsAtOrBefore(plusSeconds(taf!.issuedAt, Math.round(speaks.forecastHours * HOUR_SECONDS))),
  };
}

/** Does a forecast hold for the whole of the window? */
function covers({ from, to }: WeatherReport, { begins, ends }: Window, moment: Moment): boolean {
  if (from === null || to === null) return false;
  return moment.departsAtOrAfter(toSeconds(from) - begins) && moment.departsAtOrBefore(toSeconds(to) - ends);
}

/** Do [from, to) and the window share time? */
function meets(from: string, to: string, { begins, ends }: Window, moment: Moment): boolean {
  const starts = moment.departsAtOrAfter(toSeconds(from) - ends + 1);
  return starts && !moment.departsAtOrAfter(toSeconds(to) - begins);
}

/** Does an observation still speak of a phase? Never of a time before it. */
function fresh({ issuedAt }: WeatherReport, phase: Phase, moment: Moment, { reportHours }: Speaks): boolean {
  const until = toSeconds(issuedAt) + Math.round(reportHours * HOUR_SECONDS);
  const departs = moment.departsAtOrAfter(issuedAt) && moment.departsAtOrBefore(until);
  if (phase === 'departure') return departs;
  const arrives = moment.arrivesBefore(until + 1) && !moment.arrivesBefore(issuedAt);
  return phase === 'arrival' ? arrives : departs && arrives;
}
