import type { Api } from '../support/api.js';
import { AIRFIELD, type FleetScene, fleetScene, NOBODY, problemOf, startFleetApi } from './fleet-scene.js';

const RUNWAY = { designator: '09', trueHeadingDeg: 91.5, lengthFt: 3200, surface: 'paved', lit: true };

let api: Api;
let scene: FleetScene;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
}, 60_000);
afterAll(() => api.stop());

it('adds an airfield with its runways, reads it and lists it', async () => {
  const body = {
    ...AIRFIELD,
    code: 'XHRN',
    name: 'Heron Point',
    runways: [{ ...RUNWAY, designator: '27' }, RUNWAY],
  };
  const added = await scene.administrator.post('/airfields', body).expect(201);
  expect(added.headers['etag']).toBe('"1"');
  expect(added.body).toMatchObject({ ...AIRFIELD, code: 'XHRN', name: 'Heron Point' });
  expect(added.body.runways.map((runway: { designator: string }) => runway.designator)).toEqual(['09', '27']);
  expect(added.body.runways[0]).toMatchObject({ ...RUNWAY, airfieldId: added.body.id, rowVersion: 1 });
  expect((await scene.member.get(`/airfields/${added.body.id}`).expect(200)).body).toEqual(added.body);
  const list = await scene.member.get('/airfields').expect(200);
  expect(list.body.items.map((airfield: { code: string }) => airfield.code)).toEqual(['XLKF', 'XHRN']);
  expect(list.body.nextCursor).toBeNull();
});

it('adds nothing at all when a designator comes twice', async () => {
  const body = { ...AIRFIELD, code: 'XTWO', runways: [RUNWAY, RUNWAY] };
  expect(problemOf(await scene.administrator.post('/airfields', body).expect(409)).code).toBe(
    'runway-already-there',
  );
  expect(await api.sql("SELECT 1 FROM airfields WHERE code = 'XTWO'")).toEqual([]);
});

it('pages', async () => {
  const club = await api.createClub();
  const administrator = await club.signInAs('administrator');
  for (const code of ['XAA', 'XAB', 'XAC'])
    await administrator.post('/airfields', { ...AIRFIELD, code }).expect(201);
  const first = await administrator.get('/airfields?limit=2').expect(200);
  expect(first.body.items).toHaveLength(2);
  const second = await administrator.get(`/airfields?limit=2&cursor=${first.body.nextCursor}`).expect(200);
  expect(second.body.items.map((airfield: { code: string }) => airfield.code)).toEqual(['XAC']);
  expect(second.body.nextCursor).toBeNull();
});

it('edits with If-Match, and only what is sent', async () => {
  const { body } = await scene.administrator.post('/airfields', { ...AIRFIELD, code: 'XED' }).expect(201);
  const at = `/airfields/${body.id}`;
  const edited = await scene.administrator.patch(at, { elevationFt: -12 }, '"1"').expect(200);
  expect(edited.body).toMatchObject({ ...AIRFIELD, code: 'XED', elevationFt: -12, rowVersion: 2 });
  await scene.administrator.patch(at, { elevationFt: 3 }, '"1"').expect(412);
  await scene.administrator.patch(at, { elevationFt: 3 }).expect(428);
  await scene.administrator.delete(at).expect(428);
  await scene.administrator.delete(at, '"1"').expect(412);
  await scene.administrator.delete(at, '"2"').expect(204);
  await scene.administrator.get(at).expect(404);
});

it('keeps the airfield an aircraft is at home on, runways included', async () => {
  const at = `/airfields/${scene.airfieldId}`;
  await scene.administrator.post(`${at}/runways`, { ...RUNWAY, designator: '14' }).expect(201);
  const refused = await scene.administrator.delete(at, '"1"').expect(409);
  expect(problemOf(refused).code).toBe('reference-not-kept');
  expect(refused.body.detail).toMatch(/another home airfield/);
  expect((await scene.member.get(at).expect(200)).body.runways).toHaveLength(1);
});

it('edits and deletes runways one by one', async () => {
  const { body: airfield } = await scene.administrator
    .post('/airfields', { ...AIRFIELD, code: 'XRW', runways: [RUNWAY] })
    .expect(201);
  const at = `/airfields/${airfield.id}/runways`;
  const runway = await scene.administrator
    .post(at, { ...RUNWAY, designator: '27R', surface: 'grass' })
    .expect(201);
  expect(runway.headers['etag']).toBe('"1"');
  const edited = await scene.administrator
    .patch(`${at}/${runway.body.id}`, { lit: false }, '"1"')
    .expect(200);
  expect(edited.body).toMatchObject({ designator: '27R', surface: 'grass', lit: false, rowVersion: 2 });
  expect(
    problemOf(
      await scene.administrator.patch(`${at}/${runway.body.id}`, { designator: '09' }, '"2"').expect(409),
    ),
  ).toEqual({ code: 'runway-already-there', field: 'designator' });
  await scene.administrator.delete(`${at}/${runway.body.id}`, '"1"').expect(412);
  await scene.administrator.delete(`${at}/${runway.body.id}`, '"2"').expect(204);
  await scene.administrator.delete(`${at}/${runway.body.id}`, '"2"').expect(404);
});

it('answers 404 for a runway of another airfield, and for anything of another club', async () => {
  const { body } = await scene.administrator
    .post('/airfields', { ...AIRFIELD, code: 'XNE', runways: [RUNWAY] })
    .expect(201);
  const runwayId = body.runways[0].id as string;
  await scene.administrator
    .patch(`/airfields/${scene.airfieldId}/runways/${runwayId}`, { lit: false }, '"1"')
    .expect(404);
  const stranger = await (await api.createClub()).signInAs('administrator');
  const unknown = await stranger.get(`/airfields/${NOBODY}`).expect(404);
  const foreign = await stranger.get(`/airfields/${body.id}`).expect(404);
  const same = ({ instance: _i, requestId: _r, ...rest }: Record<string, unknown>) => rest;
  expect(same(foreign.body)).toEqual(same(unknown.body));
  await stranger.patch(`/airfields/${body.id}`, { name: 'Ours' }, '"1"').expect(404);
  await stranger.delete(`/airfields/${body.id}`, '"1"').expect(404);
  await stranger.post(`/airfields/${body.id}/runways`, { ...RUNWAY, designator: '18' }).expect(404);
  await stranger.patch(`/airfields/${body.id}/runways/${runwayId}`, { lit: false }, '"1"').expect(404);
  await stranger.delete(`/airfields/${body.id}/runways/${runwayId}`, '"1"').expect(404);
  expect((await stranger.get('/airfields').expect(200)).body.items).toEqual([]);
});

it.each(['member', 'instructor', 'safety-officer', 'maintenance-coordinator'] as const)(
  'lets a %s read and not write',
  async (role) => {
    const person = await scene.club.signInAs(role);
    const at = `/airfields/${scene.airfieldId}`;
    await person.get(at).expect(200);
    for (const attempt of [
      person.post('/airfields', { ...AIRFIELD, code: 'XNO' }),
      person.patch(at, { name: 'Mine' }, '"1"'),
      person.delete(at, '"1"'),
      person.post(`${at}/runways`, RUNWAY),
    ]) {
      expect(problemOf(await attempt.expect(403))).toEqual({ code: 'role-needed' });
    }
  },
);

it.each([
  [{ code: 'lower' }, 'code'],
  [{ latitudeDeg: 90.1 }, 'latitudeDeg'],
  [{ longitudeDeg: -181 }, 'longitudeDeg'],
  [{ latitudeDeg: '41' }, 'latitudeDeg'],
  [{ elevationFt: 12.5 }, 'elevationFt'],
  [{ elevationFt: 20_001 }, 'elevationFt'],
  [{ zone: 'Nowhere' }, 'zone'],
  [{ name: undefined }, 'name'],
  [{ tower: true }, 'tower'],
  [{ runways: 'none' }, 'runways'],
  [{ runways: [{ ...RUNWAY, designator: '37' }] }, 'runways[0].designator'],
  [{ runways: [{ ...RUNWAY, designator: '00' }] }, 'runways[0].designator'],
  [{ runways: [{ ...RUNWAY, trueHeadingDeg: 360 }] }, 'runways[0].trueHeadingDeg'],
  [{ runways: [{ ...RUNWAY, lengthFt: 99 }] }, 'runways[0].lengthFt'],
  [{ runways: [{ ...RUNWAY, surface: 'sand' }] }, 'runways[0].surface'],
  [{ runways: [{ ...RUNWAY, lit: 'yes' }] }, 'runways[0].lit'],
])('refuses %j', async (change, field) => {
  const response = await scene.administrator
    .post('/airfields', { ...AIRFIELD, code: 'XBAD', ...change })
    .expect(400);
  expect(problemOf(response)).toEqual({ code: 'validation-failed', field });
});

it('refuses a second airfield with the same code, a malformed id and a zero byte', async () => {
  expect(problemOf(await scene.administrator.post('/airfields', AIRFIELD).expect(409))).toEqual({
    code: 'airfield-code-taken',
    field: 'code',
  });
  expect(problemOf(await scene.member.get('/airfields/larkfield').expect(400)).code).toBe(
    'identifier-malformed',
  );
  expect(
    problemOf(await scene.administrator.post('/airfields', { ...AIRFIELD, name: 'a\0' }).expect(400)).code,
  ).toBe('nul-byte');
});
