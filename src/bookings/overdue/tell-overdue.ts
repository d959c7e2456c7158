import type { EntityManager } from 'typeorm';
import { newId } from '../../platform/ids.js';

/** At which stage somebody is told: as crew, as a named person, or as safety officer. */
export type OverdueStage = 'crew' | 'named' | 'officers';

/** One person to be told of one aircraft that is not back. */
export interface OverdueAlert {
  bookingId: string;
  dispatchId: string;
  memberId: string;
  stage: OverdueStage;
  dueBackAt: string;
  toldAt: string;
}

/**
 * Tells one person: the one place where it happens. Until messages are sent, the alert stands on the pages of whom it names.
 * Whoever was told before of this flight is not told again.
 * @returns the id of the alert, or null when there was one already
 */
export async function tellOverdue(em: EntityManager, alert: OverdueAlert): Promise<string | null> {
  const { bookingId, dispatchId, memberId, stage, dueBackAt, toldAt } = alert;
  const told: { id: string }[] = await em.query(
    `INSERT INTO overdue_alerts (club_id, id, booking_id, dispatch_id, member_id, stage, due_back_at, told_at)
     VALUES (bellcrank_club(), $1, $2, $3, $4, $5, $6, $7)
     ON CONFLICT ON CONSTRAINT overdue_alerts_once_uq DO NOTHING RETURNING id`,
    [newId(), bookingId, dispatchId, memberId, stage, dueBackAt, toldAt],
  );
  return told[0]?.id ?? null;
}
