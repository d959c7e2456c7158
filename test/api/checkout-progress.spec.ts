/** How far everybody is: changes to be shown, like models, an instructor's students, what decisions and practice make of it. */
import { newId } from '../../src/platform/ids.js';
import { gatherPeople } from '../../src/decisions/gather/people.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { type Api, type Session, startApi } from '../support/api.js';
import { insertInto } from '../support/ready-club.js';
import { leastQueries } from '../support/least-queries.js';
import { CheckoutScene, type Entry, LANDING, TURN } from './checkout-scene.js';

let api: Api;
let scene: CheckoutScene;
beforeAll(async () => {
  api = await startApi();
}, 120_000);
afterAll(() => api.stop());
beforeEach(async () => {
  api.clock.set('2026-03-10T15:00:00Z');
  scene = await CheckoutScene.make(api);
}, 60_000);

const row = () => insertInto(api.sql, scene.club.clubId);
async function change(more: object = {}): Promise<string> {
  const id = newId();
  await row()('differences', {
    ...{ id, aircraft_id: scene.fleet.aircraftId, title: 'New screens', since: '2026-03-01' },
    ...{ equipment_group: 'Electronic panel', ...more },
  });
  return id;
}
const signModel = (signedOn = '2026-02-01') =>
  scene.teacher.post(scene.checkouts, { kind: 'model', modelId: scene.fleet.modelId, signedOn }).expect(201);
const shown = async (): Promise<Entry[]> =>
  (await scene.progress(scene.teacher)).filter(({ difference }) => difference !== null);
const signChange = () =>
  scene.teacher.post(scene.checkouts, {
    kind: 'differences',
    aircraftId: scene.fleet.aircraftId,
    signedOn: '2026-03-10',
  });
const policy = (parameter_id: string, value: unknown) =>
  row()('policy_values', {
    id: newId(),
    parameter_id,
    valid_from: '2020-01-01',
    value: JSON.stringify(value),
    reference: 'Club handbook',
  });

describe('changes of equipment', () => {
  it('are to be shown to who has a checkout in the model, until an instructor signed', async () => {
    await change();
    expect(await shown()).toEqual([]);
    await signModel();
    expect(await shown()).toMatchObject([
      {
        requirementId: null,
        kind: 'differences',
        subject: 'N-100',
        title: 'New screens',
        ready: true,
        youMaySign: true,
      },
    ]);
    await signChange().expect(201);
    expect(await shown()).toEqual([]);
  });

  it('are shown by the items of their equipment group, apart from the checkout on it and from other changes', async () => {
    const glass = await scene.inForce({
      ...{
        kind: 'equipment',
        equipmentGroup: 'glass-panel',
        alsoCalled: ['electronic panel'],
        title: 'Screens',
      },
    });
    const [item, other] = glass.inForce!.items;
    await signModel();
    await scene.mark(item!.id);
    const differenceId = await change();
    expect(await shown()).toMatchObject([
      { requirementId: glass.id, state: 'not-begun', itemsLeft: 2, ready: false },
    ]);
    expect((await signChange().expect(409)).body.code).toBe('checkout-not-complete');
    await scene.mark(item!.id, { differenceId });
    await scene.mark(other!.id, { differenceId });
    expect(await shown()).toMatchObject([{ state: 'ready', itemsLeft: 0 }]);
    expect(await scene.entry(glass)).toMatchObject({ itemsLeft: 1 });
    expect((await signChange().expect(201)).body).toMatchObject({
      differenceId,
      versionId: glass.inForce!.id,
    });
    api.clock.set('2026-03-12T15:00:00Z');
    const newer = await change({ since: '2026-03-11', title: 'Newer screens' });
    expect(await shown()).toMatchObject([
      { title: 'Newer screens', itemsLeft: 2, difference: { id: newer } },
    ]);
    const old = { itemId: item!.id, outcome: 'signed', differenceId };
    expect((await scene.teacher.post(scene.marks, old).expect(422)).body.errors[0].field).toBe(
      'differenceId',
    );
  });

  it('of another group are not shown by these items', async () => {
    const glass = await scene.inForce({ kind: 'equipment', equipmentGroup: 'glass-panel' });
    const differenceId = await change({ equipment_group: 'autopilot' });
    const body = { itemId: glass.inForce!.items[0]!.id, outcome: 'signed', differenceId };
    expect((await scene.teacher.post(scene.marks, body).expect(422)).body.errors[0].field).toBe(
      'differenceId',
    );
    await signModel();
    expect(await shown()).toMatchObject([{ requirementId: null }]);
  });
});

describe('like models', () => {
  let likeId: string;
  beforeEach(async () => {
    likeId = newId();
    await row()('aircraft_models', {
      ...{
        id: likeId,
        make_model: 'Sparrow 160',
        type_designator: 'SPRX',
        category: 'airplane',
        class: 'single-engine-land',
      },
      ...{
        engines: 1,
        retractable_gear: false,
        flaps: true,
        controllable_propeller: false,
        tailwheel: false,
      },
      ...{ pressurised: false, kinds_of_operation: ['day-vfr'] },
    });
  });
  const facts = async () => {
    const { memberId } = scene.learner;
    const found = await api.app.get(TenantDb, { strict: false }).run(scene.club.clubId, (em) =>
      gatherPeople(em, {
        ...{ memberIds: [memberId], knownAt: '2026-03-10T15:00:00Z', logSince: '2024-01-01T00:00:00Z' },
        ...{ unverifiedCounts: false, exceptBookingId: null },
      }),
    );
    const { checkouts } = found[memberId]!;
    if (!checkouts.known) throw new Error('the checkouts are not known');
    return checkouts.value;
  };

  it('are told to the rules with the sign-off, as the version in force names them', async () => {
    await signModel();
    expect(await facts()).toMatchObject([{ kind: 'model', alsoModelIds: [], condition: null }]);
    const model = await scene.model({ alsoModelIds: [likeId] });
    expect(await facts()).toMatchObject([{ alsoModelIds: [likeId] }]);
    await scene.officer
      .patch(`/checkout-requirements/${model.id}`, { retired: true }, `"${model.rowVersion}"`)
      .expect(200);
    expect(await facts()).toMatchObject([{ alsoModelIds: [] }]);
  });

  it('count in the progress where the club’s policy lets them', async () => {
    await signModel();
    await scene.model({ alsoModelIds: [likeId] });
    const like = await scene.inForce({ kind: 'model', modelId: likeId, title: 'Like' });
    expect(await scene.entry(like)).toMatchObject({ state: 'not-begun', signOff: null });
    await policy('club.model-checkout.like-models', true);
    expect(await scene.entry(like)).toMatchObject({ state: 'standing', signOff: { likeModel: true } });
  });

  it('equipment and conditions are told to the rules', async () => {
    const sign = (body: object) =>
      scene.teacher.post(scene.checkouts, { signedOn: '2026-03-01', ...body }).expect(201);
    await sign({ kind: 'equipment', equipmentGroup: 'autopilot' });
    await sign({ kind: 'condition', condition: 'night' });
    expect(await facts()).toMatchObject([
      { kind: 'equipment', equipmentGroup: 'autopilot', condition: null },
      { kind: 'condition', equipmentGroup: null, condition: 'night' },
    ]);
  });
});

describe('what ends', () => {
  it('is told within the club’s days before, and once it has ended', async () => {
    const model = await scene.model({ items: [TURN], goodDays: 61 });
    await scene.mark(model.inForce!.items[0]!.id);
    await scene.teacher
      .post(scene.checkouts, { kind: 'model', modelId: scene.fleet.modelId, signedOn: '2026-03-10' })
      .expect(201);
    const stateOn = async (instant: string) => {
      api.clock.set(instant);
      const { state } = await scene.entry(model);
      return state;
    };
    // Good through 10 May: 61 days ahead, then 60, the last day, and the day after.
    expect(await stateOn('2026-03-10T15:00:00Z')).toBe('standing');
    expect(await stateOn('2026-03-11T15:00:00Z')).toBe('ending');
    expect(await stateOn('2026-05-10T20:00:00Z')).toBe('ending');
    expect(await stateOn('2026-05-11T20:00:00Z')).toBe('ended');
  });

  it('an annual check without an end lasts as the policy says', async () => {
    const annual = await scene.inForce({ kind: 'annual-check', title: 'Yearly', items: [] });
    const sign = (signedOn: string) =>
      scene.teacher.post(scene.checkouts, { kind: 'annual-check', signedOn }).expect(201);
    await sign('2025-03-09');
    expect(await scene.entry(annual)).toMatchObject({ signOff: { expiresOn: '2026-03-09' } });
    expect((await scene.entry(annual)).state).toBe('ready');
    await sign('2025-03-10');
    expect(await scene.entry(annual)).toMatchObject({
      state: 'ending',
      signOff: { expiresOn: '2026-03-10' },
    });
  });
});

describe('an instructor’s students', () => {
  const students = async (by: Session) => (await by.get('/instructor/students').expect(200)).body.students;

  it('are those signed for, those at work on what the instructor may sign, with what is left', async () => {
    const model = await scene.model({ instructorIds: [scene.teacher.memberId] });
    const annual = await scene.inForce({ kind: 'annual-check', title: 'Yearly', items: [LANDING] });
    await scene.inForce({ kind: 'condition', condition: 'night' });
    expect(await students(scene.teacher)).toEqual([]);
    await scene.mark(model.inForce!.items[0]!.id);
    const [student] = await students(scene.teacher);
    expect(student).toMatchObject({
      member: { name: 'Lee Learner' },
      because: ['signed', 'in-progress'],
      nextFlightAt: null,
    });
    // The night checkout nobody has begun is not left over.
    expect(student.left.map(({ requirementId }: Entry) => requirementId).sort()).toEqual(
      [model.id, annual.id].sort(),
    );
    expect(await students(scene.other)).toEqual([]);
    await scene.mark(annual.inForce!.items[0]!.id);
    expect(await students(scene.other)).toMatchObject([{ because: ['in-progress'] }]);
    await scene.learner.get('/instructor/students').expect(403);
  });

  it('are read in a number of statements that does not grow with them', async () => {
    const model = await scene.model();
    const add = async () => {
      const learner = await scene.club.createMember();
      const body = { itemId: model.inForce!.items[0]!.id, outcome: 'signed' };
      await scene.teacher.post(`/members/${learner.memberId}/checkout-marks`, body).expect(201);
    };
    await add();
    const count = (): Promise<number> => leastQueries(api, () => students(scene.teacher));
    expect(await students(scene.teacher)).toHaveLength(1);
    const statements = await count();
    for (let more = 0; more < 4; more += 1) await add();
    expect(await students(scene.teacher)).toHaveLength(5);
    expect(await count()).toBe(statements);
  });
});

describe('who may read how far somebody is', () => {
  it('is the member, instructors and officers', async () => {
    await scene.model();
    const path = `/members/${scene.learner.memberId}/checkout-progress`;
    for (const who of [scene.learner, scene.other, scene.officer]) await who.get(path).expect(200);
    const stranger = await scene.club.signInAs('member');
    for (const address of [path, scene.marks, `/members/${scene.learner.memberId}/quiz-attempts`])
      await stranger.get(address).expect(403);
  });
});
