import { toInstant, toSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
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
