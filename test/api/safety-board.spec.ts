/** The officer's board: who lapses next and what that costs, overrides under review, and refusals by rule. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { leastQueries } from '../support/least-queries.js';

interface LapseBody {
  memberId: string;
  rule: string;
  on: string;
  inDays: number;
  aircraft: string[] | null;
  costs: { bookingId: string; answer: string; alone: boolean }[];
}
interface Board {
  members: number;
  lapses: LapseBody[];
  lacking: { rule: string; members: number }[];
}

let api: Api;
let ready: ReadyClub;
let officer: Session;
const DAY_RECENCY = 'recency.passengers.day';

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  officer = await ready.club.signInAs('safety-officer', { name: 'Olga Officer' });
}, 60_000);
afterAll(() => api.stop());

const board = async (query = ''): Promise<Board> =>
  (await officer.get(`/safety/lapses${query}`).expect(200)).body as Board;
const ofMember = ({ lapses }: Board, rule = DAY_RECENCY): LapseBody | undefined =>
  lapses.find((one) => one.memberId === ready.member.memberId && one.rule === rule);

// 14 CFR 61.57(a)(1): three take-offs and landings "within the preceding 90 days". Flown on 20 February 2026, they count
// up to 21 May.
it('says on which day the landings for passengers no longer count', async () => {
  expect(ofMember(await board())).toMatchObject({ on: '2026-05-22', inDays: 73, aircraft: null, costs: [] });
});

it('looks no further than asked', async () => {
  expect(ofMember(await board('?through=2026-05-21'))).toBeUndefined();
  expect(ofMember(await board('?through=2026-05-22'))).toBeDefined();
});

it('follows the kind of flight: alone nobody needs the landings', async () => {
  expect(ofMember(await board('?flight=day-solo&through=2026-12-31'))).toBeUndefined();
});

it('agrees with a decision asked for the day before and for the day', async () => {
  const { lapses } = await board('?through=2027-03-01');
  const own = lapses.filter(({ memberId }) => memberId === ready.member.memberId);
  expect(own.length).toBeGreaterThanOrEqual(3);
  const statusOn = async (day: string, rule: string): Promise<string> => {
    const { body } = await officer
      .post('/decisions', {
        ...{ memberId: ready.member.memberId, aircraftIds: [ready.aircraftId], purpose: 'passengers' },
        ...{ departs: `${day}T18:00:00Z`, arrives: `${day}T19:00:00Z`, personsOnBoard: 2 },
      })
      .expect(200);
    const { findings } = (body as { decisions: { findings: { rule: string; status: string }[] }[] })
      .decisions[0]!;
    return findings.find((finding) => finding.rule === rule)!.status;
  };
  for (const { rule, on } of own) {
    const before = new Date(Date.parse(on) - 86_400_000).toISOString().slice(0, 10);
    expect([rule, on, await statusOn(before, rule)]).toEqual([rule, on, 'met']);
    expect([rule, on, await statusOn(on, rule)]).not.toEqual([rule, on, 'met']);
  }
});

it('tells which booked flights a lapse stands in the way of, and only those after it', async () => {
  const booked = await ready.member
    .post('/bookings', {
      ...{ ...tomorrow, aircraftId: ready.aircraftId, purpose: 'passengers', personsOnBoard: 2 },
    })
    .set('Idempotency-Key', newId())
    .expect(201);
  const [row] = await api.sql<{ request: object; decision_id: string }>(
    'SELECT request, decision_id FROM bookings WHERE id = $1',
    [(booked.body as { id: string }).id],
  );
  const later = newId();
  const times = { departs: '2026-05-25T18:00:00Z', arrives: '2026-05-25T20:00:00Z' };
  await insertInto(api.sql, ready.club.clubId)('bookings', {
    ...{ id: later, kind: 'flight', aircraft_id: ready.aircraftId, member_id: ready.member.memberId },
    ...{ during: `[${times.departs},${times.arrives})`, expected_tenths: 20, decision_id: row!.decision_id },
    request: JSON.stringify({ ...row!.request, ...times }),
  });
  const lapse = ofMember(await board())!;
  expect(lapse.costs).toEqual([
    expect.objectContaining({
      bookingId: later,
      // With an instructor it may go on: landings are asked of who carries passengers.
      answer: 'dual-only',
      registration: 'NX101B',
      departs: times.departs,
    }),
  ]);
  const { text } = await officer
    .get('/safety/lapses/csv')
    .expect(200)
    .expect('content-type', /text\/csv/);
  expect(text).toMatch(/^\ufefflapses_on,in_days,member,requirement,rule,weight,aircraft,says,bookings_lost/);
  expect(text.split('\r\n').find((line) => line.includes(DAY_RECENCY))).toContain(
    '2026-05-22,73,Robin Member',
  );
});

it('asks the database as often for many members as for few', async () => {
  const { members } = await board();
  const statements = await leastQueries(api, () => board());
  for (let more = 0; more < 5; more += 1) await ready.makePilot((await ready.club.createMember()).memberId);
  expect((await board()).members).toBe(members + 5);
  expect(await leastQueries(api, () => board())).toBe(statements);
});

it('counts who lacks what today', async () => {
  const { lacking } = await board();
  // The officer and the instructor who signs have no papers on record.
  expect(lacking.find(({ rule }) => rule === DAY_RECENCY)!.members).toBe(2);
});

it('narrows to one aircraft and refuses what is none', async () => {
  expect(ofMember(await board(`?aircraftId=${ready.aircraftId}`))).toBeDefined();
  await officer.get(`/safety/lapses?aircraftId=${newId()}`).expect(404);
  for (const query of ['through=2026-03-10', 'through=2028-01-01']) {
    const { body } = await officer.get(`/safety/lapses?${query}`).expect(422);
    expect((body as { errors: { field: string }[] }).errors[0]!.field).toBe('through');
  }
  await officer.get('/safety/lapses?through=soon').expect(400);
  await ready.member.get('/safety/lapses').expect(403);
});

it('keeps an override under review without touching it', async () => {
  const [booking] = await api.sql<{ id: string; decision_id: string }>(
    'SELECT id, decision_id FROM bookings WHERE club_id = $1 LIMIT 1',
    [ready.club.clubId],
  );
  const id = newId();
  await insertInto(api.sql, ready.club.clubId)('overrides', {
    ...{ id, booking_id: booking!.id, decision_id: booking!.decision_id, rule_id: 'club.model-recency' },
    ...{ weight: 'club', officer_id: officer.memberId, reason: 'Flew with me last week' },
  });
  const list = async () => (await officer.get('/safety/overrides').expect(200)).body.items as object[];
  expect(await list()).toEqual([
    expect.objectContaining({ id, review: 'unplanned', reviewOn: null, memberName: 'Robin Member' }),
  ]);
  const at = `/safety/overrides/${id}/reviews`;
  await officer.post(at, {}).expect(422);
  await officer.post(at, { reviewOn: '2026-03-10' }).expect(422);
  expect((await officer.post(at, { reviewOn: '2026-03-20' }).expect(201)).body).toMatchObject({
    review: 'planned',
    reviewOn: '2026-03-20',
  });
  api.clock.set('2026-03-20T15:00:00Z');
  expect(await list()).toEqual([expect.objectContaining({ review: 'due' })]);
  expect((await officer.post(at, { finding: 'No remarks' }).expect(201)).body).toMatchObject({
    ...{ review: 'reviewed', reviewOn: null },
    reviews: [{ reviewOn: '2026-03-20' }, { finding: 'No remarks', reviewedBy: 'Olga Officer' }],
  });
  api.clock.set('2026-03-10T15:00:00Z');
  await ready.member.get('/safety/overrides').expect(403);
  await officer.post(`/safety/overrides/${newId()}/reviews`, { finding: 'No remarks' }).expect(404);
});

it('counts refusals by rule and week', async () => {
  const own = await readyClub(api);
  const watcher = await own.club.signInAs('safety-officer');
  const ask = (day: string) =>
    own.member
      .post('/decisions', {
        ...{ aircraftIds: [own.aircraftId], purpose: 'passengers', personsOnBoard: 2 },
        ...{ departs: `${day}T18:00:00Z`, arrives: `${day}T19:00:00Z` },
      })
      .expect(200);
  await ask('2026-03-12');
  const [refused] = (await ask('2026-06-12')).body.decisions as {
    findings: { rule: string; status: string; weight: string; conditions: string[] }[];
  }[];
  await ask('2026-06-13');
  const { body } = await watcher.get('/safety/refusals?from=2026-03-01').expect(200);
  // 10 March 2026 is a Tuesday.
  expect(body.asked).toEqual([
    { week: '2026-02-23', decisions: 0 },
    { week: '2026-03-02', decisions: 0 },
    { week: '2026-03-09', decisions: 3 },
  ]);
  const rule = (body.rules as { rule: string; weeks: unknown[] }[]).find((one) => one.rule === DAY_RECENCY)!;
  expect(rule).toMatchObject({ decisions: 2, members: 1 });
  expect(rule.weeks.at(-1)).toEqual({ week: '2026-03-09', decisions: 2 });
  // An unknown that comes with a condition, such as the weather, refuses nothing.
  const conditional = refused!.findings.filter(
    (one) => one.status === 'unknown' && one.conditions.length > 0,
  );
  expect(conditional.length).toBeGreaterThan(0);
  const inTheWay = refused!.findings.filter(
    (one) =>
      one.weight !== 'advice' &&
      !['met', 'not-applicable'].includes(one.status) &&
      !conditional.includes(one),
  );
  expect((body.rules as { rule: string }[]).map(({ rule: id }) => id).sort()).toEqual(
    inTheWay.map(({ rule: id }) => id).sort(),
  );
  const { text } = await watcher.get('/safety/refusals/csv').expect(200);
  expect(text).toContain(`${DAY_RECENCY},`);
  await watcher.get('/safety/refusals?from=2024-01-01').expect(422);
  await own.member.get('/safety/refusals').expect(403);
});
