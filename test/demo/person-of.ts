import type { DemoClub } from '../../src/demo/generate.js';
import {
  known,
  type CertificateFact,
  type EndorsementFact,
  type InstructorFact,
  type PersonFacts,
  type ReviewFact,
} from '../../src/rules/index.js';

/** A member's facts from the demo's rows. */
export function personOf(club: DemoClub, id: string): PersonFacts {
  const { rows, asOf } = club;
  const member = rows.members.find((one) => one.id === id)!;
  const own = <R extends { member_id: string }>(table: R[]): R[] =>
    table.filter((one) => one.member_id === id);
  // Unverified papers do not count, as the starting policy says (club.papers.unverified-count).
  const verified = <R extends { member_id: string; verified_at: string | null }>(table: R[]): R[] =>
    own(table).filter((one) => one.verified_at !== null);
  return {
    id,
    name: member.name,
    birthDate: known(member.birth_date, asOf),
    certificates: known(
      verified(rows.certificates).map((row): CertificateFact => {
        const ratings = rows.certificate_ratings.filter((one) => one.certificate_id === row.id);
        return {
          id: row.id,
          level: row.level,
          issuedOn: row.issued_on,
          ratings: ratings
            .filter((one) => one.kind === 'category-class')
            .map((one) => ({
              category: 'airplane',
              class: one.class as 'single-engine-land' | 'multi-engine-land',
            })),
          instrument: ratings.some((one) => one.kind === 'instrument') ? ['airplane'] : [],
          typeRatings: [],
          limitations: row.limitations,
          validThrough: row.valid_through,
          suspensions: [],
        };
      }),
      asOf,
    ),
    instructor: known(
      verified(rows.instructor_certificates).map((row) => ({
        id: row.id,
        issuedOn: row.issued_on,
        ratings: row.ratings as InstructorFact['ratings'],
        recentExperienceOn: row.recent_experience_on,
        printedEndOn: row.printed_end_on,
        suspensions: [],
      })),
      asOf,
    ),
    medicals: known(
      verified(rows.medicals).map((row) => ({
        id: row.id,
        class: row.class,
        examOn: row.exam_on,
        limitations: row.limitations,
        withdrawnOn: row.withdrawn_on,
      })),
      asOf,
    ),
    basicMed: known(
      verified(rows.basic_med).map((row) => ({
        id: row.id,
        examOn: row.exam_on,
        courseOn: row.course_on,
        licenceValidThrough: row.licence_valid_through,
        heldMedicalAfter20060714: row.held_medical_after_2006_07_14,
        lastApplicationDenied: row.last_application_denied,
        lastCertificateRevokedOrSuspended: row.last_certificate_revoked_or_suspended,
      })),
      asOf,
    ),
    reviews: known(
      verified(rows.reviews).map((row) => ({
        id: row.id,
        kind: row.kind as ReviewFact['kind'],
        on: row.reviewed_on,
        groundTenths: row.ground_tenths,
        flightTenths: row.flight_tenths,
        category: row.category as 'airplane',
        endorsedAsReview: row.endorsed_as_review,
      })),
      asOf,
    ),
    endorsements: known(
      verified(rows.endorsements).map((row) => ({
        id: row.id,
        kind: row.kind as EndorsementFact['kind'],
        on: row.endorsed_on,
        makeModel: row.make_model,
        airfields: row.airfields,
        expiresOn: row.expires_on,
      })),
      asOf,
    ),
    log: known(
      own(rows.log_entries).map((row) => ({
        id: row.id,
        departedAt: row.departed_at,
        on: row.flown_on,
        category: row.category,
        class: row.class as 'single-engine-land' | 'multi-engine-land',
        typeRating: row.type_rating,
        tailwheel: row.tailwheel,
        modelId: row.model_id,
        aircraftId: row.aircraft_id,
        role: row.role,
        soleManipulator: row.sole_manipulator,
        takeoffs: row.takeoffs,
        landings: row.landings,
        fullStopLandings: row.full_stop_landings,
        nightTakeoffs: row.night_takeoffs,
        nightFullStopLandings: row.night_full_stop_landings,
        approaches: row.approaches,
        holding: row.holding,
        interceptTrack: row.intercept_track,
        device: row.device,
        totalTenths: row.total_tenths,
        nightTenths: row.night_tenths,
        dualGivenTenths: row.dual_given_tenths,
      })),
      asOf,
    ),
    checkouts: known(
      own(rows.checkouts).map((row) => ({
        id: row.id,
        kind: row.kind,
        modelId: row.model_id,
        aircraftId: row.aircraft_id,
        on: row.signed_on,
        expiresOn: row.expires_on,
        signedById: row.signed_by,
      })),
      asOf,
    ),
    standing: known(
      {
        id,
        state: member.standing,
        since: member.standing_since,
        membershipFrom: member.membership_from,
        membershipThrough: member.membership_through,
      },
      asOf,
    ),
    commitments: known([], asOf),
    checks: known(
      own(rows.member_checks).map((row) => ({
        id: row.id,
        kind: row.kind,
        on: row.seen_on,
        expiresOn: row.expires_on,
      })),
      asOf,
    ),
    unpaid: known([], asOf),
    unverified: known(
      own(rows.medicals)
        .filter((row) => row.verified_at === null)
        .map((row) => ({ id: row.id, what: `medical certificate of class ${row.class}`, on: row.exam_on })),
      asOf,
    ),
    limits: known(
      own(rows.personal_limits).map((row) => ({
        id: row.id,
        setBy: row.set_by === id ? ('member' as const) : ('instructor' as const),
        recordedAt: row.recorded_at,
        from: row.valid_from,
        through: row.binds_through,
        windKt: row.wind_kt,
        crosswindKt: row.crosswind_kt,
        gustSpreadKt: row.gust_spread_kt,
        ceilingDayFtAgl: row.ceiling_day_ft_agl,
        ceilingNightFtAgl: row.ceiling_night_ft_agl,
        visibilityDaySm: row.visibility_day_sm,
        visibilityNightSm: row.visibility_night_sm,
        runwayFt: row.runway_ft,
        night: row.night,
      })),
      asOf,
    ),
  };
}
