import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubZone } from '../../clubs/club-time.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { addDays, localDateOf, startOfDay, toInstant, toSeconds } from '../../rules/index.js';
import type { RefusalsQuery, RefusalsView, RefusalWeek } from './refusals.dto.js';

const USUAL_DAYS = 84;
const MOST_DAYS = 366;
const STATEMENT_TIMEOUT_MS = 60_000;

const WEEK = `to_char(date_trunc('week', d.known_at AT TIME ZONE $2), 'YYYY-MM-DD')`;
const ASKED = `SELECT ${WEEK} AS week, count(*)::int AS decisions FROM decisions d
  WHERE d.club_id = bellcrank_club() AND d.known_at >= $1::timestamptz GROUP BY 1 ORDER BY 1`;
const REFUSED = `WITH refused AS MATERIALIZED (
  SELECT d.member_id, ${WEEK} AS week, f.value AS finding
    FROM decisions d CROSS JOIN LATERAL jsonb_array_elements(d.body::jsonb -> 'findings') f
   WHERE d.club_id = bellcrank_club() AND d.known_at >= $1::timestamptz AND d.answer IN ('no', 'ask-officer', 'dual-only')
     AND f.value ->> 'status' IN ('short', 'unknown', 'error') AND f.value ->> 'weight' <> 'advice'
     -- What may be settled before departure is a condition and refuses nothing (rules/engine/combine.ts, blocks).
     AND NOT (f.value ->> 'status' = 'unknown' AND jsonb_array_length(f.value -> 'conditions') > 0))
  SELECT rule, max(title) AS title, sum(n)::int AS decisions,
      (SELECT count(DISTINCT r.member_id)::int FROM refused r WHERE r.finding ->> 'rule' = w.rule) AS members,
      jsonb_object_agg(week, n) AS weeks
    FROM (SELECT finding ->> 'rule' AS rule, max(finding ->> 'title') AS title, week, count(*)::int AS n
            FROM refused GROUP BY 1, 3) w
   GROUP BY rule ORDER BY decisions DESC, rule`;

/** Which rules stand in people's way, week by week, from the decisions that were stored. */
@Injectable()
export class RefusalsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A rule that stood in the way of a decision that was not a yes counts once for it; advice never counts. */
  read({ clubId }: SignedIn, query: RefusalsQuery): Promise<RefusalsView> {
    const work = async (em: EntityManager): Promise<RefusalsView> => {
      const zone = await clubZone(em, clubId);
      const today = localDateOf(toSeconds(this.clock.now()), zone);
      const from = query.from ?? addDays(today, -USUAL_DAYS);
      if (from > today || from < addDays(today, -MOST_DAYS))
        throw valueRefused('from', `Give a day from ${addDays(today, -MOST_DAYS)} to ${today}.`);
      const asOf = [toInstant(startOfDay(from, zone)), zone];
      const asked: RefusalWeek[] = await em.query(ASKED, asOf);
      const rules: {
        rule: string;
        title: string;
        decisions: number;
        members: number;
        weeks: Record<string, number>;
      }[] = await em.query(REFUSED, asOf);
      const weeks = weeksOf(from, today);
      const counted = new Map(asked.map(({ week, decisions }) => [week, decisions]));
      return {
        ...{ from, through: today },
        asked: weeks.map((week) => ({ week, decisions: counted.get(week) ?? 0 })),
        rules: rules.map((one) => ({
          ...one,
          weeks: weeks.map((week) => ({ week, decisions: one.weeks[week] ?? 0 })),
        })),
      };
    };
    return this.db.run(clubId, work, { readOnly: true, statementTimeoutMs: STATEMENT_TIMEOUT_MS });
  }
}

/** Mondays of the weeks that the days touch. 1970-01-05 was one. */
function weeksOf(from: string, through: string): string[] {
  const days = Math.round((toSeconds(`${from}T00:00:00Z`) - toSeconds('1970-01-05T00:00:00Z')) / 86_400);
  const weeks: string[] = [];
  for (let monday = addDays(from, -(((days % 7) + 7) % 7)); monday <= through; monday = addDays(monday, 7))
    weeks.push(monday);
  return weeks;
}
