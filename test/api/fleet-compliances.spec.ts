import type { Api } from '../support/api.js';
import { AIRCRAFT_BODY, type FleetScene, fleetScene, problemOf, startFleetApi } from './fleet-scene.js';

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

describe('compliances', () => {
  const DONE = {
    doneOn: '2026-03-01',
    doneH: 1050.3,
    statement: 'Oil and filter changed',
    signedBy: 'Mo Wrench, mechanic 0042',
  };
  let at: string;
  let itemAt: string;

  beforeEach(async () => {
    const { body } = await scene.coordinator
      .post(scene.path('/items'), { kind: 'club', title: 'Oil', scope: 'all', intervalH: 50 })
      .expect(201);
    itemAt = scene.path(`/items/${body.id}`);
    at = `${itemAt}/compliances`;
  });

  it('are recorded; the newest by the day of the work is the last', async () => {
    const newest = await scene.coordinator
      .post(at, { ...DONE, doneOn: '2026-03-09', doneH: 1099.9, dueH: 1095 })
      .expect(201);
    expect(newest.body).toMatchObject({
      ...DONE,
      doneOn: '2026-03-09',
      doneH: 1099.9,
      dueH: 1095,
      detail: null,
      voidedAt: null,
    });
    await scene.coordinator.post(at, DONE).expect(201);
    expect((await scene.member.get(itemAt).expect(200)).body.lastCompliance).toEqual(newest.body);
    expect(
      (await scene.member.get(at).expect(200)).body.items.map((one: { doneOn: string }) => one.doneOn),
    ).toEqual(['2026-03-01', '2026-03-09']);
  });

  it('are voided, stay on record, and the one before counts again', async () => {
    const { body: before } = await scene.coordinator.post(at, DONE).expect(201);
    const { body: wrong } = await scene.coordinator.post(at, { ...DONE, doneOn: '2026-03-09' }).expect(201);
    const voided = await scene.coordinator.post(`${at}/${wrong.id}/void`).expect(200);
    expect(voided.body).toMatchObject({ id: wrong.id, voidedAt: '2026-03-10T15:00:00Z', rowVersion: 2 });
    expect((await scene.member.get(itemAt).expect(200)).body.lastCompliance).toEqual(before);
    expect((await scene.member.get(at).expect(200)).body.items).toHaveLength(2);
    expect(problemOf(await scene.coordinator.post(`${at}/${wrong.id}/void`).expect(409)).code).toBe(
      'compliance-already-void',
    );
  });

  it('have neither edit nor delete', async () => {
    const { body } = await scene.coordinator.post(at, DONE).expect(201);
    await scene.coordinator
      .patch(`${at}/${body.id}`, { doneH: 1 }, '"1"')
      .expect(({ status }) => expect([404, 405]).toContain(status));
    await scene.coordinator
      .delete(`${at}/${body.id}`, '"1"')
      .expect(({ status }) => expect([404, 405]).toContain(status));
    expect((await scene.member.get(at).expect(200)).body.items).toEqual([body]);
  });

  it('keep the particulars of a VOR check (14 CFR 91.171(d))', async () => {
    const { body: item } = await scene.coordinator
      .post(scene.path('/items'), { kind: 'vor-check', title: 'VOR', scope: 'ifr', days: 30 })
      .expect(201);
    const detail = {
      vorMethod: 'ground-checkpoint',
      vorErrorDeg: -2.5,
      vorPlace: 'Larkfield, run-up area',
      vorSignedBy: 'P. Aviator',
    };
    const body = { doneOn: '2026-03-01', detail, statement: 'VOR checked', signedBy: 'P. Aviator' };
    const checks = scene.path(`/items/${item.id}/compliances`);
    expect((await scene.coordinator.post(checks, body).expect(201)).body.detail).toEqual(detail);
    for (const [wrong, field] of [
      [{ vorErrorDeg: '2' }, 'detail.vorErrorDeg'],
      [{ mood: 'good' }, 'detail.mood'],
      [{ eltBatteryNewOn: '2026-02-30' }, 'detail.eltBatteryNewOn'],
    ] as const) {
      expect(
        problemOf(await scene.coordinator.post(checks, { ...body, detail: wrong }).expect(400)).field,
      ).toBe(field);
    }
  });

  it('need the hours where the item counts hours, and lie not in the future', async () => {
    expect(problemOf(await scene.coordinator.post(at, { ...DONE, doneH: null }).expect(422))).toEqual({
      code: 'value-refused',
      field: 'doneH',
    });
    expect(
      problemOf(await scene.coordinator.post(at, { ...DONE, doneOn: '2026-03-11' }).expect(422)),
    ).toEqual({ code: 'value-refused', field: 'doneOn' });
    await scene.coordinator.post(at, { ...DONE, doneOn: '2026-03-10' }).expect(201);
  });

  it.each([
    [{ doneOn: '2026-02-30' }, 'doneOn'],
    [{ doneH: -1 }, 'doneH'],
    [{ statement: ' ' }, 'statement'],
    [{ signedBy: undefined }, 'signedBy'],
    [{ detail: 'fine' }, 'detail'],
    [{ detail: [] }, 'detail'],
    [{ voidedAt: null }, 'voidedAt'],
  ])('refuse %j', async (wrong, field) => {
    const refused = await scene.coordinator.post(at, { ...DONE, ...wrong }).expect(400);
    expect(problemOf(refused)).toEqual({ code: 'validation-failed', field });
  });

  it.each(['member', 'instructor', 'safety-officer', 'administrator'] as const)(
    'are read and not written by a %s',
    async (role) => {
      const { body } = await scene.coordinator.post(at, DONE).expect(201);
      const person = await scene.club.signInAs(role);
      await person.get(at).expect(200);
      await person.post(at, DONE).expect(403);
      await person.post(`${at}/${body.id}/void`).expect(403);
    },
  );

  it('are not there below another item, another aircraft or in another club', async () => {
    const { body } = await scene.coordinator.post(at, DONE).expect(201);
    const { body: other } = await scene.coordinator
      .post(scene.path('/items'), { kind: 'annual', title: 'Annual', scope: 'all' })
      .expect(201);
    await scene.coordinator.post(scene.path(`/items/${other.id}/compliances/${body.id}/void`)).expect(404);
    const elsewhere = at.replace(scene.aircraftId, secondAircraft);
    await scene.coordinator.get(elsewhere).expect(404);
    await scene.coordinator.post(elsewhere, DONE).expect(404);
    const stranger = await (await api.createClub()).signInAs('maintenance-coordinator');
    await stranger.get(at).expect(404);
    await stranger.post(at, DONE).expect(404);
    await stranger.post(`${at}/${body.id}/void`).expect(404);
  });
});
