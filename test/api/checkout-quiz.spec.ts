/** The written quiz: the bank, attempts, scores, and what is never told too early. */
import { type Api, startApi } from '../support/api.js';
import { CheckoutScene, type Requirement } from './checkout-scene.js';

let api: Api;
let scene: CheckoutScene;
let model: Requirement;

interface Attempt {
  id: string;
  questions: {
    id: string;
    kind: string;
    text: string;
    choices: { letter: string }[];
    scored: object | null;
  }[];
  result: object | null;
}

const NUMBER = {
  ...{
    topic: 'limits',
    kind: 'number',
    text: 'Best glide?',
    rightValue: 64,
    tolerance: 1,
    unit: 'kt indicated',
  },
  reference: 'Invented handbook, section 3',
};
const SINGLE = {
  ...{ topic: 'systems', kind: 'single', text: 'How many tanks?' },
  choices: [
    { text: 'One', right: false },
    { text: 'Two', right: true },
  ],
};
const MULTIPLE = {
  ...{
    topic: 'emergency-memory',
    kind: 'multiple',
    text: 'Engine fire in flight, from memory: which of these?',
  },
  choices: [
    { text: 'Mixture off', right: true },
    { text: 'Radio on', right: false },
    { text: 'Fuel off', right: true },
  ],
};

beforeAll(async () => {
  api = await startApi();
}, 120_000);
afterAll(() => api.stop());

const base = () => `/checkout-requirements/${model.id}`;
const problem = (body: unknown) => body as { code: string; notBefore?: string; errors?: { field: string }[] };
async function publishQuestion(body: object): Promise<string> {
  const { id } = (await scene.officer.post(`${base()}/questions`, body).expect(201)).body as { id: string };
  await scene.officer.patch(`/checkout-questions/${id}`, { state: 'published' }, '"1"').expect(200);
  return id;
}
const start = async (by = scene.learner): Promise<Attempt> =>
  (await by.post(`${base()}/quiz`).expect(201)).body as Attempt;
const answersTo = ({ questions }: Attempt, right: (text: string) => boolean): object[] =>
  questions.map(({ id, text }) => {
    if (text === NUMBER.text) return { questionId: id, value: right(text) ? 65 : 66 };
    if (text === SINGLE.text) return { questionId: id, chosen: [right(text) ? 'b' : 'a'] };
    return { questionId: id, chosen: right(text) ? ['c', 'a'] : ['a'] };
  });
const handIn = (attempt: Attempt, answers: object[], by = scene.learner) =>
  by.post(`/quiz-attempts/${attempt.id}/answers`, { answers });

beforeEach(async () => {
  api.clock.set('2026-03-10T15:00:00Z');
  scene = await CheckoutScene.make(api);
  model = await scene.draft({
    kind: 'model',
    modelId: scene.fleet.modelId,
    title: 'Trainer',
    items: [],
    quiz: { questions: 3, passPercent: 70 },
  });
}, 60_000);

/** Three questions, one of each topic, and the checkout in force. */
async function asked(): Promise<void> {
  for (const one of [NUMBER, SINGLE, MULTIPLE]) await publishQuestion(one);
  model = await scene.publish(model);
}

describe('the bank', () => {
  it('has to hold as many published questions as a quiz draws', async () => {
    await publishQuestion(NUMBER);
    await scene.officer.post(`${base()}/questions`, SINGLE).expect(201);
    const { body } = await scene.officer.post(`${base()}/publish`).set('If-Match', '"1"').expect(409);
    expect(problem(body).code).toBe('quiz-bank-short');
  });

  it('is for officers; a draft is edited, a published question is not', async () => {
    const { id } = (await scene.officer.post(`${base()}/questions`, NUMBER).expect(201)).body as {
      id: string;
    };
    const path = `/checkout-questions/${id}`;
    await scene.officer.patch(path, { rightValue: 65 }, '"1"').expect(200);
    await scene.officer.patch(path, { state: 'published' }, '"2"').expect(200);
    expect(problem((await scene.officer.patch(path, { rightValue: 66 }, '"3"').expect(409)).body).code).toBe(
      'question-published',
    );
    await scene.officer.delete(path, '"3"').expect(409);
    await scene.officer.patch(path, { state: 'retired' }, '"3"').expect(200);
    await scene.officer.patch(path, { state: 'published' }, '"4"').expect(409);
    for (const who of [scene.learner, scene.teacher]) await who.get(`${base()}/questions`).expect(403);
  });

  it.each<[what: string, body: object, field: string]>([
    ['a number without the right one', { ...NUMBER, rightValue: null }, 'rightValue'],
    ['a number without a tolerance', { ...NUMBER, tolerance: null }, 'tolerance'],
    ['a number with choices', { ...NUMBER, choices: SINGLE.choices }, 'choices'],
    ['two right ones of a single choice', { ...MULTIPLE, kind: 'single' }, 'choices'],
    [
      'no right choice',
      {
        ...SINGLE,
        choices: [
          { text: 'One', right: false },
          { text: 'Two', right: false },
        ],
      },
      'choices',
    ],
    ['one choice', { ...SINGLE, choices: [{ text: 'One', right: true }] }, 'choices'],
    [
      'two choices that say the same',
      {
        ...SINGLE,
        choices: [
          { text: 'One', right: true },
          { text: 'One', right: false },
        ],
      },
      'choices[1].text',
    ],
    ['choices with a unit', { ...SINGLE, unit: 'kt' }, 'unit'],
  ])('refuses %s', async (_what, body, field) => {
    const answer = await scene.officer.post(`${base()}/questions`, body).expect(422);
    expect(problem(answer.body).errors![0]!.field).toBe(field);
  });
});

describe('an attempt', () => {
  beforeEach(asked, 60_000);

  it('asks without a word on what is right, whoever reads it, and tells after handing in', async () => {
    const attempt = await start();
    expect(attempt.questions.map(({ text }) => text).sort()).toEqual(
      [NUMBER.text, SINGLE.text, MULTIPLE.text].sort(),
    );
    for (const who of [scene.learner, scene.teacher, scene.officer]) {
      const { body, text } = await who.get(`/quiz-attempts/${attempt.id}`).expect(200);
      expect(body.questions.every(({ scored }: { scored: unknown }) => scored === null)).toBe(true);
      expect(text).not.toMatch(/right|tolerance|Invented handbook/i);
    }
    const { body } = await handIn(
      attempt,
      answersTo(attempt, () => true),
    ).expect(200);
    expect(body.result).toEqual({
      ...{ handedInAt: '2026-03-10T15:00:00Z', rightCount: 3, askedCount: 3, passPercent: 70, passed: true },
    });
    const number = body.questions.find(({ text }: { text: string }) => text === NUMBER.text);
    expect(number.scored).toMatchObject({
      right: true,
      value: 65,
      rightValue: 64,
      tolerance: 1,
      reference: NUMBER.reference,
    });
    await scene.other.get(`/quiz-attempts/${attempt.id}`).expect(200);
    await (await scene.club.signInAs('member')).get(`/quiz-attempts/${attempt.id}`).expect(403);
  });

  it('is one until it is handed in, also when begun several times at once', async () => {
    const all = await Promise.all([start(), start(), start()]);
    expect(new Set(all.map(({ id }) => id)).size).toBe(1);
    expect((await scene.entry(model)).quiz).toMatchObject({ state: 'open' });
  });

  it('is handed in once, by who takes it, with answers to what was asked', async () => {
    const attempt = await start();
    const [first] = attempt.questions;
    const refused = async (answers: object[], field: string) =>
      expect(problem((await handIn(attempt, answers).expect(422)).body).errors![0]!.field).toBe(field);
    await refused([{ questionId: model.id, value: 3 }], 'answers[0].questionId');
    const right = answersTo(attempt, () => true);
    await refused([...right, right[0]!], 'answers[3].questionId');
    const both = first!.kind === 'number' ? { chosen: ['a'] } : { value: 3 };
    await refused([{ questionId: first!.id, ...both }], `answers[0].${Object.keys(both)[0]}`);
    await handIn(attempt, right, scene.teacher).expect(403);
    const at = await Promise.all([handIn(attempt, right), handIn(attempt, right)]);
    expect(at.map(({ status }) => status).sort()).toEqual([200, 409]);
    expect(problem((await handIn(attempt, right).expect(409)).body).code).toBe('quiz-handed-in-already');
  });

  it('not passed lets the club’s hours pass before the next; passed, there is no next', async () => {
    const attempt = await start();
    const { body } = await handIn(
      attempt,
      answersTo(attempt, (text) => text !== NUMBER.text),
    ).expect(200);
    // Two of three are 66 of a hundred.
    expect(body.result).toMatchObject({ passed: false, rightCount: 2 });
    expect((await scene.entry(model)).quiz).toMatchObject({
      state: 'wait',
      bestPercent: 66,
      notBefore: '2026-03-11T15:00:00Z',
    });
    api.clock.set('2026-03-11T14:59:59Z');
    const wait = problem((await scene.learner.post(`${base()}/quiz`).expect(409)).body);
    expect(wait).toMatchObject({ code: 'quiz-wait', notBefore: '2026-03-11T15:00:00Z' });
    api.clock.set('2026-03-11T15:00:00Z');
    const next = await start();
    await handIn(
      next,
      answersTo(next, () => true),
    ).expect(200);
    expect((await scene.entry(model)).quiz).toMatchObject({ state: 'passed', bestPercent: 100 });
    expect(problem((await scene.learner.post(`${base()}/quiz`).expect(409)).body).code).toBe(
      'quiz-passed-already',
    );
    const list = (await scene.teacher.get(`/members/${scene.learner.memberId}/quiz-attempts`).expect(200))
      .body.items;
    expect(list.map(({ result }: { result: { passed: boolean } }) => result.passed)).toEqual([true, false]);
    expect(JSON.stringify(list)).not.toContain('chosen');
  });

  it('passed opens the checkout, which then has used it', async () => {
    const sign = () =>
      scene.teacher.post(scene.checkouts, {
        kind: 'model',
        modelId: scene.fleet.modelId,
        signedOn: '2026-03-10',
      });
    expect((await sign().expect(409)).body.left).toEqual(['the quiz is not passed']);
    const attempt = await start();
    await handIn(
      attempt,
      answersTo(attempt, () => true),
    ).expect(200);
    await sign().expect(201);
    expect((await scene.entry(model)).quiz).toMatchObject({ state: 'to-do' });
  });

  it('is not taken where no quiz is asked', async () => {
    const night = await scene.inForce({ kind: 'condition', condition: 'night' });
    const { body } = await scene.learner.post(`/checkout-requirements/${night.id}/quiz`).expect(409);
    expect(problem(body).code).toBe('quiz-not-asked');
  });
});
