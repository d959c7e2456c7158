/**
 * Fact sheets straight from the demo's rows, without a database: the demo's promises are tested against the engine alone.
 * A second reading of the same rows as src/decisions/gather, kept apart on purpose.
 */
import type { DemoClub } from '../../src/demo/generate.js';
import type { FlightAsk } from '../../src/demo/flight-ask.js';
import type { AirfieldFact, FactSheet, Policy } from '../../src/rules/index.js';
import { aircraftOf } from './aircraft-of.js';
import { personOf } from './person-of.js';

export function policyOf(club: DemoClub): Policy {
  return {
    values: club.rows.policy_values.map((row) => ({
      id: row.parameter_id,
      from: row.valid_from,
      value: row.value,
      reference: row.reference,
    })),
  };
}

/** The sheet of a question about one aircraft. */
export function sheetOf(club: DemoClub, ask: FlightAsk, aircraftId: string): FactSheet {
  const codes = ask.route ?? ['XQQM', 'XQQM'];
  return {
    schema: 'bellcrank.facts/1',
    knownAt: club.asOf,
    jurisdiction: 'US',
    zone: club.rows.clubs[0]!.zone,
    flight: {
      departs: ask.departs,
      arrives: ask.arrives,
      purpose: ask.purpose,
      flightRules: ask.flightRules ?? 'VFR',
      personsOnBoard: ask.personsOnBoard,
      memberId: ask.memberId,
      instructorId: ask.instructorId ?? null,
      secondPilotId: null,
      actingPilotId: null,
      secondPilotRequired: false,
      forHire: false,
      route: codes.map((code) => airfield(club, code)),
      plannedTenths: Math.round((ask.plannedHours ?? 0) * 10),
      airspace: ask.airspace ?? null,
      maxAltitudeFtMsl: ask.maxAltitudeFtMsl ?? null,
      maxSpeedKias: ask.maxSpeedKias ?? null,
      usesVor: ask.usesVor ?? null,
      usesTransponder: ask.usesTransponder ?? null,
      overWaterBeyondGlide: ask.overWaterBeyondGlide ?? null,
      weather: ask.weather
        ? {
            observedAt: ask.weather.observedAt ?? null,
            windFromDeg: ask.weather.windFromDeg ?? null,
            windKt: ask.weather.windKt ?? null,
            gustKt: null,
            visibilitySm: ask.weather.visibilitySm ?? null,
            ceilingFtAgl: ask.weather.ceilingFtAgl ?? null,
            temperatureC: ask.weather.temperatureC ?? null,
            altimeterInHg: ask.weather.altimeterInHg ?? null,
            wet: ask.weather.wet ?? null,
          }
        : null,
      loading: ask.loading
        ? {
            occupantsLb:
              ask.loading.occupantsLb ?? ask.loading.rowsLb?.reduce((sum, lb) => sum + lb, 0) ?? null,
            rowsLb: ask.loading.rowsLb ?? null,
            compartmentsLb: null,
            baggageLb: ask.loading.baggageLb ?? null,
            fuelUsGal: ask.loading.fuelUsGal ?? null,
          }
        : null,
    },
    people: Object.fromEntries(
      [ask.memberId, ask.instructorId].flatMap((id) => (id ? [[id, personOf(club, id)]] : [])),
    ),
    aircraft: aircraftOf(club, aircraftId),
  };
}

function airfield(club: DemoClub, code: string): AirfieldFact {
  const row = club.rows.airfields.find((one) => one.code === code)!;
  return {
    id: row.id,
    code,
    name: row.name,
    latitudeDeg: row.latitude_deg,
    longitudeDeg: row.longitude_deg,
    elevationFt: row.elevation_ft,
    zone: row.zone,
    runways: club.rows.runways
      .filter((one) => one.airfield_id === row.id)
      .map((one) => ({
        designator: one.designator,
        trueHeadingDeg: one.true_heading_deg,
        lengthFt: one.length_ft,
        surface: one.surface,
        lit: one.lit,
        slopePercent: one.slope_percent,
      })),
  };
}
