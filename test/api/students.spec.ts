/** Who counts as an instructor's student, and for how long: their papers open with it, and close with it. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { teach } from '../support/teach.js';

let api: Api;
let ready: ReadyClub;
let row: ReturnType<typeof insertInto>;
let decisionId: string;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  row = insertInto(api.sql, ready.club.clubId);
  const booked = await ready.member
    .post('/bookings', {
      ...tomorrow,
      aircraftId: ready.aircraftId,
      purpose: 'passengers',
      personsOnBoard: 2,
    })
    .set('Idempotency-Key', newId())
    .expect(201);
  const [found] = await api.sql<{ decision_id: string }>('SELECT decision_id FROM bookings WHERE id = $1', [
    (booked.body as { id: string }).id,
  ]);
  decisionId = found!.decision_id;
}, 60_000);
afterAll(() => api.stop());

interface Pair {
  instructor: Session;
  memberId: string;
}
const pair = async (): Promise<Pair> => ({
  instructor: await ready.club.signInAs('instructor'),
  memberId: (await ready.club.createMember()).memberId,
});
const reads = async ({ instructor, memberId }: Pair): Promise<number> =>
  (await instructor.get(`/members/${memberId}/medicals`)).status;

async function book(of: Pair, on: string, status = 'booked', role = 'instructor'): Promise<void> {
  const id = newId();
  const during = `[${on}T15:00:00Z,${on}T16:00:00Z)`;
  await row('bookings', {
    ...{ id, kind: 'flight', aircraft_id: ready.aircraftId, member_id: of.memberId, during, status },
    ...{ expected_tenths: 10, decision_id: decisionId, request: JSON.stringify({}) },
    ...(status === 'cancelled' ? { cancelled_at: '2026-03-01T00:00:00Z' } : {}),
  });
  await row('booking_people', {
    ...{ booking_id: id, member_id: of.instructor.memberId, role },
    ...{ during, occupies: status !== 'cancelled' },
  });
}

test('nobody is a student of anybody until a record says so', async () => {
  expect(await reads(await pair())).toBe(403);
});

// The clock stands on 10 March 2026; 366 days before is 9 March 2025.
test.each<[what: string, begin: (of: Pair) => Promise<void>, status: number]>([
  ['a flight booked together', (of) => book(of, '2026-04-20'), 200],
  ['one cancelled', (of) => book(of, '2026-04-21', 'cancelled'), 403],
  ['one flown within the year', (of) => book(of, '2025-03-11'), 200],
  ['one longer ago', (of) => book(of, '2025-03-08'), 403],
  ['practice the instructor signed', (of) => teachOn(of, '2025-03-10'), 200],
  ['practice signed longer ago', (of) => teachOn(of, '2025-03-09'), 403],
  ['a checkout signed', (of) => checkout(of, '2025-03-10'), 200],
  ['a checkout signed longer ago', (of) => checkout(of, '2025-03-09'), 403],
  ['an endorsement given', (of) => endorse(of, '2025-03-10'), 200],
  ['an endorsement given longer ago', (of) => endorse(of, '2025-03-09'), 403],
])('%s', async (_what, begin, status) => {
  const of = await pair();
  await begin(of);
  expect(await reads(of)).toBe(status);
  // Nobody else's student.
  expect(await reads({ ...of, instructor: await ready.club.signInAs('instructor') })).toBe(403);
});

const teachOn = (of: Pair, on: string): Promise<void> =>
  teach(api, {
    ...{ clubId: ready.club.clubId, instructorId: of.instructor.memberId, memberId: of.memberId, on },
  });
const checkout = async (of: Pair, on: string): Promise<void> => {
  await row('checkouts', {
    ...{ id: newId(), member_id: of.memberId, kind: 'model', model_id: ready.modelId },
    ...{ signed_on: on, signed_by: of.instructor.memberId },
  });
};
const endorse = async (of: Pair, on: string): Promise<void> => {
  await row('endorsements', {
    ...{ id: newId(), member_id: of.memberId, kind: 'tailwheel', endorsed_on: on },
    given_by: of.instructor.memberId,
  });
};

test('who only flies along is not taught', async () => {
  const of = await pair();
  await book(of, '2026-05-20', 'booked', 'second-pilot');
  expect(await reads(of)).toBe(403);
});
