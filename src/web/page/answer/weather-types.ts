import type { WeatherWorkDto } from '../../../decisions/weather/weather-work.dto.js';

export type Weather = WeatherWorkDto;
export type Field = Weather['fields'][number];
export type PhaseOf = Weather['phases'][number];

export const PHASE: Record<PhaseOf['phase'], string> = {
  departure: 'Departure',
  'en-route': 'En route',
  arrival: 'Arrival',
};
