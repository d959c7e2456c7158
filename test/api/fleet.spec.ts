import type { Api } from '../support/api.js';
import {
  AIRCRAFT_BODY,
  type FleetScene,
  fleetScene,
  MODEL,
  NOBODY,
  problemOf,
  startFleetApi,
} from './fleet-scene.js';

let api: Api;
let scene: FleetScene;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
}, 60_000);
afterAll(() => api.stop());

const references = () => ({ modelId: scene.modelId, homeAirfieldId: scene.airfieldId });

describe('models', () => {
  it('keeps what is known and leaves the rest unknown', async () => {
    const { body, headers } = await scene.member.get(`/models/${scene.modelId}`).expect(200);
    expect(headers['etag']).toBe('"1"');
    expect(body).toMatchObject({
      ...MODEL,
      turbine: false,
      transportCategory: false,
      typeRating: null,
      usableFuelUsGal: null,
    });
    expect((await scene.member.get('/models').expect(200)).body.items[0]).toEqual(body);
  });

  it('edits with If-Match; null makes a value unknown again where that is possible', async () => {
    const { body } = await scene.administrator
      .post('/models', { ...MODEL, makeModel: 'Wrenfield Sparrow 3' })
      .expect(201);
    const at = `/models/${body.id}`;
    const edited = await scene.coordinator
      .patch(at, { vs1Kcas: null, usableFuelUsGal: 53.5 }, '"1"')
      .expect(200);
    expect(edited.body).toMatchObject({
      makeModel: 'Wrenfield Sparrow 3',
      vs1Kcas: null,
      usableFuelUsGal: 53.5,
      engines: 1,
      rowVersion: 2,
    });
    expect(problemOf(await scene.coordinator.patch(at, { engines: null }, '"2"').expect(400))).toEqual({
      code: 'validation-failed',
      field: 'engines',
    });
    await scene.coordinator.patch(at, { engines: 2 }, '"1"').expect(412);
    await scene.coordinator.patch(at, { engines: 2 }).expect(428);
    await scene.coordinator.delete(at, '"2"').expect(403);
    await scene.administrator.delete(at, '"2"').expect(204);
    await scene.administrator.get(at).expect(404);
  });

  it('stays while an aircraft is of it', async () => {
    expect(
      problemOf(await scene.administrator.delete(`/models/${scene.modelId}`, '"1"').expect(409)).code,
    ).toBe('reference-not-kept');
  });

  it('has a class of its category', async () => {
    const bad = { ...MODEL, makeModel: 'Odd', category: 'glider' };
    const refused = await scene.administrator.post('/models', bad).expect(422);
    expect(problemOf(refused)).toEqual({ code: 'value-refused', field: 'class' });
    const at = `/models/${scene.modelId}`;
    expect(
      problemOf(await scene.administrator.patch(at, { class: 'helicopter' }, '"1"').expect(422)).field,
    ).toBe('class');
  });

  it.each([
    [{ makeModel: ' ' }, 'makeModel'],
    [{ typeDesignator: 'wsp2' }, 'typeDesignator'],
    [{ category: 'airship' }, 'category'],
    [{ engines: 1.5 }, 'engines'],
    [{ powerPerEngineHp: 0 }, 'powerPerEngineHp'],
    [{ flaps: 1 }, 'flaps'],
    [{ maxTakeoffLb: -1 }, 'maxTakeoffLb'],
    [{ vs1Kcas: 'slow' }, 'vs1Kcas'],
    [{ kindsOfOperation: [] }, 'kindsOfOperation'],
    [{ kindsOfOperation: ['day-vfr', 'day-vfr'] }, 'kindsOfOperation'],
    [{ kindsOfOperation: ['space'] }, 'kindsOfOperation'],
    [{ kindsOfOperation: 'ifr' }, 'kindsOfOperation'],
    [{ colour: 'red' }, 'colour'],
  ])('refuses %j', async (change, field) => {
    const response = await scene.administrator
      .post('/models', { ...MODEL, makeModel: 'Bad', ...change })
      .expect(400);
    expect(problemOf(response)).toEqual({ code: 'validation-failed', field });
  });

  it('has a name of its own', async () => {
    expect(problemOf(await scene.administrator.post('/models', MODEL).expect(409))).toEqual({
      code: 'model-already-there',
      field: 'makeModel',
    });
  });
});

describe('aircraft', () => {
  it('is listed in short, with meters and open squawks', async () => {
    const own = await fleetScene(api);
    await own.coordinator
      .post(own.path('/meters/readings'), { kind: 'tachometer', shownH: 812.4 })
      .expect(201);
    for (const title of ['One', 'Two']) await own.member.post(own.path('/squawks'), { title }).expect(201);
    const { body: squawk } = await own.member.post(own.path('/squawks'), { title: 'Three' }).expect(201);
    await own.coordinator.post(own.path(`/squawks/${squawk.id}/ground`)).expect(200);
    const { body } = await own.member.get('/aircraft').expect(200);
    expect(body).toEqual({
      items: [
        {
          id: own.aircraftId,
          registration: 'XB-101',
          status: 'in-service',
          modelId: own.modelId,
          makeModel: 'Wrenfield Sparrow 2',
          typeDesignator: 'WSP2',
          seats: 4,
          homeAirfieldId: own.airfieldId,
          homeAirfieldCode: 'XLKF',
          meters: [
            expect.objectContaining({ kind: 'tachometer', totalH: 812.4, countsForInspections: true }),
          ],
          openSquawks: { reported: 2, grounding: 1, deferred: 0 },
        },
      ],
      nextCursor: null,
    });
    expect((await own.member.get('/aircraft?status=out-of-service').expect(200)).body.items).toEqual([]);
    await own.member.get('/aircraft?status=sold').expect(400);
  });

  it('is shown with its model, and what nobody entered as unknown', async () => {
    const { body, headers } = await scene.member.get(scene.path()).expect(200);
    expect(headers['etag']).toBe('"1"');
    expect(body).toMatchObject({
      ...{
        ...AIRCRAFT_BODY,
        ...references(),
        status: 'in-service',
        emptyWeightLb: null,
        altitudeEngine: null,
      },
      ...{
        manufacturedOn: null,
        engineDrivenElectrical: null,
        approvedEquipmentList: null,
        homeAirfieldCode: 'XLKF',
      },
      ...{
        model: expect.objectContaining({ id: scene.modelId, makeModel: 'Wrenfield Sparrow 2' }),
        meters: [],
      },
    });
  });

  it('is edited with If-Match by administrator and coordinator', async () => {
    const { body } = await scene.administrator
      .post('/aircraft', { ...AIRCRAFT_BODY, ...references(), registration: 'XB-ED' })
      .expect(201);
    const at = `/aircraft/${body.id}`;
    const changes = {
      status: 'out-of-service',
      manufacturedOn: '1984-06-01',
      engineDrivenElectrical: true,
      emptyWeightLb: 1432.6,
    };
    const edited = await scene.coordinator.patch(at, changes, '"1"').expect(200);
    expect(edited.body).toMatchObject({ ...AIRCRAFT_BODY, ...changes, registration: 'XB-ED', rowVersion: 2 });
    await scene.administrator.patch(at, { seats: 2 }, '"1"').expect(412);
    await scene.administrator.patch(at, { seats: 2 }).expect(428);
    await scene.administrator.delete(at).expect(428);
    await scene.administrator.delete(at, '"2"').expect(204);
    await scene.administrator.get(at).expect(404);
  });

  it('stays once it has records', async () => {
    await scene.member.post(scene.path('/squawks'), { title: 'Something' }).expect(201);
    const refused = await scene.administrator.delete(scene.path(), '"1"').expect(409);
    expect(problemOf(refused).code).toBe('reference-not-kept');
    expect(refused.body.detail).toContain('out-of-service');
  });

  it("is of the club's own model and airfield", async () => {
    const other = await fleetScene(api);
    for (const [change, field] of [
      [{ modelId: NOBODY }, 'modelId'],
      [{ modelId: other.modelId }, 'modelId'],
      [{ homeAirfieldId: other.airfieldId }, 'homeAirfieldId'],
    ] as const) {
      const body = { ...AIRCRAFT_BODY, ...references(), registration: 'XB-NO', ...change };
      expect(problemOf(await scene.administrator.post('/aircraft', body).expect(422))).toEqual({
        code: 'value-refused',
        field,
      });
      expect(problemOf(await scene.administrator.patch(scene.path(), change, '"1"').expect(422)).field).toBe(
        field,
      );
    }
  });

  it('has a registration of its own, which another club may use too', async () => {
    const body = { ...AIRCRAFT_BODY, ...references() };
    expect(problemOf(await scene.administrator.post('/aircraft', body).expect(409))).toEqual({
      code: 'registration-taken',
      field: 'registration',
    });
    expect((await fleetScene(api)).aircraftId).not.toBe(scene.aircraftId);
  });

  it.each([
    [{ registration: 'xb-1' }, 'registration'],
    [{ modelId: 'sparrow' }, 'modelId'],
    [{ seats: 0 }, 'seats'],
    [{ occupantsCertificated: 21 }, 'occupantsCertificated'],
    [{ emptyWeightLb: 0 }, 'emptyWeightLb'],
    [{ manufacturedOn: '1984-06-31' }, 'manufacturedOn'],
    [{ certificatedAfter19960311: null }, 'certificatedAfter19960311'],
    [{ status: 'sold' }, 'status'],
    [{ status: null }, 'status'],
    [{ inspectionMeter: 'clock' }, 'inspectionMeter'],
    [{ instructionForHire: undefined }, 'instructionForHire'],
    [{ owner: 'Club' }, 'owner'],
  ])('refuses %j', async (change, field) => {
    const body = { ...AIRCRAFT_BODY, ...references(), registration: 'XB-BAD', ...change };
    expect(problemOf(await scene.administrator.post('/aircraft', body).expect(400))).toEqual({
      code: 'validation-failed',
      field,
    });
  });

  it.each(['member', 'instructor', 'safety-officer'] as const)(
    'is read, and not written, by a %s',
    async (role) => {
      const person = await scene.club.signInAs(role);
      await person.get(scene.path()).expect(200);
      await person.post('/aircraft', {}).expect(403);
      await person.patch(scene.path(), {}, '"1"').expect(403);
      await person.delete(scene.path(), '"1"').expect(403);
      await person.post('/models', {}).expect(403);
      await person.patch(`/models/${scene.modelId}`, {}, '"1"').expect(403);
    },
  );

  it('of another club is not there', async () => {
    const stranger = await (await api.createClub()).signInAs(['administrator', 'maintenance-coordinator']);
    for (const path of [scene.path(), `/models/${scene.modelId}`, `/aircraft/${NOBODY}`]) {
      await stranger.get(path).expect(404);
      await stranger.patch(path, {}, '"1"').expect(404);
      await stranger.delete(path, '"1"').expect(404);
    }
    expect((await stranger.get('/aircraft').expect(200)).body.items).toEqual([]);
    expect((await stranger.get('/models').expect(200)).body.items).toEqual([]);
  });
});
