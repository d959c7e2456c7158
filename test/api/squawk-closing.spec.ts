import type { Api } from '../support/api.js';
import { type FleetScene, fleetScene, NOBODY, problemOf, startFleetApi } from './fleet-scene.js';

const SIGNED = { signedBy: 'Mo Wrench', signedCertificate: 'mechanic 0042, airframe and powerplant' };
const PARTS = [
  { partNumber: 'GL-4509', serialNumber: null, name: 'Lamp', quantity: 1 },
  { partNumber: 'MS-35206', serialNumber: 'B 17', name: 'Screws', quantity: 4 },
];
const FIX = { correctiveAction: 'Replaced the lamp', ...SIGNED, parts: PARTS };
const CLEAR = { finding: 'Ran it for ten minutes on the ground, no fault', ...SIGNED };
const REOPEN = { because: 'It went out again on the ground run' };

let api: Api;
let scene: FleetScene;
let squawks: string;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
  squawks = scene.path('/squawks');
}, 60_000);
afterAll(() => api.stop());

const report = async (more: object = {}): Promise<string> =>
  (await scene.member.post(squawks, { title: 'Landing light out', ...more }).expect(201)).body.id;
const act = (id: string, step: string, body: object = {}) =>
  scene.coordinator.post(`${squawks}/${id}/${step}`, body);
const equip = async (name: string): Promise<string> => {
  const body = { kind: 'landing-light', name, installedOn: '2020-05-01' };
  return (await scene.coordinator.post(scene.path('/equipment'), body).expect(201)).body.id;
};

it('is fixed with parts, and with a certificate as entered', async () => {
  const { body } = await act(await report(), 'fix', FIX).expect(200);
  expect(body).toMatchObject({ state: 'fixed', ...FIX });
});

it.each([
  ['parts[0].quantity', [{ ...PARTS[0], quantity: 0 }]],
  ['parts[0].partNumber', [{ ...PARTS[0], partNumber: ' ' }]],
  ['parts[0].name', [{ ...PARTS[0], name: undefined }]],
  ['parts', Array.from({ length: 51 }, () => PARTS[0])],
])('refuses a part by its field %s', async (field, parts) => {
  const refused = await act(await report(), 'fix', { ...FIX, parts }).expect(400);
  expect(problemOf(refused)).toEqual({ code: 'validation-failed', field });
});

describe('reopened', () => {
  it.each([
    [['fix'], 'reported'],
    [['ground', 'fix'], 'grounding'],
    [['ground', 'no-fault-found'], 'grounding'],
    [['no-fault-found'], 'reported'],
  ])('after %j it is %s, so that nothing that grounded is let go', async (steps, state) => {
    const id = await report();
    const bodies: Record<string, object> = { fix: FIX, 'no-fault-found': CLEAR };
    for (const step of steps) await act(id, step, bodies[step]).expect(200);
    const { body } = await act(id, 'reopen', REOPEN).expect(200);
    expect(body).toMatchObject({ state, closedAt: null, correctiveAction: null, parts: [] });
    expect(body).toMatchObject({ signedBy: null, signedCertificate: null, reopenedBecause: REOPEN.because });
    const again = await act(id, 'fix', { ...FIX, parts: [PARTS[1]] }).expect(200);
    // The parts of this closing; those of the one before stay in its history.
    expect(again.body.parts).toEqual([PARTS[1]]);
  });

  it('only when it is closed, and with a reason', async () => {
    const id = await report();
    expect(problemOf(await act(id, 'reopen', REOPEN).expect(409)).code).toBe('squawk-state');
    await act(id, 'fix', FIX).expect(200);
    for (const because of ['no', '    ', undefined])
      expect(problemOf(await act(id, 'reopen', { because }).expect(400)).field).toBe('because');
    for (const who of [scene.member, scene.administrator])
      await who.post(`${squawks}/${id}/reopen`, REOPEN).expect(403);
  });
});

describe('a duplicate', () => {
  it('is closed, kept and linked both ways, and can be reopened', async () => {
    const [kept, twin] = [await report(), await report()];
    const { body } = await act(twin, 'duplicate', { ofSquawkId: kept }).expect(200);
    expect(body).toMatchObject({ state: 'duplicate', duplicateOf: kept, closedAt: '2026-03-10T15:00:00Z' });
    expect((await scene.member.get(`${squawks}/${kept}`)).body.duplicates).toEqual([twin]);
    const open = (await scene.member.get(`${squawks}?state=open`)).body.items.map(
      (one: { id: string }) => one.id,
    );
    expect(open).toContain(kept);
    expect(open).not.toContain(twin);
    expect((await scene.member.get(`${squawks}?state=duplicate`)).body.items[0].id).toBe(twin);
    const reopened = await act(twin, 'reopen', REOPEN).expect(200);
    expect(reopened.body).toMatchObject({ state: 'reported', duplicateOf: null });
    expect((await scene.member.get(`${squawks}/${kept}`)).body.duplicates).toEqual([]);
  });

  it('is refused where an aircraft could fly for it that may not', async () => {
    const light = await equip('Landing light, left');
    const [reported, grounding, other, closed, about] = [
      ...[await report(), await report(), await report(), await report()],
      await report({ equipmentId: light }),
    ];
    await act(grounding!, 'ground').expect(200);
    await act(closed!, 'fix', FIX).expect(200);
    const refusals: [string, string, RegExp][] = [
      [grounding!, reported!, /grounds the aircraft/],
      [reported!, closed!, /is closed/],
      [reported!, reported!, /of itself/],
      [reported!, NOBODY, /no squawk with the id/],
      [about!, reported!, /equipment/],
    ];
    for (const [id, ofSquawkId, says] of refusals) {
      const refused = await act(id, 'duplicate', { ofSquawkId }).expect(422);
      expect(problemOf(refused)).toEqual({ code: 'squawk-duplicate', field: 'ofSquawkId' });
      expect(refused.body.detail).toMatch(says);
    }
    await act(other!, 'ground').expect(200);
    await act(other!, 'duplicate', { ofSquawkId: grounding }).expect(200);
    await act(reported!, 'duplicate', { ofSquawkId: about }).expect(200);
    await act(closed!, 'duplicate', { ofSquawkId: about }).expect(409);
    // And the one that is kept holds on to the equipment of its duplicates.
    const twin = await report({ equipmentId: light });
    await act(twin, 'duplicate', { ofSquawkId: about }).expect(200);
    const letGo = await scene.coordinator
      .patch(`${squawks}/${about}`, { equipmentId: null }, '"1"')
      .expect(422);
    expect(problemOf(letGo)).toEqual({ code: 'value-refused', field: 'equipmentId' });
  });

  it('of each other, marked at once, is never both', async () => {
    const [a, b] = [await report(), await report()];
    const both = await Promise.all([
      act(a, 'duplicate', { ofSquawkId: b }),
      act(b, 'duplicate', { ofSquawkId: a }),
    ]);
    expect(both.filter(({ status }) => status === 200)).toHaveLength(1);
  });
});

it('offers open squawks that may be the same fault, the likest first', async () => {
  const own = await fleetScene(api);
  const at = own.path('/squawks');
  const ids: Record<string, string> = {};
  for (const title of ['Landing light out', 'Landing gear squeaks', 'Tyre worn', 'Landing light flickers'])
    ids[title] = (await own.member.post(at, { title }).expect(201)).body.id;
  await own.coordinator.post(`${at}/${ids['Landing light flickers']}/fix`, FIX).expect(200);
  const { body } = await own.member.post(`${at}/similar`, { title: 'landing light is out' }).expect(200);
  const titles = body.items.map((one: { squawk: { title: string } }) => one.squawk.title);
  expect(titles[0]).toBe('Landing light out');
  expect(titles).not.toContain('Tyre worn');
  expect(titles).not.toContain('Landing light flickers');
  expect(body.items[0]).toMatchObject({ likeness: 1, sameEquipment: false });
  expect((await own.member.get(at).expect(200)).body.items).toHaveLength(4);
});

it('keeps a history of who did what, page by page, with nothing lost', async () => {
  const id = await report();
  const deferral = { deferredOn: '2026-03-10', placarded: true };
  await act(id, 'defer', deferral).expect(200);
  await scene.coordinator.patch(`${squawks}/${id}/deferral`, { recorded: true }, '"1"').expect(200);
  await act(id, 'ground').expect(200);
  await act(id, 'fix', FIX).expect(200);
  await act(id, 'reopen', REOPEN).expect(200);
  const whole = (await scene.member.get(`${squawks}/${id}/history`).expect(200)).body;
  expect(whole.items.map((one: { what: string }) => one.what)).toEqual([
    ...['reported', 'deferral-edited', 'deferred', 'deferral-edited', 'deferral-withdrawn', 'grounded'],
    ...['part-used', 'part-used', 'fixed', 'reopened'],
  ]);
  expect(whole.items[0]).toMatchObject({ by: scene.member.memberId, byName: scene.member.name });
  expect(whole.items[8]).toMatchObject({ by: scene.coordinator.memberId });
  expect(whole.items[8].changes).toContainEqual({ field: 'state', before: 'grounding', after: 'fixed' });
  // The fix that was undone can still be read.
  expect(whole.items[9].changes).toContainEqual({
    ...{ field: 'correctiveAction', before: FIX.correctiveAction, after: null },
  });
  expect(await scene.member.all(`${squawks}/${id}/history?limit=3`)).toEqual(whole.items);
});

it('a deferral without a last day ends when the club says', async () => {
  const defer = async (more: object) =>
    (await act(await report(), 'defer', { deferredOn: '2026-03-10', ...more }).expect(200)).body.deferral
      .deadlineOn;
  expect(await defer({})).toBeNull();
  const value = {
    ...{ parameterId: 'club.squawks.deferral-days', validFrom: '2026-04-01', value: 21 },
    reference: 'Committee minutes of 1 March 2026',
  };
  await scene.administrator.post('/policy/values', value).expect(201);
  const deferredOn = '2026-04-02';
  expect(await defer({ deferredOn })).toBe('2026-04-23');
  expect(await defer({ deferredOn, deadlineOn: null })).toBeNull();
  expect(await defer({ deferredOn, deadlineOn: '2026-04-12' })).toBe('2026-04-12');
  expect(await defer({})).toBeNull();
});
