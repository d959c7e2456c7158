import type { EntityManager } from 'typeorm';

/** Notes that an aircraft is out, and when it is due back: nobody is told before that. */
export async function putOut(em: EntityManager, of: { bookingId: string; dueBackAt: string }): Promise<void> {
  await em.query(
    'INSERT INTO aircraft_out (club_id, booking_id, due_back_at, look_at) VALUES (bellcrank_club(), $1, $2, $2)',
    [of.bookingId, of.dueBackAt],
  );
}

/** It is back, or was not flown after all. */
export async function broughtIn(em: EntityManager, bookingId: string): Promise<void> {
  await em.query('DELETE FROM aircraft_out WHERE club_id = bellcrank_club() AND booking_id = $1', [
    bookingId,
  ]);
}
