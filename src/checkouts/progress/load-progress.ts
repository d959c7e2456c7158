/** Reads what is known of some members' checkouts, in a number of statements that does not grow with them. */
import type { EntityManager } from 'typeorm';
import { clubZone } from '../../clubs/club-time.js';
import { addDays, type Instant, type LocalDate, localDateOf, toSeconds } from '../../rules/index.js';
import { checkoutPolicy } from '../checkout-policy.js';
import { type InForce, requirementsInForce } from '../requirements/read-requirements.js';
import { checkoutStands } from '../standing-checkouts.js';
import type { Asked, Attempt, Known, Mark, OpenDifference, SignOff } from './progress-of.js';

/** All of it: what the club asks, and what is known of each of the members asked for. */
export interface Loaded {
  asked: Asked;
  inForce: InForce[];
  of(memberId: string): Known;
  differencesOf(memberId: string): OpenDifference[];
}

/** SQL condition on marks under an alias: nothing took its place, and it is itself no withdrawal. */
export const markStands = (alias: string): string =>
  `NOT ${alias}.withdraws AND NOT EXISTS (SELECT 1 FROM checkout_marks n WHERE n.club_id = ${alias}.club_id AND n.corrects = ${alias}.id)`;

/** A sign-off under the requirement that still stands was written after it, and rests on it. */
const spent = (of: { member: string; requirement: string; difference: string; at: string }): string =>
  `EXISTS (SELECT 1 FROM checkouts c JOIN checkout_versions cv ON cv.club_id = c.club_id AND cv.id = c.version_id
     WHERE c.club_id = bellcrank_club() AND c.member_id = ${of.member} AND cv.requirement_id = ${of.requirement}
       AND c.difference_id IS NOT DISTINCT FROM ${of.difference} AND c.recorded_at >= ${of.at} AND ${checkoutStands('c')})`;
const person = (alias: string): string => `jsonb_build_object('id', ${alias}.id, 'name', ${alias}.name)`;

export const MARKS = `SELECT k.id, k.member_id AS "memberId", v.requirement_id AS "requirementId", k.difference_id AS "differenceId",
    jsonb_build_object('title', i.title, 'standard', i.standard, 'manoeuvre', i.manoeuvre) AS item, k.outcome,
    k.marked_on::text AS on, ${person('s')} AS "signedBy", k.note,
    ${spent({ member: 'k.member_id', requirement: 'v.requirement_id', difference: 'k.difference_id', at: 'k.recorded_at' })} AS spent
  FROM checkout_marks k JOIN checkout_items i ON i.club_id = k.club_id AND i.id = k.item_id
  JOIN checkout_versions v ON v.club_id = i.club_id AND v.id = i.version_id
  JOIN members s ON s.club_id = k.club_id AND s.id = k.signed_by
 WHERE k.club_id = bellcrank_club() AND ${markStands('k')}`;

const SIGN_OFFS = `SELECT c.id, c.member_id AS "memberId", c.kind, CASE WHEN c.kind = 'model' THEN c.model_id END AS "modelId",
    c.aircraft_id AS "aircraftId", c.equipment_group AS "equipmentGroup", c.condition, c.signed_on::text AS on,
    c.expires_on::text AS "expiresOn", ${person('s')} AS "signedBy"
  FROM checkouts c JOIN members s ON s.club_id = c.club_id AND s.id = c.signed_by
 WHERE c.club_id = bellcrank_club() AND c.member_id = ANY ($1::uuid[]) AND ${checkoutStands('c')}`;

const ATTEMPTS = `SELECT a.id, a.member_id AS "memberId", a.requirement_id AS "requirementId",
    ${spent({ member: 'a.member_id', requirement: 'a.requirement_id', difference: 'NULL::uuid', at: 'r.recorded_at' })} AS spent,
    CASE WHEN r.attempt_id IS NOT NULL THEN jsonb_build_object('percent', r.right_count * 100 / r.asked_count,
      'handedInAt', to_char(r.handed_in_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"'),
      'on', to_char(r.handed_in_at AT TIME ZONE $2, 'YYYY-MM-DD')) END AS result
  FROM quiz_attempts a LEFT JOIN quiz_results r ON r.club_id = a.club_id AND r.attempt_id = a.id
 WHERE a.club_id = bellcrank_club() AND a.member_id = ANY ($1::uuid[])`;

/**
 * Of each aircraft the newest change in effect, for whoever has a checkout in its model and was not shown it: as the rule
 * for differences asks. $3: the same words shown in another aircraft count.
 */
const DIFFERENCES = `SELECT d.id, m.id AS "memberId", d.aircraft_id AS "aircraftId", a.registration, d.title, d.since::text AS since,
    d.equipment_group AS "equipmentGroup"
  FROM aircraft a
  JOIN LATERAL (SELECT x.* FROM differences x WHERE x.club_id = a.club_id AND x.aircraft_id = a.id AND x.since <= $2::date
      AND (x.ended_on IS NULL OR x.ended_on > $2::date) ORDER BY x.since DESC, x.id DESC LIMIT 1) d ON true
  JOIN members m ON m.club_id = a.club_id AND m.id = ANY ($1::uuid[])
 WHERE a.club_id = bellcrank_club()
   AND EXISTS (SELECT 1 FROM checkouts c WHERE c.club_id = m.club_id AND c.member_id = m.id AND c.kind = 'model' AND c.model_id = a.model_id
     AND c.signed_on <= $2::date AND (c.expires_on IS NULL OR c.expires_on >= $2::date) AND ${checkoutStands('c')})
   AND NOT EXISTS (SELECT 1 FROM checkouts c WHERE c.club_id = m.club_id AND c.member_id = m.id AND c.kind = 'differences'
     AND c.signed_on <= $2::date AND (c.expires_on IS NULL OR c.expires_on >= $2::date) AND ${checkoutStands('c')}
     AND (c.aircraft_id = a.id AND c.signed_on >= d.since
       OR $3::boolean AND c.aircraft_id <> a.id AND lower(btrim(d.equipment_group)) = (SELECT lower(btrim(y.equipment_group)) FROM differences y
            WHERE y.club_id = c.club_id AND y.aircraft_id = c.aircraft_id AND y.since <= c.signed_on ORDER BY y.since DESC, y.id DESC LIMIT 1)))
 ORDER BY a.registration`;

export async function loadProgress(
  em: EntityManager,
  of: { clubId: string; memberIds: readonly string[]; now: Instant },
): Promise<Loaded> {
  const { clubId, memberIds, now } = of;
  const zone = await clubZone(em, clubId);
  const today = localDateOf(toSeconds(now), zone);
  const policy = await checkoutPolicy(em, clubId, today);
  const inForce = await requirementsInForce(em, clubId);
  const marks = await em.query<Mark[]>(`${MARKS} AND k.member_id = ANY ($1::uuid[])`, [memberIds]);
  const signOffs = (await em.query<SignOff[]>(SIGN_OFFS, [memberIds])).map((one) =>
    one.kind === 'annual-check' ? annualEnd(one, policy.annualCheckDays) : one,
  );
  const attempts = await em.query<Attempt[]>(ATTEMPTS, [memberIds, zone]);
  const differences = policy.differencesAsked
    ? await em.query<OpenDifference[]>(DIFFERENCES, [memberIds, today, policy.elsewhereCounts])
    : [];
  const ofMember = <T extends { memberId: string }>(rows: readonly T[], id: string): T[] =>
    rows.filter(({ memberId }) => memberId === id);
  return {
    asked: { today, now, ...policy },
    inForce,
    of: (id) => ({
      marks: ofMember(marks, id),
      signOffs: ofMember(signOffs, id),
      attempts: ofMember(attempts, id),
    }),
    differencesOf: (id) => ofMember(differences, id),
  };
}

/** An end date on an annual check may only shorten what the policy gives, as in the rule. */
function annualEnd(one: SignOff, days: number): SignOff {
  if (days === 0) return one;
  const through = addDays(one.on, days);
  return { ...one, expiresOn: one.expiresOn !== null && one.expiresOn < through ? one.expiresOn : through };
}

/** The newest change in effect on an aircraft: what a differences checkout of that day shows. */
export async function changeToShow(
  em: EntityManager,
  of: { clubId: string; aircraftId: string; on: LocalDate },
): Promise<{ id: string; title: string; since: LocalDate; equipmentGroup: string } | null> {
  const [found] = await em.query<{ id: string; title: string; since: LocalDate; equipmentGroup: string }[]>(
    `SELECT d.id, d.title, d.since::text AS since, d.equipment_group AS "equipmentGroup" FROM differences d
      WHERE d.club_id = $1 AND d.aircraft_id = $2 AND d.since <= $3::date AND (d.ended_on IS NULL OR d.ended_on > $3::date)
      ORDER BY d.since DESC, d.id DESC LIMIT 1`,
    [of.clubId, of.aircraftId, of.on],
  );
  return found ?? null;
}
