import type { EntityManager } from 'typeorm';
import { minorPerUnit } from '../../charges/currency.js';
import { chargeFlight, type ChargedBy } from '../../charges/flights/charge-flight.js';
import { rateInForce } from '../../charges/rates/rate-in-force.js';
import { clubZone } from '../../clubs/club-time.js';
import { localDateOf, toSeconds } from '../../rules/index.js';
import { returnedFlight } from './returned-flight.js';

const MINUTES_PER_TENTH = 6;

/**
 * Charges the flight that came back, or charges it anew after a correction, in the transaction that keeps the return. A rate that
 * is missing stops nothing: the flight then waits among those not charged.
 */
export async function chargeReturn(em: EntityManager, bookingId: string, by: ChargedBy): Promise<void> {
  const flight = (await returnedFlight(em, bookingId))!;
  const { hobbs, tachometer } = flight.flownTenths;
  await chargeFlight(
    em,
    {
      ...{ bookingId, aircraftId: flight.aircraftId, pilotId: flight.memberId, payerId: flight.payerId },
      ...{ instructorId: flight.instructorId, hobbsTenths: hobbs, tachTenths: tachometer },
      ...{ departedAt: flight.departedAt, arrivedAt: flight.arrivedAt },
      instructionMinutes: flight.instructorId === null ? null : flight.instructionTenths * MINUTES_PER_TENTH,
      fuelBoughtUsGal: flight.fuelBought?.usGal ?? 0,
      fuelPaidMinor: await inMinor(em, by.clubId, flight),
      // A return does not tell fuel of the club's own supply from what was aboard.
      fuelClubUsGal: 0,
    },
    by,
  );
}

/** What was paid for fuel, in the smallest unit of the currency that the aircraft is charged in; returns keep hundredths. */
async function inMinor(
  em: EntityManager,
  clubId: string,
  {
    aircraftId,
    departedAt,
    fuelBought,
  }: { aircraftId: string; departedAt: string; fuelBought: { cents: number } | null },
): Promise<number> {
  if (fuelBought === null) return 0;
  const on = localDateOf(toSeconds(departedAt), await clubZone(em, clubId));
  const rate = await rateInForce(em, { clubId, on, aircraftId });
  return Math.round((fuelBought.cents * (minorPerUnit(rate?.currency ?? '') ?? 100)) / 100);
}
