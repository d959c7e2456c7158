/** A club made for the contention rows: four trainers in order and as many current private pilots as there are clients. */
import pg from 'pg';
import { Clock } from '../../../dist/src/platform/clock.js';
import { newId } from '../../../dist/src/platform/ids.js';
import { addDays, localDateOf, startingPolicy, toSeconds } from '../../../dist/src/rules/index.js';
import { baseSheet } from '../../../dist/src/rules/workshop/base-sheet.js';

const ZONE = 'America/Chicago';
const AIRCRAFT = 4;
const LOG_ENTRIES = 60;
/** Accounts need a hash; nobody signs in with it. */
const NO_PASSWORD =
  '$argon2id$v=19$m=19456,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4';

/** Makes the club as the owner of the tables. Gives its ids, its pilots as the tokens name them, and today there. */
export async function benchClub(ownerUrl, pilots, { slug = 'bench-club', aircraft: count = AIRCRAFT } = {}) {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    const clubId = newId();
    const today = localDateOf(toSeconds(new Clock().now()), ZONE);
    await client.query("SELECT set_config('bellcrank.club_id', $1, false)", [clubId]);
    const row = (table, values) => insert(client, table, { club_id: clubId, ...values });
    await client.query('BEGIN');
    await row('clubs', { slug, name: 'Bench Club', zone: ZONE, jurisdiction: 'US' });
    await policy(row);
    const modelId = newId();
    await model(row, modelId);
    const airfieldId = newId();
    await row('airfields', {
      ...{ id: airfieldId, code: 'XQHB', name: 'Harrow Bench', zone: ZONE },
      ...{ latitude_deg: 40, longitude_deg: -95, elevation_ft: 1100 },
    });
    const aircraftIds = [];
    for (let index = 0; index < count; index += 1)
      aircraftIds.push(
        await aircraft(row, { modelId, airfieldId, today, registration: `NX${200 + index}B` }),
      );
    const signer = await person(row, 'signer');
    const people = [];
    for (let index = 0; index < pilots; index += 1)
      people.push({ clubId, ...(await pilot(row, { modelId, today, index, signedBy: signer.memberId })) });
    await client.query('COMMIT');
    return { clubId, aircraftIds, people, today };
  } finally {
    await client.end();
  }
}

async function insert(client, table, values) {
  const columns = Object.keys(values);
  await client.query(
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((_, index) => `$${index + 1}`).join(', ')})`,
    Object.values(values),
  );
}

async function policy(row) {
  for (const { id, from, value, reference } of startingPolicy().values)
    await row('policy_values', {
      ...{ id: newId(), parameter_id: id, valid_from: from, value: JSON.stringify(value), reference },
    });
}

const model = (row, id) =>
  row('aircraft_models', {
    ...{ id, make_model: 'Harrow Lark 160', type_designator: 'LARK' },
    ...{ category: 'airplane', class: 'single-engine-land', engines: 1, power_per_engine_hp: 160 },
    ...{ retractable_gear: false, flaps: true, controllable_propeller: false, tailwheel: false },
    ...{ pressurised: false, max_takeoff_lb: 2400, usable_fuel_us_gal: 48 },
    kinds_of_operation: ['day-vfr', 'night-vfr', 'ifr'],
  });

const months = (calendarMonths) => ({ calendar_months: calendarMonths });
const ITEMS = [
  { kind: 'annual', title: 'Annual inspection', scope: 'all', ...months(12) },
  {
    ...{ kind: 'hours-100', title: '100-hour inspection', scope: 'hire-or-instruction' },
    ...{ interval_tenths: 1000, tolerance_tenths: 100 },
  },
  { kind: 'altimeter-static', title: 'Altimeter and static system', scope: 'ifr', ...months(24) },
  { kind: 'transponder', title: 'Transponder', scope: 'transponder-use', ...months(24) },
  { kind: 'elt-inspection', title: 'ELT inspection', scope: 'all', ...months(12) },
  { kind: 'elt-battery', title: 'ELT battery', scope: 'all', recurring: false },
];

async function aircraft(row, { modelId, airfieldId, today, registration }) {
  const id = newId();
  await row('aircraft', {
    ...{ id, registration, model_id: modelId, home_airfield_id: airfieldId },
    ...{ seats: 4, occupants_certificated: 4, empty_weight_lb: 1450, certificated_after_1996_03_11: false },
    ...{ instruction_for_hire: true, carries_for_hire: false, inspection_meter: 'tachometer' },
    ...{
      altitude_engine: false,
      manufactured_on: '2005-04-01',
      engine_driven_electrical: true,
      approved_equipment_list: false,
    },
  });
  await row('registrations', { id: newId(), aircraft_id: id, issued_on: addDays(today, -700) });
  await row('meter_readings', {
    ...{ id: newId(), aircraft_id: id, kind: 'tachometer', shown_tenths: 10_500 },
    ...{ read_at: `${addDays(today, -1)}T20:00:00Z`, source: 'coordinator' },
  });
  for (const { kind } of baseSheet().aircraft.equipment.value)
    await row('equipment', { id: newId(), aircraft_id: id, kind, name: kind, installed_on: '2010-01-01' });
  for (const item of ITEMS) {
    const itemId = newId();
    await row('airworthiness_items', { id: itemId, aircraft_id: id, ...item });
    const battery = {
      eltBatteryNewOn: addDays(today, -100),
      eltBatteryUsefulLifeEndsOn: addDays(today, 2000),
      eltUseMinutes: 0,
    };
    await row('compliances', {
      ...{ id: newId(), item_id: itemId, done_on: addDays(today, -40), done_tenths: 10_200 },
      ...{ statement: 'Inspected and found airworthy', signed_by: 'A mechanic' },
      ...(item.kind === 'elt-battery' ? { detail: JSON.stringify(battery) } : {}),
    });
  }
  return id;
}

async function person(row, name) {
  const memberId = newId();
  const accountId = newId();
  const email = `${name}@bench.example`;
  await row('members', {
    ...{ id: memberId, name, email, birth_date: '1990-05-17' },
    ...{ standing_since: '2020-01-01', membership_from: '2020-01-01' },
  });
  await row('member_roles', { member_id: memberId, role: 'member' });
  await row('accounts', { id: accountId, member_id: memberId, email, password_hash: NO_PASSWORD });
  return { memberId, accountId, roles: ['member'] };
}

async function pilot(row, { modelId, today, index, signedBy }) {
  const self = await person(row, `pilot-${index}`);
  const { memberId } = self;
  const paper = {
    member_id: memberId,
    verified_by: signedBy,
    verified_at: `${addDays(today, -30)}T00:00:00Z`,
  };
  const certificateId = newId();
  await row('certificates', { id: certificateId, level: 'private', issued_on: '2018-04-01', ...paper });
  await row('certificate_ratings', {
    ...{ id: newId(), certificate_id: certificateId, kind: 'category-class' },
    ...{ category: 'airplane', class: 'single-engine-land' },
  });
  await row('medicals', { id: newId(), class: 3, exam_on: addDays(today, -200), ...paper });
  await row('reviews', {
    ...{ id: newId(), kind: 'flight-review', reviewed_on: addDays(today, -150) },
    ...{ ground_tenths: 10, flight_tenths: 12, ...paper },
  });
  const signed = { member_id: memberId, signed_by: signedBy, signed_on: addDays(today, -60) };
  await row('checkouts', { id: newId(), kind: 'model', model_id: modelId, ...signed });
  await row('checkouts', { id: newId(), kind: 'annual-check', ...signed });
  for (let flight = 0; flight < LOG_ENTRIES; flight += 1) {
    const on = addDays(today, -(2 + flight * 5));
    await row('log_entries', {
      ...{ id: newId(), member_id: memberId, model_id: modelId, aircraft_words: 'Harrow Lark 160' },
      ...{ category: 'airplane', class: 'single-engine-land', tailwheel: false, flown_on: on },
      ...{ departed_at: `${on}T18:00:00Z`, arrived_at: `${on}T19:00:00Z` },
      ...{ from_airfield: 'XQHB', to_airfield: 'XQHB', role: 'pilot-in-command', sole_manipulator: true },
      ...{ takeoffs: 2, landings: 2, full_stop_landings: 2, night_takeoffs: 0 },
      ...{ night_full_stop_landings: 0, total_tenths: 10 },
    });
  }
  return self;
}
