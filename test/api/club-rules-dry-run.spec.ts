import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { alone, NOBODY, rulesScene, TODAY, type Asked } from './club-rules-scene.js';

let api: Api;
let scene: Awaited<ReturnType<typeof rulesScene>>;
let ready: typeof scene.ready;
let officer: typeof scene.officer;
let administrator: typeof scene.administrator;
let draft: typeof scene.draft;
let dryRun: typeof scene.dryRun;
let post: typeof scene.post;
let active: typeof scene.active;
let ask: typeof scene.ask;

beforeAll(async () => {
  api = await startApi();
}, 60_000);
beforeEach(async () => {
  scene = await rulesScene(api);
  ({ ready, officer, administrator, draft, dryRun, post, active, ask } = scene);
});
afterAll(() => api.stop());

const day = (date: string, from: string, hours = 2) => {
  const departs = `${date}T${from}:00Z`;
  return {
    ...alone,
    departs,
    arrives: new Date(Date.parse(departs) + hours * 3_600_000).toISOString().replace('.000Z', 'Z'),
  };
};

test('list each answer that would have been another, and count the rest', async () => {
  const early = await ask(day('2026-03-11', '13:30'));
  const late = await ask(day('2026-03-12', '18:00'));
  const refused = await ask({ ...day('2026-03-13', '13:00'), personsOnBoard: 9 });
  expect([early, late, refused].map(({ answer }) => answer)).toEqual([
    'yes-with-conditions',
    'yes-with-conditions',
    'no',
  ]);
  const run = await dryRun(await draft());
  expect(run).toMatchObject({
    ...{
      lookedAt: 3,
      bookingsToCome: 0,
      leftOut: [],
      changed: 1,
      changedBookings: 0,
      since: '2025-03-10T05:00:00Z',
    },
    verdicts: { met: 1, short: 2, unknown: 0, notApplicable: 0, error: 0 },
    changes: [{ before: 'yes-with-conditions', after: 'ask-officer', count: 1 }],
    items: [
      {
        ...{
          decisionId: early.id,
          bookingId: null,
          memberId: ready.member.memberId,
          memberName: 'Robin Member',
        },
        ...{ aircraftId: ready.aircraftId, registration: 'NX101B', departs: '2026-03-11T13:30:00Z' },
        ...{
          before: 'yes-with-conditions',
          after: 'ask-officer',
          status: 'short',
          askedAt: '2026-03-10T15:00:00Z',
        },
        says: 'Depart at nine or later; you planned 8 h.',
      },
    ],
    nextCursor: null,
  });
  expect(run.caution).toContain('pilot in command');
  // What was found is kept.
  const { ruleId } = run;
  expect((await administrator.get(`/club-rules/${ruleId}/dry-run`).expect(200)).body).toEqual(run);
});

test('what it says is what would have been answered: the same questions with the rule in force', async () => {
  const questions = [
    day('2026-03-11', '13:30'),
    { ...day('2026-03-12', '13:30'), purpose: 'passengers', personsOnBoard: 3 },
    day('2026-03-13', '18:00'),
    { ...day('2026-03-14', '13:00'), purpose: 'dual', personsOnBoard: 2 },
    { ...day('2026-03-15', '13:00'), personsOnBoard: 9 },
  ];
  const before: Asked[] = [];
  for (const one of questions) before.push(await ask(one));
  const made = await draft({ appliesWhen: '!flight.instruction' });
  const run = await dryRun(made);
  await post('activate', made, { from: TODAY }).expect(200);
  const now: Asked[] = [];
  for (const one of questions) now.push(await ask(one));
  const changed = before.flatMap((one, at) =>
    one.answer === now[at]!.answer ? [] : [[one.id, one.answer, now[at]!.answer]],
  );
  expect(changed.length).toBeGreaterThanOrEqual(2);
  expect(
    run.items
      .map((one: { decisionId: string; before: string; after: string }) => [
        one.decisionId,
        one.before,
        one.after,
      ])
      .sort(),
  ).toEqual(changed.sort());
  // An instructor is a way round a rule that asks nothing of lessons.
  expect(changed.map(([, , after]) => after)).toContain('dual-only');
});

test('bookings to come are looked at first, and named', async () => {
  const book = (request: object) =>
    ready.member
      .post('/bookings', { aircraftId: ready.aircraftId, ...request })
      .set('Idempotency-Key', newId())
      .expect(201);
  const { body: soon } = await book(day('2026-03-12', '13:30'));
  const { body: fine } = await book(day('2026-03-13', '18:00'));
  await ask(day('2026-03-14', '13:30'));
  const made = await draft();
  const run = await dryRun(made, { lookAt: 2 });
  expect(run).toMatchObject({
    ...{ lookedAt: 2, bookingsToCome: 2, changed: 1, changedBookings: 1 },
    leftOut: [{ count: 1, because: expect.stringContaining('oldest') }],
    items: [{ bookingId: soon.id, decisionId: soon.decisionId }],
  });
  expect(fine.id).not.toBe(soon.id);
  // Over, a booking's decision is one of the others.
  api.clock.set('2026-03-14T15:00:00Z');
  expect(await dryRun(made)).toMatchObject({ lookedAt: 3, bookingsToCome: 0, changed: 2, leftOut: [] });
  // And after a year it is too old.
  api.clock.set('2027-03-12T15:00:00Z');
  expect(await dryRun(made)).toMatchObject({ lookedAt: 0 });
});

test('the next version is held against the answers that were given, with the old one taken out', async () => {
  const one = await active();
  const early = await ask(day('2026-03-11', '13:30'));
  expect(early.answer).toBe('ask-officer');
  const { body: looser } = await officer
    .post(`/club-rules/${one.id}/versions`, { requirement: '!flight.departsBefore("08:00")' })
    .expect(201);
  expect(await dryRun(looser)).toMatchObject({
    changes: [{ before: 'ask-officer', after: 'yes-with-conditions', count: 1 }],
    items: [{ decisionId: early.id, status: 'met' }],
  });
});

test('many changes come page by page', async () => {
  for (let at = 0; at < 5; at += 1) await ask(day(`2026-03-1${at + 1}`, '13:30'));
  const made = await draft();
  const run = await dryRun(made);
  expect(run).toMatchObject({ changed: 5, nextCursor: null });
  const pages = await officer.all<{ decisionId: string }>(`/club-rules/${made.id}/dry-run/changes?limit=2`);
  expect(pages.map(({ decisionId }) => decisionId)).toEqual(
    run.items.map((one: { decisionId: string }) => one.decisionId),
  );
  await officer.get(`/club-rules/${made.id}/dry-run/changes?cursor=nonsense`).expect(400);
});

test("the club's own data give warnings", async () => {
  await active({ slug: 'afternoons', title: 'Afternoons', requirement: 'flight.departsHour >= 12' });
  for (let at = 0; at < 6; at += 1) await ask(day(`2026-03-1${at + 1}`, at % 2 ? '18:00' : '13:30'));
  const warned = async (of: object) =>
    (await dryRun(await draft({ slug: `w-${newId()}`, ...of }))).warnings.map(
      ({ code, otherRule }: { code: string; otherRule: string | null }) =>
        otherRule ? `${code} ${otherRule}` : code,
    );
  expect(await warned({ requirement: 'flight.hours < 9.0' })).toEqual(['never-failed']);
  expect(await warned({ appliesWhen: 'flight.forHire' })).toEqual(['never-applied']);
  expect(await warned({ requirement: 'flight.hours > 9.0' })).toEqual(['never-held']);
  expect(await warned({ requirement: 'wind.speedKt < 9.0' })).toEqual([
    'refuses-while-not-told',
    'mostly-unknown',
  ]);
  expect(await warned({ requirement: 'flight.departsHour < 12' })).toEqual([
    'contradicts club.own.afternoons',
    'never-both-held club.own.afternoons',
  ]);
  expect(await warned({ requirement: 'true' })).toEqual(['constant', 'never-fails', 'never-failed']);
  // The same in other words, which the text alone does not give away.
  expect(await warned({ requirement: 'flight.departsBefore("12:00")' })).toEqual([
    'never-both-held club.own.afternoons',
  ]);
});

test('a decision whose facts cannot be read is left out, and said to be', async () => {
  await ask(day('2026-03-11', '13:30'));
  const whole = await ask(day('2026-03-12', '13:30'));
  await api.sql('ALTER TABLE decisions DISABLE TRIGGER decisions_append_only');
  await api.sql(
    `UPDATE decisions SET parts = jsonb_set(parts, '{head}', '"gone"') WHERE club_id = $1 AND id <> $2`,
    [ready.club.clubId, whole.id],
  );
  await api.sql('ALTER TABLE decisions ENABLE TRIGGER decisions_append_only');
  expect(await dryRun(await draft())).toMatchObject({
    ...{ lookedAt: 1, changed: 1 },
    leftOut: [{ count: 1, because: expect.stringContaining('missing') }],
  });
});

test('nobody sees or tries what is not there', async () => {
  const made = await draft();
  await officer.get(`/club-rules/${made.id}/dry-run`).expect(404);
  await officer.post(`/club-rules/${NOBODY}/dry-run`, {}).expect(404);
  await officer.post(`/club-rules/${made.id}/dry-run`, { lookAt: 0 }).expect(400);
  await officer.post(`/club-rules/${made.id}/dry-run`, { lookAt: 10_001 }).expect(400);
});
