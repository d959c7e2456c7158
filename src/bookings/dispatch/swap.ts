import type { EntityManager } from 'typeorm';
import type { BookingRow } from '../booking.entity.js';
import { insertBooking } from '../bookings.sql.js';
import { noteChange } from '../changes/changes.sql.js';
import { closeOffers } from '../changes/hand-overs.sql.js';
import { crewJudged } from '../crew.js';
import { newId } from '../../platform/ids.js';
import type { JudgedNow } from './judge-now.js';

/**
 * Another aircraft or pilot in place of what was booked: the old booking is given back and the flight booked anew, in the
 * caller's transaction, so that either both happen or neither. The history of either tells of it.
 * @returns the id of the new booking
 */
export async function swapBooking(
  em: EntityManager,
  old: BookingRow,
  { decided, request }: JudgedNow,
  { byId, now }: { byId: string; now: string },
): Promise<string> {
  await em.query(
    "UPDATE bookings SET status = 'cancelled', cancelled_at = $2 WHERE club_id = bellcrank_club() AND id = $1",
    [old.id, now],
  );
  await closeOffers(em, [old.id], now);
  const id = newId();
  const { memberId, departs, arrives, plannedTenths } = decided.sheet.flight;
  await insertBooking(em, {
    ...{ id, kind: 'flight', aircraftId: decided.sheet.aircraft.id, memberId, departs, arrives },
    ...{ expectedTenths: plannedTenths, request, note: old.note, decisionId: decided.id },
    people: crewJudged(decided.sheet),
  });
  const change = { byId, decisionId: decided.id, at: now };
  await noteChange(em, {
    ...{ ...change, bookingId: old.id, act: 'cancelled' },
    ...{ before: { status: 'booked' }, after: { status: 'cancelled' } },
  });
  await noteChange(em, {
    ...{ ...change, bookingId: id, act: 'edited' },
    before: { aircraftId: old.aircraftId, memberId: old.memberId, departs: old.departs },
    after: { aircraftId: decided.sheet.aircraft.id, memberId, departs },
  });
  return id;
}
