import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { date, instant, object } from '../../decisions/gather/sql.js';
import { Clock } from '../../platform/clock.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { pageOf, type PageQuery, readCursor } from '../../platform/http/pages.js';
import { newId } from '../../platform/ids.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import type { NewOverrideReview, OverridePage, OverrideView } from './override.dto.js';

const REVIEWS = `(SELECT coalesce(jsonb_agg(${object({
  ...{ reviewOn: date('r.review_on'), finding: 'r.finding', reviewedBy: 'p.name' },
  recordedAt: instant('r.recorded_at'),
})} ORDER BY r.id), '[]'::jsonb)
  FROM override_reviews r JOIN members p ON p.club_id = r.club_id AND p.id = r.reviewed_by
 WHERE r.club_id = o.club_id AND r.override_id = o.id)`;

const SELECT = `SELECT o.id, o.booking_id AS "bookingId", ${instant('lower(b.during)')} AS departs,
    b.status AS "bookingStatus", b.member_id AS "memberId", m.name AS "memberName", a.registration,
    o.rule_id AS "ruleId", f.name AS "officerName", o.reason, ${instant('o.recorded_at')} AS "recordedAt", ${REVIEWS} AS reviews
  FROM overrides o JOIN bookings b ON b.club_id = o.club_id AND b.id = o.booking_id
  JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
  JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
  JOIN members f ON f.club_id = o.club_id AND f.id = o.officer_id
 WHERE o.club_id = bellcrank_club()`;

type Row = Omit<OverrideView, 'review' | 'reviewOn'>;

/** Officers' overrides of club rules, and when they are looked at again. */
@Injectable()
export class OverridesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Newest first. */
  list({ clubId }: SignedIn, page: PageQuery): Promise<OverridePage> {
    const work = async (em: EntityManager) => {
      const today = await clubToday(em, clubId, this.clock.now());
      const rows: Row[] = await em.query(
        `${SELECT} AND ($1::uuid IS NULL OR o.id < $1) ORDER BY o.id DESC LIMIT $2`,
        [readCursor(page.cursor), page.limit + 1],
      );
      return pageOf(
        rows.map((row) => viewOf(row, today)),
        page.limit,
      );
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws ProblemException 404; 422 for a day that has come, or a review that says nothing. */
  review({ clubId, memberId }: SignedIn, id: string, body: NewOverrideReview): Promise<OverrideView> {
    const { reviewOn = null, finding = null } = body;
    const work = async (em: EntityManager) => {
      const today = await clubToday(em, clubId, this.clock.now());
      if (reviewOn === null && finding === null)
        throw valueRefused('finding', 'Say what the review found, or when it is looked at next.');
      if (reviewOn !== null && reviewOn <= today)
        throw valueRefused('reviewOn', `It is ${today} at the club; give a later day.`);
      const find = async (): Promise<Row> => {
        const [row]: Row[] = await em.query(`${SELECT} AND o.id = $1`, [id]);
        if (!row) throw notThere('override');
        return row;
      };
      await find();
      await em.query(
        `INSERT INTO override_reviews (club_id, id, override_id, review_on, finding, reviewed_by)
         VALUES (bellcrank_club(), $1, $2, $3, $4, $5)`,
        [newId(), id, reviewOn, finding, memberId],
      );
      return viewOf(await find(), today);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

/** The last review says when it is looked at next. */
function viewOf(row: Row, today: string): OverrideView {
  const last = row.reviews.at(-1);
  const reviewOn = last?.reviewOn ?? null;
  const review =
    last === undefined ? 'unplanned' : reviewOn === null ? 'reviewed' : reviewOn <= today ? 'due' : 'planned';
  return { ...row, reviewOn, review };
}
