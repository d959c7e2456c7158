/** Equipment, registrations, permits, differences, airworthiness items: the same routes, held to the same rules. */
import type { Api } from '../support/api.js';
import {
  AIRCRAFT_BODY,
  type FleetScene,
  fleetScene,
  NOBODY,
  problemOf,
  startFleetApi,
} from './fleet-scene.js';

let api: Api;
let scene: FleetScene;
let secondAircraft: string;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
  const body = {
    ...AIRCRAFT_BODY,
    registration: 'XB-202',
    modelId: scene.modelId,
    homeAirfieldId: scene.airfieldId,
  };
  secondAircraft = (await scene.administrator.post('/aircraft', body).expect(201)).body.id;
}, 60_000);
afterAll(() => api.stop());

interface Kind {
  path: string;
  body: Record<string, unknown>;
  /** What an answer has beside the body. */
  defaults: Record<string, unknown>;
  change: Record<string, unknown>;
  /** Refused by validation: change and field. */
  bad: [Record<string, unknown>, string][];
  /** Refused as impossible. */
  impossible: [Record<string, unknown>, string][];
}

const KINDS: Kind[] = [
  {
    path: 'equipment',
    body: { kind: 'attitude-indicator', name: 'Attitude indicator', installedOn: '2019-04-02' },
    defaults: {
      removedOn: null,
      basis: 'type-design',
      portable: false,
      requiredByTypeDesign: false,
      satisfies: [],
      ...{ partNumber: null, serialNumber: null, weightLb: null, armIn: null, document: null },
      ...{ installedByChange: null, removedByChange: null },
    },
    change: { removedOn: '2026-03-01', satisfies: ['heading-indicator', 'slip-skid'] },
    bad: [
      [{ kind: 'periscope' }, 'kind'],
      [{ name: '' }, 'name'],
      [{ installedOn: '2019-02-29' }, 'installedOn'],
      [{ basis: 'hope' }, 'basis'],
      [{ satisfies: ['periscope'] }, 'satisfies'],
      [{ satisfies: null }, 'satisfies'],
      [{ portable: true }, 'portable'],
    ],
    impossible: [[{ removedOn: '2019-04-01' }, 'removedOn']],
  },
  {
    path: 'registrations',
    body: { issuedOn: '2022-05-10' },
    defaults: { printedExpiryOn: null, endedOn: null },
    change: { printedExpiryOn: '2029-05-31' },
    bad: [
      [{ issuedOn: undefined }, 'issuedOn'],
      [{ endedOn: 'soon' }, 'endedOn'],
      [{ owner: 'Club' }, 'owner'],
    ],
    impossible: [[{ endedOn: '2022-05-09' }, 'endedOn']],
  },
  {
    path: 'permits',
    body: {
      validFrom: '2026-03-10',
      validThrough: '2026-03-12',
      purpose: 'Ferry to the workshop at Heron Point',
    },
    defaults: {},
    change: { validThrough: '2026-03-14' },
    bad: [
      [{ purpose: ' ' }, 'purpose'],
      [{ validThrough: '2026-04-31' }, 'validThrough'],
      [{ validFrom: null }, 'validFrom'],
    ],
    impossible: [[{ validThrough: '2026-03-09' }, 'validThrough']],
  },
  {
    path: 'differences',
    body: { title: 'Two-screen panel', since: '2026-02-01', equipmentGroup: 'glass panel' },
    defaults: { endedOn: null, changeId: null },
    change: { endedOn: '2026-03-01' },
    bad: [
      [{ title: 5 }, 'title'],
      [{ since: '2026-13-01' }, 'since'],
      [{ equipmentGroup: undefined }, 'equipmentGroup'],
    ],
    impossible: [[{ endedOn: '2026-01-31' }, 'endedOn']],
  },
  {
    path: 'items',
    body: {
      kind: 'directive',
      title: 'Exhaust inspection',
      scope: 'all',
      reference: 'Directive 2019-07-11',
      intervalH: 50.5,
    },
    defaults: {
      since: null,
      ...{
        calendarMonths: null,
        plainMonths: null,
        days: null,
        fixedDueOn: null,
        fixedDueH: null,
        toleranceH: 0,
      },
      ...{
        recurring: true,
        ferryProhibited: false,
        directiveId: null,
        equipmentId: null,
        retiredOn: null,
        lastCompliance: null,
      },
    },
    change: { calendarMonths: 12, toleranceH: 0.1, intervalH: 100, fixedDueH: 1200.5 },
    bad: [
      [{ kind: 'wash' }, 'kind'],
      [{ scope: 'sundays' }, 'scope'],
      [{ intervalH: -1 }, 'intervalH'],
      [{ intervalH: 1.55 }, 'intervalH'],
      [{ calendarMonths: 0 }, 'calendarMonths'],
      [{ days: 1.5 }, 'days'],
      [{ toleranceH: null }, 'toleranceH'],
      [{ equipmentId: 'pump' }, 'equipmentId'],
      [{ intervalTenths: 5 }, 'intervalTenths'],
    ],
    impossible: [
      [{ intervalH: 0 }, 'intervalH'],
      [{ fixedDueH: 0 }, 'fixedDueH'],
      [{ equipmentId: NOBODY }, 'equipmentId'],
    ],
  },
];

describe.each(KINDS)('$path', ({ path, body, defaults, change, bad, impossible }) => {
  const at = (aircraftId = scene.aircraftId) => `/aircraft/${aircraftId}/${path}`;
  const add = async () => (await scene.coordinator.post(at(), body).expect(201)).body as { id: string };

  it('adds, reads and lists', async () => {
    const added = await scene.coordinator.post(at(), body).expect(201);
    expect(added.headers['etag']).toBe('"1"');
    expect(added.body).toEqual({
      ...{ ...body, ...defaults, id: expect.any(String), aircraftId: scene.aircraftId, rowVersion: 1 },
      recordedAt: expect.stringMatching(/Z$/),
    });
    expect((await scene.member.get(`${at()}/${added.body.id}`).expect(200)).body).toEqual(added.body);
    const { items } = (await scene.member.get(at()).expect(200)).body;
    expect(items).toContainEqual(added.body);
    expect((await scene.member.get(at(secondAircraft)).expect(200)).body.items).toEqual([]);
    const audit = await api.sql('SELECT action, actor_id FROM audit_log WHERE row_id = $1', [added.body.id]);
    expect(audit).toEqual([{ action: 'insert', actor_id: scene.coordinator.memberId }]);
  });

  it('pages', async () => {
    for (let more = 0; more < 2; more += 1) await add();
    const first = await scene.member.get(`${at()}?limit=1`).expect(200);
    const second = await scene.member.get(`${at()}?limit=1&cursor=${first.body.nextCursor}`).expect(200);
    expect(second.body.items[0].id).not.toBe(first.body.items[0].id);
    expect(problemOf(await scene.member.get(`${at()}?cursor=x`).expect(400)).code).toBe('cursor-malformed');
    expect(problemOf(await scene.member.get(`${at()}?limit=0`).expect(400)).field).toBe('limit');
  });

  it('edits what is sent, with If-Match', async () => {
    const { id } = await add();
    const edited = await scene.coordinator.patch(`${at()}/${id}`, change, '"1"').expect(200);
    expect(edited.headers['etag']).toBe('"2"');
    expect(edited.body).toMatchObject({ ...body, ...defaults, ...change, rowVersion: 2 });
    await scene.coordinator.patch(`${at()}/${id}`, change, '"1"').expect(412);
    await scene.coordinator.patch(`${at()}/${id}`, change).expect(428);
    expect((await scene.coordinator.patch(`${at()}/${id}`, {}, '"2"').expect(200)).body.rowVersion).toBe(2);
  });

  it('deletes what was entered by mistake, with If-Match', async () => {
    const { id } = await add();
    await scene.coordinator.delete(`${at()}/${id}`).expect(428);
    await scene.coordinator.delete(`${at()}/${id}`, '"2"').expect(412);
    await scene.coordinator.delete(`${at()}/${id}`, '"1"').expect(204);
    await scene.coordinator.get(`${at()}/${id}`).expect(404);
  });

  it.each(bad)('refuses %j', async (wrong, field) => {
    const refused = await scene.coordinator.post(at(), { ...body, ...wrong }).expect(400);
    expect(problemOf(refused).code).toBe('validation-failed');
    expect(problemOf(refused).field).toBe(field);
  });

  it.each(impossible)('refuses %j as impossible, in adding and in editing', async (wrong, field) => {
    expect(problemOf(await scene.coordinator.post(at(), { ...body, ...wrong }).expect(422))).toEqual({
      code: 'value-refused',
      field,
    });
    const { id } = await add();
    expect(problemOf(await scene.coordinator.patch(`${at()}/${id}`, wrong, '"1"').expect(422))).toEqual({
      code: 'value-refused',
      field,
    });
  });

  it('refuses zero bytes and malformed ids', async () => {
    expect(problemOf(await scene.coordinator.post(at(), { ...body, title: 'a\0' }).expect(400)).code).toBe(
      'nul-byte',
    );
    expect(problemOf(await scene.member.get(`${at()}/x`).expect(400)).code).toBe('identifier-malformed');
  });

  it.each(['member', 'instructor', 'safety-officer', 'administrator'] as const)(
    'is read and not written by a %s',
    async (role) => {
      const { id } = await add();
      const person = await scene.club.signInAs(role);
      await person.get(at()).expect(200);
      for (const attempt of [
        person.post(at(), body),
        person.patch(`${at()}/${id}`, {}, '"1"'),
        person.delete(`${at()}/${id}`, '"1"'),
      ]) {
        expect(problemOf(await attempt.expect(403))).toEqual({ code: 'role-needed' });
      }
    },
  );

  it('is not there below another aircraft or in another club', async () => {
    const { id } = await add();
    const stranger = await (await api.createClub()).signInAs('maintenance-coordinator');
    for (const [person, place] of [
      [scene.coordinator, at(secondAircraft)],
      [stranger, at()],
      [scene.coordinator, at(NOBODY)],
    ] as const) {
      await person.get(`${place}/${id}`).expect(404);
      await person.patch(`${place}/${id}`, {}, '"1"').expect(404);
      await person.delete(`${place}/${id}`, '"1"').expect(404);
    }
    await stranger.get(at()).expect(404);
    await stranger.post(at(), body).expect(404);
  });
});

describe('equipment', () => {
  it('is portable when its basis says so, and only then', async () => {
    const at = scene.path('/equipment');
    const { body } = await scene.coordinator
      .post(at, { kind: 'gps-navigator', name: 'Tablet', installedOn: '2026-01-01', basis: 'portable' })
      .expect(201);
    expect(body.portable).toBe(true);
    expect(
      (await scene.coordinator.patch(`${at}/${body.id}`, { basis: 'stc' }, '"1"').expect(200)).body,
    ).toMatchObject({ basis: 'stc', portable: false });
  });

  it('stays while squawks or items name it', async () => {
    const at = scene.path('/equipment');
    const { body: pump } = await scene.coordinator
      .post(at, { kind: 'air-pump', name: 'Air pump', installedOn: '2024-01-01' })
      .expect(201);
    await scene.coordinator
      .post(scene.path('/items'), {
        kind: 'club',
        title: 'Pump',
        scope: 'ifr',
        intervalH: 500,
        equipmentId: pump.id,
      })
      .expect(201);
    const refused = await scene.coordinator.delete(`${at}/${pump.id}`, '"1"').expect(409);
    expect(problemOf(refused).code).toBe('reference-not-kept');
    expect(refused.body.detail).toContain('removedOn');
  });
});

describe('items', () => {
  const at = () => scene.path('/items');
  const item = async (more: object) =>
    (
      await scene.coordinator
        .post(at(), { kind: 'club', title: 'Oil', scope: 'all', intervalH: 50, ...more })
        .expect(201)
    ).body.id as string;

  it.each(['directive', 'club'])('of kind %s that recur say when', async (kind) => {
    const body = { kind, title: 'When?', scope: 'all' };
    expect(problemOf(await scene.coordinator.post(at(), body).expect(422))).toEqual({
      code: 'value-refused',
      field: 'calendarMonths',
    });
    await scene.coordinator.post(at(), { ...body, recurring: false }).expect(201);
    for (const when of [
      { calendarMonths: 1 },
      { plainMonths: 1 },
      { days: 1 },
      { intervalH: 1 },
      { fixedDueOn: '2026-05-01' },
      { fixedDueH: 9 },
    ]) {
      await scene.coordinator.post(at(), { ...body, ...when }).expect(201);
    }
    const id = await item({ kind });
    expect(
      problemOf(await scene.coordinator.patch(`${at()}/${id}`, { intervalH: null }, '"1"').expect(422)).code,
    ).toBe('value-refused');
  });

  it('of the law need not say when: the law does', async () => {
    await scene.coordinator.post(at(), { kind: 'annual', title: 'Annual', scope: 'all' }).expect(201);
  });

  it('hang on equipment of the same aircraft only', async () => {
    const { body: foreign } = await scene.coordinator
      .post(`/aircraft/${secondAircraft}/equipment`, {
        kind: 'air-pump',
        name: 'Air pump',
        installedOn: '2024-01-01',
      })
      .expect(201);
    const body = { kind: 'club', title: 'Pump', scope: 'ifr', intervalH: 500, equipmentId: foreign.id };
    expect(problemOf(await scene.coordinator.post(at(), body).expect(422))).toEqual({
      code: 'value-refused',
      field: 'equipmentId',
    });
  });

  it('with compliances are retired, not deleted', async () => {
    const id = await item({});
    await scene.coordinator
      .post(`${at()}/${id}/compliances`, {
        doneOn: '2026-03-01',
        doneH: 1000,
        statement: 'Oil changed',
        signedBy: 'Mo Wrench',
      })
      .expect(201);
    expect(problemOf(await scene.coordinator.delete(`${at()}/${id}`, '"1"').expect(409)).code).toBe(
      'reference-not-kept',
    );
    expect(
      (await scene.coordinator.patch(`${at()}/${id}`, { retiredOn: '2026-03-10' }, '"1"').expect(200)).body
        .retiredOn,
    ).toBe('2026-03-10');
  });
});
