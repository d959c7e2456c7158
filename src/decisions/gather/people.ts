import { checkStands } from '../../members/checks/standing-checks.js';
import { unpaidCharges } from '../../charges/ledger/unpaid-charges.js';
import { checkoutStands } from '../../checkouts/standing-checkouts.js';
import type { EntityManager } from 'typeorm';
import { A_BOOKING_OF, MISSING, UNVERIFIED } from '../../rules/explain/record-words.js';
import type { PersonFacts } from '../../rules/index.js';
import { asOf, type AsOf } from './as-of.js';
import { columnFact, date, instant, listFact, object, recordFact } from './sql.js';

/** Papers count once an officer has verified them, unless the club's policy lets unverified ones count ($3). */
const counted = '(t.verified_at IS NOT NULL OR $3)';
const ofMember = (table: string): string => `${table} t WHERE t.club_id = m.club_id AND t.member_id = m.id`;
const paper = (table: string): string => `${ofMember(table)} AND ${counted}`;

const suspensionsOf = (column: string): string =>
  `(SELECT coalesce(jsonb_agg(${object({
    id: 's.id',
    from: date('s.suspended_from'),
    to: date('s.suspended_to'),
  })} ORDER BY s.suspended_from, s.id), '[]'::jsonb) FROM suspensions s WHERE s.club_id = t.club_id AND s.${column} = t.id)`;

const ratingsOf = (kind: string, item: string): string =>
  `(SELECT coalesce(jsonb_agg(${item} ORDER BY r.category, r.class, r.type_designator), '[]'::jsonb)
    FROM certificate_ratings r WHERE r.club_id = t.club_id AND r.certificate_id = t.id AND r.kind = '${kind}')`;

/** Papers that wait for an officer; none when the policy lets them count. */
function unverifiedFact(): string {
  const papers = [
    ['certificates', `t.level || '${UNVERIFIED.certificate}'`, 't.issued_on'],
    ['instructor_certificates', `'${UNVERIFIED.instructor}'`, 't.issued_on'],
    ['medicals', `'${UNVERIFIED.medical}' || t.class`, 't.exam_on'],
    ['basic_med', `'${UNVERIFIED.basicMed}'`, 't.exam_on'],
    ['reviews', `replace(t.kind, '-', ' ')`, 't.reviewed_on'],
    ['endorsements', `replace(t.kind, '-', ' ') || '${UNVERIFIED.endorsement}'`, 't.endorsed_on'],
    ['ratings', `replace(t.kind, '-', ' ') || '${UNVERIFIED.rating}'`, 't.issued_on'],
  ].map(
    ([table, what, on]) =>
      `SELECT t.id, ${what} AS what, ${on} AS "on", t.recorded_at FROM ${ofMember(table!)} AND t.verified_at IS NULL AND NOT $3`,
  );
  return listFact(
    object({ id: 't.id', what: 't.what', on: date('t."on"') }),
    `(${papers.join(' UNION ALL ')}) t`,
    't."on", t.id',
  );
}

/** One SQL expression per subject of PersonFacts, over `members m`. */
const SUBJECTS: Record<Exclude<keyof PersonFacts, 'id' | 'name'>, string> = {
  birthDate: columnFact(date('m.birth_date'), 'm.recorded_at', MISSING.birthDate),
  certificates: listFact(
    object({
      id: 't.id',
      level: 't.level',
      issuedOn: date('t.issued_on'),
      ratings: ratingsOf('category-class', object({ category: 'r.category', class: 'r.class' })),
      instrument: ratingsOf('instrument', 'to_jsonb(r.category)'),
      typeRatings: ratingsOf('type', 'to_jsonb(r.type_designator)'),
      limitations: 'to_jsonb(t.limitations)',
      validThrough: date('t.valid_through'),
      suspensions: suspensionsOf('certificate_id'),
    }),
    paper('certificates'),
    't.issued_on, t.id',
  ),
  instructor: listFact(
    object({
      id: 't.id',
      issuedOn: date('t.issued_on'),
      ratings: 'to_jsonb(t.ratings)',
      recentExperienceOn: date('t.recent_experience_on'),
      printedEndOn: date('t.printed_end_on'),
      suspensions: suspensionsOf('instructor_certificate_id'),
    }),
    paper('instructor_certificates'),
    't.issued_on, t.id',
  ),
  medicals: listFact(
    object({
      id: 't.id',
      class: 't.class',
      examOn: date('t.exam_on'),
      limitations: 'to_jsonb(t.limitations)',
      withdrawnOn: date('t.withdrawn_on'),
    }),
    paper('medicals'),
    't.exam_on, t.id',
  ),
  basicMed: listFact(
    object({
      id: 't.id',
      examOn: date('t.exam_on'),
      courseOn: date('t.course_on'),
      licenceValidThrough: date('t.licence_valid_through'),
      heldMedicalAfter20060714: 't.held_medical_after_2006_07_14',
      lastApplicationDenied: 't.last_application_denied',
      lastCertificateRevokedOrSuspended: 't.last_certificate_revoked_or_suspended',
    }),
    paper('basic_med'),
    't.id',
  ),
  reviews: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      on: date('t.reviewed_on'),
      groundTenths: 't.ground_tenths',
      flightTenths: 't.flight_tenths',
      category: 't.category',
      endorsedAsReview: 't.endorsed_as_review',
    }),
    paper('reviews'),
    't.reviewed_on, t.id',
  ),
  endorsements: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      on: date('t.endorsed_on'),
      makeModel: 't.make_model',
      airfields: 'to_jsonb(t.airfields)',
      expiresOn: date('t.expires_on'),
    }),
    paper('endorsements'),
    't.endorsed_on, t.id',
  ),
  ratings: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      designator: 't.designator',
      on: date('t.issued_on'),
      validThrough: date('t.valid_through'),
    }),
    paper('ratings'),
    't.issued_on, t.id',
  ),
  log: listFact(
    object({
      id: 't.id',
      departedAt: instant('t.departed_at'),
      on: date('t.flown_on'),
      category: 't.category',
      class: 't.class',
      typeRating: 't.type_rating',
      tailwheel: 't.tailwheel',
      modelId: 't.model_id',
      aircraftId: 't.aircraft_id',
      role: 't.role',
      soleManipulator: 't.sole_manipulator',
      takeoffs: 't.takeoffs',
      landings: 't.landings',
      fullStopLandings: 't.full_stop_landings',
      nightTakeoffs: 't.night_takeoffs',
      nightFullStopLandings: 't.night_full_stop_landings',
      approaches: 't.approaches',
      holding: 't.holding',
      interceptTrack: 't.intercept_track',
      device: 't.device',
      totalTenths: 't.total_tenths',
      nightTenths: 't.night_tenths',
      dualGivenTenths: 't.dual_given_tenths',
    }),
    `${ofMember('log_entries')} AND t.voided_at IS NULL AND t.departed_at > $4::timestamptz`,
    't.departed_at, t.id',
  ),
  // What the log above no longer lists, as sums: totals need it, and it is far smaller than the entries.
  logBefore: `(SELECT jsonb_build_object('known', true, 'status', 'recorded',
      'value', jsonb_build_object('through', ${instant('max(s.through)')}, 'sums', coalesce(jsonb_agg(${object(
        {
          modelId: 's.model_id',
          category: 's.category',
          class: 's.class',
          tailwheel: 's.tailwheel',
          role: 's.role',
          flights: 's.flights',
          landings: 's.landings',
          totalTenths: 's.total',
          nightTenths: 's.night',
          dualGivenTenths: 's.dual',
        },
      )} ORDER BY s.model_id, s.category, s.class, s.tailwheel, s.role), '[]'::jsonb)),
      'lastKnownAt', coalesce(${instant('max(s.recorded_at)')}, $since$))
    FROM (SELECT t.model_id, t.category, t.class, t.tailwheel, t.role, count(*) AS flights, sum(t.landings) AS landings,
        sum(t.total_tenths) AS total, sum(t.night_tenths) AS night, sum(t.dual_given_tenths) AS dual,
        max(t.departed_at) AS through, max(t.recorded_at) AS recorded_at
      FROM ${ofMember('log_entries')} AND t.voided_at IS NULL AND t.device IS NULL AND t.departed_at <= $4::timestamptz
      GROUP BY t.model_id, t.category, t.class, t.tailwheel, t.role) s)`,
  checkouts: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      modelId: 't.model_id',
      aircraftId: 't.aircraft_id',
      on: date('t.signed_on'),
      expiresOn: date('t.expires_on'),
      signedById: 't.signed_by',
      equipmentGroup: `CASE t.kind WHEN 'equipment' THEN t.equipment_group WHEN 'differences' THEN (SELECT x.equipment_group FROM differences x
        WHERE x.club_id = t.club_id AND x.aircraft_id = t.aircraft_id AND x.since <= t.signed_on
        ORDER BY x.since DESC, x.id DESC LIMIT 1) END`,
      condition: 't.condition',
      // As the version in force says now; a model the club asks no checkout for any more lets none count elsewhere.
      alsoModelIds: `(SELECT coalesce(jsonb_agg(x.model_id ORDER BY x.model_id), '[]'::jsonb) FROM checkout_requirements r
        JOIN checkout_versions v ON v.club_id = r.club_id AND v.requirement_id = r.id
        JOIN checkout_transfers x ON x.club_id = v.club_id AND x.version_id = v.id
        WHERE t.kind = 'model' AND r.club_id = t.club_id AND r.kind = 'model' AND r.model_id = t.model_id
          AND checkout_version_in_force(v.club_id, v.id))`,
    }),
    `${ofMember('checkouts')} AND ${checkoutStands('t')}`,
    't.signed_on, t.id',
  ),
  standing: recordFact(
    object({
      id: 'm.id',
      state: 'm.standing',
      since: date('m.standing_since'),
      membershipFrom: date('m.membership_from'),
      membershipThrough: date('m.membership_through'),
    }),
    'm.recorded_at',
  ),
  commitments: listFact(
    object({
      id: 't.booking_id',
      from: instant('lower(t.during)'),
      to: instant('upper(t.during)'),
      role: 't.role',
      what: `'${A_BOOKING_OF}' || a.registration`,
    }),
    `(SELECT p.*, b.recorded_at, b.aircraft_id FROM booking_people p
        JOIN bookings b ON b.club_id = p.club_id AND b.id = p.booking_id
       WHERE p.club_id = m.club_id AND p.member_id = m.id AND p.occupies AND p.booking_id IS DISTINCT FROM $5::uuid
         AND (b.hold_until IS NULL OR b.hold_until > $2::timestamptz)
         AND upper(p.during) > $2::timestamptz) t
      JOIN aircraft a ON a.club_id = t.club_id AND a.id = t.aircraft_id`,
    'lower(t.during), t.booking_id',
  ),
  unpaid: listFact(
    object({
      id: 't.id',
      on: date('t.on_day'),
      unpaidMinor: 't.unpaid_minor',
      minorPerUnit: 't.minor_per_unit',
      currency: 't.currency',
    }),
    `(${unpaidCharges('m')}) t`,
    't.on_day, t.id',
  ),
  unverified: unverifiedFact(),
  // Those that a newer row of the same side stands over from their first day on never count again.
  limits: listFact(
    object({
      id: 't.id',
      setBy: `CASE WHEN t.set_by = t.member_id THEN 'member' ELSE 'instructor' END`,
      recordedAt: instant('t.recorded_at'),
      from: date('t.valid_from'),
      through: date('t.binds_through'),
      windKt: 't.wind_kt',
      crosswindKt: 't.crosswind_kt',
      gustSpreadKt: 't.gust_spread_kt',
      ceilingDayFtAgl: 't.ceiling_day_ft_agl',
      ceilingNightFtAgl: 't.ceiling_night_ft_agl',
      visibilityDaySm: 't.visibility_day_sm',
      visibilityNightSm: 't.visibility_night_sm',
      runwayFt: 't.runway_ft',
      night: 't.night',
    }),
    `${ofMember('personal_limits')} AND NOT EXISTS (SELECT 1 FROM personal_limits n
      WHERE n.club_id = t.club_id AND n.member_id = t.member_id AND (n.set_by = n.member_id) = (t.set_by = t.member_id)
        AND (n.recorded_at, n.id) > (t.recorded_at, t.id)
        AND n.valid_from <= greatest(t.valid_from, $2::timestamptz::date - 2))`,
    't.recorded_at, t.id',
  ),
  checks: listFact(
    object({ id: 't.id', kind: 't.kind', on: date('t.seen_on'), expiresOn: date('t.expires_on') }),
    `${ofMember('member_checks')} AND ${checkStands('t')}`,
    't.seen_on, t.id',
  ),
  teachingHours: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      weekday: 't.weekday',
      on: date('t.on_date'),
      opensMinutes: 't.opens_minutes',
      closesMinutes: 't.closes_minutes',
      from: date('t.valid_from'),
      through: date('t.valid_through'),
    }),
    // What was over the day before yesterday binds no flight to come, in whatever zone.
    `${ofMember('teaching_hours')} AND coalesce(t.on_date, t.valid_through, 'infinity'::date) >= $2::timestamptz::date - 2`,
    't.kind, t.weekday, t.on_date, t.opens_minutes, t.id',
  ),
};

// A commitment is over, or a hold runs out, though nothing is written.
const COMMITMENT_ENDS = `SELECT least(upper(p.during), b.hold_until) AS ends FROM booking_people p
    JOIN bookings b ON b.club_id = p.club_id AND b.id = p.booking_id
   WHERE p.club_id = m.club_id AND p.member_id = m.id AND p.occupies AND upper(p.during) > $2::timestamptz`;

const SQL = `SELECT jsonb_build_object('id', m.id, 'name', m.name, ${Object.entries(SUBJECTS)
  .map(([subject, sql]) => `'${subject}', ${sql.replaceAll('$since$', instant('m.recorded_at'))}`)
  .join(',\n')}) AS facts, ${asOf('$2', COMMITMENT_ENDS)}
FROM members m WHERE m.club_id = bellcrank_club() AND m.id = ANY ($1::uuid[]) ORDER BY m.id`;

/** What the loader must know besides whom. */
export interface PeopleQuestion {
  memberIds: string[];
  knownAt: string;
  /** Log entries that departed before this instant are left out of the sheet; no rule looks back further. */
  logSince: string;
  unverifiedCounts: boolean;
  /** A booking being changed does not stand in its own way. */
  exceptBookingId: string | null;
}

/** A person's facts as of the statement that read them. */
export interface GatheredPerson extends AsOf {
  facts: PersonFacts;
}

/** All facts about some people, in one statement, in order of id. People not found are simply absent. */
export const gatherPersons = (em: EntityManager, of: PeopleQuestion): Promise<GatheredPerson[]> =>
  em.query(SQL, [of.memberIds, of.knownAt, of.unverifiedCounts, of.logSince, of.exceptBookingId]);

/** The same by id. */
export async function gatherPeople(
  em: EntityManager,
  of: PeopleQuestion,
): Promise<Record<string, PersonFacts>> {
  const rows = await gatherPersons(em, of);
  return Object.fromEntries(rows.map(({ facts }) => [facts.id, facts]));
}
