import type { EntityManager } from 'typeorm';
import { checkoutStands } from '../../checkouts/standing-checkouts.js';
import type { LocalDate } from '../../rules/index.js';
import type { MemberToShow } from './equipment-change-view.dto.js';

/**
 * Members with a checkout on the aircraft's model that stands on a day, and whether they were shown the same kind of equipment in
 * another aircraft of the club.
 */
export async function membersToShow(
  em: EntityManager,
  of: { aircraftId: string; equipmentGroup: string; on: LocalDate; elsewhereCounts: boolean },
): Promise<MemberToShow[]> {
  return em.query(
    `SELECT m.id AS "memberId", m.name AS "memberName", $4::boolean AND EXISTS (
        SELECT 1 FROM checkouts c JOIN differences d ON d.club_id = c.club_id AND d.aircraft_id = c.aircraft_id
         WHERE c.club_id = m.club_id AND c.member_id = m.id AND c.kind = 'differences' AND c.aircraft_id <> $1
           AND (c.expires_on IS NULL OR c.expires_on >= $3::date) AND c.signed_on <= $3::date
           AND ${checkoutStands('c')}
           AND lower(btrim(d.equipment_group)) = lower(btrim($2)) AND d.since <= c.signed_on
           AND NOT EXISTS (SELECT 1 FROM differences n WHERE n.club_id = d.club_id AND n.aircraft_id = d.aircraft_id
             AND n.since <= c.signed_on AND (n.since, n.id) > (d.since, d.id))) AS exempt
       FROM members m
      WHERE m.club_id = bellcrank_club() AND (m.membership_through IS NULL OR m.membership_through >= $3::date) AND EXISTS (
        SELECT 1 FROM checkouts c JOIN aircraft a ON a.club_id = c.club_id AND a.model_id = c.model_id AND a.id = $1
         WHERE c.club_id = m.club_id AND c.member_id = m.id AND c.kind = 'model' AND c.signed_on <= $3::date
           AND (c.expires_on IS NULL OR c.expires_on >= $3::date)
           AND ${checkoutStands('c')})
      ORDER BY m.name, m.id`,
    [of.aircraftId, of.equipmentGroup, of.on, of.elsewhereCounts],
  );
}
