/** Rules that bind the flight itself under 14 CFR part 91: airspace, weather, fuel, wind. */
import { ruleList } from '../../../engine/rule.js';
import type { Parameter } from '../../../parameters/parameter.js';
import { ALTERNATE, CROSS_COUNTRY_EXPERIENCE, FUEL_RESERVE } from '../../../parameters/us/flight.js';
import { WEATHER } from '../../../parameters/us/weather.js';
import { alternateAirport } from './alternate.js';
import { classA } from './class-a.js';
import { crossCountryExperience } from './cross-country-experience.js';
import { fuelReserve } from './fuel-reserve.js';
import { runwayInformation } from './runway-information.js';
import { vfrWeather } from './vfr-weather.js';
import { weatherInformation } from './weather-information.js';
import { windLimits } from './wind-limits.js';

export const US_FLIGHT_RULES = ruleList(
  classA,
  vfrWeather,
  fuelReserve,
  alternateAirport,
  windLimits,
  crossCountryExperience,
  runwayInformation,
  weatherInformation,
);
export const US_FLIGHT_PARAMETERS: readonly Parameter[] = [
  ...WEATHER,
  ...FUEL_RESERVE,
  ...ALTERNATE,
  ...CROSS_COUNTRY_EXPERIENCE,
];
