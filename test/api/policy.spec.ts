import { writeStartingPolicy } from '../../src/clubs/policy/starting-values.js';
import { POLICY_PARAMETERS } from '../../src/rules/index.js';
import type { Api, Session, TestClub } from '../support/api.js';
import { NOBODY, problemOf, startFleetApi } from './fleet-scene.js';

// The clock stands at 2026-03-10T15:00:00Z: the tenth of March in Chicago.
const DAYS = 'club.model-recency.days';
const REFERENCE = 'Committee minutes of 2 March 2026, item 4';

let api: Api;
let club: TestClub;
let administrator: Session;

interface Value {
  id: string;
  value: unknown;
  validFrom: string;
  state: string;
}

beforeAll(async () => {
  api = await startFleetApi();
}, 60_000);
beforeEach(async () => {
  club = await api.createClub();
  administrator = await club.signInAs('administrator');
  await withEntities((em) => writeStartingPolicy(em, club.clubId));
});
afterAll(() => api.stop());

/** The service's own data source knows the entities. */
async function withEntities(work: Parameters<typeof api.database.tenantDb.run>[1]): Promise<void> {
  const { TenantDb } = await import('../../src/platform/database/tenant.js');
  await api.app.get(TenantDb, { strict: false }).run(club.clubId, work);
}

const parameter = async (id: string, query = '') => {
  const { body } = await administrator.get(`/policy/parameters${query}`).expect(200);
  return body.items.find((one: { id: string }) => one.id === id) as {
    inForce: Value | null;
    history: Value[];
    valueType: string;
  };
};
const set = (value: unknown, validFrom = '2026-04-01', parameterId = DAYS) =>
  administrator.post('/policy/values', { parameterId, validFrom, value, reference: REFERENCE });

it('shows every parameter with the value a new club starts with', async () => {
  const member = await club.signInAs('member');
  const { body } = await member.get('/policy/parameters').expect(200);
  expect(body.asOf).toBe('2026-03-10');
  expect(body.items.map((one: { id: string }) => one.id)).toEqual(POLICY_PARAMETERS.map(({ id }) => id));
  for (const one of body.items)
    expect(one.inForce).toMatchObject({ state: 'in-force', validFrom: '2000-01-01' });
  expect(await parameter(DAYS)).toMatchObject({ valueType: 'number', inForce: { value: 60 } });
});

it('takes a value from a day on, and keeps the history', async () => {
  const added = await set(45).expect(201);
  expect(added.headers['etag']).toBe('"1"');
  expect(added.body).toMatchObject({
    parameterId: DAYS,
    value: 45,
    validFrom: '2026-04-01',
    reference: REFERENCE,
    state: 'to-come',
  });
  expect((await parameter(DAYS)).inForce).toMatchObject({ value: 60 });
  expect((await parameter(DAYS)).history.map(({ value, state }) => [value, state])).toEqual([
    [60, 'in-force'],
    [45, 'to-come'],
  ]);
  expect((await parameter(DAYS, '?asOf=2026-03-31')).inForce).toMatchObject({ value: 60 });
  expect((await parameter(DAYS, '?asOf=2026-04-01')).inForce).toMatchObject({ value: 45 });
  expect((await parameter(DAYS, '?asOf=2026-04-01')).history[0]).toMatchObject({ state: 'past' });
});

it('ends a parameter with null: then no value is in force', async () => {
  await set(null, '2026-03-10').expect(201);
  const { inForce, history } = await parameter(DAYS);
  expect(inForce).toBeNull();
  expect(history).toHaveLength(2);
});

it("says 'today' by the club's zone", async () => {
  const pacific = await api.createClub({ zone: 'Pacific/Auckland' });
  const boss = await pacific.signInAs('administrator');
  const { body } = await boss.get('/policy/parameters').expect(200);
  // 2026-03-10T15:00Z is the eleventh there (UTC+13 until April).
  expect(body.asOf).toBe('2026-03-11');
  const refused = await boss
    .post('/policy/values', { parameterId: DAYS, validFrom: '2026-03-10', value: 3, reference: REFERENCE })
    .expect(422);
  expect(problemOf(refused)).toEqual({ code: 'policy-value-backdated', field: 'validFrom' });
});

it('changes and takes back a value that is not yet in force', async () => {
  const { body } = await set(45).expect(201);
  const at = `/policy/values/${body.id}`;
  const edited = await administrator.patch(at, { value: 50, validFrom: '2026-05-01' }, '"1"').expect(200);
  expect(edited.body).toMatchObject({
    value: 50,
    validFrom: '2026-05-01',
    reference: REFERENCE,
    rowVersion: 2,
  });
  await administrator.patch(at, { value: 51 }, '"1"').expect(412);
  await administrator.patch(at, { value: 51 }).expect(428);
  expect(problemOf(await administrator.patch(at, { value: true }, '"2"').expect(422))).toEqual({
    code: 'policy-value-type',
    field: 'value',
  });
  expect(problemOf(await administrator.patch(at, { validFrom: '2026-03-09' }, '"2"').expect(422)).code).toBe(
    'policy-value-backdated',
  );
  expect(
    problemOf(await administrator.patch(at, { parameterId: 'club.annual-check.days' }, '"2"').expect(400)),
  ).toEqual({ code: 'validation-failed', field: 'parameterId' });
  await administrator.delete(at).expect(428);
  await administrator.delete(at, '"1"').expect(412);
  await administrator.delete(at, '"2"').expect(204);
  expect((await parameter(DAYS)).history).toHaveLength(1);
});

it('keeps a value that is in force', async () => {
  const { body } = await set(45, '2026-03-10').expect(201);
  expect(body.state).toBe('in-force');
  const at = `/policy/values/${body.id}`;
  const refused = await administrator.patch(at, { value: 50 }, '"1"').expect(409);
  expect(problemOf(refused).code).toBe('policy-value-in-force');
  expect(refused.body.detail).toMatch(/Add a new value/);
  expect(problemOf(await administrator.delete(at, '"1"').expect(409)).code).toBe('policy-value-in-force');
});

it.each([
  ['club.no-such-thing', 'policy-parameter-unknown'],
  ['us.passenger-recency.days', 'policy-parameter-is-law'],
])('refuses parameter %s and names it', async (id, code) => {
  const response = await set(1, '2026-04-01', id).expect(422);
  expect(problemOf(response)).toEqual({ code, field: 'parameterId' });
  expect(response.body.detail).toContain(`'${id}'`);
});

it.each([
  [DAYS, '45'],
  [DAYS, 1.5],
  [DAYS, -1],
  [DAYS, true],
  [DAYS, 1e9],
  [DAYS, { days: 45 }],
  [DAYS, [45]],
  [DAYS, undefined],
  ['club.booking-length.local-hours', -0.5],
  ['club.model-checkout.required', 1],
  ['club.model-checkout.required', 'true'],
])('refuses %s = %j', async (id, value) => {
  const response = await set(value, '2026-04-01', id).expect(422);
  expect(problemOf(response)).toEqual({ code: 'policy-value-type', field: 'value' });
  expect(response.body.detail).toContain(id);
});

it('takes fractions of hours', async () => {
  await set(7.5, '2026-04-01', 'club.booking-length.local-hours').expect(201);
  expect(await parameter('club.booking-length.local-hours', '?asOf=2026-04-01')).toMatchObject({
    inForce: { value: 7.5 },
  });
});

it.each([
  [{ validFrom: '2026-02-30' }, 'validFrom'],
  [{ validFrom: '1 April' }, 'validFrom'],
  [{ reference: '  ' }, 'reference'],
  [{ reference: undefined }, 'reference'],
  [{ parameterId: 5 }, 'parameterId'],
  [{ until: '2026-05-01' }, 'until'],
])('refuses %j', async (change, field) => {
  const body = { parameterId: DAYS, validFrom: '2026-04-01', value: 45, reference: REFERENCE, ...change };
  expect(problemOf(await administrator.post('/policy/values', body).expect(400))).toEqual({
    code: 'validation-failed',
    field,
  });
});

it('refuses a second value of one day, a day that does not exist in the query, and zero bytes', async () => {
  await set(45).expect(201);
  expect(problemOf(await set(46).expect(409))).toEqual({
    code: 'policy-value-already-there',
    field: 'validFrom',
  });
  expect(problemOf(await administrator.get('/policy/parameters?asOf=2026-02-30').expect(400)).field).toBe(
    'asOf',
  );
  const zero = { parameterId: DAYS, validFrom: '2026-04-01', value: 'a\0', reference: REFERENCE };
  expect(problemOf(await administrator.post('/policy/values', zero).expect(400)).code).toBe('nul-byte');
});

it("does not see or touch another club's values", async () => {
  const { body } = await set(45).expect(201);
  const stranger = await (await api.createClub()).signInAs('administrator');
  await stranger.patch(`/policy/values/${body.id}`, { value: 1 }, '"1"').expect(404);
  await stranger.delete(`/policy/values/${body.id}`, '"1"').expect(404);
  await stranger.delete(`/policy/values/${NOBODY}`, '"1"').expect(404);
  const { body: seen } = await stranger.get('/policy/parameters').expect(200);
  for (const one of seen.items) expect(one).toMatchObject({ inForce: null, history: [] });
});

it.each(['member', 'instructor', 'safety-officer', 'maintenance-coordinator'] as const)(
  'lets a %s read and not write',
  async (role) => {
    const { body } = await set(45).expect(201);
    const person = await club.signInAs(role);
    await person.get('/policy/parameters').expect(200);
    for (const attempt of [
      person.post('/policy/values', {
        parameterId: DAYS,
        validFrom: '2026-06-01',
        value: 1,
        reference: REFERENCE,
      }),
      person.patch(`/policy/values/${body.id}`, { value: 1 }, '"1"'),
      person.delete(`/policy/values/${body.id}`, '"1"'),
    ]) {
      expect(problemOf(await attempt.expect(403))).toEqual({ code: 'role-needed' });
    }
  },
);

it('tells officers who changed a parameter, when, and how', async () => {
  const officer = await club.signInAs('safety-officer', { name: 'Olive Officer' });
  const { body } = await set(45).expect(201);
  const at = `/policy/values/${body.id}`;
  await administrator.patch(at, { value: 50 }, '"1"').expect(200);
  await administrator.delete(at, '"2"').expect(204);
  await set(null, '2026-05-01').expect(201);
  const changes = await officer.get(`/policy/parameters/${DAYS}/changes`).expect(200);
  const who = { memberId: administrator.memberId, memberName: administrator.name };
  const value = (of: number | null, validFrom = '2026-04-01') => ({
    validFrom,
    value: of,
    reference: REFERENCE,
  });
  expect(changes.body.items).toMatchObject([
    { action: 'set', ...who, before: null, after: value(null, '2026-05-01') },
    { action: 'taken-back', ...who, before: value(50), after: null },
    { action: 'changed', ...who, before: value(45), after: value(50) },
    { action: 'set', ...who, before: null, after: value(45) },
    {
      action: 'set',
      memberId: null,
      memberName: null,
      before: null,
      after: { validFrom: '2000-01-01', value: 60 },
    },
  ]);
  expect(changes.body.items[0].at).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
  await officer.get('/policy/parameters/us.passenger-recency.days/changes').expect(404);
  await officer.get('/policy/parameters/club.nothing/changes').expect(404);
  await (await club.signInAs('instructor')).get(`/policy/parameters/${DAYS}/changes`).expect(403);
  const other = await (await api.createClub()).signInAs('administrator');
  expect((await other.get(`/policy/parameters/${DAYS}/changes`).expect(200)).body.items).toEqual([]);
});
