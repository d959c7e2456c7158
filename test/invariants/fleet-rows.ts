/** Sound rows of the fleet's tables, and one unsound change for each constraint. */
import { createHash } from 'node:crypto';
import { newId } from '../../src/platform/ids.js';
import type { Row } from '../support/refusals.js';

const NOBODY = '01900000-0000-7000-8000-000000000000';

export const FLEET_TABLES = [
  ...['aircraft_models', 'aircraft', 'registrations', 'permits', 'equipment', 'meter_readings'],
  ...['airworthiness_items', 'compliances', 'squawks', 'deferrals', 'differences'],
  ...['equipment_changes', 'weighings', 'upgrade_wishes', 'squawk_parts', 'attachments'],
  ...['loading_sheets', 'performance_sheets'],
];

/** Ids of one club's rows. */
export interface FleetIds {
  clubId: string;
  memberId: string;
  airfieldId: string;
  modelId: string;
  aircraftId: string;
  secondAircraftId: string;
  equipmentId: string;
  secondEquipmentId: string;
  itemId: string;
  squawkId: string;
  changeId: string;
}

/** Content, and what the table says of it. */
export function photoOf(text: string): Row {
  const content = Buffer.from(text);
  return {
    ...{ content, size_bytes: content.length },
    sha256: createHash('sha256').update(content).digest('hex'),
  };
}

const envelope = (category: string, corners = 3): Row => ({
  category,
  points: Array.from({ length: corners }, (_, at) => ({ armIn: 80 + at, weightLb: 1400 + at * at })),
});
const distances = (table: Row = {}): Row => ({
  tables: [{ weightLb: 2400, groundRollFt: [[600]], over50Ft: [[1100]], ...table }],
  factors: {},
});

/** A maker of sound rows for each table; every call gives a new id. */
export function fleetRows(ids: FleetIds) {
  const row =
    (sound: Row) =>
    (more: Row = {}): Row => ({ club_id: ids.clubId, id: newId(), ...sound, ...more });
  const ofAircraft = (sound: Row) => row({ aircraft_id: ids.aircraftId, ...sound });
  return {
    airfields: row({
      code: 'XLKF',
      name: 'Larkfield',
      zone: 'America/Chicago',
      latitude_deg: 41,
      longitude_deg: -93,
      elevation_ft: 900,
    }),
    aircraft_models: row({
      ...{
        make_model: 'Wrenfield Sparrow 2',
        type_designator: 'WSP2',
        category: 'airplane',
        class: 'single-engine-land',
        engines: 1,
      },
      ...{
        retractable_gear: false,
        flaps: true,
        controllable_propeller: false,
        tailwheel: false,
        pressurised: false,
      },
      kinds_of_operation: ['day-vfr'],
    }),
    aircraft: row({
      ...{
        registration: 'XB-101',
        model_id: ids.modelId,
        home_airfield_id: ids.airfieldId,
        seats: 4,
        occupants_certificated: 4,
      },
      ...{
        certificated_after_1996_03_11: false,
        instruction_for_hire: false,
        carries_for_hire: false,
        inspection_meter: 'tachometer',
      },
    }),
    registrations: ofAircraft({ issued_on: '2022-05-10' }),
    permits: ofAircraft({ valid_from: '2026-03-10', valid_through: '2026-03-12', purpose: 'Ferry' }),
    equipment: ofAircraft({ kind: 'air-pump', name: 'Air pump', installed_on: '2024-01-01' }),
    meter_readings: ofAircraft({
      kind: 'tachometer',
      shown_tenths: 10000,
      read_at: '2026-03-01T12:00:00Z',
      source: 'coordinator',
    }),
    airworthiness_items: ofAircraft({
      kind: 'club',
      title: 'Pump',
      scope: 'ifr',
      interval_tenths: 5000,
      equipment_id: ids.equipmentId,
    }),
    compliances: row({
      item_id: ids.itemId,
      done_on: '2026-03-01',
      statement: 'Done',
      signed_by: 'Mo Wrench',
    }),
    squawks: ofAircraft({
      reported_at: '2026-03-01T12:00:00Z',
      reported_by: ids.memberId,
      title: 'Light out',
    }),
    deferrals: row({ squawk_id: ids.squawkId, deferred_on: '2026-03-01' }),
    squawk_parts: row({
      ...{ squawk_id: ids.squawkId, closing: 1, part_number: 'GL-4509', name: 'Lamp', quantity: 1 },
    }),
    attachments: row({
      ...{ squawk_id: ids.squawkId, added_by: ids.memberId, media_type: 'image/png' },
      ...photoOf(newId()),
    }),
    differences: ofAircraft({ title: 'Panel', since: '2026-01-01', equipment_group: 'glass panel' }),
    equipment_changes: ofAircraft({
      ...{ title: 'New panel', done_on: '2026-01-01', statement: 'Installed', signed_by: 'Mo Wrench' },
      ...{ effects: '{}', made_by: ids.memberId },
    }),
    upgrade_wishes: ofAircraft({ title: 'A second navigator', shop_days: 3, worth_hours: 20 }),
    weighings: ofAircraft({
      ...{ effective_on: '2026-01-01', empty_weight_lb: 1450, empty_arm_in: 39.2 },
      ...{ source: 'equipment-change', change_id: ids.changeId },
    }),
    loading_sheets: row({
      ...{ aircraft_id: ids.secondAircraftId, source: 'Handbook, section 6', fuel_kind: 'avgas' },
      stations: JSON.stringify([{ name: 'Seats', kind: 'seats', armIn: 81 }]),
      envelopes: JSON.stringify([envelope('normal')]),
    }),
    performance_sheets: row({
      ...{ aircraft_id: ids.secondAircraftId, source: 'Handbook, section 5' },
      ...{ takeoff: JSON.stringify(distances()), landing: JSON.stringify(distances()) },
    }),
  };
}

type Table = keyof ReturnType<typeof fleetRows>;
const simple = (constraint: string, table: Table, wrong: Row): [string, Table, (ids: FleetIds) => Row] => [
  constraint,
  table,
  () => wrong,
];
const model = (part: string, wrong: Row) =>
  simple(`aircraft_models_${part}`, 'aircraft_models', { make_model: `Other ${part}`, ...wrong });
const aircraft = (part: string, wrong: Row) =>
  simple(`aircraft_${part}`, 'aircraft', { registration: 'XB-909', ...wrong });
const item = (part: string, wrong: Row) =>
  simple(`airworthiness_items_${part}`, 'airworthiness_items', wrong);
const LATER = '2026-03-02T12:00:00Z';
const DUPLICATE = { state: 'duplicate', closed_at: LATER, closed_from: 'reported' };

/** Constraint, table, and what makes a sound row break it. */
/** Sheets of the first aircraft and of the model, which have none in the scene. */
const ofSheet =
  (table: 'loading_sheets' | 'performance_sheets') =>
  (part: string, wrong: Row): [string, Table, (ids: FleetIds) => Row] => [
    `${table}_${part}`,
    table,
    ({ aircraftId }) => ({ aircraft_id: aircraftId, ...wrong }),
  ];
const loadingSheet = ofSheet('loading_sheets');
const performanceSheet = ofSheet('performance_sheets');
const SHEETS = (['loading_sheets', 'performance_sheets'] as const).flatMap((table) => {
  const sheet = ofSheet(table);
  return [
    sheet('source_chk', { source: ' ' }),
    sheet('of_chk', { aircraft_id: null }),
    sheet('model_fk', { aircraft_id: null, model_id: NOBODY }),
    sheet('aircraft_fk', { aircraft_id: NOBODY }),
    [`${table}_of_chk`, table, ({ modelId }: FleetIds) => ({ model_id: modelId })],
    [`${table}_aircraft_uq`, table, ({ secondAircraftId }: FleetIds) => ({ aircraft_id: secondAircraftId })],
  ] as [string, Table, (ids: FleetIds) => Row][];
});

export const FLEET_INSERTS: [constraint: string, table: Table, wrong: (ids: FleetIds) => Row][] = [
  ...SHEETS,
  loadingSheet('fuel_chk', { fuel_kind: 'diesel' }),
  loadingSheet('max_takeoff_chk', { max_takeoff_lb: 0 }),
  loadingSheet('max_landing_chk', { max_landing_lb: 0 }),
  loadingSheet('max_zero_fuel_chk', { max_zero_fuel_lb: 0 }),
  loadingSheet('stations_chk', { stations: '{}' }),
  loadingSheet('stations_chk', { stations: '[]' }),
  loadingSheet('stations_chk', { stations: '[{"kind": "seats"}]' }),
  loadingSheet('stations_chk', { stations: '[{"kind": "wings", "armIn": 80}]' }),
  loadingSheet('envelopes_chk', { envelopes: '[]' }),
  loadingSheet('envelopes_chk', { envelopes: JSON.stringify([envelope('normal', 2)]) }),
  loadingSheet('envelopes_chk', { envelopes: JSON.stringify([envelope('acrobatic')]) }),
  performanceSheet('lift_off_chk', { lift_off_kias: 0 }),
  performanceSheet('takeoff_chk', { takeoff: '{}' }),
  performanceSheet('takeoff_chk', { takeoff: JSON.stringify(distances({ groundRollFt: 600 })) }),
  performanceSheet('landing_chk', { landing: '{"tables": [], "factors": {}}' }),
  performanceSheet('landing_chk', { landing: JSON.stringify(distances({ weightLb: '2400' })) }),
  model('name_chk', { make_model: ' ' }),
  model('name_uq', { make_model: 'Wrenfield Sparrow 2' }),
  model('designator_chk', { type_designator: 'w2' }),
  model('category_chk', { category: 'airship' }),
  model('class_chk', { class: 'three-engine-land' }),
  model('engines_chk', { engines: 5 }),
  model('power_chk', { power_per_engine_hp: 0 }),
  model('weight_chk', { max_takeoff_lb: 0 }),
  model('kinds_chk', { kinds_of_operation: [] }),
  model('kinds_chk', { kinds_of_operation: ['space'] }),
  aircraft('registration_chk', { registration: 'xb' }),
  aircraft('registration_uq', { registration: 'XB-101' }),
  aircraft('model_fk', { model_id: NOBODY }),
  aircraft('home_fk', { home_airfield_id: NOBODY }),
  aircraft('seats_chk', { seats: 0 }),
  aircraft('occupants_chk', { occupants_certificated: 21 }),
  aircraft('empty_weight_chk', { empty_weight_lb: 0 }),
  aircraft('status_chk', { status: 'sold' }),
  aircraft('inspection_meter_chk', { inspection_meter: 'clock' }),
  simple('registrations_aircraft_fk', 'registrations', { aircraft_id: NOBODY }),
  simple('registrations_span_chk', 'registrations', { ended_on: '2022-05-09' }),
  simple('permits_aircraft_fk', 'permits', { aircraft_id: NOBODY }),
  simple('permits_span_chk', 'permits', { valid_through: '2026-03-09' }),
  simple('equipment_aircraft_fk', 'equipment', { aircraft_id: NOBODY }),
  simple('equipment_name_chk', 'equipment', { name: ' ' }),
  simple('equipment_basis_chk', 'equipment', { basis: 'hope' }),
  simple('equipment_portable_chk', 'equipment', { portable: true }),
  simple('equipment_span_chk', 'equipment', { removed_on: '2023-12-31' }),
  simple('meter_readings_aircraft_fk', 'meter_readings', { aircraft_id: NOBODY }),
  simple('meter_readings_kind_chk', 'meter_readings', { kind: 'clock' }),
  simple('meter_readings_shown_chk', 'meter_readings', { kind: 'airframe', shown_tenths: -1 }),
  simple('meter_readings_source_chk', 'meter_readings', { read_at: LATER, source: 'guess' }),
  simple('meter_readings_at_uq', 'meter_readings', {}),
  simple('meter_readings_not_below_last_chk', 'meter_readings', { shown_tenths: 9999, read_at: LATER }),
  simple('meter_readings_not_below_last_chk', 'meter_readings', { offset_tenths: -1, read_at: LATER }),
  simple('meter_readings_not_above_next_chk', 'meter_readings', {
    shown_tenths: 10001,
    read_at: '2026-02-28T12:00:00Z',
  }),
  simple('airworthiness_items_aircraft_fk', 'airworthiness_items', {
    aircraft_id: NOBODY,
    equipment_id: null,
  }),
  [
    'airworthiness_items_equipment_fk',
    'airworthiness_items',
    ({ secondEquipmentId }) => ({ equipment_id: secondEquipmentId }),
  ],
  item('kind_chk', { kind: 'wash' }),
  item('title_chk', { title: '' }),
  item('scope_chk', { scope: 'sundays' }),
  item('calendar_chk', { calendar_months: 0 }),
  item('plain_chk', { plain_months: 0 }),
  item('days_chk', { days: 0 }),
  item('interval_chk', { interval_tenths: 0 }),
  item('fixed_hours_chk', { fixed_due_tenths: 0 }),
  item('tolerance_chk', { tolerance_tenths: -1 }),
  simple('compliances_item_fk', 'compliances', { item_id: NOBODY }),
  simple('compliances_done_chk', 'compliances', { done_tenths: -1 }),
  simple('compliances_due_chk', 'compliances', { due_tenths: -1 }),
  simple('compliances_statement_chk', 'compliances', { statement: ' ' }),
  simple('compliances_signed_chk', 'compliances', { signed_by: '' }),
  simple('squawks_aircraft_fk', 'squawks', { aircraft_id: NOBODY }),
  simple('squawks_reporter_fk', 'squawks', { reported_by: NOBODY }),
  ['squawks_equipment_fk', 'squawks', ({ secondEquipmentId }) => ({ equipment_id: secondEquipmentId })],
  simple('squawks_title_chk', 'squawks', { title: 'x'.repeat(201) }),
  simple('squawks_state_chk', 'squawks', { state: 'ignored' }),
  simple('squawks_closed_chk', 'squawks', {
    ...{ state: 'no-fault-found', corrective_action: 'Tested', signed_by: 'Mo' },
  }),
  simple('squawks_closed_chk', 'squawks', { closed_at: LATER }),
  simple('squawks_fixed_chk', 'squawks', { state: 'fixed', closed_at: LATER, corrective_action: 'Replaced' }),
  simple('squawks_cleared_chk', 'squawks', { state: 'no-fault-found', closed_at: LATER, signed_by: 'Mo' }),
  simple('squawks_certificate_chk', 'squawks', { signed_certificate: ' ' }),
  simple('squawks_closings_chk', 'squawks', { closings: -1 }),
  simple('squawks_closed_from_chk', 'squawks', { closed_from: 'fixed' }),
  simple('squawks_reopened_chk', 'squawks', { reopened_because: 'Oh' }),
  simple('squawks_booking_fk', 'squawks', { booking_id: NOBODY }),
  simple('squawks_duplicate_fk', 'squawks', { ...DUPLICATE, duplicate_of: NOBODY }),
  simple('squawks_duplicate_chk', 'squawks', { ...DUPLICATE }),
  ['squawks_duplicate_chk', 'squawks', ({ squawkId }) => ({ duplicate_of: squawkId })],
  [
    'squawks_duplicate_weaker_chk',
    'squawks',
    ({ squawkId }) => ({ ...DUPLICATE, duplicate_of: squawkId, closed_from: 'grounding' }),
  ],
  [
    'squawks_duplicate_weaker_chk',
    'squawks',
    ({ squawkId, equipmentId }) => ({ ...DUPLICATE, duplicate_of: squawkId, equipment_id: equipmentId }),
  ],
  simple('squawk_parts_squawk_fk', 'squawk_parts', { squawk_id: NOBODY }),
  simple('squawk_parts_closing_chk', 'squawk_parts', { closing: 0 }),
  simple('squawk_parts_number_chk', 'squawk_parts', { part_number: ' ' }),
  simple('squawk_parts_serial_chk', 'squawk_parts', { serial_number: '' }),
  simple('squawk_parts_name_chk', 'squawk_parts', { name: '' }),
  simple('squawk_parts_quantity_chk', 'squawk_parts', { quantity: 0 }),
  simple('attachments_squawk_fk', 'attachments', { squawk_id: NOBODY }),
  simple('attachments_member_fk', 'attachments', { added_by: NOBODY }),
  simple('attachments_media_chk', 'attachments', { media_type: 'image/svg+xml' }),
  simple('attachments_size_chk', 'attachments', photoOf('')),
  simple('attachments_content_chk', 'attachments', { size_bytes: 7 }),
  simple('attachments_content_chk', 'attachments', { sha256: '0'.repeat(64) }),
  simple('deferrals_squawk_fk', 'deferrals', { squawk_id: NOBODY }),
  simple('deferrals_squawk_uq', 'deferrals', {}),
  simple('deferrals_span_chk', 'deferrals', { deadline_on: '2026-02-28' }),
  simple('differences_aircraft_fk', 'differences', { aircraft_id: NOBODY }),
  simple('differences_title_chk', 'differences', { title: ' ' }),
  simple('differences_change_fk', 'differences', { change_id: NOBODY }),
  aircraft('serial_chk', { serial_number: ' ' }),
  simple('equipment_weight_chk', 'equipment', { weight_lb: -1 }),
  simple('equipment_installed_by_fk', 'equipment', { installed_by_change: NOBODY }),
  simple('equipment_removed_by_fk', 'equipment', { removed_on: '2026-01-01', removed_by_change: NOBODY }),
  ['equipment_removed_by_chk', 'equipment', ({ changeId }) => ({ removed_by_change: changeId })],
  item('span_chk', { since: '2026-01-02', retired_on: '2026-01-01' }),
  simple('weighings_aircraft_fk', 'weighings', { aircraft_id: NOBODY, source: 'computed', change_id: null }),
  simple('weighings_weight_chk', 'weighings', { empty_weight_lb: 0 }),
  simple('weighings_source_chk', 'weighings', { source: 'guess' }),
  simple('weighings_change_fk', 'weighings', { change_id: NOBODY }),
  simple('weighings_change_chk', 'weighings', { change_id: null }),
  simple('upgrade_wishes_aircraft_fk', 'upgrade_wishes', { aircraft_id: NOBODY }),
  simple('upgrade_wishes_title_chk', 'upgrade_wishes', { title: ' ' }),
  simple('upgrade_wishes_days_chk', 'upgrade_wishes', { shop_days: 0 }),
  simple('upgrade_wishes_worth_chk', 'upgrade_wishes', { worth_hours: -1 }),
  simple('equipment_changes_aircraft_fk', 'equipment_changes', { aircraft_id: NOBODY }),
  simple('equipment_changes_made_fk', 'equipment_changes', { made_by: NOBODY }),
  simple('equipment_changes_title_chk', 'equipment_changes', { title: '' }),
  simple('equipment_changes_statement_chk', 'equipment_changes', { statement: ' ' }),
  simple('equipment_changes_signed_chk', 'equipment_changes', { signed_by: ' ' }),
  simple('equipment_changes_effects_chk', 'equipment_changes', { effects: '[]' }),
  simple('equipment_changes_taken_back_fk', 'equipment_changes', {
    ...{ taken_back_at: LATER, taken_back_by: NOBODY, taken_back_reason: 'Wrong aircraft' },
  }),
  simple('equipment_changes_taken_back_chk', 'equipment_changes', { taken_back_at: LATER }),
];
