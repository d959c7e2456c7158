import type { EntityManager } from 'typeorm';
import { markStands } from '../progress/load-progress.js';
import { CheckoutMark } from './mark.entity.js';
import type { MarkView } from './mark.dto.js';

export const CHECKOUT_MARKS = { entity: CheckoutMark, noun: 'signed item' };

/** Records of a member from a position on, newest first. */
export function listMarks(
  em: EntityManager,
  of: { clubId: string; memberId: string; id?: string; corrected: boolean; after: string | null },
  count: number,
): Promise<MarkView[]> {
  return em.query(
    `SELECT k.id, k.member_id AS "memberId", k.item_id AS "itemId", k.difference_id AS "differenceId", k.outcome,
            k.marked_on::text AS "markedOn", k.note, v.requirement_id AS "requirementId", v.number AS "versionNumber", i.title,
            jsonb_build_object('id', s.id, 'name', s.name) AS "signedBy", k.corrects, k.because, k.withdraws,
            (SELECT n.id FROM checkout_marks n WHERE n.club_id = k.club_id AND n.corrects = k.id) AS "correctedBy",
            to_char(k.recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "recordedAt"
       FROM checkout_marks k JOIN checkout_items i ON i.club_id = k.club_id AND i.id = k.item_id
       JOIN checkout_versions v ON v.club_id = i.club_id AND v.id = i.version_id
       JOIN members s ON s.club_id = k.club_id AND s.id = k.signed_by
      WHERE k.club_id = $1 AND k.member_id = $2 AND ($3::uuid IS NULL OR k.id = $3) AND ($4::uuid IS NULL OR k.id < $4)
        AND ($5 OR ${markStands('k')})
      ORDER BY k.id DESC LIMIT $6`,
    [of.clubId, of.memberId, of.id ?? null, of.after, of.corrected, count],
  );
}
