import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import type { Session } from '../support/session.js';
import { alone, etag, findingOf, problem, RULE, rulesScene, TODAY } from './club-rules-scene.js';

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

describe('drafts', () => {
  test('a draft is kept, with what it reads and costs, and judges nobody', async () => {
    const made = await draft({ requirement: 'pilot.landingsInModelInDays(90) >= 9' });
    expect(made).toMatchObject({
      ...{ code: 'club.own.early-birds', version: 1, state: 'draft', phase: 'draft', appliesWhen: 'true' },
      ...{ condition: null, inForceFrom: null, inForceTo: null, createdBy: officer.memberId, dryRun: null },
      ...{ reads: ['aircraft.type', 'pic.log'], faults: [], warnings: [], rowVersion: 1 },
    });
    expect(made.cost.parts).toBeGreaterThan(3);
    expect(findingOf(await ask())).toBeUndefined();
    const { body } = await ready.member.get(`/club-rules/${made.id}`).expect(200);
    expect(body).toEqual(made);
  });

  test('what cannot be taken is refused with field, line, column and reason, and nothing is kept', async () => {
    const refused = await officer
      .post('/club-rules', {
        ...RULE,
        appliesWhen: 'flight.passengers',
        requirement: 'flight.alone\n  && pilot.totalHour >= 100',
        message: 'You have {pilot.totalHours of 100.',
      })
      .expect(422);
    expect(refused.headers['content-type']).toContain('application/problem+json');
    expect(refused.body.code).toBe('club-rule-refused');
    expect(refused.body.errors).toEqual([
      {
        ...{ field: 'appliesWhen', pointer: '/appliesWhen', in: 'body', line: 1, column: 1 },
        message:
          "Line 1, column 1: This gives a whole number; it must be true or false, as in 'flight.passengers == 0'.",
      },
      {
        ...{ field: 'requirement', pointer: '/requirement', in: 'body', line: 2, column: 6 },
        message: "Line 2, column 6: 'pilot' has no 'totalHour'. Did you mean 'pilot.totalHours'?",
      },
      {
        ...{ field: 'message', pointer: '/message', in: 'body', line: 1, column: 10 },
        message: "Line 1, column 10: This brace is not closed. Write '}' after the expression.",
      },
    ]);
    expect((await officer.get('/club-rules').expect(200)).body.items).toEqual([]);
  });

  test('a check keeps nothing, and tells reads, cost and warnings, beside the rules in force too', async () => {
    await active({ slug: 'late', title: 'Late', requirement: 'flight.departsHour >= 9' });
    const check = (body: object) => officer.post('/club-rules/check', body);
    const { body } = await check({
      requirement: 'flight.departsHour < 9',
      message: 'Earlier: {flight.hours}.',
    }).expect(200);
    expect(body).toMatchObject({
      reads: [],
      warnings: [{ code: 'contradicts', otherRule: 'club.own.late' }],
    });
    expect((await check({ requirement: 'wind.speedKt < 9.0' }).expect(200)).body.warnings).toMatchObject([
      { code: 'refuses-while-not-told' },
    ]);
    const refused = await check({ requirement: 'wind.speedKt < 9', message: '{wind}' }).expect(422);
    expect(problem(refused)).toEqual({ code: 'club-rule-refused', fields: ['message'] });
    expect((await officer.get('/club-rules?state=draft').expect(200)).body.items).toEqual([]);
  });

  test('a draft is edited and thrown away under its ETag', async () => {
    const made = await draft();
    const at = `/club-rules/${made.id}`;
    await officer.patch(at, { title: 'X' }).expect(428);
    const edited = await officer
      .patch(
        at,
        { title: 'Not before ten', weight: 'advice', requirement: '!flight.departsBefore("10:00")' },
        '"1"',
      )
      .expect(200);
    expect(edited.headers['etag']).toBe('"2"');
    expect(edited.body).toMatchObject({
      title: 'Not before ten',
      weight: 'advice',
      document: RULE.document,
      rowVersion: 2,
    });
    await officer.patch(at, { title: 'Y' }, '"1"').expect(412);
    expect(problem(await officer.patch(at, { requirement: 'flight.' }, '"2"').expect(422))).toEqual({
      code: 'club-rule-refused',
      fields: ['requirement'],
    });
    await officer.delete(at, '"1"').expect(412);
    await officer.delete(at, '"2"').expect(204);
    await officer.get(at).expect(404);
  });

  test('bad bodies are refused field by field', async () => {
    const refuse = async (of: object, field: string, status = 400) => {
      const refused = await officer.post('/club-rules', { ...RULE, ...of }).expect(status);
      expect([of, [...new Set(problem(refused).fields)]]).toEqual([of, [field]]);
    };
    await refuse({ slug: 'Early Birds' }, 'slug');
    await refuse({ slug: '' }, 'slug');
    await refuse({ weight: 'law' }, 'weight');
    await refuse({ title: '   ' }, 'title');
    await refuse({ document: undefined }, 'document');
    await refuse({ requirement: 5 }, 'requirement');
    await refuse({ requirement: 'x'.repeat(2001) }, 'requirement');
    await refuse({ requirement: '   ' }, 'requirement', 422);
    await refuse({ requirement: 'true\u0000' }, 'requirement');
    await refuse({ message: 'x'.repeat(501) }, 'message');
    await refuse({ inForceFrom: TODAY }, 'inForceFrom');
    await refuse({ code: 'club.own.x' }, 'code');
  });

  test('a short name is given once, also after the rule has ended', async () => {
    const one = await active();
    await post('end', one, { to: '2026-03-11' }).expect(200);
    const refused = await officer.post('/club-rules', RULE).expect(409);
    expect(problem(refused)).toEqual({ code: 'club-rule-code-taken', fields: ['slug'] });
  });
});

describe('in force', () => {
  test('a draft goes into force only after a dry run of just this draft', async () => {
    const made = await draft();
    expect(problem(await post('activate', made, { from: TODAY }).expect(409)).code).toBe(
      'club-rule-not-tried',
    );
    const run = await dryRun(made);
    expect(run).toMatchObject({ ruleId: made.id, draftVersion: 1, lookedAt: 0, changed: 0, warnings: [] });
    const { body: edited } = await officer
      .patch(`/club-rules/${made.id}`, { title: 'Other' }, '"1"')
      .expect(200);
    expect(edited.dryRun).toMatchObject({ ofThisDraft: false, by: officer.memberId });
    const stale = await post('activate', edited, { from: TODAY }).expect(409);
    expect(stale.body).toMatchObject({
      code: 'club-rule-not-tried',
      detail: expect.stringContaining('edited since'),
    });
    await dryRun(edited);
    const { body } = await post('activate', edited, { from: TODAY }).expect(200);
    expect(body).toMatchObject({
      ...{ state: 'active', phase: 'in-force', inForceFrom: TODAY, inForceTo: null },
      ...{ activatedBy: officer.memberId, activatedAt: '2026-03-10T15:00:00Z' },
    });
  });

  test('it judges flights from its day on, and says its message; the answer changes there', async () => {
    await active({}, '2026-03-12');
    // 13:30Z is 8:30 in Chicago (UTC-5 since 2026-03-08).
    const early = (day: string) => ({ ...alone, departs: `${day}T13:30:00Z`, arrives: `${day}T15:00:00Z` });
    const before = await ask(early('2026-03-11'));
    expect(findingOf(before)).toMatchObject({ status: 'not-applicable' });
    expect(before.answer).toMatch(/^yes/);
    const after = await ask(early('2026-03-12'));
    expect(findingOf(after)).toMatchObject({
      status: 'short',
      version: 1,
      says: 'Depart at nine or later; you planned 8 h.',
    });
    expect(after.answer).toBe('ask-officer');
    // Replayed years later, with the rule as it was then.
    const { body } = await ready.member.get(`/decisions/${after.id}/replay`).expect(200);
    expect(body.identical).toBe(true);
  });

  test('a member is refused, and an officer books over it with a reason', async () => {
    await active();
    const early = { ...alone, departs: '2026-03-11T13:30:00Z', arrives: '2026-03-11T15:00:00Z' };
    const book = (who: Session, more: object = {}) =>
      who
        .post('/bookings', { aircraftId: ready.aircraftId, ...early, ...more })
        .set('Idempotency-Key', newId());
    expect((await book(ready.member).expect(409)).body.code).toBe('not-bookable');
    const { body } = await book(officer, {
      memberId: ready.member.memberId,
      override: { reason: 'Ferry to the shop before it opens' },
    }).expect(201);
    expect(body.overrides).toMatchObject([{ ruleId: 'club.own.early-birds' }]);
  });

  test('its condition is told while the wind is not, and the flight may be booked', async () => {
    const condition = 'Go only with a crosswind of 10 kt or less.';
    await active({
      slug: 'crosswind',
      requirement: 'wind.crosswindKt <= 10.0',
      message: 'Too much wind.',
      condition,
    });
    const decision = await ask();
    expect(findingOf(decision, 'club.own.crosswind')).toMatchObject({
      status: 'unknown',
      conditions: [condition],
    });
    expect(decision.answer).toBe('yes-with-conditions');
    const weather = { observedAt: '2026-03-11T17:30:00Z', windFromDeg: 180, windKt: 25 };
    api.clock.set('2026-03-11T17:45:00Z');
    expect(findingOf(await ask({ ...alone, weather }), 'club.own.crosswind')).toMatchObject({
      status: 'short',
    });
  });

  test('totals count flying that the sheet no longer lists', async () => {
    await active({
      slug: 'experience',
      requirement: 'pilot.totalHours >= 100.0 && pilot.hoursInModel >= 3.5',
      message: '{pilot.totalHours} h.',
    });
    expect(findingOf(await ask(), 'club.own.experience')).toMatchObject({ status: 'short', says: '1 h.' });
    await api.sql(
      `INSERT INTO log_entries (club_id, id, member_id, model_id, aircraft_words, category, class, tailwheel, departed_at, arrived_at,
         flown_on, from_airfield, to_airfield, role, sole_manipulator, takeoffs, landings, full_stop_landings, night_takeoffs,
         night_full_stop_landings, total_tenths, device)
       SELECT $1, gen_random_uuid(), $2, CASE WHEN n < 1 THEN $3::uuid END, 'Old', 'airplane', 'single-engine-land', false,
         '2019-05-01T12:00:00Z', '2019-05-01T14:30:00Z', '2019-05-01', 'XQHB', 'XQHB', 'pilot-in-command', true, 1, 1, 1, 0, 0, 25,
         CASE WHEN n = 39 THEN 'full-flight-simulator' END
       FROM generate_series(0, 39) n`,
      [ready.club.clubId, ready.member.memberId, ready.modelId],
    );
    const decision = await ask();
    // 1.0 h in the sheet's log, 39 flights of 2.5 h before it; the simulator's time does not count.
    expect(findingOf(decision, 'club.own.experience')).toMatchObject({ status: 'short', says: '98.5 h.' });
    await api.sql('UPDATE log_entries SET device = NULL WHERE device IS NOT NULL AND member_id = $1', [
      ready.member.memberId,
    ]);
    expect(findingOf(await ask(), 'club.own.experience')).toMatchObject({ status: 'met' });
  });

  test('no rule begins or ends in the past', async () => {
    const made = await draft();
    await dryRun(made);
    expect(problem(await post('activate', made, { from: '2026-03-09' }).expect(422))).toEqual({
      code: 'club-rule-day',
      fields: ['from'],
    });
    const { body } = await post('activate', made, { from: '2026-04-01' }).expect(200);
    expect(body.phase).toBe('to-come');
    expect(problem(await post('end', body, { to: '2026-03-09' }).expect(422))).toEqual({
      code: 'club-rule-day',
      fields: ['to'],
    });
    expect(problem(await post('end', body, { to: '2026-03-31' }).expect(422))).toEqual({
      code: 'club-rule-day',
      fields: ['to'],
    });
    expect(problem(await post('end', body, { to: '2026-02-30' }).expect(400)).fields).toEqual(['to']);
  });

  test('a version in force is neither edited nor removed, and a draft does not end', async () => {
    const one = await active();
    expect(
      problem(await officer.patch(`/club-rules/${one.id}`, { title: 'X' }, etag(one)).expect(409)).code,
    ).toBe('club-rule-not-draft');
    expect(problem(await officer.delete(`/club-rules/${one.id}`, etag(one)).expect(409)).code).toBe(
      'club-rule-not-draft',
    );
    expect(problem(await officer.post(`/club-rules/${one.id}/dry-run`, {}).expect(409)).code).toBe(
      'club-rule-not-draft',
    );
    expect(problem(await post('activate', one, { from: TODAY }).expect(409)).code).toBe(
      'club-rule-not-draft',
    );
    const two = await draft({ slug: 'other' });
    expect(problem(await post('end', two, { to: TODAY }).expect(409)).code).toBe('club-rule-still-draft');
    expect(problem(await officer.post(`/club-rules/${two.id}/versions`, {}).expect(409)).code).toBe(
      'club-rule-still-draft',
    );
  });
});

describe('versions', () => {
  test('a change is the next version; the one before ends where it begins, and both are kept', async () => {
    const one = await active();
    const { body: two } = await officer
      .post(`/club-rules/${one.id}/versions`, {
        requirement: '!flight.departsBefore("10:00")',
        document: 'Minutes of 1 March',
      })
      .expect(201);
    expect(two).toMatchObject({
      ...{ code: one.code, version: 2, state: 'draft', title: RULE.title, message: RULE.message },
      ...{ requirement: '!flight.departsBefore("10:00")', document: 'Minutes of 1 March' },
    });
    expect(problem(await officer.post(`/club-rules/${one.id}/versions`, {}).expect(409)).code).toBe(
      'club-rule-draft-there',
    );
    expect(
      problem(await officer.patch(`/club-rules/${two.id}`, { weight: 'advice' }, '"1"').expect(409)).code,
    ).toBe('club-rule-weight-fixed');
    expect(
      problem(await officer.post(`/club-rules/${one.id}/versions`, { weight: 'advice' }).expect(409)).code,
    ).toBe('club-rule-weight-fixed');
    await dryRun(two);
    await post('activate', two, { from: '2026-03-13' }).expect(200);
    const all = await officer.all<{ version: number; state: string; inForceTo: string | null }>(
      `/club-rules?limit=1&code=${one.code}`,
    );
    expect(all.map(({ version, state, inForceTo }) => [version, state, inForceTo])).toEqual([
      [1, 'ended', '2026-03-13'],
      [2, 'active', null],
    ]);
    // 14:30Z is 9:30 in Chicago.
    const half = (day: string) => ({ ...alone, departs: `${day}T14:30:00Z`, arrives: `${day}T16:00:00Z` });
    expect(findingOf(await ask(half('2026-03-12')))).toMatchObject({ status: 'met', version: 1 });
    expect(findingOf(await ask(half('2026-03-13')))).toMatchObject({ status: 'short', version: 2 });
  });

  test('a version to come that is taken back leaves the one before as it was', async () => {
    const one = await active();
    const { body: two } = await officer
      .post(`/club-rules/${one.id}/versions`, { requirement: 'false' })
      .expect(201);
    await dryRun(two);
    const { body: coming } = await post('activate', two, { from: '2026-04-01' }).expect(200);
    expect(coming.phase).toBe('to-come');
    const { body: gone } = await post('end', coming, { to: '2026-04-01' }).expect(200);
    expect(gone).toMatchObject({
      state: 'ended',
      phase: 'past',
      inForceFrom: '2026-04-01',
      inForceTo: '2026-04-01',
    });
    const { body: back } = await officer.get(`/club-rules/${one.id}`).expect(200);
    expect(back).toMatchObject({ state: 'active', inForceTo: null, endedBy: null });
  });

  test('an end may be brought forward, not put off', async () => {
    const one = await active();
    const { body: ended } = await post('end', one, { to: '2026-04-01' }).expect(200);
    expect(ended).toMatchObject({
      state: 'ended',
      phase: 'in-force',
      inForceTo: '2026-04-01',
      endedBy: officer.memberId,
    });
    expect(problem(await post('end', ended, { to: '2026-04-02' }).expect(422)).code).toBe('club-rule-day');
    const { body: sooner } = await post('end', ended, { to: '2026-03-20' }).expect(200);
    expect(sooner.inForceTo).toBe('2026-03-20');
    api.clock.set('2026-03-21T15:00:00Z');
    expect((await officer.get(`/club-rules/${one.id}`).expect(200)).body.phase).toBe('past');
  });

  test('two officers at once: one version, one end, one draft', async () => {
    const made = await draft();
    await dryRun(made);
    const both = await Promise.all([
      post('activate', made, { from: TODAY }),
      post('activate', made, { from: '2026-03-11' }),
    ]);
    expect(both.map(({ status }) => status).sort()).toEqual([200, 412]);
    const drafts = await Promise.all(
      [1, 2, 3].map(() => officer.post(`/club-rules/${made.id}/versions`, {})),
    );
    expect(drafts.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
  });

  test('every change is in the audit log, with who made it', async () => {
    const one = await active();
    const { body: ended } = await administrator
      .post(`/club-rules/${one.id}/end`, { to: '2026-04-01' })
      .set('If-Match', etag(one))
      .expect(200);
    const rows = await api.sql(
      `SELECT action, actor_id, after ->> 'state' AS state FROM audit_log WHERE table_name = 'club_rules' AND row_id = $1 ORDER BY id`,
      [ended.id],
    );
    expect(rows).toEqual([
      { action: 'insert', actor_id: officer.memberId, state: 'draft' },
      { action: 'update', actor_id: officer.memberId, state: 'active' },
      { action: 'update', actor_id: administrator.memberId, state: 'ended' },
    ]);
  });
});

describe('who may', () => {
  test('all members read; officers and administrators write', async () => {
    const made = await draft({}, administrator);
    const others = [
      ready.member,
      await ready.club.signInAs('instructor'),
      await ready.club.signInAs('maintenance-coordinator'),
    ];
    for (const who of others) {
      await who.get('/club-rules').expect(200);
      await who.get(`/club-rules/${made.id}`).expect(200);
      await who.get('/club-rules/schema').expect(200);
      await who.post('/club-rules', { ...RULE, slug: 'mine' }).expect(403);
      await who.post('/club-rules/check', { requirement: 'true' }).expect(403);
      await who.patch(`/club-rules/${made.id}`, { title: 'X' }, '"1"').expect(403);
      await who.delete(`/club-rules/${made.id}`, '"1"').expect(403);
      await who.post(`/club-rules/${made.id}/dry-run`, {}).expect(403);
      await who.get(`/club-rules/${made.id}/dry-run`).expect(403);
      await who.get(`/club-rules/${made.id}/dry-run/changes`).expect(403);
      await who.post(`/club-rules/${made.id}/versions`, {}).expect(403);
      await who.post(`/club-rules/${made.id}/activate`, { from: TODAY }).set('If-Match', '"1"').expect(403);
      await who.post(`/club-rules/${made.id}/end`, { to: TODAY }).set('If-Match', '"1"').expect(403);
    }
    await api.http.get('/api/v1/club-rules').expect(401);
  });

  test("another club's rules are not there", async () => {
    const made = await active();
    const other = await (await api.createClub()).signInAs('administrator');
    await other.get(`/club-rules/${made.id}`).expect(404);
    await other.patch(`/club-rules/${made.id}`, { title: 'X' }, etag(made)).expect(404);
    await other.delete(`/club-rules/${made.id}`, etag(made)).expect(404);
    await other.post(`/club-rules/${made.id}/versions`, {}).expect(404);
    await other.post(`/club-rules/${made.id}/end`, { to: TODAY }).set('If-Match', etag(made)).expect(404);
    await other.post(`/club-rules/${made.id}/dry-run`, {}).expect(404);
    expect((await other.get('/club-rules').expect(200)).body.items).toEqual([]);
  });
});

describe('what the database kept but rules may say no more', () => {
  test('is an error on every flight and says so in the list; never a pass, never silence', async () => {
    const one = await active();
    await api.sql('ALTER TABLE club_rules DISABLE TRIGGER club_rules_kept');
    await api.sql("UPDATE club_rules SET requirement = 'flight.noSuchThing || true' WHERE id = $1", [one.id]);
    await api.sql('ALTER TABLE club_rules ENABLE TRIGGER club_rules_kept');
    const decision = await ask();
    expect(findingOf(decision)).toMatchObject({
      status: 'error',
      says: expect.stringContaining('noSuchThing'),
    });
    expect(decision.answer).toBe('ask-officer');
    const { body } = await officer.get(`/club-rules/${one.id}`).expect(200);
    expect(body).toMatchObject({
      reads: [],
      cost: null,
      faults: [{ field: 'requirement', line: 1, column: 1, code: 'unknown-value' }],
    });
  });
});

test('the schema tells every value with its type, unit and words; its examples are taken', async () => {
  const { body } = await ready.member.get('/club-rules/schema').expect(200);
  expect(body).toMatchObject({ version: 1, limits: { characters: 2000, parts: 200, days: 730 } });
  const values = body.owners.flatMap((owner: { values: { written: string }[] }) => owner.values) as {
    written: string;
    says: string;
  }[];
  const of = (written: string) => values.find((one) => one.written === written);
  expect(of('pilot.landingsInDays(days)')).toMatchObject({
    type: 'int',
    reads: ['pic.log'],
    toldLate: false,
  });
  expect(of('wind.crosswindKt')).toMatchObject({ type: 'double', unit: 'kt', toldLate: true });
  expect(of('flight.purpose')).toMatchObject({ words: expect.arrayContaining(['solo', 'dual']) });
  for (const { appliesWhen, requirement } of body.examples as { appliesWhen: string; requirement: string }[])
    await officer.post('/club-rules/check', { appliesWhen, requirement }).expect(200);
});

test('a list is asked for by state, a few words at a time, and nothing else', async () => {
  await active();
  await draft({ slug: 'second' });
  const states = async (query: string) =>
    (await ready.member.get(`/club-rules${query}`).expect(200)).body.items.map(
      (one: { state: string }) => one.state,
    );
  expect(await states('')).toEqual(['active', 'draft']);
  expect(await states('?state=draft')).toEqual(['draft']);
  expect(await states('?code=club.own.second')).toEqual(['draft']);
  await ready.member.get('/club-rules?state=nonsense').expect(400);
});
