import type { Api } from '../support/api.js';
import {
  AIRCRAFT_BODY,
  type FleetScene,
  fleetScene,
  NOBODY,
  problemOf,
  startFleetApi,
} from './fleet-scene.js';

const SIGNED = { signedBy: 'Mo Wrench, mechanic 0042' };
const FIX = { correctiveAction: 'Replaced the lamp', ...SIGNED };
const CLEAR = { finding: 'Ran it for ten minutes on the ground, no fault', ...SIGNED };
/** Every step of 14 CFR 91.213(d) as it has to be. */
const STEPS = {
  deferredOn: '2026-03-10',
  deadlineOn: '2026-04-10',
  requiredByTypeDesign: false,
  requiredByEquipmentList: false,
  requiredByDirective: false,
  removedOrDeactivated: true,
  placarded: true,
  recorded: true,
  noHazardDeterminedBy: 'Mo Wrench, mechanic 0042',
};

let api: Api;
let scene: FleetScene;
let squawks: string;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
  squawks = scene.path('/squawks');
}, 60_000);
afterAll(() => api.stop());

const report = async (more: object = {}): Promise<string> => {
  const { body } = await scene.member.post(squawks, { title: 'Landing light out', ...more }).expect(201);
  return `${squawks}/${body.id}`;
};
const equip = async (more: object = {}): Promise<string> => {
  const body = { kind: 'landing-light', name: 'Landing light', installedOn: '2020-05-01', ...more };
  return (await scene.coordinator.post(scene.path('/equipment'), body).expect(201)).body.id;
};

it.each(['member', 'instructor', 'safety-officer', 'maintenance-coordinator', 'administrator'] as const)(
  'takes a report from a %s',
  async (role) => {
    const person = await scene.club.signInAs(role);
    const { body, headers } = await person
      .post(squawks, { title: ' Nose wheel shimmies ', detail: 'Above 30 kt' })
      .expect(201);
    expect(headers['etag']).toBe('"1"');
    expect(body).toMatchObject({
      ...{
        title: 'Nose wheel shimmies',
        detail: 'Above 30 kt',
        equipmentId: null,
        state: 'reported',
        closedAt: null,
      },
      ...{
        reportedBy: person.memberId,
        reportedAt: '2026-03-10T15:00:00Z',
        deferral: null,
        aircraftId: scene.aircraftId,
      },
    });
  },
);

it('reads, lists newest first and filters', async () => {
  const own = await fleetScene(api);
  const at = own.path('/squawks');
  const ids: string[] = [];
  for (const title of ['One', 'Two', 'Three'])
    ids.push((await own.member.post(at, { title }).expect(201)).body.id);
  await own.coordinator.post(`${at}/${ids[1]}/fix`, FIX).expect(200);
  const titles = async (query: string) =>
    (await own.member.get(`${at}${query}`).expect(200)).body.items.map((one: { title: string }) => one.title);
  expect(await titles('')).toEqual(['Three', 'Two', 'One']);
  expect(await titles('?state=open')).toEqual(['Three', 'One']);
  expect(await titles('?state=fixed')).toEqual(['Two']);
  const first = await own.member.get(`${at}?limit=2`).expect(200);
  expect(await titles(`?limit=2&cursor=${first.body.nextCursor}`)).toEqual(['One']);
  expect((await own.member.get(`${at}/${ids[0]}`).expect(200)).body.title).toBe('One');
  await own.member.get(`${at}?state=broken`).expect(400);
});

it('is fixed with what was done and who signed', async () => {
  const at = await report();
  const { body } = await scene.coordinator.post(`${at}/fix`, FIX).expect(200);
  expect(body).toMatchObject({ state: 'fixed', closedAt: '2026-03-10T15:00:00Z', ...FIX });
  for (const missing of ['correctiveAction', 'signedBy']) {
    const refused = await scene.coordinator
      .post(`${await report()}/fix`, { ...FIX, [missing]: undefined })
      .expect(400);
    expect(problemOf(refused)).toEqual({ code: 'validation-failed', field: missing });
  }
});

describe('the states', () => {
  const act = (at: string, step: string) => {
    const bodies: Record<string, object> = { ground: {}, defer: STEPS, fix: FIX, 'no-fault-found': CLEAR };
    return scene.coordinator.post(`${at}/${step}`, bodies[step]);
  };

  it.each([
    [['ground', 'fix'], 'fixed'],
    [['ground', 'no-fault-found'], 'no-fault-found'],
    [['ground', 'defer', 'fix'], 'fixed'],
    [['defer', 'ground', 'defer', 'no-fault-found'], 'no-fault-found'],
    [['no-fault-found'], 'no-fault-found'],
  ])('go %j', async (steps, end) => {
    const at = await report();
    for (const step of steps) await act(at, step).expect(200);
    expect((await scene.member.get(at).expect(200)).body.state).toBe(end);
  });

  it.each([
    [['ground'], 'ground'],
    [['defer'], 'defer'],
    [['fix'], 'ground'],
    [['fix'], 'defer'],
    [['fix'], 'fix'],
    [['fix'], 'no-fault-found'],
    [['no-fault-found'], 'fix'],
  ])('do not go %j and then %s', async (steps, step) => {
    const at = await report();
    for (const done of steps) await act(at, done).expect(200);
    const before = (await scene.member.get(at).expect(200)).body;
    const refused = await act(at, step).expect(409);
    expect(problemOf(refused).code).toBe('squawk-state');
    expect(refused.body.detail).toMatch(/You can|new squawk/);
    expect((await scene.member.get(at).expect(200)).body).toEqual(before);
  });

  it('of one squawk change once when two decide at once', async () => {
    const at = await report();
    const both = await Promise.all([act(at, 'fix'), act(at, 'no-fault-found')]);
    expect(both.map(({ status }) => status).sort()).toEqual([200, 409]);
  });
});

describe('a deferral (14 CFR 91.213(d))', () => {
  it('keeps the steps as recorded', async () => {
    const at = await report({ equipmentId: await equip() });
    const { body } = await scene.coordinator.post(`${at}/defer`, STEPS).expect(200);
    expect(body).toMatchObject({
      state: 'deferred',
      closedAt: null,
      deferral: { ...STEPS, openSteps: [], rowVersion: 1 },
    });
    const read = await scene.member.get(`${at}/deferral`).expect(200);
    expect(read.headers['etag']).toBe('"1"');
    expect(read.body).toEqual(body.deferral);
  });

  it('leaves steps open that nobody recorded, and takes them later', async () => {
    const at = await report();
    const { body } = await scene.coordinator
      .post(`${at}/defer`, { deferredOn: '2026-03-10', placarded: true, recorded: false })
      .expect(200);
    expect(body.deferral).toMatchObject({
      requiredByDirective: null,
      noHazardDeterminedBy: null,
      deadlineOn: null,
    });
    expect(body.deferral.openSteps).toEqual([
      ...['requiredByTypeDesign', 'requiredByEquipmentList', 'requiredByDirective', 'removedOrDeactivated'],
      ...['recorded', 'noHazardDeterminedBy'],
    ]);
    const { deferredOn: _deferredOn, deadlineOn: _deadlineOn, ...steps } = STEPS;
    const edited = await scene.coordinator.patch(`${at}/deferral`, steps, '"1"').expect(200);
    expect(edited.body).toMatchObject({ openSteps: [], rowVersion: 2 });
    await scene.coordinator.patch(`${at}/deferral`, steps, '"1"').expect(412);
    await scene.coordinator.patch(`${at}/deferral`, steps).expect(428);
  });

  it.each([
    ['requiredByTypeDesign', true, 'deferral-not-allowed'],
    ['requiredByEquipmentList', true, 'deferral-not-allowed'],
    ['requiredByDirective', true, 'deferral-not-allowed'],
    ['removedOrDeactivated', false, 'deferral-step-missing'],
    ['placarded', false, 'deferral-step-missing'],
  ])('is refused with %s = %s', async (field, value, code) => {
    const at = await report();
    const refused = await scene.coordinator.post(`${at}/defer`, { ...STEPS, [field]: value }).expect(422);
    expect(problemOf(refused)).toEqual({ code, field });
    expect((await scene.member.get(at).expect(200)).body).toMatchObject({
      state: 'reported',
      deferral: null,
    });
    await scene.coordinator.post(`${at}/defer`, STEPS).expect(200);
    expect(
      problemOf(await scene.coordinator.patch(`${at}/deferral`, { [field]: value }, '"1"').expect(422)).code,
    ).toBe(code);
  });

  it('is refused for equipment recorded as required by the type design, whatever is claimed', async () => {
    const at = await report({
      equipmentId: await equip({
        name: 'Airspeed indicator',
        kind: 'airspeed-indicator',
        requiredByTypeDesign: true,
      }),
    });
    const refused = await scene.coordinator.post(`${at}/defer`, STEPS).expect(422);
    expect(problemOf(refused)).toEqual({ code: 'deferral-not-allowed', field: 'equipmentId' });
    expect(refused.body.detail).toContain('Airspeed indicator');
  });

  it('goes by the approved list alone where the aircraft has one (14 CFR 91.213(a))', async () => {
    const references = { modelId: scene.modelId, homeAirfieldId: scene.airfieldId };
    const listed = { ...AIRCRAFT_BODY, ...references, registration: 'XB-LIST', approvedEquipmentList: true };
    const { body: aircraft } = await scene.administrator.post('/aircraft', listed).expect(201);
    const { body: squawk } = await scene.member
      .post(`/aircraft/${aircraft.id}/squawks`, { title: 'Light' })
      .expect(201);
    const at = `/aircraft/${aircraft.id}/squawks/${squawk.id}`;
    const { body } = await scene.coordinator
      .post(`${at}/defer`, { deferredOn: '2026-03-10', requiredByTypeDesign: true })
      .expect(200);
    expect(body.deferral.openSteps).toEqual(['equipmentListItem']);
    const { body: edited } = await scene.coordinator
      .patch(`${at}/deferral`, { equipmentListItem: '33-4' }, '"1"')
      .expect(200);
    expect(edited.openSteps).toEqual([]);
  });

  it('is withdrawn when the aircraft is grounded, and stays on record when it is fixed', async () => {
    const grounded = await report();
    await scene.coordinator.post(`${grounded}/defer`, STEPS).expect(200);
    expect((await scene.coordinator.post(`${grounded}/ground`).expect(200)).body.deferral).toBeNull();
    await scene.member.get(`${grounded}/deferral`).expect(404);
    const fixed = await report();
    await scene.coordinator.post(`${fixed}/defer`, STEPS).expect(200);
    expect((await scene.coordinator.post(`${fixed}/fix`, FIX).expect(200)).body.deferral).toMatchObject(
      STEPS,
    );
    expect(
      problemOf(await scene.coordinator.patch(`${fixed}/deferral`, { placarded: true }, '"1"').expect(409))
        .code,
    ).toBe('squawk-state');
  });

  it('has a deadline on or after its day', async () => {
    const refused = await scene.coordinator
      .post(`${await report()}/defer`, { ...STEPS, deadlineOn: '2026-03-09' })
      .expect(422);
    expect(problemOf(refused)).toEqual({ code: 'value-refused', field: 'deadlineOn' });
  });
});

it('is reworded, or given its equipment, while it is open', async () => {
  const at = await report();
  const equipmentId = await equip();
  const { body } = await scene.coordinator.patch(at, { equipmentId }, '"1"').expect(200);
  expect(body).toMatchObject({ title: 'Landing light out', equipmentId, rowVersion: 2 });
  await scene.coordinator.patch(at, { title: 'X' }, '"1"').expect(412);
  await scene.coordinator.patch(at, { title: 'X' }).expect(428);
  await scene.coordinator.post(`${at}/fix`, FIX).expect(200);
  expect(problemOf(await scene.coordinator.patch(at, { title: 'X' }, '"3"').expect(409)).code).toBe(
    'squawk-state',
  );
});

it('is about equipment of the same aircraft', async () => {
  const other = await fleetScene(api);
  const foreign = (
    await other.coordinator
      .post(other.path('/equipment'), { kind: 'clock', name: 'Clock', installedOn: '2020-01-01' })
      .expect(201)
  ).body.id;
  for (const equipmentId of [foreign, NOBODY]) {
    expect(problemOf(await scene.member.post(squawks, { title: 'X', equipmentId }).expect(422))).toEqual({
      code: 'value-refused',
      field: 'equipmentId',
    });
    expect(
      problemOf(await scene.coordinator.patch(await report(), { equipmentId }, '"1"').expect(422)).field,
    ).toBe('equipmentId');
  }
});

it.each([
  [{ title: '' }, 'title'],
  [{ title: 'x'.repeat(201) }, 'title'],
  [{ title: 5 }, 'title'],
  [{ detail: null }, 'detail'],
  [{ equipmentId: 'light' }, 'equipmentId'],
  [{ state: 'fixed' }, 'state'],
  [{ reportedBy: NOBODY }, 'reportedBy'],
])('refuses a report with %j', async (change, field) => {
  expect(problemOf(await scene.member.post(squawks, { title: 'X', ...change }).expect(400))).toEqual({
    code: 'validation-failed',
    field,
  });
});

it('refuses bad steps and zero bytes', async () => {
  const at = await report();
  for (const [change, field] of [
    [{ deferredOn: '2026-02-30' }, 'deferredOn'],
    [{ placarded: 'yes' }, 'placarded'],
    [{ hazard: 'none' }, 'hazard'],
  ] as const) {
    expect(
      problemOf(await scene.coordinator.post(`${at}/defer`, { ...STEPS, ...change }).expect(400)),
    ).toEqual({ code: 'validation-failed', field });
  }
  expect(problemOf(await scene.member.post(squawks, { title: 'a\0' }).expect(400)).code).toBe('nul-byte');
});

it.each(['member', 'instructor', 'safety-officer', 'administrator'] as const)(
  'is not triaged by a %s',
  async (role) => {
    const at = await report();
    const person = await scene.club.signInAs(role);
    for (const attempt of [
      person.post(`${at}/ground`),
      person.post(`${at}/defer`, STEPS),
      person.post(`${at}/fix`, FIX),
      person.post(`${at}/no-fault-found`, CLEAR),
      person.patch(at, { title: 'X' }, '"1"'),
      person.patch(`${at}/deferral`, {}, '"1"'),
    ]) {
      expect(problemOf(await attempt.expect(403))).toEqual({ code: 'role-needed' });
    }
  },
);

it('answers 404 below another aircraft or in another club', async () => {
  const at = await report();
  const id = at.split('/').at(-1)!;
  const references = { modelId: scene.modelId, homeAirfieldId: scene.airfieldId };
  const { body: second } = await scene.administrator
    .post('/aircraft', { ...AIRCRAFT_BODY, ...references, registration: 'XB-SEC' })
    .expect(201);
  await scene.member.get(`/aircraft/${second.id}/squawks/${id}`).expect(404);
  await scene.coordinator.post(`/aircraft/${second.id}/squawks/${id}/fix`, FIX).expect(404);
  const stranger = await (await api.createClub()).signInAs('maintenance-coordinator');
  await stranger.get(at).expect(404);
  await stranger.get(squawks).expect(404);
  await stranger.post(squawks, { title: 'X' }).expect(404);
  await stranger.patch(at, { title: 'X' }, '"1"').expect(404);
  for (const [step, body] of [
    ['ground', {}],
    ['defer', STEPS],
    ['fix', FIX],
    ['no-fault-found', CLEAR],
  ] as const) {
    await stranger.post(`${at}/${step}`, body).expect(404);
  }
  await stranger.get(`${at}/deferral`).expect(404);
});
