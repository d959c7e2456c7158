import type { Instant } from '../../rules/index.js';

/** A flight that is over, as whoever takes the aircraft back tells it. */
export interface FlightFlown {
  bookingId: string;
  aircraftId: string;
  pilotId: string;
  /** On whose account it goes. */
  payerId: string;
  /** Null: nobody taught. */
  instructorId: string | null;
  departedAt: Instant;
  arrivedAt: Instant;
  /** What each meter ran on this flight; null: not read. */
  hobbsTenths: number | null;
  tachTenths: number | null;
  instructionMinutes: number | null;
  /** Bought elsewhere, and what was paid for it, in the currency's smallest unit. */
  fuelBoughtUsGal: number;
  fuelPaidMinor: number;
  /** Drawn from the club's own supply. */
  fuelClubUsGal: number;
}
