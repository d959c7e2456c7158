import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { addDays, CAUTION, type LocalDate } from '../../rules/index.js';
import { MEMBERS } from '../member-rows.js';
import { assertOwnOr, isOwn, OFFICERS, READERS } from '../members.access.js';
import { assertTaughtOr } from '../students.js';
import { LIMITS, sidesOf, sideViews, type Side } from './limits-rows.js';
import type { MemberLimitsView, SetLimitsDto } from './limits.dto.js';
import { isLooser, limitsIn, NO_LIMITS, sameLimits, strictestOf, type Limits } from './strictness.js';

const LOOSER_AFTER = 'club.limits.looser-after-days';
/** What a club that never set it goes by: not on the day of the flight. */
const LOOSER_AFTER_DAYS = 1;
/** Farthest first day. */
const AHEAD_DAYS = 366;

/** A row to write. */
interface Draft {
  validFrom: LocalDate;
  limits: Limits;
}

/** Limits beyond the law: one's own, and those an instructor sets for a student. Rows are never edited. */
@Injectable()
export class LimitsService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404 */
  read(person: SignedIn, memberId: string): Promise<MemberLimitsView> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now: this.clock.now() });
        return this.view(em, clubId, memberId);
      },
      { readOnly: true },
    );
  }

  /**
   * Sets a whole set of limits: one's own, or as an instructor somebody else's. One's own get stricter at once; figures
   * that are looser hold some days later, so that nobody lowers them for the flight of the day.
   * @throws 403, 404, 422
   */
  set(by: SignedIn, memberId: string, body: SetLimitsDto): Promise<MemberLimitsView> {
    assertOwnOr(by, memberId, ['instructor']);
    const { clubId } = by;
    return this.tenants.run(
      clubId,
      async (em) => {
        // Whoever sets them at the same time waits: each goes by what the one before wrote.
        await findRecord(em, MEMBERS, { clubId, id: memberId }, { lock: true });
        const today = await clubToday(em, clubId, this.clock.now());
        const from = body.from ?? today;
        if (from < today) throw valueRefused('from', `Limits hold from today (${today}) on, or later.`);
        if (from > addDays(today, AHEAD_DAYS))
          throw valueRefused('from', 'Limits are set at most a year ahead.');
        const own = isOwn(by, memberId);
        const bindsThrough = body.bindsThrough ?? null;
        if (bindsThrough !== null && own)
          throw valueRefused('bindsThrough', 'Only limits set by an instructor bind through a day.');
        if (bindsThrough !== null && bindsThrough < from)
          throw valueRefused('bindsThrough', 'They bind through their first day or a later one.');
        const sides = await sidesOf(em, { clubId, memberId }, today);
        const wanted: Draft = { validFrom: from, limits: limitsIn(body) };
        const earliest = await this.looserFrom(em, clubId, today);
        const drafts = own ? ownDrafts(sides.own, wanted, earliest) : [wanted];
        for (const { limits, validFrom } of drafts)
          await addRecord(em, LIMITS, {
            ...{ clubId, memberId, setById: by.memberId, validFrom, bindsThrough, note: body.note ?? '' },
            ...limits,
          });
        return this.view(em, clubId, memberId);
      },
      { actorId: by.memberId },
    );
  }

  private async view(em: EntityManager, clubId: string, memberId: string): Promise<MemberLimitsView> {
    const today = await clubToday(em, clubId, this.clock.now());
    const sides = await sideViews(em, clubId, await sidesOf(em, { clubId, memberId }, today));
    return { today, ...sides, looserFrom: await this.looserFrom(em, clubId, today), caution: CAUTION };
  }

  private async looserFrom(em: EntityManager, clubId: string, on: LocalDate): Promise<LocalDate> {
    const days = await policyNumber(em, { clubId, parameterId: LOOSER_AFTER, on });
    return addDays(on, Math.max(0, Math.ceil(days ?? LOOSER_AFTER_DAYS)));
  }
}

/** The rows to write for one's own: what gets stricter from the day wanted, what gets looser not before `earliest`. */
function ownDrafts({ inForce, toCome }: Side, wanted: Draft, earliest: LocalDate): Draft[] {
  const before = inForce ? limitsIn(inForce) : NO_LIMITS;
  const { limits, validFrom } = wanted;
  if (toCome.length === 0 && inForce !== null && sameLimits(before, limits)) return [];
  if (validFrom >= earliest || !isLooser(before, limits)) return [wanted];
  const strict = strictestOf(before, limits);
  const stricter = sameLimits(strict, before) ? [] : [{ validFrom, limits: strict }];
  return [...stricter, { validFrom: earliest, limits }];
}
