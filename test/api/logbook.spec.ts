import { newId } from '../../src/platform/ids.js';
import { type Api, type Session, startApi, type TestClub } from '../support/api.js';
import { seedFleet, type SeededFleet } from '../support/seed-fleet.js';
import { teach } from '../support/teach.js';

let api: Api;
let club: TestClub;
let fleet: SeededFleet;
let member: Session;

beforeAll(async () => {
  api = await startApi();
  club = await api.createClub();
  fleet = await seedFleet(api.sql, club.clubId);
  member = await club.signInAs('member');
});
afterAll(() => api.stop());

const log = (of = member) => `/members/${of.memberId}/log`;
const inClubAircraft = (values: object = {}) => ({
  ...{ aircraftId: fleet.aircraftId, departedAt: '2026-03-09T16:00:00Z', arrivedAt: '2026-03-09T17:30:00Z' },
  ...{ fromAirfield: 'XLF', toAirfield: 'XLF', role: 'pilot-in-command', soleManipulator: true },
  ...{
    takeoffs: 3,
    landings: 3,
    fullStopLandings: 2,
    nightTakeoffs: 0,
    nightFullStopLandings: 0,
    totalH: 1.4,
  },
  ...values,
});
const elsewhere = (values: object = {}) =>
  inClubAircraft({
    ...{
      aircraftId: null,
      aircraftWords: 'Heron 2, somebody else’s',
      category: 'airplane',
      class: 'single-engine-land',
    },
    ...{ tailwheel: true, flownOn: '2026-03-09', ...values },
  });
const create = async (values: object = {}, by = member) =>
  (await by.post(log(by), inClubAircraft(values)).expect(201)).body;

describe('entries', () => {
  it('take from the club’s aircraft what they do not say, and the date from the airfield’s zone', async () => {
    const sent = inClubAircraft({
      departedAt: '2026-03-09T22:30:00-05:00',
      arrivedAt: '2026-03-10T05:00:00Z',
    });
    const { body, headers } = await member.post(log(), sent).expect(201);
    expect(body).toEqual({
      ...sent,
      ...{ departedAt: '2026-03-10T03:30:00Z', flownOn: '2026-03-09', modelId: fleet.modelId },
      ...{
        bookingId: null,
        aircraftWords: 'Sparrow 150, N-100',
        category: 'airplane',
        class: 'single-engine-land',
        typeRating: null,
        tailwheel: false,
      },
      ...{
        approaches: 0,
        holding: false,
        interceptTrack: false,
        device: null,
        nightH: 0,
        dualGivenH: 0,
        crossCountryH: 0,
        timesKnown: true,
        importId: null,
        actualInstrumentH: 0,
        simulatedInstrumentH: 0,
        remarks: '',
      },
      ...{
        id: expect.any(String),
        memberId: member.memberId,
        voidedAt: null,
        recordedAt: expect.any(String),
        rowVersion: 1,
        checks: expect.any(Array),
      },
    });
    expect(headers['etag']).toBe('"1"');
  });

  it('describe other aircraft themselves', async () => {
    const { body } = await member
      .post(log(), elsewhere({ fromAirfield: 'faraway strip', nightH: 0.3 }))
      .expect(201);
    expect(body).toMatchObject({
      aircraftId: null,
      modelId: null,
      tailwheel: true,
      aircraftWords: 'Heron 2, somebody else’s',
      nightH: 0.3,
    });
    const model = await member
      .post(log(), inClubAircraft({ aircraftId: null, modelId: fleet.modelId }))
      .expect(201);
    expect(model.body).toMatchObject({
      aircraftId: null,
      modelId: fleet.modelId,
      aircraftWords: 'Sparrow 150',
    });
  });

  it('keep what was flown when the aircraft changes later', async () => {
    const own = await api.createClub();
    const other = await seedFleet(api.sql, own.clubId);
    const pilot = await own.signInAs('member');
    const { id } = (
      await pilot.post(log(pilot), inClubAircraft({ aircraftId: other.aircraftId })).expect(201)
    ).body;
    await api.sql('UPDATE aircraft_models SET tailwheel = true WHERE id = $1', [other.modelId]);
    const { body } = await pilot.patch(`${log(pilot)}/${id}`, { remarks: 'gusty' }, '"1"').expect(200);
    expect(body).toMatchObject({ remarks: 'gusty', tailwheel: false, rowVersion: 2 });
    const again = await pilot
      .patch(`${log(pilot)}/${id}`, { aircraftId: other.aircraftId }, '"2"')
      .expect(200);
    expect(again.body.tailwheel).toBe(true);
  });

  it('are corrected against the version that was read, as a whole', async () => {
    const { id } = await create();
    const at = `${log()}/${id}`;
    const { body } = await member.patch(at, { landings: 5, totalH: 1.5 }, '"1"').expect(200);
    expect(body).toMatchObject({ landings: 5, fullStopLandings: 2, totalH: 1.5, rowVersion: 2 });
    await member.patch(at, { landings: 4 }, '"1"').expect(412);
    await member.patch(at, { landings: 4 }).expect(428);
    const wrong = await member.patch(at, { landings: 1 }, '"2"').expect(422);
    expect(wrong.body).toMatchObject({
      code: 'log-does-not-add-up',
      errors: [{ field: 'fullStopLandings' }],
    });
  });

  it('are voided, not deleted, and stay as they are then', async () => {
    const { id } = await create();
    const at = `${log()}/${id}`;
    const { body } = await member.post(`${at}/void`).set('If-Match', '"1"').expect(200);
    expect(body).toMatchObject({ voidedAt: '2026-03-10T15:00:00Z', rowVersion: 2 });
    expect((await member.patch(at, { remarks: 'x' }, '"2"').expect(409)).body.code).toBe('log-entry-void');
    await member.post(`${at}/void`).set('If-Match', '"2"').expect(409);
    await member.delete(at, '"2"').expect(405);
    const ids = async (query: string) =>
      (await member.get(`${log()}?limit=200${query}`)).body.items.map((item: { id: string }) => item.id);
    expect(await ids('')).not.toContain(id);
    expect(await ids('&voided=true')).toContain(id);
  });

  it('are listed newest flight first, each once', async () => {
    const pilot = await club.signInAs('member');
    const hours = [16, 18, 16, 12, 20, 16];
    for (const hour of hours) {
      await create(
        { departedAt: `2026-03-08T${hour}:00:00Z`, arrivedAt: `2026-03-08T${hour + 1}:00:00Z`, totalH: 1 },
        pilot,
      );
    }
    const seen = await pilot.all<{ id: string; departedAt: string }>(`${log(pilot)}?limit=2`);
    expect(seen.map(({ departedAt }) => Number(departedAt.slice(11, 13)))).toEqual([20, 18, 16, 16, 16, 12]);
    expect(new Set(seen.map(({ id }) => id)).size).toBe(6);
  });
});

describe('entries that contradict themselves', () => {
  it.each<[what: string, values: object, field: string]>([
    ['arrive before they depart', { arrivedAt: '2026-03-09T15:00:00Z' }, 'arrivedAt'],
    [
      'lie in the future',
      { departedAt: '2026-03-10T14:30:00Z', arrivedAt: '2026-03-10T15:00:01Z', totalH: 0.5 },
      'arrivedAt',
    ],
    ['have more hours than time', { totalH: 1.7 }, 'totalH'],
    ['have more night than hours', { nightH: 1.5 }, 'nightH'],
    ['give more instruction than hours', { dualGivenH: 1.5 }, 'dualGivenH'],
    ['have more cross-country than hours', { crossCountryH: 1.5 }, 'crossCountryH'],
    ['have more time in cloud than hours', { actualInstrumentH: 1.5 }, 'actualInstrumentH'],
    [
      'are in cloud and under the hood at once',
      { actualInstrumentH: 0.8, simulatedInstrumentH: 0.7 },
      'simulatedInstrumentH',
    ],
    ['have more full stops than landings', { fullStopLandings: 4 }, 'fullStopLandings'],
    ['have more night take-offs than take-offs', { nightTakeoffs: 4 }, 'nightTakeoffs'],
    ['have more night full stops than full stops', { nightFullStopLandings: 3 }, 'nightFullStopLandings'],
    ['have a date far from the departure', { flownOn: '2026-03-07' }, 'flownOn'],
    ['need a date, the airfield being unknown', { fromAirfield: 'QQQ' }, 'flownOn'],
    ['name an aircraft the club does not have', { aircraftId: newId() }, 'aircraftId'],
    ['name a model the club does not have', { aircraftId: null, modelId: newId() }, 'modelId'],
    ['call the aircraft something else', { category: 'glider' }, 'category'],
    ['say nothing of the aircraft', { aircraftId: null }, 'aircraftWords'],
  ])('%s', async (_what, values, field) => {
    const { body } = await member.post(log(), inClubAircraft(values)).expect(422);
    expect(body.errors.map((e: { field: string }) => e.field)).toContain(field);
  });

  it('have a class of another category (14 CFR 61.5(b))', async () => {
    const { body } = await member.post(log(), elsewhere({ class: 'helicopter' })).expect(422);
    expect(body.errors).toEqual([expect.objectContaining({ field: 'class', pointer: '/class' })]);
  });

  it('report every field at once', async () => {
    const { body } = await member.post(log(), inClubAircraft({ nightH: 9, fullStopLandings: 9 })).expect(422);
    expect(body.errors.map((e: { field: string }) => e.field)).toEqual(['nightH', 'fullStopLandings']);
  });

  it.each<[what: string, values: object, field: string]>([
    ['unknown field', { pilot: 'me' }, 'pilot'],
    ['negative hours', { totalH: -0.1 }, 'totalH'],
    ['hundredths', { totalH: 1.25 }, 'totalH'],
    ['half a landing', { landings: 2.5 }, 'landings'],
    ['negative landings', { landings: -1 }, 'landings'],
    ['impossible instant', { departedAt: '2026-02-30T10:00:00Z' }, 'departedAt'],
    ['no offset', { departedAt: '2026-03-09T16:00:00' }, 'departedAt'],
    ['impossible date', { flownOn: '2026-02-30' }, 'flownOn'],
    ['unknown role', { role: 'passenger' }, 'role'],
    ['missing role', { role: undefined }, 'role'],
    ['null landings', { landings: null }, 'landings'],
    ['unknown device', { device: 'toy' }, 'device'],
    ['zero byte', { remarks: 'a\u0000b' }, 'remarks'],
  ])('are not even read: %s', async (_what, values, field) => {
    const { body } = await member.post(log(), inClubAircraft(values)).expect(400);
    expect(body.errors.map((e: { field: string }) => e.field)).toContain(field);
  });
});

describe('who', () => {
  it('writes: the member and an administrator; reads: officers, and instructors their students’', async () => {
    const { id } = await create();
    const at = `${log()}/${id}`;
    for (const role of ['member', 'instructor', 'safety-officer', 'maintenance-coordinator'] as const) {
      const other = await club.signInAs(role);
      await other.post(log(), inClubAircraft()).expect(403);
      await other.patch(at, { remarks: 'x' }, '"1"').expect(403);
      await other.post(`${at}/void`).set('If-Match', '"1"').expect(403);
      if (role === 'instructor') {
        expect((await other.get(log()).expect(403)).body.detail).toMatch(/do not teach/);
        await teach(api, {
          ...{ clubId: club.clubId, instructorId: other.memberId, memberId: member.memberId },
        });
      }
      const reads = role === 'instructor' || role === 'safety-officer';
      await other.get(log()).expect(reads ? 200 : 403);
      await other.get(`${log()}/totals`).expect(reads ? 200 : 403);
      await other.patch(`${log(other)}/${id}`, { remarks: 'x' }, '"1"').expect(404);
    }
    const admin = await club.signInAs('administrator');
    await admin.patch(at, { remarks: 'corrected' }, '"1"').expect(200);
  });

  it('of another club: nobody', async () => {
    const { id } = await create();
    const stranger = await (await api.createClub()).signInAs('administrator');
    await stranger.get(log()).expect(404);
    await stranger.get(`${log()}/totals`).expect(404);
    await stranger.post(log(), elsewhere()).expect(404);
    await stranger.patch(`${log()}/${id}`, { remarks: 'x' }, '"1"').expect(404);
    const { body } = await stranger.post(log(stranger), inClubAircraft()).expect(422);
    expect(body.errors[0].field).toBe('aircraftId'); // this club's aircraft is not theirs
  });
});

describe('totals', () => {
  it('of an empty log are zeros', async () => {
    const pilot = await club.signInAs('member');
    const { body } = await pilot.get(`${log(pilot)}/totals`).expect(200);
    expect(body).toMatchObject({
      flights: 0,
      totalH: 0,
      nightH: 0,
      dualGivenH: 0,
      deviceH: 0,
      byClass: [],
      byRole: [],
    });
    expect(body.last90Days).toMatchObject({ from: '2025-12-10', through: '2026-03-10', landings: 0 });
  });

  it('add up by class, role and the last 90 days; devices apart, void entries never', async () => {
    const pilot = await club.signInAs('member');
    const on = (date: string) => ({
      departedAt: `${date}T18:00:00Z`,
      arrivedAt: `${date}T20:00:00Z`,
      flownOn: date,
    });
    // 90 days before 10 March 2026 is 10 December 2025 (python: date(2026,3,10)-timedelta(90)).
    await create({ ...on('2025-12-09'), totalH: 1.1 }, pilot);
    await create(
      { ...on('2025-12-10'), totalH: 1.2, nightH: 0.2, nightTakeoffs: 1, nightFullStopLandings: 1 },
      pilot,
    );
    await create(
      {
        ...on('2026-03-09'),
        totalH: 0.7,
        role: 'instructor',
        dualGivenH: 0.7,
        takeoffs: 1,
        landings: 1,
        fullStopLandings: 0,
      },
      pilot,
    );
    const glider = {
      category: 'glider',
      class: 'none',
      tailwheel: false,
      totalH: 0.3,
      takeoffs: 1,
      landings: 1,
      fullStopLandings: 1,
    };
    await pilot.post(log(pilot), elsewhere({ ...on('2026-03-01'), ...glider })).expect(201);
    await create({ ...on('2026-03-02'), totalH: 2, device: 'aviation-training-device' }, pilot);
    const { id } = await create({ ...on('2026-03-03'), totalH: 2 }, pilot);
    await pilot
      .post(`${log(pilot)}/${id}/void`)
      .set('If-Match', '"1"')
      .expect(200);

    const { body } = await pilot.get(`${log(pilot)}/totals`).expect(200);
    const none = {
      crossCountryH: 0,
      actualInstrumentH: 0,
      simulatedInstrumentH: 0,
      dualReceivedH: 0,
      soloH: 0,
    };
    const full = { ...none, approaches: 0 };
    const plane = {
      ...{ ...full, flights: 3, totalH: 3, nightH: 0.2, dualGivenH: 0.7, commandH: 3 },
      ...{ takeoffs: 7, landings: 7, fullStopLandings: 4, nightTakeoffs: 1, nightFullStopLandings: 1 },
    };
    const glided = {
      ...{ ...full, flights: 1, totalH: 0.3, nightH: 0, dualGivenH: 0, commandH: 0.3 },
      ...{ takeoffs: 1, landings: 1, fullStopLandings: 1, nightTakeoffs: 0, nightFullStopLandings: 0 },
    };
    const all = {
      ...{ ...plane, flights: 4, totalH: 3.3, commandH: 3.3 },
      ...{ takeoffs: 8, landings: 8, fullStopLandings: 5 },
    };
    const taught = {
      ...{ ...full, flights: 1, totalH: 0.7, nightH: 0, dualGivenH: 0.7, commandH: 0.7 },
      ...{ takeoffs: 1, landings: 1, fullStopLandings: 0, nightTakeoffs: 0, nightFullStopLandings: 0 },
    };
    expect(body).toEqual({
      ...{ ...all, on: '2026-03-10', deviceH: 2, deviceInstrumentH: 0 },
      byCategory: [
        { category: 'airplane', ...plane },
        { category: 'glider', ...glided },
      ],
      byClass: [
        { category: 'airplane', class: 'single-engine-land', ...plane },
        { category: 'glider', class: 'none', ...glided },
      ],
      byModel: [
        { modelId: fleet.modelId, model: 'Sparrow 150', ...plane },
        { modelId: null, model: 'Heron 2, somebody else’s', ...glided },
      ],
      byRole: [
        { role: 'instructor', ...taught },
        {
          ...{ role: 'pilot-in-command', ...all, flights: 3, totalH: 2.6, dualGivenH: 0, commandH: 2.6 },
          ...{ takeoffs: 7, landings: 7, fullStopLandings: 5 },
        },
      ],
      last90Days: {
        ...{ from: '2025-12-10', through: '2026-03-10', ...all, flights: 3, totalH: 2.2, commandH: 2.2 },
        ...{ takeoffs: 5, landings: 5, fullStopLandings: 3 },
      },
    });
    // On an earlier day: what was flown by then.
    const then = (await pilot.get(`${log(pilot)}/totals?on=2025-12-10`).expect(200)).body;
    expect(then).toMatchObject({ on: '2025-12-10', flights: 2, totalH: 2.3, deviceH: 0 });
    expect(then.last90Days).toMatchObject({ from: '2025-09-11', flights: 2 });
    await pilot.get(`${log(pilot)}/totals?on=yesterday`).expect(400);
  });
});
