import type { EntityManager } from 'typeorm';
import { instant } from '../../decisions/gather/sql.js';

/** Notes that an aircraft is out, and when it is due back: nobody is told before that. */
export async function putOut(em: EntityManager, of: { bookingId: string; dueBackAt: string }): Promise<void> {
  await em.query(
    'INSERT INTO aircraft_out (club_id, booking_id, due_back_at, look_at) VALUES (bellcrank_club(), $1, $2, $2)',
    [of.bookingId, of.dueBackAt],
  );
}

/**
 * Another time due back, under the lock of its booking: whoever was told of the one before is told of this one too.
 * @returns the one before
 */
export async function expectBack(
  em: EntityManager,
  { bookingId, dueBackAt }: { bookingId: string; dueBackAt: string },
): Promise<string> {
  const before = await dueBackOf(em, bookingId);
  await em.query(
    `INSERT INTO aircraft_out (club_id, booking_id, due_back_at, look_at) VALUES (bellcrank_club(), $1, $2, $2)
     ON CONFLICT (club_id, booking_id) DO UPDATE SET due_back_at = EXCLUDED.due_back_at, look_at = EXCLUDED.look_at`,
    [bookingId, dueBackAt],
  );
  return before ?? dueBackAt;
}

/** It is back, or was not flown after all. */
export async function broughtIn(em: EntityManager, bookingId: string): Promise<void> {
  await em.query('DELETE FROM aircraft_out WHERE club_id = bellcrank_club() AND booking_id = $1', [
    bookingId,
  ]);
}

/** When it is due back; null for one that is not out. */
export async function dueBackOf(em: EntityManager, bookingId: string): Promise<string | null> {
  const [out]: { at: string }[] = await em.query(
    `SELECT ${instant('due_back_at')} AS at FROM aircraft_out WHERE club_id = bellcrank_club() AND booking_id = $1`,
    [bookingId],
  );
  return out?.at ?? null;
}
