import { toInstant, toSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { DeclaredWeather } from '../../../facts/flight.js';

/**
 * The declared weather where it still speaks of this departure: observed no more than `hours` before it and not after.
 * Null otherwise. Old weather is no weather, whether good or bad.
 */
export function freshWeather(
  weather: DeclaredWeather | null,
  moment: Moment,
  hours: number,
): DeclaredWeather | null {
  if (!weather?.observedAt) return null;
  if (!moment.departsAtOrAfter(weather.observedAt)) return null;
  const lastDeparture = toInstant(toSeconds(weather.observedAt) + Math.round(hours * 3600));
  return moment.departsAtOrBefore(lastDeparture) ? weather : null;
}

/** Parameters that whoever asks for the declared visibility must declare. */
export const VISIBILITY_PARAMETERS = ['us.weather.observation-hours'] as const;

/** The visibility declared lately enough to speak of this departure, statute miles; null when there is none. */
export function declaredVisibilitySm(
  weather: DeclaredWeather | null,
  moment: Moment,
  p: Parameters,
): number | null {
  return freshWeather(weather, moment, p.number(VISIBILITY_PARAMETERS[0]))?.visibilitySm ?? null;
}
