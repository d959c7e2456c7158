import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import { requireKnown } from '../decisions/gather/known.js';
import { instant } from '../decisions/gather/sql.js';
import { hiddenAmong } from '../decisions/privacy.js';
import type { WaysDto } from '../decisions/ways/ways.dto.js';
import { WaysService } from '../decisions/ways/ways.service.js';
import { assertOwnOr, OFFICERS, READERS } from '../members/members.access.js';
import { assertTaughtOr, taughtAmong } from '../members/students.js';
import { Clock } from '../platform/clock.js';
import { notThere } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import { type Page, pageOf, readCursor } from '../platform/http/index.js';
import { ProblemException } from '../platform/problems/index.js';
import { COVERED } from '../rules/explain/index.js';
import { CAUTION, judge, type Answer } from '../rules/index.js';
import { causeWords } from './cause-words.js';
import { sheetsOf, type Because, type BookedFlight } from './gather-standing.js';
import type {
  StandingAnswerDto,
  StandingHistoryDto,
  StandingQuery,
  StandingReasonDto,
} from './standing.dto.js';

interface Row extends Omit<StandingAnswerDto, 'because' | 'caution'> {
  because: Because[];
  people: { id: string; name: string }[];
}

const SELECT = `SELECT b.id AS "bookingId", b.aircraft_id AS "aircraftId", a.registration, b.member_id AS "memberId",
    m.name AS "memberName", ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives,
    d.answer AS "bookedAt", s.answer AS now, coalesce(s.because, '[]'::jsonb) AS because, ${instant('s.judged_at')} AS "judgedAt",
    s.booking_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM fact_changes f
      WHERE f.club_id = b.club_id AND s.reads @> ARRAY[f.subject]) AS current,
    (SELECT jsonb_agg(jsonb_build_object('id', x.id, 'name', x.name) ORDER BY x.id) FROM booking_people p
      JOIN members x ON x.club_id = p.club_id AND x.id = p.member_id
      WHERE p.club_id = b.club_id AND p.booking_id = b.id) AS people
  FROM bookings b
  JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
  JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
  JOIN decisions d ON d.club_id = b.club_id AND d.id = b.decision_id
  LEFT JOIN standing_answers s ON s.club_id = b.club_id AND s.booking_id = b.id
  WHERE b.club_id = bellcrank_club() AND b.kind = 'flight' AND b.status = 'booked' AND lower(b.during) > $1::timestamptz`;

/** Reads the answers booked flights stand at, and looks for ways where one has become a no. */
@Injectable()
export class StandingService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly ways: WaysService,
  ) {}

  /** Flights to come with their answers: one's own, or for instructors and officers anyone's. @throws 403 */
  list(user: SignedIn, query: StandingQuery): Promise<Page<StandingAnswerDto>> {
    const memberId = query.everybody ? null : (query.memberId ?? user.memberId);
    if (memberId === null) {
      if (!hasAnyRole(user, ...OFFICERS)) throw new ProblemException('forbidden', { field: 'everybody' });
    } else assertOwnOr(user, memberId, READERS);
    const after = readCursor(query.cursor);
    return this.read(user, async (em) => {
      await requireKnown(em, { memberId });
      if (memberId !== null)
        await assertTaughtOr(em, user, memberId, { roles: OFFICERS, now: this.clock.now() });
      const rows: Row[] = await em.query(
        `${SELECT} AND ($2::uuid IS NULL OR EXISTS (SELECT 1 FROM booking_people p WHERE p.club_id = b.club_id
             AND p.booking_id = b.id AND p.member_id = $2))
           AND (NOT $3::boolean OR s.answer <> d.answer) AND ($4::uuid IS NULL OR b.id > $4) ORDER BY b.id LIMIT $5`,
        [this.clock.now(), memberId, query.changed ?? false, after, query.limit + 1],
      );
      const page = pageOf(
        rows.map((row) => ({ ...row, id: row.bookingId })),
        query.limit,
      );
      return {
        ...page,
        items: page.items.map((row) => shown(user, row, memberId === null ? [] : [memberId])),
      };
    });
  }

  /** One booked flight and how its answer came to be. @throws 404 */
  find(user: SignedIn, bookingId: string): Promise<StandingHistoryDto> {
    return this.read(user, async (em) => {
      const { row, taughtIds } = await this.findRow(em, user, bookingId);
      const changes: {
        at: string;
        before: Answer;
        after: Answer;
        because: Because[];
        causedBy: string[];
      }[] = await em.query(
        `SELECT ${instant('at')} AS at, before, after, because, caused_by AS "causedBy" FROM standing_changes
          WHERE club_id = bellcrank_club() AND booking_id = $1 ORDER BY id DESC LIMIT 100`,
        [bookingId],
      );
      return {
        ...shown(user, row, taughtIds),
        changes: changes.map(({ because, causedBy, ...change }) => ({
          ...change,
          because: because.map((one) => reason(user, { ...row, taughtIds }, one)),
          causes: causeWords(causedBy),
        })),
      };
    });
  }

  /** The ways to yes of a booked flight, on its facts as they are now. @throws 404, 422 */
  async waysOf(user: SignedIn, bookingId: string): Promise<WaysDto> {
    const { decisionId, sheet, policy, taughtIds } = await this.read(user, async (em) => {
      const { taughtIds } = await this.findRow(em, user, bookingId);
      const [flight]: (BookedFlight & { decisionId: string })[] = await em.query(
        `SELECT b.id AS "bookingId", b.decision_id AS "decisionId", b.member_id AS "memberId", b.aircraft_id AS "aircraftId",
            ${instant('lower(b.during)')} AS departs, b.request
           FROM bookings b WHERE b.club_id = bellcrank_club() AND b.id = $1`,
        [bookingId],
      );
      const [found] = await sheetsOf(em, [flight!], this.clock.now());
      if (found instanceof ProblemException) throw found;
      return { decisionId: flight!.decisionId, taughtIds, ...found! };
    });
    const decision = judge(sheet, policy);
    // An instructor who is aboard, and does not teach the pilot, reads as anybody aboard does.
    const viewer = taughtIds.includes(sheet.flight.memberId) ? user : withoutTeaching(user);
    return { decisionId, ...(await this.ways.search(viewer, { sheet, policy, decision })) };
  }

  /** A flight to come that this person is aboard of or may read of. */
  private async findRow(
    em: EntityManager,
    user: SignedIn,
    bookingId: string,
  ): Promise<{ row: Row; taughtIds: string[] }> {
    const now = this.clock.now();
    const [row]: Row[] = await em.query(`${SELECT} AND b.id = $2`, [now, bookingId]);
    const aboard = row?.people.map(({ id }) => id) ?? [];
    const taughtIds = await taughtAmong(em, user, aboard, now);
    const mayRead = hasAnyRole(user, ...OFFICERS) || aboard.includes(user.memberId) || taughtIds.length > 0;
    if (!row || !mayRead) throw notThere('booked flight to come that you may read of');
    return { row, taughtIds };
  }

  private read<T>(user: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(user.clubId, work, { readOnly: true });
  }
}

const withoutTeaching = (user: SignedIn): SignedIn => ({
  ...user,
  roles: user.roles.filter((role) => role !== 'instructor'),
});

function shown(
  viewer: SignedIn,
  { people, because, ...row }: Row,
  taughtIds: readonly string[],
): StandingAnswerDto {
  return {
    ...row,
    because: because.map((one) => reason(viewer, { people, taughtIds }, one)),
    caution: CAUTION,
  };
}

/** What is told of somebody else's record is that something is short, and no more. */
function reason(
  viewer: SignedIn,
  row: Pick<Row, 'people'> & { taughtIds: readonly string[] },
  one: Because,
): StandingReasonDto {
  const { rule, title, says, people } = one;
  const nameOf = (id: string): string | undefined => row.people.find((person) => person.id === id)?.name;
  const hidden = hiddenAmong(viewer, people, { nameOf, taughtIds: row.taughtIds });
  return { rule, title, says: hidden === null ? says : COVERED.short(hidden) };
}
