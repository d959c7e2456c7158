import { spanOf } from '../../src/demo/blocks.js';
import type { DemoClub } from '../../src/demo/generate.js';
import { known, type AircraftFacts, type EquipmentFact, type ItemFact } from '../../src/rules/index.js';

/** An aircraft's facts from the demo's rows. */
export function aircraftOf(club: DemoClub, id: string): AircraftFacts {
  const { rows, asOf } = club;
  const row = rows.aircraft.find((one) => one.id === id)!;
  const model = rows.aircraft_models.find((one) => one.id === row.model_id)!;
  const own = <R extends { aircraft_id: string }>(table: R[]): R[] =>
    table.filter((one) => one.aircraft_id === id);
  const [weighed] = own(rows.weighings);
  const weighing = {
    ...{ id: weighed!.id, on: weighed!.effective_on, source: 'weighing' as const },
    ...{ emptyWeightLb: weighed!.empty_weight_lb, emptyArmIn: weighed!.empty_arm_in },
  };
  const loads = rows.loading_sheets.find((one) => one.model_id === model.id)!;
  const loading = {
    ...{ id: loads.id, source: loads.source, fuelKind: 'avgas' as const },
    ...{ maxLandingLb: null, maxZeroFuelLb: null, stations: loads.stations, envelopes: loads.envelopes },
  };
  const performs = rows.performance_sheets.find((one) => one.model_id === model.id)!;
  const performance = {
    ...{ id: performs.id, source: performs.source, liftOffKias: performs.lift_off_kias },
    ...{ takeoff: performs.takeoff, landing: performs.landing },
  };
  return {
    id,
    type: known(
      {
        registration: row.registration,
        modelId: model.id,
        makeModel: model.make_model,
        typeDesignator: model.type_designator,
        category: model.category,
        class: model.class,
        typeRating: model.type_rating,
        seats: row.seats,
        occupantsCertificated: row.occupants_certificated,
        engines: model.engines,
        powerPerEngineHp: model.power_per_engine_hp,
        retractableGear: model.retractable_gear,
        flaps: model.flaps,
        controllablePropeller: model.controllable_propeller,
        tailwheel: model.tailwheel,
        pressurised: model.pressurised,
        serviceCeilingFt: model.service_ceiling_ft,
        maxOperatingAltitudeFt: model.max_operating_altitude_ft,
        maxTakeoffLb: model.max_takeoff_lb,
        emptyWeightLb: row.empty_weight_lb,
        usableFuelUsGal: model.usable_fuel_us_gal,
        vs1Kcas: model.vs1_kcas,
        fuelBurnUsGalPerHour: model.fuel_burn_us_gal_per_hour,
        demonstratedCrosswindKt: model.demonstrated_crosswind_kt,
        kindsOfOperation: model.kinds_of_operation,
        certificatedAfter19960311: row.certificated_after_1996_03_11,
        turbine: model.turbine,
        transportCategory: model.transport_category,
        altitudeEngine: row.altitude_engine,
        manufacturedOn: row.manufactured_on,
        engineDrivenElectrical: row.engine_driven_electrical,
        approvedEquipmentList: row.approved_equipment_list,
      },
      asOf,
    ),
    use: known(
      {
        status: row.status,
        instructionForHire: row.instruction_for_hire,
        carriesForHire: row.carries_for_hire,
      },
      asOf,
    ),
    meters: known(
      (['hobbs', 'tachometer'] as const).map((kind) => {
        const last = own(rows.meter_readings)
          .filter((one) => one.kind === kind)
          .sort((a, b) => (a.read_at < b.read_at ? -1 : 1))
          .at(-1)!;
        return {
          id: last.id,
          kind,
          tenths: last.shown_tenths,
          readAt: last.read_at,
          countsForInspections: kind === row.inspection_meter,
        };
      }),
      asOf,
    ),
    items: known(
      own(rows.airworthiness_items)
        .filter((one) => one.retired_on === null)
        .map((one): ItemFact => {
          const done = rows.compliances
            .filter((compliance) => compliance.item_id === one.id)
            .sort((a, b) => (a.done_on < b.done_on ? -1 : 1))
            .at(-1);
          return {
            id: one.id,
            kind: one.kind as ItemFact['kind'],
            title: one.title,
            reference: one.reference,
            scope: one.scope,
            calendarMonths: one.calendar_months,
            plainMonths: one.plain_months,
            days: one.days,
            intervalTenths: one.interval_tenths,
            fixedDueOn: one.fixed_due_on,
            fixedDueTenths: one.fixed_due_tenths,
            toleranceTenths: one.tolerance_tenths,
            recurring: one.recurring,
            ferryProhibited: one.ferry_prohibited,
            lastDoneOn: done?.done_on ?? null,
            lastDoneTenths: done?.done_tenths ?? null,
            lastDueTenths: done?.due_tenths ?? null,
            complianceId: done?.id ?? null,
            detail: done?.detail ?? null,
          };
        }),
      asOf,
    ),
    registration: known(
      own(rows.registrations).map((one) => ({
        id: one.id,
        issuedOn: one.issued_on,
        printedExpiryOn: one.printed_expiry_on,
        endedOn: one.ended_on,
      })),
      asOf,
    ),
    equipment: known(
      own(rows.equipment).map((one) => ({
        id: one.id,
        kind: one.kind as EquipmentFact['kind'],
        name: one.name,
        installedOn: one.installed_on,
        removedOn: one.removed_on,
        portable: one.portable,
        requiredByTypeDesign: one.required_by_type_design,
        satisfies: one.satisfies as EquipmentFact['satisfies'],
      })),
      asOf,
    ),
    squawks: known(
      own(rows.squawks)
        .filter((one) => one.closed_at === null)
        .map((one) => {
          const deferral = rows.deferrals.find((each) => each.squawk_id === one.id);
          return {
            id: one.id,
            reportedAt: one.reported_at,
            title: one.title,
            state: one.state,
            closedAt: one.closed_at,
            equipmentId: one.equipment_id,
            deferral: deferral
              ? {
                  id: deferral.id,
                  on: deferral.deferred_on,
                  deadlineOn: deferral.deadline_on,
                  requiredByTypeDesign: deferral.required_by_type_design,
                  requiredByEquipmentList: deferral.required_by_equipment_list,
                  requiredByDirective: deferral.required_by_directive,
                  removedOrDeactivated: deferral.removed_or_deactivated,
                  placarded: deferral.placarded,
                  recorded: deferral.recorded,
                  equipmentListItem: deferral.equipment_list_item,
                  noHazardDeterminedBy: deferral.no_hazard_determined_by,
                }
              : null,
          };
        }),
      asOf,
    ),
    permits: known([], asOf),
    reservations: known(
      own(rows.bookings).map((one) => ({
        id: one.id,
        kind: one.kind,
        ...spanOf(one),
        holder: 'the club',
        expectedTenths: one.expected_tenths,
        purpose: null,
        forHire: false,
      })),
      asOf,
    ),
    work: known([], asOf),
    weighing: known(weighing, asOf),
    loading: known(loading, asOf),
    performance: known(performance, asOf),
    insurance: known(
      own(rows.insurance_terms).map((one) => ({
        id: one.id,
        from: one.valid_from,
        through: one.valid_through,
        source: one.source,
        namedPilotIds: rows.insurance_named_pilots
          .filter(({ terms_id }) => terms_id === one.id)
          .map(({ member_id }) => member_id)
          .sort(),
        minimums: one.minimums,
        retractableModelIds: [],
      })),
      asOf,
    ),
    differences: known(
      own(rows.differences).map((one) => ({
        id: one.id,
        title: one.title,
        aircraftId: one.aircraft_id,
        since: one.since,
        equipmentGroup: one.equipment_group,
      })),
      asOf,
    ),
  };
}
