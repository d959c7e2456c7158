import { type Api, NOW, type Session, startApi, type TestClub } from '../support/api.js';
import { teach } from '../support/teach.js';

let api: Api;
let club: TestClub;
let admin: Session;
let member: Session;

beforeAll(async () => {
  api = await startApi();
  club = await api.createClub();
  admin = await club.signInAs('administrator', { name: 'Ada Field' });
  member = await club.signInAs('member', { name: 'Mo Field' });
});
afterAll(() => api.stop());

let count = 0;
const draft = (values: object = {}) => ({
  name: 'Wren Ashdown',
  email: `wren-${(count += 1)}@larkfield.example`,
  membershipFrom: '2026-01-01',
  roles: ['member'],
  ...values,
});

describe('administrators', () => {
  it('take members in, in good standing from today in the club zone', async () => {
    api.clock.set('2026-03-11T03:00:00Z'); // still the 10th in Chicago
    const sent = draft({
      email: 'Wren@Larkfield.example',
      birthDate: '1988-02-29',
      membershipThrough: '2026-12-31',
      roles: ['member', 'instructor'],
    });
    const { body, headers } = await admin.post('/members', sent).expect(201);
    api.clock.set(NOW);
    expect(body).toEqual({
      ...sent,
      id: expect.any(String),
      email: 'wren@larkfield.example',
      roles: ['instructor', 'member'],
      standing: 'good',
      standingSince: '2026-03-10',
      rowVersion: 1,
    });
    expect(headers['etag']).toBe('"1"');
    expect((await admin.get(`/members/${body.id}`).expect(200)).body).toEqual(body);
  });

  it('change them, account address and roles included; roles alone make a new version', async () => {
    const other = await club.signInAs('member');
    const path = `/members/${other.memberId}`;
    const { body } = await admin
      .patch(path, { email: 'Renamed@larkfield.example', birthDate: null }, '"1"')
      .expect(200);
    expect(body).toMatchObject({
      email: 'renamed@larkfield.example',
      birthDate: null,
      name: other.name,
      rowVersion: 2,
    });
    expect(await api.sql('SELECT email FROM accounts WHERE id = $1', [other.accountId])).toEqual([
      { email: 'renamed@larkfield.example' },
    ]);
    const roles = await admin.patch(path, { roles: ['safety-officer'] }, '"2"').expect(200);
    expect(roles.body).toMatchObject({ roles: ['safety-officer'], rowVersion: 3 });
    await admin.patch(path, { roles: ['member'] }, '"2"').expect(412);
    await admin.patch(path, { roles: ['member'] }).expect(428);
  });

  it('leave the audit log with who did it', async () => {
    const { body } = await admin.post('/members', draft()).expect(201);
    const rows = await api.sql(
      `SELECT actor_id AS by, action, table_name AS what FROM audit_log WHERE after->>'id' = $1 OR after->>'member_id' = $1 ORDER BY id`,
      [body.id],
    );
    expect(rows).toEqual([
      { by: admin.memberId, action: 'insert', what: 'members' },
      { by: admin.memberId, action: 'insert', what: 'member_roles' },
    ]);
  });

  it('never leave the club without an administrator, not even both at once', async () => {
    for (let round = 0; round < 3; round += 1) {
      const lonely = await api.createClub();
      const both = [
        await lonely.signInAs(['administrator', 'member']),
        await lonely.signInAs('administrator'),
      ];
      // Both are held up at the same point and let go together.
      await api.sql('BEGIN');
      await api.sql('SELECT 1 FROM members WHERE club_id = $1 FOR UPDATE', [lonely.clubId]);
      const asked = Promise.all(
        both.map((by) => by.patch(`/members/${by.memberId}`, { roles: ['member'] }, '"1"')),
      );
      await untilWaiting(2);
      await api.sql('COMMIT');
      const answers = await asked;
      expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
      const refused = answers.find(({ status }) => status === 409)!.body;
      expect(refused).toMatchObject({ code: 'last-administrator', errors: [{ field: 'roles' }] });
    }
  });
});

/** Waits until so many transactions queue for a lock. */
async function untilWaiting(count: number): Promise<void> {
  for (let turn = 0; turn < 200; turn += 1) {
    const [row] = await api.sql<{ n: number }>(
      'SELECT count(DISTINCT pid)::int AS n FROM pg_locks WHERE NOT granted',
    );
    if (row!.n >= count) return;
    await new Promise((done) => setTimeout(done, 20));
  }
  throw new Error(`fewer than ${count} transactions wait`);
}

describe('standing', () => {
  it('is set by a safety officer', async () => {
    const officer = await club.signInAs('safety-officer');
    const path = `/members/${(await club.createMember()).memberId}/standing`;
    const { body } = await officer
      .patch(path, { standing: 'arrears', since: '2026-03-01' }, '"1"')
      .expect(200);
    expect(body).toMatchObject({ standing: 'arrears', standingSince: '2026-03-01', rowVersion: 2 });
    await officer.patch(path, { standing: 'good', since: '2026-03-01' }, '"1"').expect(412);
    await officer.patch(path, { standing: 'banned', since: '2026-02-30' }, '"2"').expect(400);
    await member.patch(path, { standing: 'good', since: '2026-03-01' }, '"2"').expect(403);
  });
});

describe('privacy', () => {
  it('shows members their own record, and of others the name only', async () => {
    expect((await member.get(`/members/${member.memberId}`).expect(200)).body.email).toBe(member.email);
    expect((await member.get(`/members/${admin.memberId}`).expect(403)).body.code).toBe('not-yours');
    await member.get('/members').expect(403);
    const { body } = await member.get('/members/names').expect(200);
    for (const item of body.items) expect(Object.keys(item).sort()).toEqual(['id', 'instructor', 'name']);
    expect(body.items.map(({ id }: { id: string }) => id)).toContain(admin.memberId);
  });

  it('lets officers read all, an instructor their students, coordinators names only', async () => {
    for (const role of ['safety-officer', 'administrator'] as const) {
      const reader = await club.signInAs(role);
      await reader.get('/members').expect(200);
      await reader.get(`/members/${member.memberId}`).expect(200);
    }
    const instructor = await club.signInAs('instructor');
    await instructor.get('/members').expect(403);
    expect((await instructor.get(`/members/${member.memberId}`).expect(403)).body.code).toBe('not-yours');
    await teach(api, {
      ...{ clubId: club.clubId, instructorId: instructor.memberId, memberId: member.memberId },
    });
    await instructor.get(`/members/${member.memberId}`).expect(200);
    const coordinator = await club.signInAs('maintenance-coordinator');
    await coordinator.get('/members').expect(403);
    await coordinator.get('/members/names').expect(200);
  });

  it('lets nobody but administrators write', async () => {
    for (const role of ['member', 'instructor', 'safety-officer', 'maintenance-coordinator'] as const) {
      const other = await club.signInAs(role);
      expect((await other.post('/members', draft()).expect(403)).body.code).toBe('role-needed');
      await other.patch(`/members/${other.memberId}`, { roles: ['administrator'] }, '"1"').expect(403);
    }
    await api.http.get('/api/v1/members/names').expect(401);
  });
});

describe('lists', () => {
  it('page by name, namesakes included, each once', async () => {
    const own = await api.createClub();
    const by = await own.signInAs('administrator', { name: 'zoe' });
    for (const name of ['Bea', 'bea', 'Ann', 'Éva', 'Bea'])
      await own.createMember(name === 'Ann' ? 'instructor' : 'member', { name });
    const all = await by.all<{ id: string; name: string }>('/members?limit=2');
    expect(all.map(({ name }) => name.toLowerCase())).toEqual(['ann', 'bea', 'bea', 'bea', 'zoe', 'éva']);
    expect(new Set(all.map(({ id }) => id)).size).toBe(6);
    const instructors = await by.get('/members/names?instructor=true').expect(200);
    expect(instructors.body.items).toEqual([{ id: expect.any(String), name: 'Ann', instructor: true }]);
    await by.get('/members/names?instructor=perhaps').expect(400);
    await by.get('/members?limit=0').expect(400);
    await by.get('/members?cursor=nonsense').expect(400);
  });
});

describe('other clubs', () => {
  it('do not exist', async () => {
    const elsewhere = await api.createClub();
    const stranger = await elsewhere.createMember();
    const unknown = '01900000-0000-7000-8000-000000000000';
    const [theirs, nobody] = await Promise.all(
      [stranger.memberId, unknown].map((id) => admin.get(`/members/${id}`).expect(404)),
    );
    expect(theirs!.body.detail).toBe(nobody!.body.detail);
    await admin.patch(`/members/${stranger.memberId}`, { name: 'Taken Over' }, '"1"').expect(404);
    await admin
      .patch(`/members/${stranger.memberId}/standing`, { standing: 'good', since: '2026-01-01' }, '"1"')
      .expect(404);
    const { body } = await admin.get('/members?limit=200');
    expect(body.items.map(({ id }: { id: string }) => id)).not.toContain(stranger.memberId);
    // The same address may be a member of two clubs.
    const twice = draft({ email: stranger.email });
    await admin.post('/members', twice).expect(201);
    expect((await admin.post('/members', twice).expect(409)).body).toMatchObject({
      code: 'email-taken',
      errors: [{ field: 'email' }],
    });
  });
});

describe('bad input', () => {
  it.each([
    ['unknown field', { admin: true }, 'admin'],
    ['wrong type', { name: 7 }, 'name'],
    ['blank name', { name: '   ' }, 'name'],
    ['long name', { name: 'x'.repeat(121) }, 'name'],
    ['no address', { email: 'wren at larkfield' }, 'email'],
    ['impossible date', { birthDate: '1990-02-30' }, 'birthDate'],
    ['instant for a date', { membershipFrom: '2026-01-01T00:00:00Z' }, 'membershipFrom'],
    ['null for what must be there', { membershipFrom: null }, 'membershipFrom'],
    ['unknown role', { roles: ['owner'] }, 'roles'],
    ['no role', { roles: [] }, 'roles'],
    ['a role twice', { roles: ['member', 'member'] }, 'roles'],
    ['zero byte', { name: 'Wren\u0000' }, 'name'],
  ])('%s', async (_what, values, field) => {
    const { body } = await admin.post('/members', draft(values)).expect(400);
    expect(body.errors.map((e: { field: string }) => e.field)).toContain(field);
    expect(JSON.stringify(body)).not.toMatch(/ at .*\.(ts|js):/);
  });

  it('end before beginning, or null in an edit', async () => {
    const { body } = await admin.post('/members', draft({ membershipThrough: '2025-12-31' })).expect(422);
    expect(body).toMatchObject({ code: 'value-refused', errors: [{ field: 'membershipThrough' }] });
    await admin.patch(`/members/${member.memberId}`, { name: null }, '"1"').expect(400);
    await admin.get('/members/not-an-id').expect(400);
  });
});
