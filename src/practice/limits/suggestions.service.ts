import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr, OFFICERS, READERS } from '../../members/members.access.js';
import { assertTaughtOr } from '../../members/students.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { addDays, CAUTION, type LocalDate } from '../../rules/index.js';
import { goodOf } from '../advice/flown.js';
import { practicePolicy } from '../advice/policy.js';
import {
  LIMIT_NAMES,
  noSuggestionSays,
  suggestLimits,
  suggestionSays,
  type Logged,
  type Practised,
} from '../limits-suggested/index.js';
import { PracticeRecord } from '../records/practice-record.entity.js';
import { practiceStands } from '../records/practice-rows.js';
import type { LimitSuggestionsView } from './suggestions.dto.js';

const SUGGESTED_DAYS = 'club.limits.suggested-days';
/** Where the club never set it. */
const DAYS = 180;

/** Limits suggested from practice records and the log. Nothing is set by it. */
@Injectable()
export class LimitSuggestionsService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404, 409 */
  suggest(person: SignedIn, memberId: string): Promise<LimitSuggestionsView> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now: this.clock.now() });
        const to = await clubToday(em, clubId, this.clock.now());
        const set = await policyNumber(em, { clubId, parameterId: SUGGESTED_DAYS, on: to });
        const days = Math.max(0, Math.floor(set ?? DAYS));
        const since = { clubId, memberId, from: addDays(to, -days), to };
        const found = suggestLimits(await practisedSince(em, since), await loggedSince(em, since));
        const suggestions = LIMIT_NAMES.map((limit) => {
          const one = found.find((suggested) => suggested.limit === limit);
          if (!one) return { limit, value: null, evidence: [], says: noSuggestionSays(limit, days) };
          return { limit, value: one.value, evidence: one.evidence, says: suggestionSays(one) };
        });
        return { from: since.from, to, suggestions, caution: CAUTION };
      },
      { readOnly: true },
    );
  }
}

interface Since {
  clubId: string;
  memberId: string;
  from: LocalDate;
  to: LocalDate;
}

async function practisedSince(em: EntityManager, of: Since): Promise<Practised[]> {
  const policy = await practicePolicy(em, of.clubId, of.to);
  const rows = await em
    .createQueryBuilder(PracticeRecord, 'record')
    .where('record.clubId = :clubId AND record.memberId = :memberId', of)
    .andWhere('record.flownOn BETWEEN :from AND :to', of)
    .andWhere(practiceStands('record'))
    .getMany();
  return rows.map((row) => ({ ...row, on: row.flownOn, good: goodOf(row, policy) }));
}

/** Flights in command with hands on the controls; whichever runway was used is at most as long as the longest there. */
function loggedSince(em: EntityManager, { clubId, memberId, from, to }: Since): Promise<Logged[]> {
  return em.query<Logged[]>(
    `SELECT e.id, to_char(e.flown_on, 'YYYY-MM-DD') AS "on", e.to_airfield AS airfield, e.landings,
            e.night_full_stop_landings AS "nightFullStopLandings",
            (SELECT max(r.length_ft) FROM airfields f JOIN runways r ON r.club_id = f.club_id AND r.airfield_id = f.id
              WHERE f.club_id = e.club_id AND f.code = e.to_airfield) AS "longestRunwayFt"
       FROM log_entries e
      WHERE e.club_id = $1 AND e.member_id = $2 AND e.flown_on BETWEEN $3 AND $4 AND e.voided_at IS NULL
        AND e.device IS NULL AND e.sole_manipulator AND e.role IN ('pilot-in-command', 'solo')`,
    [clubId, memberId, from, to],
  );
}
