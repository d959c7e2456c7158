/** Reports and forecasts made up for specs, on the fields of the base flight. */
import type { AirfieldFact, FlightFacts, WeatherReport } from '../../../src/rules/index.js';
import { baseSheet, HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import { CONDITIONS, REPORT } from '../../../src/rules/workshop/weather-records.js';

export const field = (code: string, of: Partial<AirfieldFact> = {}): AirfieldFact => ({
  ...HOME_FIELD,
  ...{ id: code, code, ...of },
});

type Observed = Partial<WeatherReport['periods'][number]['conditions']>;
/** What a report of a field saw; nothing: it says nothing. */
export const seen = (
  airfield: string,
  observed: Observed | null,
  of: Partial<WeatherReport> = {},
): WeatherReport => ({
  ...REPORT,
  ...{ id: `metar ${airfield}`, airfield, periods: [] },
  observed: observed && { ...CONDITIONS, ...observed },
  ...of,
});

export type Part = Partial<Omit<WeatherReport['periods'][number], 'conditions'>> & { conditions?: Observed };
/** A forecast, from noon to noon unless given, whose parts last as long unless given. */
export function forecast(airfield: string, parts: Part[], of: Partial<WeatherReport> = {}): WeatherReport {
  const span = { from: '2027-03-01T12:00:00Z', to: '2027-03-02T12:00:00Z' };
  return {
    ...REPORT,
    ...{ id: `taf ${airfield}`, kind: 'taf', airfield, observed: null, issuedAt: '2027-03-01T11:30:00Z' },
    ...span,
    periods: parts.map(({ conditions, ...part }) => ({
      ...REPORT.periods[0]!,
      ...{ ...span, ...part },
      conditions: { ...CONDITIONS, ...conditions },
    })),
    ...of,
  };
}

/** The base flight, 18:00 to 19:00, home and away. */
export const flight = (of: Partial<FlightFacts> = {}): FlightFacts => ({
  ...baseSheet().flight,
  ...{ route: [field('XQHB'), field('XQPV')], weather: null, destinationForecast: null, ...of },
});
