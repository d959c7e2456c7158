import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Counted } from '../../../engine/rule.js';
import type { FlightFacts } from '../../../facts/flight.js';
import { SPEAKS } from '../../../parameters/club/weather.js';
import { weatherByPhase, type PhaseWeather } from '../../../weather/phases.js';

/** The phases of the flight, with reports speaking as long as the club lets them. */
export const phasesOf = (
  flight: Pick<FlightFacts, 'route' | 'reports'>,
  moment: Moment,
  p: Parameters,
): PhaseWeather[] =>
  weatherByPhase(flight, moment, { reportHours: p.number(SPEAKS[0]), forecastHours: p.number(SPEAKS[1]) });

/** The reports behind the phases, as evidence. */
export function countedReports(phases: readonly PhaseWeather[]): Counted[] {
  const all = new Map(phases.flatMap(({ from }) => from).map((one) => [one.id, one]));
  return [...all.values()].map(({ id, issuedAt, kind, airfield, source }) => ({
    id,
    on: issuedAt.slice(0, 10),
    what: `${kind === 'metar' ? 'report' : 'forecast'} for ${airfield}, ${source}`,
  }));
}
