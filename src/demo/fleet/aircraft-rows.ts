import { throughCalendarMonths, type Instant } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import { HOME } from '../places.js';
import type { AircraftRow, DifferencesRow, RegistrationRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { aircraftBy, CONVERSION, FLEET } from './aircraft.js';
import { MODELS } from './models.js';

/** Aircraft, registrations, and the one change of equipment that needs to be shown. */
export function aircraftRows(
  when: When,
  recordedAt: Instant,
): { aircraft: AircraftRow[]; registrations: RegistrationRow[]; differences: DifferencesRow[] } {
  const issuedOn = (index: number): string => when.inMonth(6 + index * 3, 4 + index);
  return {
    aircraft: FLEET.map((one) => ({
      club_id: DEMO_CLUB_ID,
      id: one.id,
      registration: one.registration,
      model_id: MODELS[one.model].id,
      home_airfield_id: HOME.id,
      seats: MODELS[one.model].seats,
      occupants_certificated: MODELS[one.model].seats,
      empty_weight_lb: one.emptyWeightLb,
      certificated_after_1996_03_11: one.certificatedAfter1996,
      altitude_engine: false,
      manufactured_on: one.manufacturedOn,
      engine_driven_electrical: true,
      approved_equipment_list: false,
      status: 'in-service',
      instruction_for_hire: one.instruction,
      carries_for_hire: false,
      inspection_meter: 'tachometer',
      recorded_at: recordedAt,
    })),
    // Seven years to the end of the month of issue (14 CFR 47.40).
    registrations: FLEET.map((one, index) => ({
      club_id: DEMO_CLUB_ID,
      id: demoId('registration', one.key),
      aircraft_id: one.id,
      issued_on: issuedOn(index),
      printed_expiry_on: throughCalendarMonths(issuedOn(index), 84),
      ended_on: null,
      recorded_at: at(issuedOn(index), clock(12)),
    })),
    differences: [
      {
        club_id: DEMO_CLUB_ID,
        id: demoId('differences', 'almanac'),
        aircraft_id: aircraftBy('almanac').id,
        title: 'Electronic attitude and heading displays with a backup battery; no vacuum system',
        since: when.daysAgo(CONVERSION.finishedDaysAgo),
        equipment_group: 'electronic panel',
        ended_on: null,
        recorded_at: at(when.daysAgo(CONVERSION.finishedDaysAgo), clock(17)),
      },
    ],
  };
}
