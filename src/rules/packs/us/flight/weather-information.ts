import { defineRule } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import type { FlightFacts } from '../../../facts/flight.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import { SPEAKS } from '../../../parameters/club/weather.js';
import { PHASE_WORDS, type Phase } from '../../../weather/phases.js';
import { countedReports, phasesOf } from '../../common/shared/phases.js';
import { freshWeather } from '../../common/shared/fresh-weather.js';

/**
 * 14 CFR 91.103(a): before a flight under IFR, or away from the vicinity of an airport, the pilot in command knows the
 * weather reports and forecasts. How good the weather must be other sections and the club's rules say.
 */
export const weatherInformation = defineRule({
  id: 'preflight.weather',
  title: 'Weather reports and forecasts known',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: 'Get the weather reports and forecasts for the flight.',
  reads: [],
  parameters: [...SPEAKS],
  branches: {
    local: {
      status: 'not-applicable',
      says: 'The flight is under VFR and stays with its own airfield.',
    },
    known: { status: 'met', says: 'Reports or forecasts speak of the flight at {airfields}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.103(a)',
        status: 'from memory',
        reading:
          'A flight that lands nowhere else is one in the vicinity of its airport. Departure, arrival and each landing on the way must be spoken of; weather and forecast told by hand count.',
      },
      judge(f, moment, p, take) {
        const { flight } = f;
        const codes = [...new Set(flight.route.map(({ code }) => code))];
        if (codes.length === 0) throw new UnknownFact('flight.route', 'no airfield is named');
        if (flight.flightRules === 'VFR' && codes.length <= 1) return take('local');
        const phases = phasesOf(flight, moment, p);
        const byHand = toldByHand(flight, moment, p);
        const ends = [codes[0], flight.route.at(-1)!.code];
        const missing = phases.filter(
          ({ phase, airfield, prevailing }) =>
            prevailing.length === 0 &&
            !byHand.includes(phase) &&
            (phase !== 'en-route' || !ends.includes(airfield)),
        );
        if (missing.length === 0)
          return take('known', { airfields: codes.join(', ') }, { counted: countedReports(phases) });
        const which = missing.map(({ phase, airfield }) => `${PHASE_WORDS[phase]} at ${airfield}`);
        throw new UnknownFact(
          'flight.reports',
          `no report or forecast at hand speaks of ${which.join(', ')}`,
          `Get the weather report or forecast for ${which.join(', ')}.`,
        );
      },
    },
  ],
});

/** Phases of which the member told by hand. */
function toldByHand(
  flight: Pick<FlightFacts, 'weather' | 'destinationForecast'>,
  moment: Moment,
  p: Parameters,
): Phase[] {
  const { from, to } = flight.destinationForecast ?? { from: null, to: null };
  const arrival = from && to && !moment.arrivesBefore(from) && moment.departsAtOrBefore(to);
  return [
    ...(freshWeather(flight.weather, moment, p.number(SPEAKS[0])) ? (['departure'] as const) : []),
    ...(arrival ? (['arrival'] as const) : []),
  ];
}
