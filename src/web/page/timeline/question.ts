/** The flight of the form as a question about a span. */
import { toRequest, type FlightForm } from '../ask/flight.js';
import { at } from './days.js';

/** The flight without its times; `key` is the same for the same flight. */
export interface Question {
  flight: object;
  durationMinutes: number;
  key: string;
}

/** The form's flight and its length. Weather of now is left out: it says nothing of another day. */
export function questionOf(form: FlightForm, zone: string): Question | { message: string } {
  const read = toRequest(form, zone);
  if ('message' in read) return read;
  const {
    departs,
    arrives,
    weather: _weather,
    reports: _reports,
    ...flight
  } = read.request as { departs: string; arrives: string; weather?: object; reports?: object };
  const durationMinutes = (at(arrives) - at(departs)) / 60_000;
  return { flight, durationMinutes, key: JSON.stringify({ flight, durationMinutes }) };
}
