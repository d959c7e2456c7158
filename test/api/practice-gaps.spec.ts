/** Practice gaps across the club: in numbers that agree with each member's own list, with nobody named, for officers alone. */
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { leastQueries } from '../support/least-queries.js';

let api: Api;
let ready: ReadyClub;
let officer: Session;
const pilots: Session[] = [];

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  officer = await ready.club.signInAs('safety-officer', { name: 'Olga Officer' });
  pilots.push(ready.member);
  for (const name of ['Quentin Marlowe', 'Ruth Oakley', 'Silas Verney', 'Tilda Wrexham', 'Ulric Yates']) {
    const pilot = await ready.club.signInAs('member', { name });
    await ready.makePilot(pilot.memberId);
    pilots.push(pilot);
  }
  for (const [index, pilot] of pilots.slice(0, 4).entries())
    await pilot
      .post(`/members/${pilot.memberId}/practice`, {
        ...{ manoeuvre: 'go_around', flownOn: index < 2 ? '2026-03-08' : '2025-09-01', night: false },
        measured: { altitudeDevFt: { least: 0, most: 0 }, airspeedDevKt: { least: 0, most: 3 } },
        note: 'Quentin says so',
      })
      .expect(201);
}, 60_000);
afterAll(() => api.stop());

interface Gap {
  key: string;
  members: number;
  never: number | null;
  rusty: number | null;
  fresh: number | null;
}
const gaps = async (query = '') =>
  (await officer.get(`/safety/practice-gaps${query}`).expect(200)).body as {
    members: number;
    rustFrom: number;
    gaps: Gap[];
  };

it("agrees with each member's own list", async () => {
  const { members, rustFrom, gaps: found } = await gaps();
  expect(members).toBe(pilots.length);
  const counted = new Map<string, { never: number; rusty: number; fresh: number }>();
  for (const pilot of pilots) {
    const { body } = await pilot.get(`/members/${pilot.memberId}/practice/rust`).expect(200);
    for (const { key, rust, lastGoodOn } of body.items) {
      const of = counted.get(key) ?? { never: 0, rusty: 0, fresh: 0 };
      of[lastGoodOn === null ? 'never' : rust >= rustFrom ? 'rusty' : 'fresh'] += 1;
      counted.set(key, of);
    }
  }
  expect(found).toHaveLength(counted.size);
  for (const { key, never, rusty, fresh } of found)
    expect([key, { never, rusty, fresh }]).toEqual([key, counted.get(key)]);
  expect(found.find(({ key }) => key === 'go_around|any')).toMatchObject({ never: 2, rusty: 2, fresh: 2 });
});

it('names nobody, not even by id or by what was noted', async () => {
  const answer = await officer.get('/safety/practice-gaps').expect(200);
  const csv = await officer.get('/safety/practice-gaps/csv').expect(200);
  expect(csv.text).toMatch(/^.?manoeuvre,condition,members,never,rusty,fresh,middle_days\r?\n/);
  expect(csv.text.trim().split('\n')).toHaveLength(answer.body.gaps.length + 1);
  const people = await api.sql<{ id: string; name: string }>(
    'SELECT id, name FROM members WHERE club_id = $1',
    [ready.club.clubId],
  );
  const records = await api.sql<{ id: string }>('SELECT id FROM practice_records WHERE club_id = $1', [
    ready.club.clubId,
  ]);
  for (const text of [JSON.stringify(answer.body), csv.text]) {
    for (const { id, name } of people) {
      expect(text).not.toContain(id);
      for (const part of name.split(' ')) expect(text).not.toContain(part);
    }
    for (const { id } of records) expect(text).not.toContain(id);
  }
});

it('is for officers', async () => {
  for (const role of ['instructor', 'maintenance-coordinator'] as const)
    await (await ready.club.signInAs(role)).get('/safety/practice-gaps').expect(403);
  await ready.member.get('/safety/practice-gaps').expect(403);
  await ready.member.get('/safety/practice-gaps/csv').expect(403);
});

it('asks the database as often for many members as for few', async () => {
  const before = await gaps();
  const statements = await leastQueries(api, () => gaps());
  for (let more = 0; more < 4; more += 1) await ready.makePilot((await ready.club.createMember()).memberId);
  expect((await gaps()).members).toBe(before.members + 4);
  expect(await leastQueries(api, () => gaps())).toBe(statements);
});

it('tells as of another day, and leaves out who is a member no more', async () => {
  const later = await gaps('?on=2027-03-10');
  expect(later.gaps.find(({ key }) => key === 'go_around|any')).toMatchObject({ fresh: 0, rusty: 4 });
  await api.sql("UPDATE members SET membership_through = '2026-12-31' WHERE id = $1", [pilots[5]!.memberId]);
  expect((await gaps('?on=2027-03-10')).members).toBe(later.members - 1);
  await officer.get('/safety/practice-gaps?on=soon').expect(400);
});
