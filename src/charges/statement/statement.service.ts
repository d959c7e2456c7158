import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { pageOf, readCursor } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { addDays, daysBetween, type LocalDate } from '../../rules/index.js';
import { LedgerEntry } from '../ledger/ledger-entry.entity.js';
import { unpaidCharges } from '../ledger/unpaid-charges.js';
import { moneyUnit } from '../money-unit.js';
import {
  type BalancePage,
  type BalancesQuery,
  type BalanceView,
  StatementEntryView,
  type StatementQuery,
  type StatementView,
} from './statement.dto.js';

const LONGEST_DAYS = 366;
const DAYS_UNLESS_ASKED = 90;
const ROUNDING =
  'Each line is its quantity times its rate, rounded once, half up, to the smallest unit of the currency; an amount is the sum of its lines.';

/** Accounts as their owners and the administrators read them. */
@Injectable()
export class StatementService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404, 409 `currency-not-set`, 422 */
  statement(person: SignedIn, memberId: string, query: StatementQuery): Promise<StatementView> {
    assertOwnOr(person, memberId, ['administrator']);
    const { clubId } = person;
    const work = async (em: EntityManager): Promise<StatementView> => {
      const member = await findRecord(em, MEMBERS, { clubId, id: memberId });
      const today = await clubToday(em, clubId, this.clock.now());
      const { from, to } = period(query, today);
      const openingMinor = await balanceBefore(em, { clubId, memberId, from });
      const entries = await entriesOf(em, { clubId, memberId, from, to, openingMinor });
      const owed = await overdueOf(em, { clubId, today, memberIds: [memberId] });
      return {
        ...{ memberId, memberName: member.name, from, to, openingMinor, entries, rounding: ROUNDING },
        ...(await moneyUnit(em, clubId, today)),
        closingMinor: entries.at(-1)?.balanceMinor ?? openingMinor,
        overdueMinor: owed.get(memberId)?.overdueMinor ?? 0,
        dueThrough: owed.get(memberId)?.dueThrough ?? null,
      };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** How every account stands today. @throws 409 `currency-not-set` */
  balances({ clubId }: SignedIn, { owing, ...page }: BalancesQuery): Promise<BalancePage> {
    const work = async (em: EntityManager): Promise<BalancePage> => {
      const today = await clubToday(em, clubId, this.clock.now());
      const rows: { id: string; memberName: string; balanceMinor: number }[] = await em.query(
        `SELECT m.id, m.name AS "memberName", coalesce(sum(e.amount_minor), 0)::float8 AS "balanceMinor"
           FROM members m LEFT JOIN ledger_entries e ON e.club_id = m.club_id AND e.member_id = m.id
          WHERE m.club_id = $1 AND ($2::uuid IS NULL OR m.id > $2)
          GROUP BY m.id, m.name HAVING NOT $3 OR coalesce(sum(e.amount_minor), 0) > 0 ORDER BY m.id LIMIT $4`,
        [clubId, readCursor(page.cursor), owing ?? false, page.limit + 1],
      );
      const { items, nextCursor } = pageOf(rows, page.limit);
      const owed = await overdueOf(em, { clubId, today, memberIds: items.map(({ id }) => id) });
      const views = items.map(({ id, ...row }): BalanceView => ({
        ...{ memberId: id, ...row, overdueMinor: owed.get(id)?.overdueMinor ?? 0 },
        oldestUnpaidOn: owed.get(id)?.oldestUnpaidOn ?? null,
      }));
      return { ...(await moneyUnit(em, clubId, today)), items: views, nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}

/** The days asked for. @throws 422 `period-too-long` */
function period({ from, to }: StatementQuery, today: LocalDate): { from: LocalDate; to: LocalDate } {
  const last = to ?? today;
  const first = from ?? addDays(last, -DAYS_UNLESS_ASKED);
  const days = daysBetween(first, last);
  if (days < 0 || days > LONGEST_DAYS) throw new ProblemException('period-too-long', { field: 'from' });
  return { from: first, to: last };
}

interface Account {
  clubId: string;
  memberId: string;
}

async function balanceBefore(
  em: EntityManager,
  { clubId, memberId, from }: Account & { from: LocalDate },
): Promise<number> {
  const [row]: { sum: number }[] = await em.query(
    `SELECT coalesce(sum(amount_minor), 0)::float8 AS sum FROM ledger_entries
      WHERE club_id = $1 AND member_id = $2 AND posted_on < $3`,
    [clubId, memberId, from],
  );
  return row!.sum;
}

async function entriesOf(
  em: EntityManager,
  {
    clubId,
    memberId,
    from,
    to,
    openingMinor,
  }: Account & { from: LocalDate; to: LocalDate; openingMinor: number },
): Promise<StatementEntryView[]> {
  const rows = await em
    .createQueryBuilder(LedgerEntry, 'entry')
    .where('entry.clubId = :clubId AND entry.memberId = :memberId', { clubId, memberId })
    .andWhere('entry.postedOn BETWEEN :from AND :to', { from, to })
    .orderBy('entry.postedOn')
    .addOrderBy('entry.recordedAt')
    .addOrderBy('entry.id')
    .getMany();
  const reversals = await em.find(LedgerEntry, {
    ...{ where: { clubId, reverses: In(rows.map(({ id }) => id)) }, select: { id: true, reverses: true } },
  });
  const flown = rows.flatMap((row) => (row.flown ? [row.flown.aircraftId] : []));
  const fleet = await em.find(Aircraft, {
    where: { clubId, id: In(flown) },
    select: { id: true, registration: true },
  });
  let balanceMinor = openingMinor;
  return rows.map((row) => {
    balanceMinor += row.amountMinor;
    return show(StatementEntryView, row, {
      balanceMinor,
      registration: fleet.find(({ id }) => id === row.flown?.aircraftId)?.registration ?? null,
      ...{ departedAt: row.flown?.departedAt ?? null, arrivedAt: row.flown?.arrivedAt ?? null },
      reversedBy: reversals.find(({ reverses }) => reverses === row.id)?.id ?? null,
    });
  });
}

interface Owed {
  overdueMinor: number;
  oldestUnpaidOn: LocalDate;
  dueThrough: LocalDate;
}

/** What of the unpaid charges is to be paid by now; by the same sums that decisions are made by. */
async function overdueOf(
  em: EntityManager,
  { clubId, today, memberIds }: { clubId: string; today: LocalDate; memberIds: string[] },
): Promise<Map<string, Owed>> {
  const days = (await policyNumber(em, { clubId, parameterId: 'club.charges.due-days', on: today })) ?? 0;
  const rows: { memberId: string; overdueMinor: number; oldestUnpaidOn: LocalDate }[] = await em.query(
    `SELECT m.id AS "memberId", to_char(min(u.on_day), 'YYYY-MM-DD') AS "oldestUnpaidOn",
            coalesce(sum(u.unpaid_minor) FILTER (WHERE u.on_day < $3::date - $4::integer), 0)::float8 AS "overdueMinor"
       FROM members m CROSS JOIN LATERAL (${unpaidCharges('m')}) u
      WHERE m.club_id = $1 AND m.id = ANY ($2::uuid[]) GROUP BY m.id`,
    [clubId, memberIds, today, Math.floor(days)],
  );
  return new Map(
    rows.map(({ memberId, ...row }) => [
      memberId,
      { ...row, dueThrough: addDays(row.oldestUnpaidOn, Math.floor(days)) },
    ]),
  );
}
