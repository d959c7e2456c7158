/** What a checkout asks for, items signed one by one, and the whole signed. */
import { type Api, startApi } from '../support/api.js';
import { CheckoutScene, LANDING, RADIO, type Requirement, TURN } from './checkout-scene.js';

let api: Api;
let scene: CheckoutScene;
beforeAll(async () => {
  api = await startApi();
}, 120_000);
afterAll(() => api.stop());
beforeEach(async () => {
  scene = await CheckoutScene.make(api);
}, 60_000);

const base = '/checkout-requirements';
const problem = (body: unknown) =>
  body as { code: string; detail: string; errors?: { field: string }[]; left?: string[] };
const signModel = (by = scene.teacher, more: object = {}) =>
  by.post(scene.checkouts, { kind: 'model', modelId: scene.fleet.modelId, signedOn: '2026-03-10', ...more });
const signAll = async ({ inForce }: Requirement) => {
  for (const { id } of inForce!.items) await scene.mark(id);
};

describe('requirements', () => {
  it('begin as a draft that only officers see, and are in force once published', async () => {
    const draft = await scene.draft({ kind: 'condition', condition: 'night', title: 'Night', goodDays: 365 });
    expect(draft).toMatchObject({ inForce: null, subject: 'night', draft: { number: 1, goodDays: 365 } });
    const seen = (await scene.learner.get(`${base}/${draft.id}`).expect(200)).body;
    expect(seen).toMatchObject({ draft: null, inForce: null });
    const published = await scene.publish(draft);
    expect(published).toMatchObject({
      draft: null,
      inForce: { number: 1, publishedBy: { name: 'Olga Officer' } },
    });
    const list = (await scene.learner.get(base).expect(200)).body.items;
    expect(list).toHaveLength(1);
    expect(list[0].inForce.items.map((one: { title: string }) => one.title)).toEqual([
      TURN.title,
      LANDING.title,
    ]);
  });

  it('change by a new version, while the old one stays as it was', async () => {
    const first = await scene.model();
    const path = `${base}/${first.id}`;
    const next = { title: 'Trainer, longer', items: [TURN, LANDING, RADIO] };
    const drafted = (await scene.officer.put(`${path}/draft`, next, `"${first.rowVersion}"`).expect(200))
      .body as Requirement;
    expect(drafted).toMatchObject({ inForce: { number: 1 }, draft: { number: 2 } });
    await scene.officer.put(`${path}/draft`, next, `"${first.rowVersion}"`).expect(412);
    await scene.publish(drafted);
    const versions = (await scene.learner.get(`${path}/versions`).expect(200)).body.items;
    expect(
      versions.map((one: { number: number; items: unknown[] }) => [one.number, one.items.length]),
    ).toEqual([
      [2, 3],
      [1, 2],
    ]);
  });

  it('that were never published go with their draft', async () => {
    const draft = await scene.draft({ kind: 'annual-check' });
    await scene.officer.delete(`${base}/${draft.id}/draft`, '"1"').expect(204);
    await scene.officer.get(`${base}/${draft.id}`).expect(404);
    expect(
      problem(
        (await scene.officer.delete(`${base}/${(await scene.model()).id}/draft`, '"2"').expect(409)).body,
      ).code,
    ).toBe('requirement-no-draft');
  });

  it('exist once for each subject, until the one there is is retired', async () => {
    const first = await scene.model();
    const again = { title: 'Again', items: [], kind: 'model', modelId: scene.fleet.modelId };
    await scene.officer.post(base, again).expect(409);
    await scene.officer.patch(`${base}/${first.id}`, { retired: true }, `"${first.rowVersion}"`).expect(200);
    await scene.officer.post(base, again).expect(201);
    expect((await scene.learner.get(`${base}?retired=true`).expect(200)).body.items).toHaveLength(2);
  });

  it('that wait for each other are refused, over any number of steps', async () => {
    const night = await scene.inForce({ kind: 'condition', condition: 'night', title: 'Night' });
    const field = await scene.inForce({
      ...{ kind: 'condition', condition: 'short-field', title: 'Short', prerequisiteIds: [night.id] },
    });
    const model = await scene.model({ prerequisiteIds: [field.id] });
    const circle = { title: 'Night', items: [], prerequisiteIds: [model.id] };
    const { body } = await scene.officer
      .put(`${base}/${night.id}/draft`, circle, `"${night.rowVersion}"`)
      .expect(422);
    expect(problem(body).errors![0]!.field).toBe('prerequisiteIds');
    const itself = { ...circle, prerequisiteIds: [night.id] };
    await scene.officer.put(`${base}/${night.id}/draft`, itself, `"${night.rowVersion}"`).expect(422);
    // What another waits for is not retired.
    const refused = await scene.officer
      .patch(`${base}/${night.id}`, { retired: true }, `"${night.rowVersion}"`)
      .expect(409);
    expect(problem(refused.body).code).toBe('requirement-needed');
  });

  it.each<[what: string, body: () => object, field: string]>([
    ['a model checkout without a model', () => ({ kind: 'model' }), 'modelId'],
    [
      'a night checkout of a model',
      () => ({ kind: 'condition', condition: 'night', modelId: scene.fleet.modelId }),
      'modelId',
    ],
    ['two items of one title', () => ({ kind: 'annual-check', items: [TURN, TURN] }), 'items[1].title'],
    [
      'like models of a condition',
      () => ({ kind: 'condition', condition: 'night', alsoModelIds: [scene.fleet.modelId] }),
      'alsoModelIds',
    ],
    [
      'its own model as a like one',
      () => ({ kind: 'model', modelId: scene.fleet.modelId, alsoModelIds: [scene.fleet.modelId] }),
      'alsoModelIds[0]',
    ],
    [
      'a member who does not teach',
      () => ({ kind: 'annual-check', instructorIds: [scene.learner.memberId] }),
      'instructorIds[0]',
    ],
  ])('with %s are refused by name', async (_what, body, field) => {
    const answer = await scene.officer.post(base, { title: 'X', items: [], ...body() }).expect(422);
    expect(problem(answer.body).errors![0]!.field).toBe(field);
    expect((await scene.officer.get(base).expect(200)).body.items).toEqual([]);
  });
});

describe('items', () => {
  it('are signed, or not yet with what is missing; the newest counts', async () => {
    const model = await scene.model();
    const [turn] = model.inForce!.items;
    const bare = await scene.teacher.post(scene.marks, { itemId: turn!.id, outcome: 'not-yet' }).expect(422);
    expect(problem(bare.body).errors![0]!.field).toBe('note');
    await scene.mark(turn!.id, { outcome: 'not-yet', note: 'Lost 200 ft', markedOn: '2026-03-01' });
    expect(await scene.entry(model)).toMatchObject({
      ...{ state: 'in-progress', itemsLeft: 2, ready: false, youMaySign: false },
      items: [{ state: 'not-yet', mark: { note: 'Lost 200 ft' } }, { state: 'open' }],
    });
    await scene.mark(turn!.id);
    expect(await scene.entry(model, scene.teacher)).toMatchObject({ itemsLeft: 1, youMaySign: true });
    const again = await scene.teacher.post(scene.marks, { itemId: turn!.id, outcome: 'signed' }).expect(409);
    expect(problem(again.body)).toMatchObject({ code: 'item-signed-already' });
  });

  it('are signed by who may, never for oneself, never ahead of the day', async () => {
    const model = await scene.model({ instructorIds: [scene.teacher.memberId] });
    const [turn] = model.inForce!.items;
    const seen = { itemId: turn!.id, outcome: 'signed' };
    expect(problem((await scene.other.post(scene.marks, seen).expect(403)).body).code).toBe(
      'not-authorised-for-checkout',
    );
    const own = await scene.teacher
      .post(`/members/${scene.teacher.memberId}/checkout-marks`, seen)
      .expect(403);
    expect(problem(own.body).code).toBe('own-checkout');
    await scene.learner.post(scene.marks, seen).expect(403);
    await scene.officer.post(scene.marks, seen).expect(403);
    const ahead = await scene.teacher.post(scene.marks, { ...seen, markedOn: '2026-03-11' }).expect(422);
    expect(problem(ahead.body).errors![0]!.field).toBe('markedOn');
  });

  it('of a version of before, or of a draft, are not signed', async () => {
    const model = await scene.model();
    const body = { title: 'Trainer', items: [LANDING] };
    const drafted = (
      await scene.officer.put(`${base}/${model.id}/draft`, body, `"${model.rowVersion}"`).expect(200)
    ).body as Requirement;
    const of = (itemId: string) => scene.teacher.post(scene.marks, { itemId, outcome: 'signed' });
    await of(drafted.draft!.items[0]!.id).expect(422);
    await scene.publish(drafted);
    expect(problem((await of(model.inForce!.items[0]!.id).expect(422)).body).errors![0]!.field).toBe(
      'itemId',
    );
  });

  it('that say the same in the next version stay signed, and those that say otherwise do not', async () => {
    const model = await scene.model();
    await signAll(model);
    const stricter = { ...TURN, standard: 'Within 50 ft' };
    const drafted = (
      await scene.officer
        .put(
          `${base}/${model.id}/draft`,
          { title: 'Stricter', items: [LANDING, stricter] },
          `"${model.rowVersion}"`,
        )
        .expect(200)
    ).body as Requirement;
    await scene.publish(drafted);
    const { items } = await scene.entry(model);
    expect(items.map(({ title, state }) => [title, state])).toEqual([
      [LANDING.title, 'signed'],
      [TURN.title, 'open'],
    ]);
    await signModel().expect(409);
    await scene.mark(items[1]!.itemId);
    await signModel().expect(201);
  });

  it('are corrected by another record, once, and withdrawn by who signed or an officer', async () => {
    const model = await scene.model();
    const [turn, landing] = model.inForce!.items;
    const first = await scene.mark(turn!.id);
    const correct = (id: string, body: object, by = scene.teacher) =>
      by.post(`${scene.marks}/${id}/correct`, body);
    const because = 'Rolled out late after all';
    const second = (
      await correct(first.id, { because, record: { outcome: 'not-yet', note: 'Rolls out late' } }).expect(201)
    ).body;
    expect(second).toMatchObject({ corrects: first.id, because, outcome: 'not-yet', markedOn: '2026-03-10' });
    expect(problem((await correct(first.id, { because, record: null }).expect(409)).body).code).toBe(
      'item-corrected-already',
    );
    expect((await scene.entry(model)).items[0]!.state).toBe('not-yet');
    const other = await scene.mark(landing!.id);
    await correct(other.id, { because, record: null }, scene.other).expect(403);
    await correct(other.id, { because, record: null }, scene.officer).expect(201);
    expect((await scene.entry(model)).items[1]!.state).toBe('open');
    const list = async (query = '') =>
      (await scene.learner.get(`${scene.marks}${query}`).expect(200)).body.items;
    expect(await list()).toHaveLength(1);
    expect(await list('?corrected=true')).toHaveLength(4);
  });
});

describe('the whole checkout', () => {
  it('is refused with what is left, and signed once nothing is', async () => {
    const model = await scene.model({ goodDays: 365, items: [TURN, LANDING, RADIO] });
    const refused = problem((await signModel().expect(409)).body);
    expect(refused).toMatchObject({ code: 'checkout-not-complete' });
    expect(refused.left).toEqual(['“Steep turns” is not signed', '“Landings” is not signed']);
    const [turn, landing] = model.inForce!.items;
    await scene.mark(turn!.id);
    await scene.mark(landing!.id);
    expect(await scene.entry(model)).toMatchObject({ state: 'ready', ready: true });
    const signed = (await signModel().expect(201)).body;
    // 365 days after 10 March 2026.
    expect(signed).toMatchObject({ versionId: model.inForce!.id, expiresOn: '2027-03-10' });
    expect(await scene.entry(model)).toMatchObject({
      ...{ state: 'standing', itemsLeft: 2, ready: false, signOff: { expiresOn: '2027-03-10' } },
    });
    // Its items are behind it: another needs them anew, and they are not withdrawn from under it.
    await signModel().expect(409);
    const [mark] = (await scene.learner.get(scene.marks).expect(200)).body.items;
    const withdraw = () =>
      scene.teacher.post(`${scene.marks}/${mark.id}/correct`, { because: 'Wrong member', record: null });
    expect(problem((await withdraw().expect(409)).body).code).toBe('item-behind-checkout');
    await scene.teacher.post(`/checkouts/${signed.id}/void`, { reason: 'Wrong member' }).expect(200);
    expect(await scene.entry(model)).toMatchObject({ state: 'ready' });
    await withdraw().expect(201);
  });

  it('is signed by who may, for a day on which all was there, for no longer than the club lets it last', async () => {
    const model = await scene.model({ goodDays: 100, instructorIds: [scene.teacher.memberId] });
    await signAll(model);
    expect(problem((await signModel(scene.other).expect(403)).body).code).toBe('not-authorised-for-checkout');
    const early = await signModel(scene.teacher, { signedOn: '2026-03-09' }).expect(422);
    expect(problem(early.body).errors![0]!.field).toBe('signedOn');
    const long = await signModel(scene.teacher, { expiresOn: '2026-06-19' }).expect(422);
    expect(problem(long.body).errors![0]!.field).toBe('expiresOn');
    expect((await signModel(scene.teacher, { expiresOn: '2026-06-18' }).expect(201)).body.expiresOn).toBe(
      '2026-06-18',
    );
  });

  it('waits for what must stand first, and until that has not run out', async () => {
    const night = await scene.inForce({
      kind: 'condition',
      condition: 'night',
      title: 'Night',
      items: [],
      goodDays: 30,
    });
    const model = await scene.model({ prerequisiteIds: [night.id], items: [] });
    expect(problem((await signModel().expect(409)).body).left).toEqual(['“Night” must stand first']);
    const sign = (signedOn: string) =>
      scene.teacher.post(scene.checkouts, { kind: 'condition', condition: 'night', signedOn });
    // Good through 9 March, the day before today.
    await sign('2026-02-07').expect(201);
    expect((await scene.entry(model)).prerequisites).toMatchObject([{ standing: false }]);
    await signModel().expect(409);
    await sign('2026-02-08').expect(201);
    await signModel().expect(201);
  });

  it('does not count items signed longer ago than it is good for', async () => {
    const model = await scene.model({ goodDays: 30, items: [TURN] });
    await scene.mark(model.inForce!.items[0]!.id, { markedOn: '2026-02-07' });
    expect(await scene.entry(model)).toMatchObject({ itemsLeft: 1 });
    await signModel().expect(409);
    await scene.mark(model.inForce!.items[0]!.id, { markedOn: '2026-02-08' });
    await signModel().expect(201);
  });

  it('is as before where the club has laid nothing down, or no more', async () => {
    expect((await signModel().expect(201)).body).toMatchObject({ versionId: null, expiresOn: null });
    const model = await scene.model();
    await signModel().expect(409);
    await scene.officer.patch(`${base}/${model.id}`, { retired: true }, `"${model.rowVersion}"`).expect(200);
    await signModel().expect(201);
  });

  it('signed twice at once counts once', async () => {
    const model = await scene.model();
    await signAll(model);
    const answers = await Promise.all([signModel(), signModel(), signModel()]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
  });
});
