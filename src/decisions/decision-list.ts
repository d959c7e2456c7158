import type { EntityManager } from 'typeorm';
import type { Answer } from '../rules/index.js';
import { instant } from './gather/sql.js';

/** A stored decision without its findings. */
export interface DecisionRow {
  id: string;
  memberId: string;
  askedBy: string;
  aircraftId: string;
  registration: string;
  answer: Answer;
  asOf: string;
  knownAt: string;
  horizonUntil: string | null;
}

/** What a list of decisions is narrowed to; null leaves it open. */
export interface DecisionFilter {
  memberId: string;
  aircraftId: string | null;
  answer: string | null;
  beforeId: string | null;
  limit: number;
}

/** A member's decisions, newest first (identifiers grow with time), along the index decisions_member_ix. */
export function listDecisions(em: EntityManager, filter: DecisionFilter): Promise<DecisionRow[]> {
  return em.query(
    `SELECT d.id, d.member_id AS "memberId", d.asked_by AS "askedBy", d.aircraft_id AS "aircraftId", a.registration,
        d.answer, ${instant('d.as_of')} AS "asOf", ${instant('d.known_at')} AS "knownAt",
        ${instant('d.horizon_until')} AS "horizonUntil"
       FROM decisions d JOIN aircraft a ON a.club_id = d.club_id AND a.id = d.aircraft_id
      WHERE d.club_id = bellcrank_club() AND d.member_id = $1
        AND ($2::uuid IS NULL OR d.aircraft_id = $2) AND ($3::text IS NULL OR d.answer = $3)
        AND ($4::uuid IS NULL OR d.id < $4)
      ORDER BY d.id DESC LIMIT $5`,
    [filter.memberId, filter.aircraftId, filter.answer, filter.beforeId, filter.limit],
  );
}
