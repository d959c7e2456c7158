import { Injectable, Logger } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Clock } from '../../platform/clock.js';
import { AppConfig } from '../../platform/config.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { plusSeconds, type Instant } from '../../rules/index.js';
import { compose, type ToldNotice } from './compose.js';
import { compactItems, type NoticeItem } from './items.js';
import { UnsubscribeAddresses } from '../unsubscribe/unsubscribe-address.js';
import { Mailer, type Handed } from './mailer.js';
import { noteDue } from './post-notice.js';

/** Minutes until the next attempt, by how many there were; after the last the message is given up. */
export const RETRY_MINUTES = [1, 5, 15, 60, 180, 360, 720];
/** Messages taken at once, and how long whoever took them has for it: nobody else tries meanwhile. */
const AT_ONCE = 5;
const TAKEN_S = 300;

interface TakenMail {
  id: string;
  memberId: string;
  attempts: number;
}

/** Sends what is due: at least once each, by whichever replica takes it first. */
@Injectable()
export class Deliveries {
  private readonly logger = new Logger(Deliveries.name);

  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly config: AppConfig,
    private readonly mailer: Mailer,
    private readonly unsubscribing: UnsubscribeAddresses,
  ) {}

  /** @returns how many messages were handed over. */
  async sendDue(clubId: string): Promise<number> {
    if (!this.mailer.configured) return 0;
    let sent = 0;
    for (;;) {
      const taken = await this.db.run(clubId, (em) => take(em, this.clock.now()));
      for (const mail of taken) if (await this.send(clubId, mail)) sent += 1;
      if (taken.length < AT_ONCE) return sent;
    }
  }

  private async send(clubId: string, mail: TakenMail): Promise<boolean> {
    const parts = await this.db.run(clubId, (em) => read(em, mail), { readOnly: true });
    const handed: Handed =
      parts.notices.length === 0
        ? { outcome: 'refused', fault: 'There is nothing left to tell.' }
        : await this.mailer.hand(
            mail.id,
            {
              name: parts.name,
              address: parts.email,
              unsubscribeUrl: this.unsubscribing.for({
                ...{ clubId, memberId: mail.memberId },
                kinds: parts.notices.map(({ kind }) => kind),
              }),
            },
            compose({ ...parts, publicUrl: this.config.publicUrl }),
          );
    await this.db.run(clubId, (em) => note(em, mail, handed, this.clock.now()));
    if (handed.outcome !== 'sent') this.logger.warn(`A message did not go out: ${handed.outcome}.`);
    return handed.outcome === 'sent';
  }
}

async function take(em: EntityManager, now: Instant): Promise<TakenMail[]> {
  const until = plusSeconds(now, TAKEN_S);
  const taken: TakenMail[] = await em.query(
    `WITH taken AS (
       UPDATE notice_mails SET attempts = attempts + 1, taken_until = $2::timestamptz
        WHERE club_id = bellcrank_club() AND id IN (
          SELECT id FROM notice_mails WHERE club_id = bellcrank_club() AND state = 'waiting' AND due_at <= $1::timestamptz
             AND (taken_until IS NULL OR taken_until <= $1::timestamptz)
           ORDER BY due_at, id LIMIT ${AT_ONCE} FOR UPDATE SKIP LOCKED)
       RETURNING id, member_id, attempts)
     SELECT id, member_id AS "memberId", attempts FROM taken ORDER BY id`,
    [now, until],
  );
  // Should whoever took them stop in the middle, somebody looks again.
  if (taken.length > 0) await noteDue(em, 'notices', until);
  return taken;
}

async function read(
  em: EntityManager,
  { id, memberId }: TakenMail,
): Promise<{
  club: { name: string; zone: string };
  name: string;
  email: string;
  notices: ToldNotice[];
}> {
  const [person]: { name: string; email: string; clubName: string; zone: string }[] = await em.query(
    `SELECT m.name, m.email, c.name AS "clubName", c.zone FROM members m JOIN clubs c ON c.club_id = m.club_id
      WHERE m.club_id = bellcrank_club() AND m.id = $1`,
    [memberId],
  );
  const notices: { kind: string; items: NoticeItem[] }[] = await em.query(
    'SELECT kind, items FROM notices WHERE club_id = bellcrank_club() AND mail_id = $1 ORDER BY id',
    [id],
  );
  const { name, email, clubName, zone } = person!;
  return {
    ...{ name, email, club: { name: clubName, zone } },
    notices: notices
      .map(({ kind, items }) => ({ kind, items: compactItems(items) }))
      .filter(({ items }) => items.length > 0),
  };
}

async function note(em: EntityManager, mail: TakenMail, handed: Handed, now: Instant): Promise<void> {
  const wait = RETRY_MINUTES[mail.attempts - 1];
  const again = handed.outcome === 'later' && wait !== undefined ? plusSeconds(now, wait * 60) : null;
  const state = handed.outcome === 'sent' ? 'sent' : again === null ? 'given-up' : 'waiting';
  await em.query(
    `UPDATE notice_mails SET state = $2, taken_until = NULL, fault = $3, due_at = coalesce($4::timestamptz, due_at),
        sent_at = CASE WHEN $2 = 'sent' THEN $5::timestamptz END
      WHERE club_id = bellcrank_club() AND id = $1`,
    [mail.id, state, handed.outcome === 'sent' ? null : handed.fault, again, now],
  );
  if (again !== null) await noteDue(em, 'notices', again);
}
