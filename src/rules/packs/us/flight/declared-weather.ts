import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { DeclaredWeather } from '../../../facts/flight.js';
import { freshWeather } from '../../common/shared/fresh-weather.js';

export { freshWeather };

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
