import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { addDays, startOfDay, toInstant, type EpochSeconds, type LocalDate } from '../../rules/index.js';

/** The kinds of flight people are watched for. */
export const BOARD_FLIGHTS = ['day-passengers', 'day-solo', 'night-passengers', 'ifr'] as const;
export type BoardFlight = (typeof BOARD_FLIGHTS)[number];

const HOUR = 3600;

/**
 * Local hour of departure. By half past eleven, when a flight by night is back, the night of the law has begun outside the far
 * north; and it is back on its own day, so that what is counted in days lapses with what is flown by day.
 */
const DEPARTS_AT: Record<BoardFlight, number> = {
  ...{ 'day-passengers': 12, 'day-solo': 12, 'night-passengers': 22.5, ifr: 12 },
};

/**
 * One departure a day, `first` to `last`, in seconds: none before `now`, so that on the first day it may be a later hour
 * than on the others.
 */
export function departuresOf(
  flight: BoardFlight,
  of: { first: LocalDate; last: LocalDate; zone: string; now: EpochSeconds },
): EpochSeconds[] {
  const departures: EpochSeconds[] = [];
  for (let day = of.first; day <= of.last; day = addDays(day, 1))
    departures.push(Math.max(of.now, startOfDay(day, of.zone) + DEPARTS_AT[flight] * HOUR));
  return departures;
}

/** A local flight of an hour, with all said that could be unknown of it. */
export function boardFlight(flight: BoardFlight, departs: EpochSeconds): FlightRequestDto {
  const passengers = flight.endsWith('passengers');
  return {
    ...{ departs: toInstant(departs), arrives: toInstant(departs + HOUR) },
    ...{ purpose: passengers ? 'passengers' : 'solo', personsOnBoard: passengers ? 2 : 1 },
    ...{ flightRules: flight === 'ifr' ? 'IFR' : 'VFR', airspace: ['G'] },
    ...{ usesVor: false, usesTransponder: true, overWaterBeyondGlide: false },
  };
}
