/** Hazard and occurrence reports: who may read what, and that a confidential one leaves no name anywhere. */
import { startApi, type Api, type Session } from '../support/api.js';
import type { TestClub } from '../support/test-club.js';

let api: Api;
let club: TestClub;
let member: Session;
let other: Session;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  club = await api.createClub();
  member = await club.signInAs('member', { name: 'Mina Member' });
  other = await club.signInAs('instructor', { name: 'Otto Other' });
  officer = await club.signInAs('safety-officer', { name: 'Olga Officer' });
}, 60_000);
afterAll(() => api.stop());

const REPORT = {
  ...{ kind: 'hazard', happenedOn: '2026-03-09', title: 'Deer at the north end' },
  ...{ narrative: 'Two deer crossed the runway during the roll.', confidential: false },
};
const file = async (more: object = {}) =>
  (await member.post('/safety-reports', { ...REPORT, ...more }).expect(201)).body;

it('shows an open report to officers and to whoever made it', async () => {
  const filed = await file();
  expect(filed).toMatchObject({ state: 'open', reporterId: member.memberId, receipt: null, steps: [] });
  const { body } = await officer.get(`/safety-reports/${filed.id}`).expect(200);
  expect(body).toMatchObject({ reporterName: 'Mina Member', title: REPORT.title });
  await member.get(`/safety-reports/${filed.id}`).expect(200);
  await other.get(`/safety-reports/${filed.id}`).expect(403);
  const ids = async (who: Session): Promise<string[]> =>
    ((await who.get('/safety-reports').expect(200)).body.items as { id: string }[]).map(({ id }) => id);
  expect(await ids(officer)).toContain(filed.id);
  expect(await ids(member)).toContain(filed.id);
  expect(await ids(other)).toEqual([]);
});

it('keeps the name behind a confidential report nowhere in the database', async () => {
  const others = await api.sql<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'club_id'
      WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace`,
  );
  const namings = async (): Promise<number> => {
    let count = 0;
    for (const { name } of others) {
      const [row] = await api.sql<{ n: number }>(
        `SELECT count(*)::int AS n FROM ${name} t WHERE club_id = $1 AND t::text LIKE $2`,
        [club.clubId, `%${member.memberId}%`],
      );
      count += row!.n;
    }
    return count;
  };
  const before = await namings();
  const filed = await file({ confidential: true, title: 'Told in confidence' });
  expect(await namings()).toBe(before);
  expect(filed).toMatchObject({ reporterId: null, reporterName: null });
  const stored = JSON.stringify(await api.sql('SELECT * FROM safety_reports WHERE id = $1', [filed.id]));
  expect(stored).not.toContain(filed.receipt);
  const { body } = await officer.get(`/safety-reports/${filed.id}`).expect(200);
  expect(body).toMatchObject({ reporterId: null, reporterName: null, confidential: true });
  expect(JSON.stringify(body)).not.toContain(member.memberId);
  // Not even the reporter's own list or address: the service does not know.
  await member.get(`/safety-reports/${filed.id}`).expect(403);
  const receipt = await member.post('/safety-reports/by-receipt', { receipt: filed.receipt }).expect(200);
  expect(receipt.body).toEqual({
    ...{ state: 'open', finding: null, closedAt: null, title: 'Told in confidence', steps: [] },
  });
  await member.post('/safety-reports/by-receipt', { receipt: `${filed.receipt}x` }).expect(404);
  const abroad = await (await api.createClub()).signInAs('member');
  await abroad.post('/safety-reports/by-receipt', { receipt: filed.receipt }).expect(404);
});

it('is followed up step by step and closed with a finding', async () => {
  const { id } = await file();
  const at = `/safety-reports/${id}`;
  const step = { what: 'Mend the fence', responsibleId: other.memberId, dueOn: '2026-03-20' };
  await member.post(`${at}/steps`, step).expect(403);
  await officer.post(`${at}/steps`, { ...step, responsibleId: id }).expect(404);
  const { body: added } = await officer.post(`${at}/steps`, step).expect(201);
  expect(added).toMatchObject({ ...step, responsibleName: 'Otto Other', doneOn: null });
  const finding = 'The fence was down; it stands again.';
  expect((await officer.post(`${at}/close`, { finding }).expect(409)).body.code).toBe('report-steps-open');
  const stepAt = `${at}/steps/${added.id}`;
  const done = { doneOn: '2026-03-10', outcome: 'Mended' };
  await member.patch(stepAt, done, '"1"').expect(403);
  await other.patch(stepAt, { doneOn: '2026-03-10' }, '"1"').expect(422);
  await other.patch(stepAt, { ...done, doneOn: '2026-03-11' }, '"1"').expect(422);
  await other.patch(stepAt, done, '"7"').expect(412);
  await other.patch(stepAt, done, '"1"').expect(200);
  await officer.post(`${at}/close`, { finding: 'Short' }).expect(400);
  const { body: closed } = await officer.post(`${at}/close`, { finding }).expect(200);
  expect(closed).toMatchObject({ state: 'closed', finding, closedBy: officer.memberId });
  expect((await officer.post(`${at}/steps`, step).expect(409)).body.code).toBe('report-closed');
  await other.patch(stepAt, { outcome: 'Mended twice' }, '"2"').expect(409);
  const open = (await officer.get('/safety-reports?state=open').expect(200)).body.items as { id: string }[];
  expect(open.map((one) => one.id)).not.toContain(id);
});

it('refuses a day to come, an aircraft that is none, and says which field', async () => {
  const refused = await member.post('/safety-reports', { ...REPORT, happenedOn: '2026-03-11' }).expect(422);
  expect(refused.body.errors[0].field).toBe('happenedOn');
  await member.post('/safety-reports', { ...REPORT, aircraftId: member.memberId }).expect(404);
  await member.post('/safety-reports', { ...REPORT, kind: 'rumour' }).expect(400);
});
