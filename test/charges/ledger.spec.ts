/**
 * Accounts under whatever is told in whatever order: a balance is the sum of its entries, a flight has at most one charge that
 * stands, and what decisions are told is unpaid is what a plain queue of debts says.
 */
import fc from 'fast-check';
import { chargeFlight } from '../../src/charges/flights/charge-flight.js';
import type { FlightFlown } from '../../src/charges/flights/flight-flown.js';
import { LedgerEntry } from '../../src/charges/ledger/ledger-entry.entity.js';
import { postEntry, reverseEntry } from '../../src/charges/ledger/post-entry.js';
import { unpaidCharges } from '../../src/charges/ledger/unpaid-charges.js';
import { newId } from '../../src/platform/ids.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { type Api, startApi } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';

const RUNS = Number(process.env['LEDGER_RUNS'] ?? 12);

let api: Api;
let db: TenantDb;
let ready: ReadyClub;
let clubId: string;
let treasurerId: string;

beforeAll(async () => {
  api = await startApi();
  db = api.app.get(TenantDb);
  ready = await readyClub(api);
  ({ clubId } = ready.club);
  treasurerId = (await ready.club.createMember('administrator', { name: 'Tova Treasurer' })).memberId;
  await insertInto(api.sql, clubId)('charge_rates', {
    ...{ id: newId(), aircraft_id: ready.aircraftId, valid_from: '2026-01-01', currency: 'USD' },
    ...{
      per_hour_minor: 14_505,
      basis: 'hobbs',
      fuel: 'wet',
      fuel_per_us_gal_minor: 600,
      set_by: treasurerId,
    },
  });
}, 120_000);
afterAll(() => api.stop());

/** Somebody new with flights that nothing was told of. */
async function account(flights: number): Promise<{ memberId: string; bookings: string[] }> {
  const { memberId } = await ready.club.createMember('member');
  const bookings = Array.from({ length: flights }, () => newId());
  const row = insertInto(api.sql, clubId);
  const decisionId = newId();
  await row('decisions', {
    ...{ id: decisionId, member_id: memberId, aircraft_id: ready.aircraftId, asked_by: memberId },
    ...{ known_at: '2026-03-01T00:00:00Z', as_of: '2026-03-01T00:00:00Z', answer: 'yes', fact_keys: '{}' },
    ...{ parts: '{}', rules: '[]', digest: 'a'.repeat(64), body: '{}' },
  });
  for (const [index, id] of bookings.entries())
    await row('bookings', {
      ...{ id, kind: 'flight', aircraft_id: ready.aircraftId, member_id: memberId, status: 'returned' },
      during: `[2026-03-0${index + 1} 18:00+00,2026-03-0${index + 1} 20:00+00)`,
      ...{ expected_tenths: 20, request: '{}', decision_id: decisionId },
    });
  return { memberId, bookings };
}

const flownBy = (
  memberId: string,
  bookingId: string,
  tenths: number,
  fuelPaidMinor: number,
): FlightFlown => ({
  ...{ bookingId, aircraftId: ready.aircraftId, pilotId: memberId, payerId: memberId, instructorId: null },
  ...{ departedAt: '2026-03-01T18:05:00Z', arrivedAt: '2026-03-01T19:30:00Z', hobbsTenths: tenths },
  ...{ tachTenths: null, instructionMinutes: null, fuelBoughtUsGal: 100, fuelPaidMinor, fuelClubUsGal: 0 },
});
const day = (index: number): string => `2026-03-${String(10 + index).padStart(2, '0')}`;

type Step =
  | { do: 'return'; flight: number; tenths: number; fuelPaidMinor: number }
  | { do: 'receipt'; amount: number }
  | { do: 'adjust'; amount: number }
  | { do: 'reverse'; which: number };

const step: fc.Arbitrary<Step> = fc.oneof(
  fc.record({
    ...{ do: fc.constant('return' as const), flight: fc.nat(2), tenths: fc.nat(40) },
    fuelPaidMinor: fc.constantFrom(0, 0, 5990, 40_000),
  }),
  fc.record({ do: fc.constant('receipt' as const), amount: fc.integer({ min: 1, max: 40_000 }) }),
  fc.record({
    do: fc.constant('adjust' as const),
    amount: fc.integer({ min: -20_000, max: 20_000 }).filter((amount) => amount !== 0),
  }),
  fc.record({ do: fc.constant('reverse' as const), which: fc.nat(20) }),
);

/** What a plain book says: the debts that count in the order they fall due, paid from the front. */
interface Debt {
  id: string;
  from: string;
  amount: number;
}

test(
  'the balance is the sum of what stands, one charge of a flight stands, and the unpaid is what the oldest-first queue leaves',
  () =>
    fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 14 }), async (steps) => {
        const { memberId, bookings } = await account(3);
        const standing = new Map<string, { amount: number; from: string }>();
        const chargeOf = new Map<string, string>();
        const firstDay = new Map<string, string>();
        for (const [index, one] of steps.entries()) {
          const postedOn = day(index);
          await db.run(clubId, async (em) => {
            const base = { clubId, memberId, postedOn, ofDay: postedOn, recordedBy: treasurerId };
            const unit = { currency: 'USD', minorPerUnit: 100 };
            if (one.do === 'return') {
              const bookingId = bookings[one.flight]!;
              const flown = flownBy(memberId, bookingId, one.tenths, one.fuelPaidMinor);
              const by = { clubId, memberId, now: `${postedOn}T20:00:00Z` };
              const result = await chargeFlight(em, flown, by);
              if ('missing' in result) throw new Error(result.missing);
              const { charge } = result;
              // Half up, to the cent, worked out apart from the service.
              const time = Math.floor((one.tenths * 14_505 * 2 + 10) / 20);
              expect(charge.amountMinor).toBe(time - Math.min(one.fuelPaidMinor, 60_000));
              const before = chargeOf.get(bookingId);
              if (before !== undefined) standing.delete(before);
              firstDay.set(bookingId, firstDay.get(bookingId) ?? postedOn);
              chargeOf.set(bookingId, charge.id);
              standing.set(charge.id, { amount: charge.amountMinor, from: firstDay.get(bookingId)! });
            } else if (one.do === 'reverse') {
              const id = [...standing.keys()][one.which];
              if (id === undefined) return;
              const entry = await em.findOneByOrFail(LedgerEntry, { clubId, id });
              await reverseEntry(em, entry, { postedOn, words: 'Of somebody else', recordedBy: treasurerId });
              standing.delete(id);
            } else {
              const kind = one.do === 'receipt' ? ('receipt' as const) : ('adjustment' as const);
              const amountMinor = one.do === 'receipt' ? -one.amount : one.amount;
              const entry = await postEntry(em, { ...base, ...unit, kind, amountMinor, words: 'As agreed' });
              standing.set(entry.id, { amount: amountMinor, from: postedOn });
            }
          });
        }
        const { sum, flights } = await sums(memberId);
        expect(sum).toBe([...standing.values()].reduce((total, { amount }) => total + amount, 0));
        expect(flights).toBeLessThanOrEqual(1);
        const debts = [...standing].map(([id, { amount, from }]): Debt => ({ id, amount, from }));
        expect(await unpaid(memberId)).toEqual(leftOf(debts));
      }),
      { numRuns: RUNS },
    ),
  300_000,
);

test('returns told at once by several people leave one charge that stands', async () => {
  const { memberId, bookings } = await account(1);
  const tell = (tenths: number) =>
    db.run(clubId, (em) =>
      chargeFlight(em, flownBy(memberId, bookings[0]!, tenths, 0), {
        ...{ clubId, memberId, now: '2026-03-10T20:00:00Z' },
      }),
    );
  const told = await Promise.all([10, 11, 12, 13, 14, 10].map(tell));
  expect(told.every((one) => 'charge' in one)).toBe(true);
  const { sum, flights } = await sums(memberId);
  expect(flights).toBe(1);
  expect([14_505, 15_956, 17_406, 18_857, 20_307]).toContain(sum);
}, 120_000);

async function sums(memberId: string): Promise<{ sum: number; flights: number }> {
  const [row] = await api.sql<{ sum: number; flights: number }>(
    `SELECT coalesce(sum(amount_minor), 0)::float8 AS sum,
            coalesce((SELECT max(n) FROM (SELECT count(*) AS n FROM ledger_entries f WHERE f.club_id = $1 AND f.member_id = $2
               AND f.kind = 'flight' AND NOT EXISTS (SELECT 1 FROM ledger_entries v WHERE v.club_id = f.club_id AND v.reverses = f.id)
             GROUP BY f.booking_id) g), 0)::float8 AS flights
       FROM ledger_entries WHERE club_id = $1 AND member_id = $2`,
    [clubId, memberId],
  );
  return row!;
}

async function unpaid(memberId: string): Promise<Debt[]> {
  const rows = await db.run(clubId, (em) =>
    em.query<{ id: string; from: string; amount: number }[]>(
      `SELECT u.id, to_char(u.on_day, 'YYYY-MM-DD') AS "from", u.unpaid_minor AS amount
         FROM members m CROSS JOIN LATERAL (${unpaidCharges('m')}) u WHERE m.club_id = $1 AND m.id = $2
        ORDER BY u.on_day, u.id`,
      [clubId, memberId],
    ),
  );
  return rows.map(({ id, from, amount }) => ({ id, from, amount }));
}

/** Money that came in pays one debt after the other, from the front. */
function leftOf(all: Debt[]): Debt[] {
  let purse = all.reduce((sum, { amount }) => sum + Math.max(0, -amount), 0);
  const queue = all
    .filter(({ amount }) => amount > 0)
    .sort((a, b) => (`${a.from} ${a.id}` < `${b.from} ${b.id}` ? -1 : 1));
  return queue.flatMap((debt) => {
    const pays = Math.min(purse, debt.amount);
    purse -= pays;
    return debt.amount > pays ? [{ ...debt, amount: debt.amount - pays }] : [];
  });
}
