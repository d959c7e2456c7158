import { Injectable } from '@nestjs/common';
import { randomBytes } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import type { Role } from '../../accounts/roles.js';
import { Clock } from '../../platform/clock.js';
import { AppConfig } from '../../platform/config.js';
import { instant } from '../../platform/database/instant.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId, UUID } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { sha256 } from '../../platform/sha256.js';
import { lockMember } from '../lock-member.js';
import { calendarText } from './calendar-text.js';
import { feedEntries } from './feed-entries.js';
import type { FeedBody, FeedDto, NewFeedDto } from './feeds.dto.js';

const ADDRESS = new RegExp(`^(${UUID})\\.(${UUID})\\.([\\w-]{43})\\.ics$`);
const MOST_FEEDS = 20;

const SELECT = `SELECT f.id, f.shows, f.aircraft_id AS "aircraftId", f.title, ${instant('f.recorded_at')} AS "madeAt"
  FROM calendar_feeds f WHERE f.club_id = bellcrank_club() AND f.revoked_at IS NULL`;

/** Addresses by which calendars read bookings without signing in: each a secret of its member, who can take it back. */
@Injectable()
export class FeedsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly config: AppConfig,
  ) {}

  async list({ clubId, memberId }: SignedIn): Promise<{ items: FeedDto[] }> {
    const items: FeedDto[] = await this.db.run(
      clubId,
      (em) => em.query(`${SELECT} AND f.member_id = $1 ORDER BY f.id`, [memberId]),
      { readOnly: true },
    );
    return { items };
  }

  /** @throws 404 for an aircraft the club does not have; 409 with too many; 422. */
  make({ clubId, memberId }: SignedIn, body: FeedBody): Promise<NewFeedDto> {
    const { shows, aircraftId = null } = body;
    if ((shows === 'aircraft') !== (aircraftId !== null))
      throw new ProblemException('feed-refused', { field: 'aircraftId' });
    const id = newId();
    const secret = randomBytes(32).toString('base64url');
    const work = async (em: EntityManager): Promise<NewFeedDto> => {
      await lockMember(em, memberId);
      const [count]: { n: number }[] = await em.query(
        'SELECT count(*)::int AS n FROM calendar_feeds WHERE club_id = bellcrank_club() AND member_id = $1 AND revoked_at IS NULL',
        [memberId],
      );
      if (count!.n >= MOST_FEEDS) throw new ProblemException('too-many-feeds');
      await em.query(
        `INSERT INTO calendar_feeds (club_id, id, member_id, shows, aircraft_id, title, token_hash)
         VALUES (bellcrank_club(), $1, $2, $3, $4, $5, $6)`,
        [id, memberId, shows, aircraftId, body.title ?? (await titleFor(em, body)), sha256(secret)],
      );
      const [feed]: FeedDto[] = await em.query(`${SELECT} AND f.id = $1`, [id]);
      const address = `${this.config.publicUrl}/api/v1/calendar/${clubId}.${id}.${secret}.ics`;
      return { ...feed!, address };
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws 404 for a feed that is not one's own, or taken back before. */
  async revoke({ clubId, memberId }: SignedIn, id: string): Promise<void> {
    await this.db.run(
      clubId,
      async (em) => {
        const [, gone]: [unknown, number] = await em.query(
          `UPDATE calendar_feeds SET revoked_at = $3::timestamptz
            WHERE club_id = bellcrank_club() AND id = $1 AND member_id = $2 AND revoked_at IS NULL`,
          [id, memberId, this.clock.now()],
        );
        if (gone === 0) throw notThere('calendar feed of yours');
      },
      { actorId: memberId },
    );
  }

  /** The calendar behind an address. @throws 404 for one that is none of ours, taken back, or of somebody who left. */
  calendar(address: string): Promise<string> {
    const [, clubId, id, secret] = ADDRESS.exec(address) ?? [];
    if (clubId === undefined || id === undefined || secret === undefined) throw noFeed();
    const now = this.clock.now();
    const work = async (em: EntityManager): Promise<string> => {
      const [feed]: (FeedDto & { memberId: string; roles: Role[] })[] = await em.query(
        `SELECT f.shows, f.aircraft_id AS "aircraftId", f.title, f.member_id AS "memberId",
            ARRAY(SELECT r.role FROM member_roles r WHERE r.club_id = f.club_id AND r.member_id = f.member_id) AS roles
           FROM calendar_feeds f JOIN members m ON m.club_id = f.club_id AND m.id = f.member_id
           JOIN clubs c ON c.club_id = f.club_id
          WHERE f.club_id = bellcrank_club() AND f.id = $1 AND f.token_hash = $2 AND f.revoked_at IS NULL
            AND EXISTS (SELECT 1 FROM accounts a WHERE a.club_id = f.club_id AND a.member_id = f.member_id)
            AND (m.membership_through IS NULL OR m.membership_through >= ($3::timestamptz AT TIME ZONE c.zone)::date)`,
        [id, sha256(secret), now],
      );
      if (feed === undefined) throw noFeed();
      return calendarText(feed.title, await feedEntries(em, feed, now), `${this.config.publicUrl}/`);
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}

const noFeed = (): ProblemException =>
  new ProblemException('not-found', {
    detail: 'There is no calendar at this address, or it was taken back. Make a new feed on the page.',
  });

async function titleFor(em: EntityManager, { shows, aircraftId }: FeedBody): Promise<string> {
  if (shows === 'own') return 'My flights';
  const [row]: { title: string }[] =
    shows === 'club'
      ? await em.query('SELECT left(name, 120) AS title FROM clubs WHERE club_id = bellcrank_club()')
      : await em.query(
          'SELECT registration AS title FROM aircraft WHERE club_id = bellcrank_club() AND id = $1',
          [aircraftId],
        );
  if (row === undefined)
    throw new ProblemException('not-found', {
      field: 'aircraftId',
      detail: `The club has no aircraft ${aircraftId}. Check the id.`,
    });
  return row.title;
}
