/** A club in which one private pilot may take one trainer, and everything else is to be spoiled by the test. */
import { EQUIPPED } from '../../src/rules/workshop/base-sheet.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { newId } from '../../src/platform/ids.js';
import type { Api } from './api.js';
import type { Session } from './session.js';
import type { ClubSeed, Sql, TestClub } from './test-club.js';

const ITEMS = [
  { kind: 'annual', title: 'Annual inspection', scope: 'all', calendar_months: 12 },
  {
    kind: 'hours-100',
    title: '100-hour inspection',
    scope: 'hire-or-instruction',
    interval_tenths: 1000,
    tolerance_tenths: 100,
  },
  { kind: 'altimeter-static', title: 'Altimeter and static system', scope: 'ifr', calendar_months: 24 },
  { kind: 'transponder', title: 'Transponder', scope: 'transponder-use', calendar_months: 24 },
  { kind: 'elt-inspection', title: 'ELT inspection', scope: 'all', calendar_months: 12 },
  {
    kind: 'elt-battery',
    title: 'ELT battery',
    scope: 'all',
    recurring: false,
    detail: { eltBatteryNewOn: '2025-06-15', eltBatteryUsefulLifeEndsOn: '2031-06-15', eltUseMinutes: 0 },
  },
];

/** What the tests reach for. */
export interface ReadyClub {
  club: TestClub;
  member: Session;
  airfieldId: string;
  modelId: string;
  /** Adds one more trainer in order, as the first one is. */
  addAircraft(registration: string): Promise<string>;
  /** Papers, log and sign-offs that make a person a current private pilot of the model. */
  makePilot(memberId: string): Promise<void>;
  /** The club's sign-offs for the model and a flight of last month in it, without any paper. */
  signOff(memberId: string): Promise<void>;
  aircraftId: string;
}

/** Builds the club; `now` is the API's clock, around which everything is in date. */
export async function readyClub(api: Api, seed: Partial<ClubSeed> = {}): Promise<ReadyClub> {
  const club = await api.createClub(seed);
  const { sql } = api;
  const row = insertInto(sql, club.clubId);
  const signer = await club.createMember('instructor', { name: 'Ingrid Signer' });
  const airfieldId = newId();
  await row('airfields', {
    id: airfieldId,
    code: 'XQHB',
    name: 'Harrow Bench',
    latitude_deg: 40,
    longitude_deg: -95,
    elevation_ft: 1100,
    zone: club.zone,
  });
  await row('runways', {
    id: newId(),
    airfield_id: airfieldId,
    designator: '09',
    true_heading_deg: 92,
    length_ft: 4200,
    surface: 'paved',
    lit: true,
  });
  for (const value of startingPolicy().values) {
    await row('policy_values', {
      id: newId(),
      parameter_id: value.id,
      valid_from: value.from,
      value: JSON.stringify(value.value),
      reference: value.reference,
    });
  }
  const modelId = newId();
  await row('aircraft_models', {
    id: modelId,
    make_model: 'Harrow Lark 160',
    type_designator: 'LARK',
    category: 'airplane',
    class: 'single-engine-land',
    engines: 1,
    power_per_engine_hp: 160,
    retractable_gear: false,
    flaps: true,
    controllable_propeller: false,
    tailwheel: false,
    pressurised: false,
    max_takeoff_lb: 2400,
    usable_fuel_us_gal: 48,
    kinds_of_operation: ['day-vfr', 'night-vfr', 'ifr'],
  });

  const addAircraft = async (registration: string): Promise<string> => {
    const id = newId();
    await row('aircraft', {
      id,
      registration,
      model_id: modelId,
      home_airfield_id: airfieldId,
      seats: 4,
      occupants_certificated: 4,
      empty_weight_lb: 1450,
      certificated_after_1996_03_11: false,
      altitude_engine: false,
      manufactured_on: '1985-06-01',
      engine_driven_electrical: true,
      approved_equipment_list: false,
      instruction_for_hire: true,
      carries_for_hire: false,
      inspection_meter: 'tachometer',
    });
    await row('registrations', { id: newId(), aircraft_id: id, issued_on: '2023-05-10' });
    await row('meter_readings', {
      id: newId(),
      aircraft_id: id,
      kind: 'tachometer',
      shown_tenths: 10_500,
      read_at: '2026-03-09T20:00:00Z',
      source: 'coordinator',
    });
    for (const kind of EQUIPPED)
      await row('equipment', { id: newId(), aircraft_id: id, kind, name: kind, installed_on: '2010-01-01' });
    for (const { detail, ...item } of ITEMS) {
      const itemId = newId();
      await row('airworthiness_items', { id: itemId, aircraft_id: id, ...item });
      await row('compliances', {
        id: newId(),
        item_id: itemId,
        done_on: '2025-11-05',
        done_tenths: 10_200,
        statement: 'Inspected and found airworthy',
        signed_by: 'A mechanic',
        ...(detail ? { detail: JSON.stringify(detail) } : {}),
      });
    }
    return id;
  };

  const makePilot = async (memberId: string): Promise<void> => {
    const paper = { member_id: memberId, verified_by: signer.memberId, verified_at: '2026-01-02T00:00:00Z' };
    const certificateId = newId();
    await row('certificates', { id: certificateId, level: 'private', issued_on: '2018-04-01', ...paper });
    await row('certificate_ratings', {
      id: newId(),
      certificate_id: certificateId,
      kind: 'category-class',
      category: 'airplane',
      class: 'single-engine-land',
    });
    await row('medicals', { id: newId(), class: 3, exam_on: '2025-06-10', ...paper });
    await row('reviews', {
      id: newId(),
      kind: 'flight-review',
      reviewed_on: '2025-09-01',
      ground_tenths: 10,
      flight_tenths: 12,
      ...paper,
    });
    await signOff(memberId);
  };

  const signOff = async (memberId: string): Promise<void> => {
    await row('checkouts', {
      id: newId(),
      member_id: memberId,
      kind: 'model',
      model_id: modelId,
      signed_on: '2025-05-01',
      signed_by: signer.memberId,
    });
    await row('checkouts', {
      id: newId(),
      member_id: memberId,
      kind: 'annual-check',
      signed_on: '2025-10-01',
      signed_by: signer.memberId,
    });
    await row('log_entries', {
      id: newId(),
      member_id: memberId,
      model_id: modelId,
      aircraft_words: 'Harrow Lark 160',
      category: 'airplane',
      class: 'single-engine-land',
      tailwheel: false,
      departed_at: '2026-02-20T18:00:00Z',
      arrived_at: '2026-02-20T19:00:00Z',
      flown_on: '2026-02-20',
      from_airfield: 'XQHB',
      to_airfield: 'XQHB',
      role: 'pilot-in-command',
      sole_manipulator: true,
      takeoffs: 3,
      landings: 3,
      full_stop_landings: 3,
      night_takeoffs: 0,
      night_full_stop_landings: 0,
      total_tenths: 10,
    });
  };

  const member = await club.signInAs('member', { name: 'Robin Member' });
  await makePilot(member.memberId);
  return {
    club,
    member,
    airfieldId,
    modelId,
    addAircraft,
    makePilot,
    signOff,
    aircraftId: await addAircraft('NX101B'),
  };
}

/** Inserts one row of the club by column name, past row-level security. */
export function insertInto(sql: Sql, clubId: string) {
  return async (table: string, values: Record<string, unknown>): Promise<void> => {
    const row = { club_id: clubId, ...values };
    const columns = Object.keys(row);
    await sql(
      `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((_, index) => `$${index + 1}`).join(', ')})`,
      Object.values(row),
    );
  };
}

/** A two-hour flight the day after the API's `now`, by day at the field. */
export const tomorrow = { departs: '2026-03-11T18:00:00Z', arrives: '2026-03-11T20:00:00Z' };
