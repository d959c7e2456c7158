import type { EntityManager } from 'typeorm';
import { postNotice } from '../../notices/outbox/post-notice.js';
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
 * Tells one person: the one place where it happens. The alert stands on the page of whom it names, and mail goes out, in quiet
 * hours too. Whoever was told before of this flight and this time due back is not told again.
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
  if (!told[0]) return null;
  const [flight]: { registration: string; pilot: string }[] = await em.query(
    `SELECT a.registration, m.name AS pilot FROM bookings b
       JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
       JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
      WHERE b.club_id = bellcrank_club() AND b.id = $1`,
    [bookingId],
  );
  const { registration, pilot } = flight!;
  await postNotice(em, {
    ...{ kind: 'overdue', cause: `overdue:${dispatchId}:${dueBackAt}`, at: toldAt },
    to: [
      {
        ...{ memberId, urgent: true },
        items: [
          {
            key: dispatchId,
            title: `${registration}, with ${pilot}, is not back`,
            says: [
              stage === 'crew'
                ? `It was due back ${dueBackAt}. If it is back, put the return in; if it is late, tell the club.`
                : `It was due back ${dueBackAt}. Ask after the crew; where there is doubt, call search and rescue.`,
              'This looks at the clock and at nothing else. It is no flight following: nobody watches the flight.',
            ],
            link: `/flights#${bookingId}`,
          },
        ],
      },
    ],
  });
  return told[0].id;
}
