/** The flights an aircraft is tried on to see what a squawk takes away: one of each kind that the law tells apart. */
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { addDays, sunTimes, toInstant, type AirfieldFact, type LocalDate } from '../../rules/index.js';

export const KINDS = ['day-vfr', 'night-vfr', 'ifr', 'transponder-airspace'] as const;
export type KindOfFlight = (typeof KINDS)[number];

export const KIND_TITLES: Record<KindOfFlight, string> = {
  'day-vfr': 'By day under VFR',
  'night-vfr': 'At night under VFR',
  ifr: 'Under IFR by day',
  'transponder-airspace': 'By day under VFR in class B or C airspace',
};

/** A flight to try, or why there is none of its kind. */
export type Trial = { kind: KindOfFlight } & ({ request: FlightRequestDto } | { because: string });

const HALF_AN_HOUR = 1800;
/** From the end of civil twilight, so that every night of the law has begun: civil, and an hour after sunset. */
const INTO_THE_NIGHT = 5400;

/**
 * Local flights of an hour on a day: around the middle of its daylight, and in the night after it. All that could be
 * unknown of them is said, so that what differs comes from the aircraft.
 */
export function trialFlights(on: LocalDate, home: AirfieldFact): Trial[] {
  const sun = sunTimes(on, home, home.zone);
  const next = sunTimes(addDays(on, 1), home, home.zone);
  const noon = sun.sunrise === null || sun.sunset === null ? null : (sun.sunrise + sun.sunset) / 2;
  const dark =
    sun.civilDusk === null || next.civilDawn === null ? null : sun.civilDusk + INTO_THE_NIGHT + HALF_AN_HOUR;
  const long = dark !== null && dark + 2 * HALF_AN_HOUR < next.civilDawn!;
  const at = (middle: number, more: Partial<FlightRequestDto>): { request: FlightRequestDto } => ({
    request: {
      departs: toInstant(Math.round(middle) - HALF_AN_HOUR),
      arrives: toInstant(Math.round(middle) + HALF_AN_HOUR),
      ...{ purpose: 'solo', personsOnBoard: 1, flightRules: 'VFR', airspace: ['G'] },
      ...{ maxAltitudeFtMsl: Math.min(9000, home.elevationFt + 2500), usesVor: false },
      ...{ usesTransponder: true, overWaterBeyondGlide: false },
      ...more,
    },
  });
  const byDay = (more: Partial<FlightRequestDto>) =>
    noon === null
      ? { because: `The sun does not rise and set at ${home.code} on that day.` }
      : at(noon, more);
  const night =
    dark !== null && long ? at(dark, {}) : { because: `There is no full night at ${home.code} then.` };
  return [
    { kind: 'day-vfr', ...byDay({}) },
    { kind: 'night-vfr', ...night },
    { kind: 'ifr', ...byDay({ flightRules: 'IFR' }) },
    { kind: 'transponder-airspace', ...byDay({ airspace: ['B', 'C'] }) },
  ];
}
