import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { instant } from '../../decisions/gather/sql.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/index.js';
import {
  NOT_FLIGHT_FOLLOWING,
  type OverdueAlertView,
  type OverdueAlerts,
  type OverdueContacts,
  type OverdueContactsDto,
} from './overdue.dto.js';

/** Alerts of overdue aircraft, and who is told. */
@Injectable()
export class OverdueService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** The reader's own, until they put them away. */
  async mine({ clubId, memberId }: SignedIn): Promise<OverdueAlerts> {
    const items = await this.db.run(
      clubId,
      (em): Promise<OverdueAlertView[]> =>
        em.query(
          `SELECT x.id, x.booking_id AS "bookingId", a.registration, m.name AS "memberName", x.stage,
              ${instant('x.due_back_at')} AS "dueBackAt", ${instant('x.told_at')} AS "toldAt", b.status = 'dispatched' AS out
             FROM overdue_alerts x JOIN bookings b ON b.club_id = x.club_id AND b.id = x.booking_id
             JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
             JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
            WHERE x.club_id = bellcrank_club() AND x.member_id = $1 AND x.seen_at IS NULL
            ORDER BY x.id DESC LIMIT 100`,
          [memberId],
        ),
      { readOnly: true },
    );
    return { items, caution: NOT_FLIGHT_FOLLOWING };
  }

  /** Puts one's own alert away. @throws 404 */
  async seen({ clubId, memberId }: SignedIn, id: string): Promise<void> {
    const found: unknown[] = await this.db.run(
      clubId,
      async (em) =>
        (
          await em.query(
            `UPDATE overdue_alerts SET seen_at = coalesce(seen_at, greatest($3::timestamptz, told_at))
              WHERE club_id = bellcrank_club() AND id = $1 AND member_id = $2 RETURNING id`,
            [id, memberId, this.clock.now()],
          )
        )[0],
      { actorId: memberId },
    );
    if (found.length === 0) throw notThere('alert of yours');
  }

  contacts({ clubId }: SignedIn): Promise<OverdueContacts> {
    return this.db.run(clubId, listContacts, { readOnly: true });
  }

  /** Names the people who are told, in place of those named before. @throws 404 naming the field */
  setContacts({ clubId, memberId }: SignedIn, { contacts }: OverdueContactsDto): Promise<OverdueContacts> {
    const work = async (em: EntityManager): Promise<OverdueContacts> => {
      await requireMembers(
        em,
        contacts.map((one) => one.memberId),
      );
      await em.query('DELETE FROM overdue_contacts WHERE club_id = bellcrank_club()');
      await em.query(
        `INSERT INTO overdue_contacts (club_id, member_id, after_minutes)
         SELECT bellcrank_club(), c."memberId", c."afterMinutes"
           FROM jsonb_to_recordset($1::jsonb) AS c ("memberId" uuid, "afterMinutes" int)`,
        [JSON.stringify(contacts)],
      );
      // Aircraft that are out already are told of by the new names.
      await em.query('UPDATE aircraft_out SET look_at = due_back_at WHERE club_id = bellcrank_club()');
      return listContacts(em);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

async function listContacts(em: EntityManager): Promise<OverdueContacts> {
  const items: OverdueContacts['items'] = await em.query(
    `SELECT c.member_id AS "memberId", c.after_minutes AS "afterMinutes", m.name
       FROM overdue_contacts c JOIN members m ON m.club_id = c.club_id AND m.id = c.member_id
      WHERE c.club_id = bellcrank_club() ORDER BY c.after_minutes, m.name, m.id`,
  );
  return { items };
}

async function requireMembers(em: EntityManager, ids: string[]): Promise<void> {
  const rows: { id: string }[] = await em.query(
    'SELECT id FROM members WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])',
    [ids],
  );
  for (const [index, id] of ids.entries()) {
    const refuse = (detail: string): ProblemException =>
      new ProblemException('value-refused', {
        status: 422,
        field: `contacts[${index}].memberId`,
        detail,
      });
    if (!rows.some((row) => row.id === id)) throw refuse(`The club has no member ${id}. Check the id.`);
    if (ids.indexOf(id) !== index) throw refuse('This person is named twice. Leave one out.');
  }
}
