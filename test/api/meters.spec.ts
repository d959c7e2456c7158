import type { Api } from '../support/api.js';
import {
  AIRCRAFT_BODY,
  type FleetScene,
  fleetScene,
  NOBODY,
  problemOf,
  startFleetApi,
} from './fleet-scene.js';

// The clock stands at 2026-03-10T15:00:00Z.
let api: Api;
let scene: FleetScene;
let aircraftId: string;
let serial = 200;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
}, 60_000);
beforeEach(async () => {
  const body = {
    ...AIRCRAFT_BODY,
    registration: `XB-${++serial}`,
    modelId: scene.modelId,
    homeAirfieldId: scene.airfieldId,
  };
  aircraftId = (await scene.administrator.post('/aircraft', body).expect(201)).body.id;
});
afterAll(() => api.stop());

const read = (shownH: unknown, readAt?: string, more: object = {}) =>
  scene.coordinator.post(`/aircraft/${aircraftId}/meters/readings`, {
    kind: 'tachometer',
    shownH,
    readAt,
    ...more,
  });
const meters = async () => (await scene.member.get(`/aircraft/${aircraftId}/meters`).expect(200)).body.items;

it('keeps readings in tenths and shows the newest of each meter', async () => {
  const first = await read(1050.3, '2026-03-01T12:00:00Z', { note: 'Before the club took over' }).expect(201);
  expect(first.body).toMatchObject({
    ...{ kind: 'tachometer', shownH: 1050.3, offsetH: 0, totalH: 1050.3, readAt: '2026-03-01T12:00:00Z' },
    ...{ source: 'coordinator', note: 'Before the club took over' },
  });
  await read(1052.1, '2026-03-02T12:00:00+01:00').expect(201);
  await read(88.8, undefined, { kind: 'hobbs' }).expect(201);
  expect(await meters()).toEqual([
    expect.objectContaining({
      kind: 'hobbs',
      totalH: 88.8,
      readAt: '2026-03-10T15:00:00Z',
      countsForInspections: false,
    }),
    expect.objectContaining({
      kind: 'tachometer',
      totalH: 1052.1,
      readAt: '2026-03-02T11:00:00Z',
      countsForInspections: true,
    }),
  ]);
  const list = await scene.member.get(`/aircraft/${aircraftId}/meters/readings?kind=tachometer`).expect(200);
  expect(list.body.items.map((one: { shownH: number }) => one.shownH)).toEqual([1052.1, 1050.3]);
  const stored = await api.sql(
    'SELECT shown_tenths, total_tenths FROM meter_readings WHERE aircraft_id = $1 ORDER BY read_at',
    [aircraftId],
  );
  expect(stored).toContainEqual({ shown_tenths: 10503, total_tenths: 10503 });
});

it('refuses a reading below the last, names the last and says what to do', async () => {
  const { body: last } = await read(1050.3, '2026-03-01T12:00:00Z').expect(201);
  const refused = await read(1050.2, '2026-03-02T12:00:00Z').expect(422);
  expect(problemOf(refused)).toEqual({ code: 'meter-below-last', field: 'shownH' });
  expect(refused.body.detail).toContain(
    'tachometer showed 1050.3 h at 2026-03-01T12:00:00Z; 1050.2 h is less',
  );
  expect(refused.body.detail).toContain("source 'replacement'");
  expect(refused.body.last).toEqual({
    readingId: last.id,
    shownH: 1050.3,
    totalH: 1050.3,
    readAt: '2026-03-01T12:00:00Z',
  });
  await read(1050.3, '2026-03-02T12:00:00Z').expect(201);
});

it('lets every meter go its own way', async () => {
  await read(1050.3, '2026-03-01T12:00:00Z').expect(201);
  await read(12.5, '2026-03-02T12:00:00Z', { kind: 'hobbs' }).expect(201);
});

it('takes a reading from before the newest only where it fits', async () => {
  await read(1000, '2026-03-01T12:00:00Z').expect(201);
  const { body: next } = await read(1004, '2026-03-03T12:00:00Z').expect(201);
  await read(1002, '2026-03-02T12:00:00Z').expect(201);
  const refused = await read(1004.1, '2026-03-02T18:00:00Z').expect(422);
  expect(problemOf(refused)).toEqual({ code: 'meter-above-next', field: 'shownH' });
  expect(refused.body.next).toMatchObject({ readingId: next.id, shownH: 1004 });
  expect(problemOf(await read(1002, '2026-03-02T12:00:00Z').expect(409))).toEqual({
    code: 'meter-reading-already-there',
    field: 'readAt',
  });
});

it('refuses more hours than have passed, unless confirmed', async () => {
  await read(1050.3, '2026-03-01T12:00:00Z').expect(201);
  // A slip of the decimal point: 9452.7 hours in one day.
  const refused = await read(10503, '2026-03-02T12:00:00Z').expect(422);
  expect(problemOf(refused)).toEqual({ code: 'meter-jump', field: 'shownH' });
  expect(refused.body.detail).toContain('9452.7 h more than at 2026-03-01T12:00:00Z');
  await read(10503, '2026-03-02T12:00:00Z', { confirmJump: true }).expect(201);
});

it.each([
  // One hour: 1.25 by the fastest tachometer, and half an hour of slack.
  [1.7, 201],
  [1.8, 422],
])('takes %d hours in one hour? %d', async (added, status) => {
  await read(100, '2026-03-01T12:00:00Z').expect(201);
  await read(100 + added, '2026-03-01T13:00:00Z').expect(status);
});

describe('a replaced meter', () => {
  it('goes on with the running total', async () => {
    await read(1050.3, '2026-03-01T12:00:00Z').expect(201);
    const replaced = await read(0, '2026-03-02T12:00:00Z', {
      source: 'replacement',
      replacedMeterH: 1051.2,
    }).expect(201);
    expect(replaced.body).toMatchObject({
      shownH: 0,
      offsetH: 1051.2,
      totalH: 1051.2,
      source: 'replacement',
    });
    const later = await read(2.4, '2026-03-03T12:00:00Z').expect(201);
    expect(later.body).toMatchObject({ shownH: 2.4, offsetH: 1051.2, totalH: 1053.6 });
    expect(problemOf(await read(2.3, '2026-03-04T12:00:00Z').expect(422)).code).toBe('meter-below-last');
  });

  it('may show more than the old one, and be replaced again', async () => {
    await read(200, '2026-03-01T12:00:00Z').expect(201);
    const second = await read(900, '2026-03-02T12:00:00Z', {
      source: 'replacement',
      replacedMeterH: 200,
    }).expect(201);
    expect(second.body).toMatchObject({ offsetH: -700, totalH: 200 });
    const third = await read(0.5, '2026-03-03T12:00:00Z', {
      source: 'replacement',
      replacedMeterH: 903,
    }).expect(201);
    expect(third.body).toMatchObject({ offsetH: 202.5, totalH: 203 });
  });

  it('can be the first reading on record', async () => {
    const { body } = await read(0, '2026-03-02T12:00:00Z', {
      source: 'replacement',
      replacedMeterH: 4000,
    }).expect(201);
    expect(body).toMatchObject({ totalH: 4000 });
  });

  it('was not taken out before it stood where it was read', async () => {
    await read(1050.3, '2026-03-01T12:00:00Z').expect(201);
    const refused = await read(0, '2026-03-02T12:00:00Z', {
      source: 'replacement',
      replacedMeterH: 1050,
    }).expect(422);
    expect(problemOf(refused)).toEqual({ code: 'meter-below-last', field: 'replacedMeterH' });
  });

  it('is recorded before readings of the new one', async () => {
    await read(1050.3, '2026-03-01T12:00:00Z').expect(201);
    await read(1051.3, '2026-03-03T12:00:00Z').expect(201);
    const refused = await read(0, '2026-03-02T12:00:00Z', {
      source: 'replacement',
      replacedMeterH: 1051,
    }).expect(422);
    expect(problemOf(refused)).toEqual({ code: 'meter-replacement', field: 'readAt' });
  });

  it.each([[{ source: 'replacement' }], [{ replacedMeterH: 5 }]])(
    'is told by both fields or neither: %j',
    async (more) => {
      const refused = await read(0, '2026-03-02T12:00:00Z', more).expect(422);
      expect(problemOf(refused)).toEqual({ code: 'meter-replacement', field: 'replacedMeterH' });
    },
  );
});

it.each([
  [{ shownH: -0.1 }, 'shownH'],
  [{ shownH: 1.25 }, 'shownH'],
  [{ shownH: '12' }, 'shownH'],
  [{ shownH: null }, 'shownH'],
  [{ shownH: 100_000 }, 'shownH'],
  [{ kind: 'odometer' }, 'kind'],
  [{ readAt: '2026-02-30T12:00:00Z' }, 'readAt'],
  [{ readAt: '2026-03-01 12:00' }, 'readAt'],
  [{ source: 'dispatch' }, 'source'],
  [{ totalH: 5 }, 'totalH'],
])('refuses %j', async (change, field) => {
  const body = { kind: 'tachometer', shownH: 5, readAt: '2026-03-01T12:00:00Z', ...change };
  const response = await scene.coordinator.post(`/aircraft/${aircraftId}/meters/readings`, body).expect(400);
  expect(problemOf(response)).toEqual({ code: 'validation-failed', field });
});

it('refuses a time to come, a zero byte and an unknown filter', async () => {
  expect(problemOf(await read(5, '2026-03-10T15:00:01Z').expect(422))).toEqual({
    code: 'value-refused',
    field: 'readAt',
  });
  expect(problemOf(await read(5, undefined, { note: 'a\0' }).expect(400)).code).toBe('nul-byte');
  expect(
    problemOf(await scene.member.get(`/aircraft/${aircraftId}/meters/readings?kind=x`).expect(400)).field,
  ).toBe('kind');
});

it.each(['member', 'instructor', 'safety-officer', 'administrator'] as const)(
  'lets a %s read and not write',
  async (role) => {
    const person = await scene.club.signInAs(role);
    await person.get(`/aircraft/${aircraftId}/meters`).expect(200);
    const refused = await person
      .post(`/aircraft/${aircraftId}/meters/readings`, { kind: 'hobbs', shownH: 1 })
      .expect(403);
    expect(problemOf(refused)).toEqual({ code: 'role-needed' });
  },
);

it('answers 404 for an aircraft of another club', async () => {
  const stranger = await (await api.createClub()).signInAs('maintenance-coordinator');
  for (const id of [aircraftId, NOBODY]) {
    await stranger.get(`/aircraft/${id}/meters`).expect(404);
    await stranger.get(`/aircraft/${id}/meters/readings`).expect(404);
    await stranger.post(`/aircraft/${id}/meters/readings`, { kind: 'hobbs', shownH: 1 }).expect(404);
  }
});

it('lets readings of one meter queue: of two at once, the lower is refused when it comes second', async () => {
  const attempts = [3, 1, 2, 5, 4].map((shownH, index) =>
    read(shownH, `2026-03-05T12:00:0${index}Z`, { confirmJump: true }),
  );
  const statuses = (await Promise.all(attempts)).map(({ status }) => status);
  expect(statuses.every((status) => status === 201 || status === 422)).toBe(true);
  const rows = await api.sql<{ total_tenths: number }>(
    'SELECT total_tenths FROM meter_readings WHERE aircraft_id = $1 ORDER BY read_at',
    [aircraftId],
  );
  expect(rows.length).toBe(statuses.filter((status) => status === 201).length);
  expect(rows.map((row) => row.total_tenths)).toEqual(
    rows.map((row) => row.total_tenths).sort((a, b) => a - b),
  );
});
