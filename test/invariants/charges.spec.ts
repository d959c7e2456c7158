/** Rates and accounts: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, type Row } from '../support/refusals.js';
import { type FleetIds } from './fleet-rows.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const TABLES = ['charge_rates', 'ledger_entries'];

interface Scene extends FleetIds {
  treasurerId: string;
  rateId: string;
  instructionId: string;
  bookingId: string;
  otherBookingId: string;
  chargeId: string;
  receiptId: string;
  reversedId: string;
  reversalId: string;
}

let db: TestDatabase;
let own: Scene;
let foreign: Scene;

beforeAll(async () => {
  db = await createTestDatabase();
  own = await plant();
  foreign = await plant();
}, 60_000);
afterAll(() => db.drop());

async function plant(): Promise<Scene> {
  const { clubId, memberId } = await plantClub(db);
  const of: Scene = {
    ...fleetIds({ clubId, memberId }),
    ...{ treasurerId: newId(), rateId: newId(), instructionId: newId(), bookingId: newId() },
    ...{ otherBookingId: newId(), chargeId: newId(), receiptId: newId() },
    ...{ reversedId: newId(), reversalId: newId() },
  };
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, of);
    await insertRow(em, 'members', {
      ...{
        club_id: clubId,
        id: of.treasurerId,
        name: 'Tova Treasurer',
        email: `${newId()}@larkfield.example`,
      },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    await insertRow(em, 'charge_rates', rate(of, { id: of.rateId }));
    await insertRow(em, 'charge_rates', instruction(of, { id: of.instructionId }));
    await insertRow(em, 'bookings', booked(of, of.bookingId, '2026-03-01'));
    await insertRow(em, 'bookings', booked(of, of.otherBookingId, '2026-03-02'));
    await insertRow(em, 'ledger_entries', flight(of, { id: of.chargeId }));
    await insertRow(em, 'ledger_entries', receipt(of, { id: of.receiptId }));
    await insertRow(em, 'ledger_entries', receipt(of, { id: of.reversedId }));
    await insertRow(em, 'ledger_entries', reversal(of, { id: of.reversalId, reverses: of.reversedId }));
  });
  return of;
}

const booked = (of: Scene, id: string, day: string): Row => ({
  ...{ club_id: of.clubId, id, kind: 'club', aircraft_id: of.aircraftId, member_id: of.memberId },
  ...{ during: `[${day} 18:00+00,${day} 20:00+00)`, expected_tenths: 20, request: '{}' },
});
const rate = (of: Scene, more: Row = {}): Row => ({
  ...{
    club_id: of.clubId,
    id: newId(),
    aircraft_id: of.aircraftId,
    valid_from: '2026-01-01',
    currency: 'USD',
  },
  ...{
    per_hour_minor: 14500,
    basis: 'hobbs',
    fuel: 'wet',
    fuel_per_us_gal_minor: 600,
    set_by: of.treasurerId,
  },
  ...more,
});
const instruction = (of: Scene, more: Row = {}): Row => ({
  ...{
    club_id: of.clubId,
    id: newId(),
    instructor_id: of.memberId,
    valid_from: '2026-01-01',
    currency: 'USD',
  },
  ...{ per_hour_minor: 6500, set_by: of.treasurerId },
  ...more,
});
const entry = (of: Scene, more: Row): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, currency: 'USD', minor_per_unit: 100 },
  ...{ posted_on: '2026-03-01', of_day: '2026-03-01', due_from: '2026-03-01', recorded_by: of.treasurerId },
  ...more,
});
const LINES = JSON.stringify([{ amountMinor: 18_850 }, { amountMinor: -850 }]);
const flight = (of: Scene, more: Row = {}): Row =>
  entry(of, {
    ...{ kind: 'flight', amount_minor: 18_000, lines: LINES, flown: '{}', booking_id: of.bookingId },
    ...{ charge_no: 1, aircraft_rate_id: of.rateId, instructor_rate_id: of.instructionId },
    ...more,
  });
/** Of the flight that is not charged. */
const other = (of: Scene, more: Row): Row => flight(of, { booking_id: of.otherBookingId, ...more });
const receipt = (of: Scene, more: Row = {}): Row =>
  entry(of, { kind: 'receipt', amount_minor: -5000, ...more });
const adjustment = (of: Scene, more: Row = {}): Row =>
  entry(of, { kind: 'adjustment', amount_minor: 700, words: 'Key lost', ...more });
const reversal = (of: Scene, more: Row = {}): Row =>
  entry(of, {
    kind: 'reversal',
    amount_minor: 5000,
    words: 'Of somebody else',
    reverses: of.receiptId,
    ...more,
  });

const CASES: [constraint: string, state: string, table: string, wrong: (of: Scene) => Row][] = [
  ['charge_rates_amount_chk', '23514', 'charge_rates', (of) => rate(of, { per_hour_minor: -1 })],
  ['charge_rates_currency_chk', '23514', 'charge_rates', (of) => rate(of, { currency: 'dollars' })],
  ['charge_rates_basis_chk', '23514', 'charge_rates', (of) => rate(of, { basis: 'sundial' })],
  ['charge_rates_fuel_chk', '23514', 'charge_rates', (of) => rate(of, { fuel: 'damp' })],
  ['charge_rates_fuel_price_chk', '23514', 'charge_rates', (of) => rate(of, { fuel_per_us_gal_minor: -1 })],
  ['charge_rates_of_chk', '23514', 'charge_rates', (of) => instruction(of, { basis: 'clock' })],
  [
    'charge_rates_aircraft_fk',
    '23503',
    'charge_rates',
    (of) => rate(of, { aircraft_id: foreign.aircraftId }),
  ],
  [
    'charge_rates_instructor_fk',
    '23503',
    'charge_rates',
    (of) => instruction(of, { instructor_id: foreign.memberId }),
  ],
  ['charge_rates_setter_fk', '23503', 'charge_rates', (of) => rate(of, { set_by: foreign.memberId })],
  ['charge_rates_pkey', '23505', 'charge_rates', (of) => rate(of, { id: of.rateId })],
  ['ledger_entries_pkey', '23505', 'ledger_entries', (of) => receipt(of, { id: of.receiptId })],
  [
    'ledger_entries_kind_chk',
    '23514',
    'ledger_entries',
    (of) => entry(of, { kind: 'gift', amount_minor: 1 }),
  ],
  [
    'ledger_entries_amount_chk',
    '23514',
    'ledger_entries',
    (of) => receipt(of, { amount_minor: -1_000_000_001 }),
  ],
  ['ledger_entries_unit_chk', '23514', 'ledger_entries', (of) => receipt(of, { minor_per_unit: 12 })],
  ['ledger_entries_lines_chk', '23514', 'ledger_entries', (of) => other(of, { lines: '{}' })],
  ['ledger_entries_words_chk', '23514', 'ledger_entries', (of) => adjustment(of, { words: 'so' })],
  ['ledger_entries_flight_chk', '23514', 'ledger_entries', (of) => receipt(of, { booking_id: of.bookingId })],
  ['ledger_entries_sum_chk', '23514', 'ledger_entries', (of) => other(of, { amount_minor: 18_001 })],
  ['ledger_entries_sign_chk', '23514', 'ledger_entries', (of) => receipt(of, { amount_minor: 5000 })],
  ['ledger_entries_reversal_chk', '23514', 'ledger_entries', (of) => receipt(of, { reverses: of.chargeId })],
  ['ledger_entries_own_chk', '23514', 'ledger_entries', (of) => receipt(of, { recorded_by: of.memberId })],
  ['ledger_entries_takes_off_chk', '23514', 'ledger_entries', (of) => reversal(of, { amount_minor: 4999 })],
  ['ledger_entries_charged_chk', '23514', 'ledger_entries', (of) => flight(of, { charge_no: 2 })],
  [
    'ledger_entries_reverses_uq',
    '23505',
    'ledger_entries',
    (of) => reversal(of, { reverses: of.reversedId }),
  ],
  ['ledger_entries_currency_excl', '23P01', 'ledger_entries', (of) => receipt(of, { currency: 'EUR' })],
  [
    'ledger_entries_member_fk',
    '23503',
    'ledger_entries',
    (of) => receipt(of, { member_id: foreign.memberId }),
  ],
  [
    'ledger_entries_recorder_fk',
    '23503',
    'ledger_entries',
    (of) => receipt(of, { recorded_by: foreign.memberId }),
  ],
  [
    'ledger_entries_booking_fk',
    '23503',
    'ledger_entries',
    (of) => flight(of, { booking_id: foreign.bookingId }),
  ],
  [
    'ledger_entries_rate_fk',
    '23503',
    'ledger_entries',
    (of) => other(of, { aircraft_rate_id: foreign.rateId }),
  ],
  [
    ...(['ledger_entries_instruction_fk', '23503', 'ledger_entries'] as const),
    (of) => other(of, { instructor_rate_id: foreign.instructionId }),
  ],
  [
    ...(['ledger_entries_reverses_fk', '23503', 'ledger_entries'] as const),
    (of) => reversal(of, { member_id: of.treasurerId, recorded_by: of.memberId }),
  ],
];

it.each(CASES)('%s', async (constraint, state, table, wrong) => {
  expect(await rowRefusal(db, own.clubId, table, wrong(own))).toEqual({ state, constraint });
});

it('ledger_entries_takes_off_chk: a reversal is not reversed', async () => {
  const again = reversal(own, { reverses: own.reversalId, amount_minor: -5000 });
  expect(await rowRefusal(db, own.clubId, 'ledger_entries', again)).toEqual({
    ...{ state: '23514', constraint: 'ledger_entries_takes_off_chk' },
  });
});

it('ledger_entries_charge_uq: two who charge a flight at once do not both succeed', async () => {
  const insert = (charge: Row) =>
    db.tenantDb.run(own.clubId, (em) => insertRow(em, 'ledger_entries', charge));
  const both = await Promise.allSettled([insert(other(own, {})), insert(other(own, {}))]);
  expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
  const { reason } = both.find((one) => one.status === 'rejected') as { reason: { constraint: string } };
  expect(['ledger_entries_charge_uq', 'ledger_entries_charged_chk']).toContain(reason.constraint);
});

it('ledger_entries_charged_chk: once its charge is reversed a flight is charged anew, by the next number only', async () => {
  const off = reversal(own, { reverses: own.chargeId, amount_minor: -18_000 });
  expect(await rowRefusal(db, own.clubId, 'ledger_entries', off)).toBeNull();
  expect(await rowRefusal(db, own.clubId, 'ledger_entries', flight(own, { charge_no: 3 }))).toEqual({
    ...{ state: '23514', constraint: 'ledger_entries_charged_chk' },
  });
  expect(await rowRefusal(db, own.clubId, 'ledger_entries', flight(own, { charge_no: 2 }))).toBeNull();
});

it('charge_rates_append_only, ledger_entries_append_only', async () => {
  await expectWrittenOnce(db, own.clubId, [
    ['charge_rates', 'currency'],
    ['ledger_entries', 'words'],
  ]);
});

it('keys that other rows hang on are the rows’ own: charge_rates_currency_uq, ledger_entries_owner_uq', async () => {
  const twice = (table: string, row: Row) => rowRefusal(db, own.clubId, table, row);
  expect(await twice('charge_rates', rate(own, { id: own.rateId }))).toMatchObject({ state: '23505' });
  expect(await twice('ledger_entries', receipt(own, { id: own.receiptId }))).toMatchObject({
    state: '23505',
  });
});

it('every constraint of these tables has a case', async () => {
  const proven = new Set([
    ...CASES.map(([constraint]) => constraint),
    ...['ledger_entries_charge_uq', 'charge_rates_currency_uq', 'ledger_entries_owner_uq'],
  ]);
  expect((await constraintsToProve(db, TABLES)).filter((name) => !proven.has(name))).toEqual([]);
});
