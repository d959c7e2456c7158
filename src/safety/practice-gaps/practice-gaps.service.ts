import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { whom } from '../../decisions/timeline/club/whom.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { flownOf, type FlownRow } from '../../practice/advice/flown.js';
import { practicePolicy } from '../../practice/advice/policy.js';
import { levelsByMember, practiceStands } from '../../practice/records/practice-rows.js';
import { conditionSaid, TASK_NAMES, write, type Flown } from '../../practice/rust/index.js';
import { CAUTION, type LocalDate } from '../../rules/index.js';
import { FEWEST_TOLD, gapsOf } from './gaps.js';
import type { PracticeGapsView } from './practice-gaps.dto.js';

const FLOWN = `SELECT r.member_id AS "memberId", r.id, r.manoeuvre, r.flown_on::text AS "flownOn", r.within,
    r.to_standard AS "toStandard", r.seen_by AS "seenBy", r.crosswind_kt::float8 AS "crosswindKt",
    r.gust_spread_kt::float8 AS "gustSpreadKt", r.night, r.runway_ft AS "runwayFt", r.equipment
  FROM practice_records r
 WHERE r.club_id = $1 AND r.member_id = ANY ($2::uuid[]) AND r.flown_on <= $3 AND ${practiceStands('r')}`;

/** What is rusty across the club, by the same model as each member's own list. */
@Injectable()
export class PracticeGapsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Of the members of a day who have a certificate on record; statements do not grow with them. @throws 403, 409 */
  read({ clubId }: SignedIn, asked?: LocalDate): Promise<PracticeGapsView> {
    const work = async (em: EntityManager): Promise<PracticeGapsView> => {
      const on = asked ?? (await clubToday(em, clubId, this.clock.now()));
      const policy = await practicePolicy(em, clubId, on);
      const { members } = await whom(em, { memberIds: null, aircraftIds: null, first: on, last: on });
      const levels = await levelsByMember(
        em,
        clubId,
        members.map(({ id }) => id),
      );
      const rows: (FlownRow & { memberId: string })[] = await em.query(FLOWN, [
        clubId,
        [...levels.keys()],
        on,
      ]);
      const flown = new Map<string, Flown[]>([...levels.keys()].map((id) => [id, []]));
      for (const row of rows) flown.get(row.memberId)!.push(flownOf(row, policy));
      const gaps = gapsOf(
        [...levels].map(([id, of]) => ({ levels: of, flown: flown.get(id)! })),
        { decay: policy.decay, limits: policy.limits, rustFrom: policy.plan.rustFrom, on },
      );
      return {
        ...{
          on,
          members: levels.size,
          rustFrom: policy.plan.rustFrom,
          fewestTold: FEWEST_TOLD,
          caution: CAUTION,
        },
        gaps: gaps.map(({ manoeuvre, condition, key, members, counts }) => ({
          ...{ title: TASK_NAMES[manoeuvre], condition: write(conditionSaid(condition)), key, members },
          ...(counts ?? { never: null, rusty: null, fresh: null, middleDays: null }),
        })),
      };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}
