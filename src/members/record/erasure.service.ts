import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { DOCUMENT_KINDS } from '../documents/document-kinds.js';
import { MEMBERS } from '../member-rows.js';
import type { ErasureView, KeptView } from './record.dto.js';
import { KEPT, RECORDS } from './record-tables.js';

type Query = (text: string, params?: unknown[]) => Promise<number>;

/** Erases a member's data on request. What law, safety and audit require stays, under a name that says nothing. */
@Injectable()
export class ErasureService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /**
   * @param rehearse do it and undo it, to tell what it would do.
   * @throws 404, 409 for one's own data, a member erased before, or one with bookings to come
   */
  erase(by: SignedIn, id: string, reason: string, rehearse: boolean): Promise<ErasureView> {
    if (by.memberId === id) throw new ProblemException('own-erasure');
    const { clubId } = by;
    const work = async (em: EntityManager): Promise<ErasureView> => {
      await findRecord(em, MEMBERS, { clubId, id }, { lock: true });
      await this.assertPossible(em, clubId, id);
      const counted = async (text: string): Promise<number> =>
        (await em.query(`SELECT count(*)::int AS n FROM (${text}) t`, [clubId, id]))[0].n;
      const kept: KeptView[] = [];
      for (const { what, why, count } of KEPT) kept.push({ what, why, count: await counted(count) });
      const deleted: Record<string, number> = { documents: await counted(RECORDS['documents']!) };
      const run: Query = async (text, params = []) => (await em.query(text, [clubId, id, ...params]))[1];
      await em.query(
        'INSERT INTO erasures (club_id, id, member_id, erased_by, reason) VALUES ($1, $2, $3, $4, $5)',
        [clubId, newId(), id, by.memberId, reason],
      );
      // Documents, ratings and suspensions go with their papers.
      for (const { kind, table } of DOCUMENT_KINDS)
        deleted[kind.path] = await run(`DELETE FROM ${table} WHERE club_id = $1 AND member_id = $2`);
      for (const [name, table] of [
        ['account', 'accounts'],
        ['roles', 'member_roles'],
        ['practice', 'practice_records'],
        ['limits', 'personal_limits'],
        ['teachingHours', 'teaching_hours'],
        ['answersKeptForRepeats', 'idempotency_keys'],
        ['notices', 'notices'],
        ['noticeMail', 'notice_mails'],
        ['noticePreferences', 'notice_preferences'],
        ['reminders', 'reminders'],
        ['calendarFeeds', 'calendar_feeds'],
      ] as const)
        deleted[name] = await run(`DELETE FROM ${table} WHERE club_id = $1 AND member_id = $2`);
      // Said of flights of the member's: what stood in the way is a sentence about a record that is gone.
      for (const table of ['standing_answers', 'standing_changes'])
        await run(
          `DELETE FROM ${table} s USING booking_people p WHERE s.club_id = $1 AND p.club_id = $1
              AND p.booking_id = s.booking_id AND p.member_id = $2`,
        );
      // What others were told of flights together names them.
      deleted['noticesOfOthers'] = await run(
        `DELETE FROM notices n USING members m WHERE n.club_id = $1 AND m.club_id = $1 AND m.id = $2
            AND position(m.name IN n.items::text) > 0`,
      );
      const emptiedNotes = await emptyNotes(run);
      const newName = `Former member ${id.slice(-6)}`;
      const today = await clubToday(em, clubId, this.clock.now());
      await run(
        `UPDATE members SET name = $3, email = $4, birth_date = NULL,
                membership_through = greatest(membership_from, least(coalesce(membership_through, $5::date), $5::date))
          WHERE club_id = $1 AND id = $2`,
        [newName, `${id}@erased.invalid`, today],
      );
      const bareAuditEntries = await bareAudit(run);
      await em.query(
        `INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after) VALUES ($1, $2, 'erase', 'members', $3, $4)`,
        [clubId, by.memberId, id, JSON.stringify({ reason, deleted })],
      );
      return { newName, deleted, emptiedNotes, bareAuditEntries, kept };
    };
    return this.db.run(clubId, work, { actorId: by.memberId, rehearse });
  }

  private async assertPossible(em: EntityManager, clubId: string, id: string): Promise<void> {
    const [found]: { erased: boolean; booked: boolean }[] = await em.query(
      `SELECT EXISTS (SELECT 1 FROM erasures WHERE club_id = $1 AND member_id = $2) AS erased,
              EXISTS (SELECT 1 FROM bookings b WHERE b.club_id = $1 AND b.occupies AND upper(b.during) > $3
                        AND (b.member_id = $2 OR EXISTS (SELECT 1 FROM booking_people p
                               WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $2))) AS booked`,
      [clubId, id, this.clock.now()],
    );
    if (found!.erased) throw new ProblemException('already-erased');
    if (found!.booked) throw new ProblemException('bookings-to-come');
  }
}

async function emptyNotes(run: Query): Promise<number> {
  const own = 'club_id = $1 AND member_id = $2';
  return (
    (await run(`UPDATE log_entries SET remarks = '' WHERE ${own} AND remarks <> ''`)) +
    (await run(`UPDATE bookings SET note = '' WHERE ${own} AND note <> ''`)) +
    (await run(`UPDATE standby_entries SET note = '', state = CASE state WHEN 'waiting' THEN 'withdrawn' ELSE state END
      WHERE ${own} AND (note <> '' OR state = 'waiting')`))
  );
}

/** Takes what was said out of the audit log's entries about the member and the papers, the log and the bookings. */
const bareAudit = (run: Query): Promise<number> =>
  run(
    `UPDATE audit_log SET before = audit_bare(before), after = audit_bare(after)
      WHERE club_id = $1 AND action IN ('insert', 'update', 'delete')
        AND ((table_name = 'members' AND row_id = $2)
          OR (table_name = ANY ($3) AND $2::text IN (before ->> 'member_id', after ->> 'member_id')))`,
    [
      [
        'documents',
        'log_entries',
        'bookings',
        'standby_entries',
        'practice_records',
        'personal_limits',
        'checkout_marks',
        ...DOCUMENT_KINDS.map(({ table }) => table),
      ],
    ],
  );
