import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import type { Instant } from '../../rules/index.js';
import { deliveryOf, preferencesOf } from '../preferences/preferences.sql.js';
import { nextDigest, outOfQuiet } from '../preferences/when.js';
import { compactItems, type NoticeItem } from './items.js';
import { Mailer } from './mailer.js';
import { noteDue } from './post-notice.js';
import { WaysFinder, type FoundWays } from './ways-finder.js';

interface Gathered {
  id: string;
  memberId: string;
  kind: string;
  items: NoticeItem[];
  urgent: boolean;
}

/** Notices settled in one go. */
const AT_ONCE = 100;

/** Closes notices whose time of gathering is over, and puts up the mail that follows from them. */
@Injectable()
export class Settling {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly mailer: Mailer,
    private readonly ways: WaysFinder,
  ) {}

  /** @returns how many were settled. */
  async settleDue(clubId: string): Promise<number> {
    let settled = 0;
    for (;;) {
      const due = await this.db.run(clubId, (em) => gathered(em, this.clock.now()), { readOnly: true });
      for (const one of due) if (await this.settle(clubId, one)) settled += 1;
      if (due.length < AT_ONCE) return settled;
    }
  }

  private async settle(clubId: string, { id, memberId, kind, items }: Gathered): Promise<boolean> {
    // Looked for outside of the transaction that closes the notice: a search may take a while.
    const ways = await this.ways.of({ clubId, memberId }, kind, compactItems(items));
    return this.db.run(clubId, async (em) => {
      // What came in meanwhile is in it, or waits and begins a notice of its own.
      const [now]: Gathered[] = await em.query(`${SELECT} AND id = $1 FOR UPDATE`, [id]);
      if (now === undefined) return false;
      const left = compactItems(now.items).map((item) => withWays(item, ways.get(item.key)));
      if (left.length === 0) {
        await em.query('DELETE FROM notices WHERE club_id = bellcrank_club() AND id = $1', [id]);
        return true;
      }
      const mailId = this.mailer.configured ? await this.putUpMail(em, now) : null;
      await em.query(
        `UPDATE notices SET items = $2::jsonb, settled_at = $3::timestamptz, mail_id = $4
          WHERE club_id = bellcrank_club() AND id = $1`,
        [id, JSON.stringify(left), this.clock.now(), mailId],
      );
      return true;
    });
  }

  /** The message a notice goes out in: its own, or the person's digest. Null: the person wants none of it. */
  private async putUpMail(em: EntityManager, { memberId, kind, urgent }: Gathered): Promise<string | null> {
    const wanted = await preferencesOf(em, memberId);
    const delivery = deliveryOf(wanted, kind);
    if (delivery === 'off') return null;
    const now = this.clock.now();
    const zone = await zoneOf(em);
    const digest = delivery === 'daily' && !urgent;
    const dueAt = urgent ? now : digest ? nextDigest(now, zone, wanted) : outOfQuiet(now, zone, wanted);
    const [mail]: { id: string; dueAt: Instant }[] = await em.query(
      `INSERT INTO notice_mails (club_id, id, member_id, digest, due_at) VALUES (bellcrank_club(), $1, $2, $3, $4::timestamptz)
       ON CONFLICT (club_id, member_id) WHERE digest AND state = 'waiting' AND attempts = 0
       DO UPDATE SET due_at = notice_mails.due_at RETURNING id`,
      [newId(), memberId, digest, dueAt],
    );
    await noteDue(em, 'notices', dueAt);
    return mail!.id;
  }
}

/** Ways belong to the answer they were looked for; one that became another meanwhile is told without. */
const withWays = (item: NoticeItem, found: FoundWays | undefined): NoticeItem =>
  found !== undefined && found.after === item.after ? { ...item, ...found } : item;

const SELECT = `SELECT id, member_id AS "memberId", kind, items, urgent FROM notices
  WHERE club_id = bellcrank_club() AND settled_at IS NULL`;

const gathered = (em: EntityManager, now: Instant): Promise<Gathered[]> =>
  em.query(`${SELECT} AND gathers_until <= $1::timestamptz ORDER BY id LIMIT ${AT_ONCE}`, [now]);

async function zoneOf(em: EntityManager): Promise<string> {
  const [club]: { zone: string }[] = await em.query(
    'SELECT zone FROM clubs WHERE club_id = bellcrank_club()',
  );
  return club!.zone;
}
