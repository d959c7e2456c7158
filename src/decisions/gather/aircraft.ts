import type { EntityManager } from 'typeorm';
import { readingStands } from '../../fleet/meters/standing-readings.js';
import { METER_KINDS } from '../../fleet/vocabulary.js';
import type { AircraftFacts } from '../../rules/index.js';
import { INSURANCE } from './insurance.js';
import { LOADING_SUBJECTS, MAX_TAKEOFF_LB } from './loading.js';
import { asOf, type AsOf } from './as-of.js';
import { date, instant, listFact, object, recordFact } from './sql.js';

const ofAircraft = (table: string): string =>
  `${table} t WHERE t.club_id = a.club_id AND t.aircraft_id = a.id`;

/** One SQL expression per subject of AircraftFacts, over `aircraft a` and its `aircraft_models k`. */
const SUBJECTS: Record<Exclude<keyof Required<AircraftFacts>, 'id'>, string> = {
  type: recordFact(
    object({
      registration: 'a.registration',
      modelId: 'a.model_id',
      makeModel: 'k.make_model',
      typeDesignator: 'k.type_designator',
      category: 'k.category',
      class: 'k.class',
      typeRating: 'k.type_rating',
      seats: 'a.seats',
      occupantsCertificated: 'a.occupants_certificated',
      engines: 'k.engines',
      powerPerEngineHp: 'k.power_per_engine_hp',
      retractableGear: 'k.retractable_gear',
      flaps: 'k.flaps',
      controllablePropeller: 'k.controllable_propeller',
      tailwheel: 'k.tailwheel',
      pressurised: 'k.pressurised',
      serviceCeilingFt: 'k.service_ceiling_ft',
      maxOperatingAltitudeFt: 'k.max_operating_altitude_ft',
      maxTakeoffLb: MAX_TAKEOFF_LB,
      emptyWeightLb: 'a.empty_weight_lb',
      usableFuelUsGal: 'k.usable_fuel_us_gal',
      vs1Kcas: 'k.vs1_kcas',
      kindsOfOperation: 'to_jsonb(k.kinds_of_operation)',
      certificatedAfter19960311: 'a.certificated_after_1996_03_11',
      turbine: 'k.turbine',
      transportCategory: 'k.transport_category',
      fuelBurnUsGalPerHour: 'k.fuel_burn_us_gal_per_hour',
      demonstratedCrosswindKt: 'k.demonstrated_crosswind_kt',
      altitudeEngine: 'a.altitude_engine',
      manufacturedOn: date('a.manufactured_on'),
      engineDrivenElectrical: 'a.engine_driven_electrical',
      approvedEquipmentList: 'a.approved_equipment_list',
    }),
    'a.recorded_at',
  ),
  use: recordFact(
    object({
      status: 'a.status',
      instructionForHire: 'a.instruction_for_hire',
      carriesForHire: 'a.carries_for_hire',
    }),
    'a.recorded_at',
  ),
  meters: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      tenths: 't.total_tenths',
      readAt: instant('t.read_at'),
      countsForInspections: 't.kind = a.inspection_meter',
    }),
    // Kind by kind: an aircraft has three meters and thousands of readings.
    `unnest($4::text[]) m (kind) CROSS JOIN LATERAL (SELECT r.* FROM meter_readings r WHERE r.club_id = a.club_id
         AND r.aircraft_id = a.id AND r.kind = m.kind AND ${readingStands('r')}
       ORDER BY r.read_at DESC LIMIT 1) t`,
    't.kind',
  ),
  items: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      title: 't.title',
      reference: 't.reference',
      scope: 't.scope',
      calendarMonths: 't.calendar_months',
      plainMonths: 't.plain_months',
      days: 't.days',
      intervalTenths: 't.interval_tenths',
      fixedDueOn: date('t.fixed_due_on'),
      fixedDueTenths: 't.fixed_due_tenths',
      toleranceTenths: 't.tolerance_tenths',
      recurring: 't.recurring',
      since: date('t.since'),
      retiredOn: date('t.retired_on'),
      ferryProhibited: 't.ferry_prohibited',
      lastDoneOn: date('c.done_on'),
      lastDoneTenths: 'c.done_tenths',
      lastDueTenths: 'c.due_tenths',
      complianceId: 'c.id',
      detail: 'c.detail',
    }),
    `airworthiness_items t LEFT JOIN LATERAL (SELECT x.* FROM compliances x
        WHERE x.club_id = t.club_id AND x.item_id = t.id AND x.voided_at IS NULL
        ORDER BY x.done_on DESC, x.done_tenths DESC NULLS LAST, x.id DESC LIMIT 1) c ON true
      WHERE t.club_id = a.club_id AND t.aircraft_id = a.id`,
    't.kind, t.title, t.id',
  ),
  registration: listFact(
    object({
      id: 't.id',
      issuedOn: date('t.issued_on'),
      printedExpiryOn: date('t.printed_expiry_on'),
      endedOn: date('t.ended_on'),
    }),
    ofAircraft('registrations'),
    't.issued_on, t.id',
  ),
  equipment: listFact(
    object({
      id: 't.id',
      kind: 't.kind',
      name: 't.name',
      installedOn: date('t.installed_on'),
      removedOn: date('t.removed_on'),
      portable: 't.portable',
      requiredByTypeDesign: 't.required_by_type_design',
      satisfies: 'to_jsonb(t.satisfies)',
    }),
    ofAircraft('equipment'),
    't.kind, t.installed_on, t.id',
  ),
  squawks: listFact(
    object({
      id: 't.id',
      reportedAt: instant('t.reported_at'),
      title: 't.title',
      state: 't.state',
      closedAt: instant('t.closed_at'),
      equipmentId: 't.equipment_id',
      deferral: `CASE WHEN d.id IS NULL THEN NULL ELSE ${object({
        id: 'd.id',
        on: date('d.deferred_on'),
        deadlineOn: date('d.deadline_on'),
        requiredByTypeDesign: 'd.required_by_type_design',
        requiredByEquipmentList: 'd.required_by_equipment_list',
        requiredByDirective: 'd.required_by_directive',
        removedOrDeactivated: 'd.removed_or_deactivated',
        placarded: 'd.placarded',
        recorded: 'd.recorded',
        noHazardDeterminedBy: 'd.no_hazard_determined_by',
        equipmentListItem: 'd.equipment_list_item',
      })} END`,
    }),
    `squawks t LEFT JOIN deferrals d ON d.club_id = t.club_id AND d.squawk_id = t.id
      WHERE t.club_id = a.club_id AND t.aircraft_id = a.id AND t.closed_at IS NULL`,
    't.reported_at, t.id',
  ),
  permits: listFact(
    object({
      id: 't.id',
      from: date('t.valid_from'),
      through: date('t.valid_through'),
      purpose: 't.purpose',
    }),
    ofAircraft('permits'),
    't.valid_from, t.id',
  ),
  reservations: listFact(
    object({
      id: 't.id',
      // A hold keeps the aircraft for a flight, as a flight does.
      kind: "CASE t.kind WHEN 'hold' THEN 'flight' ELSE t.kind END",
      from: instant('lower(t.during)'),
      to: instant('upper(t.during)'),
      holder: 'h.name',
      expectedTenths: 't.expected_tenths',
      purpose: "t.request ->> 'purpose'",
      forHire: "coalesce((t.request ->> 'forHire')::boolean, false)",
    }),
    `bookings t JOIN members h ON h.club_id = t.club_id AND h.id = t.member_id
      WHERE t.club_id = a.club_id AND t.aircraft_id = a.id AND t.occupies AND upper(t.during) > $2::timestamptz
        AND (t.hold_until IS NULL OR t.hold_until > $2::timestamptz) AND t.id IS DISTINCT FROM $3::uuid`,
    'lower(t.during), t.id',
  ),
  differences: listFact(
    object({
      id: 't.id',
      title: 't.title',
      aircraftId: 't.aircraft_id',
      since: date('t.since'),
      equipmentGroup: 't.equipment_group',
      endedOn: date('t.ended_on'),
    }),
    ofAircraft('differences'),
    't.since, t.id',
  ),
  work: listFact(
    object({
      id: 't.id',
      title: 't.title',
      state: 't.state',
      begunAt: instant('t.begun_at'),
      backAt: instant('upper(b.during)'),
      signedAt: instant('t.signed_at'),
      checkFlightBecause: 't.check_flight_because',
      checkFlownAt: instant('t.check_flown_at'),
    }),
    `work_orders t LEFT JOIN bookings b ON b.club_id = t.club_id AND b.id = t.booking_id AND b.occupies
      WHERE t.club_id = a.club_id AND t.aircraft_id = a.id
        AND (t.state = 'in-work' OR t.state = 'signed' AND t.check_flight_because IS NOT NULL AND t.check_flown_at IS NULL)`,
    't.begun_at, t.id',
  ),
  ...LOADING_SUBJECTS,
  insurance: INSURANCE,
};

// A booking is over, or a hold runs out, though nothing is written.
const RESERVATION_ENDS = `SELECT least(upper(t.during), t.hold_until) AS ends FROM bookings t
   WHERE t.club_id = a.club_id AND t.aircraft_id = a.id AND t.occupies AND upper(t.during) > $2::timestamptz`;

const SQL = `SELECT a.home_airfield_id AS "homeAirfieldId", jsonb_build_object('id', a.id, ${Object.entries(
  SUBJECTS,
)
  .map(([subject, sql]) => `'${subject}', ${sql.replaceAll('$since$', instant('a.recorded_at'))}`)
  .join(',\n')}) AS facts, ${asOf('$2', RESERVATION_ENDS)}
FROM aircraft a JOIN aircraft_models k ON k.club_id = a.club_id AND k.id = a.model_id
WHERE a.club_id = bellcrank_club() AND ($1::uuid[] IS NULL OR a.id = ANY ($1::uuid[]))
ORDER BY a.registration`;

/** An aircraft's facts as of the statement that read them, and where it lives. */
export interface GatheredAircraft extends AsOf {
  homeAirfieldId: string;
  facts: AircraftFacts;
}

/** All facts about some aircraft (null: the whole fleet) in one statement. Ids not found are absent. */
export async function gatherAircraft(
  em: EntityManager,
  aircraftIds: string[] | null,
  knownAt: string,
  exceptBookingId: string | null,
): Promise<GatheredAircraft[]> {
  return em.query(SQL, [aircraftIds, knownAt, exceptBookingId, METER_KINDS]);
}
