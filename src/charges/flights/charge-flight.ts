import type { EntityManager } from 'typeorm';
import { clubToday } from '../../clubs/club-time.js';
import { notThere } from '../../platform/database/records.js';
import { digestOf, type Instant } from '../../rules/index.js';
import { minorPerUnit } from '../currency.js';
import type { LedgerEntry } from '../ledger/ledger-entry.entity.js';
import { postEntry, reverseEntry, standingCharge } from '../ledger/post-entry.js';
import type { Missing } from './charge-lines.js';
import type { FlightFlown } from './flight-flown.js';
import { type PricedFlight, priceFlight } from './price-flight.js';

/** Who takes the aircraft back, and when. */
export interface ChargedBy {
  clubId: string;
  memberId: string;
  now: Instant;
}

/** The charge that stands now, or what is missing for one; then nothing was written. */
export type FlightCharge = { charge: LedgerEntry } | { missing: Missing };

/**
 * Charges a flight to whoever pays for it, within the transaction that records its return. Told again with other hours, the charge
 * before is reversed and the flight charged anew; told again the same, nothing happens. A flight that cannot be charged yet
 * does not stop the return: it waits under GET /charges/uncharged.
 *
 * @throws ProblemException 404 without the booking
 */
export async function chargeFlight(
  em: EntityManager,
  flown: FlightFlown,
  by: ChargedBy,
): Promise<FlightCharge> {
  const { clubId } = by;
  await lockBooking(em, clubId, flown.bookingId);
  const priced = await priceFlight(em, clubId, flown);
  if ('missing' in priced) return priced;
  const { standing, first, count } = await standingCharge(em, clubId, flown.bookingId);
  if (standing && sameCharge(standing, flown, priced)) return { charge: standing };
  const postedOn = await clubToday(em, clubId, by.now);
  if (standing)
    await reverseEntry(em, standing, {
      ...{ postedOn, recordedBy: by.memberId },
      words: 'The return of the flight was corrected.',
    });
  const { lines, amountMinor, currency, ofDay, aircraftRateId, instructorRateId } = priced;
  const charge = await postEntry(em, {
    ...{ clubId, memberId: flown.payerId, kind: 'flight', postedOn, ofDay, recordedBy: by.memberId },
    // A correction does not give the member longer to pay than the first charge did.
    ...{ dueFrom: first?.dueFrom ?? postedOn, amountMinor, currency, minorPerUnit: minorPerUnit(currency)! },
    ...{ bookingId: flown.bookingId, chargeNo: count + 1, aircraftRateId, instructorRateId, flown, lines },
  });
  return { charge };
}

/** Two corrections of one return follow each other, and do not both find the same charge standing. */
async function lockBooking(em: EntityManager, clubId: string, bookingId: string): Promise<void> {
  const found: unknown[] = await em.query(
    `SELECT 1 FROM bookings WHERE club_id = $1 AND id = $2 AND kind = 'flight' FOR UPDATE`,
    [clubId, bookingId],
  );
  if (found.length === 0) throw notThere('flight');
}

const sameCharge = (standing: LedgerEntry, flown: FlightFlown, priced: PricedFlight): boolean =>
  standing.memberId === flown.payerId &&
  digestOf({ lines: standing.lines, flown: standing.flown }) === digestOf({ lines: priced.lines, flown });
