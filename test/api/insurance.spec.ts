/** Insurance terms and checks of members over HTTP: who enters them, what they refuse, and what a decision says of them. */
import { type Api, type Session, startApi } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';

let api: Api;
let ready: ReadyClub;
let member: Session;
let coordinator: Session;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  member = await ready.club.signInAs('member');
  await ready.makePilot(member.memberId);
  coordinator = await ready.club.signInAs('maintenance-coordinator');
  officer = await ready.club.signInAs('safety-officer');
});
afterAll(() => api.stop());

const TERMS = { source: 'Pilot clause of 2026', validFrom: '2026-01-01', validThrough: '2026-12-31' };
const at = (aircraftId: string): string => `/aircraft/${aircraftId}/insurance`;
const enter = async (aircraftId: string, more: object) =>
  (await coordinator.post(at(aircraftId), { ...TERMS, ...more }).expect(201)).body as { id: string };

interface Finding {
  rule: string;
  status: string;
  says: string;
  overridable: boolean;
}
/** What a rule says of a flight of the member tomorrow in the aircraft. */
async function found(rule: string, aircraftId: string, more: object = {}): Promise<Finding> {
  const asked = await member
    .post('/decisions', {
      ...{ aircraftIds: [aircraftId], departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T19:00:00Z' },
      ...{ purpose: 'solo', personsOnBoard: 1, ...more },
    })
    .expect(200);
  const { findings } = (asked.body as { decisions: { findings: Finding[] }[] }).decisions[0]!;
  return findings.find((one) => one.rule === rule)!;
}
const policy = (parameterId: string, value: unknown) =>
  api.sql(`UPDATE policy_values SET value = $3::jsonb WHERE club_id = $1 AND parameter_id = $2`, [
    ...[ready.club.clubId, parameterId, JSON.stringify(value)],
  ]);

describe('insurance terms', () => {
  it('hold every flight in the aircraft against what they ask for', async () => {
    const aircraftId = await ready.addAircraft('XB-501');
    const rule = 'club.insurance_minimums';
    expect(await found(rule, aircraftId)).toMatchObject({ status: 'not-applicable' });
    const first = await enter(aircraftId, { minimums: { totalH: 2000, leastLevel: 'private' } });
    const short = await found(rule, aircraftId);
    expect(short).toMatchObject({ status: 'short', overridable: false });
    expect(short.says).toMatch(
      /^The insurance \(Pilot clause of 2026\) asks for more .*: [\d.]+ of 2000\.0 h in all\.$/,
    );
    const ended = await coordinator
      .post(`${at(aircraftId)}/${first.id}/end`, { through: '2026-03-11', because: 'Another policy' })
      .expect(200);
    expect(ended.body).toMatchObject({
      validThrough: '2026-03-11',
      endedBecause: 'Another policy',
      voidedAt: null,
    });
    const lapsed = await found(rule, aircraftId);
    expect(lapsed).toMatchObject({ status: 'short' });
    expect(lapsed.says).toContain('those on record run through 2026-03-11');
    await enter(aircraftId, { validFrom: '2026-03-12', namedPilotIds: [member.memberId], minimums: null });
    expect((await found(rule, aircraftId)).says).toContain('named in the insurance');
  });

  it('count what is in the log beyond the months that a sheet lists', async () => {
    const aircraftId = await ready.addAircraft('XB-502');
    const [{ tenths }] = (await api.sql<{ tenths: number }>(
      'SELECT coalesce(sum(total_tenths), 0)::int AS tenths FROM log_entries WHERE member_id = $1',
      [member.memberId],
    )) as [{ tenths: number }];
    await api.sql(
      `INSERT INTO log_entries (club_id, id, member_id, aircraft_words, model_id, category, class, tailwheel, departed_at, arrived_at,
         flown_on, from_airfield, to_airfield, role, sole_manipulator, takeoffs, landings, full_stop_landings, night_takeoffs,
         night_full_stop_landings, total_tenths)
       SELECT club_id, gen_random_uuid(), $1, 'Lark', $2, 'airplane', 'single-engine-land', false, '2019-05-05T10:00:00Z',
         '2019-05-05T15:00:00Z', '2019-05-05', 'XQHB', 'XQHB', 'pilot-in-command', true, 1, 1, 1, 0, 0, 50
       FROM members WHERE id = $1`,
      [member.memberId, ready.modelId],
    );
    await enter(aircraftId, { minimums: { totalH: (tenths + 50) / 10 } });
    expect(await found('club.insurance_minimums', aircraftId)).toMatchObject({ status: 'met' });
  });

  it('are asked for on every aircraft where the club says so', async () => {
    const aircraftId = await ready.addAircraft('XB-503');
    await policy('club.insurance.required', true);
    const none = await found('club.insurance_minimums', aircraftId);
    expect(none).toMatchObject({ status: 'unknown' });
    expect(none.says).toContain('no insurance terms are on record');
    await policy('club.insurance.required', false);
  });

  it('are told as they were entered, and to members without the names of others', async () => {
    const aircraftId = await ready.addAircraft('XB-504');
    const minimums = { totalH: 100.5, recentH: 10, recentDays: 90, instrumentRating: true, modelH: 0 };
    const terms = await enter(aircraftId, { minimums, namedPilotIds: [officer.memberId] });
    const list = async (who: Session) =>
      ((await who.get(at(aircraftId)).expect(200)).body as { items: Record<string, unknown>[] }).items;
    const [seen] = await list(coordinator);
    expect(seen).toMatchObject({
      id: terms.id,
      namedPilotIds: [officer.memberId],
      namedPilots: 1,
      rowVersion: 1,
    });
    expect(seen!.minimums).toMatchObject({
      totalH: 100.5,
      recentH: 10,
      recentDays: 90,
      modelH: null,
      leastLevel: null,
    });
    expect((await list(member))[0]).toMatchObject({ namedPilotIds: [], namedPilots: 1 });
    expect((await list(officer))[0]).toMatchObject({ namedPilotIds: [officer.memberId] });
  });

  it('are taken back once, and leave their days free', async () => {
    const aircraftId = await ready.addAircraft('XB-505');
    const terms = await enter(aircraftId, { minimums: {} });
    const taken = await coordinator.post(at(aircraftId), { ...TERMS, minimums: {} }).expect(409);
    expect(taken.body).toMatchObject({ code: 'insurance-terms-overlap' });
    const end = `${at(aircraftId)}/${terms.id}/end`;
    const back = await officer.post(end, { because: 'Of another aircraft' }).expect(200);
    expect(back.body.voidedAt).toEqual(expect.any(String));
    expect((await officer.post(end, { because: 'Of another aircraft' }).expect(409)).body.code).toBe(
      'insurance-terms-void',
    );
    await enter(aircraftId, { minimums: {} });
  });

  it.each([
    ['validThrough', { validThrough: '2025-12-31', minimums: {} }],
    ['minimums', { minimums: null }],
    ['minimums.recentDays', { minimums: { recentH: 10 } }],
    ['minimums.recentH', { minimums: { recentDays: 90 } }],
    ['minimums.mostAgeYears', { minimums: { leastAgeYears: 70, mostAgeYears: 25 } }],
    ['namedPilotIds', { namedPilotIds: ['01900000-0000-7000-8000-000000000000'] }],
  ])('refuse %s that cannot be', async (field, more) => {
    const { body } = await coordinator.post(at(ready.aircraftId), { ...TERMS, ...more }).expect(422);
    expect(body.errors?.[0]?.field ?? body.field).toBe(field);
  });

  it.each([
    ['before they began', '2025-12-31'],
    ['on the day they end anyway', '2026-12-31'],
  ])('are not ended %s', async (_when, through) => {
    const aircraftId = await ready.addAircraft(`XB-${through.slice(0, 4)}`);
    const { id } = await enter(aircraftId, { minimums: {} });
    await coordinator.post(`${at(aircraftId)}/${id}/end`, { through, because: 'A slip' }).expect(422);
  });
});

describe('checks of members', () => {
  const checks = (who: Session): string => `/members/${who.memberId}/checks`;
  const LESSON = { purpose: 'dual', personsOnBoard: 2 };

  it('let the club ask for an identity document, and for citizenship before lessons', async () => {
    const teacher = await ready.club.signInAs('instructor');
    const lesson = { ...LESSON, instructorId: teacher.memberId };
    const identity = () => found('club.identity_checks', ready.aircraftId);
    const citizenship = () => found('club.citizenship_evidence', ready.aircraftId, lesson);
    expect(await identity()).toMatchObject({ status: 'not-applicable' });
    await policy('club.identity.required', true);
    await policy('club.citizenship.required-for-training', true);
    expect(await identity()).toMatchObject({ status: 'short', overridable: true });
    expect(await citizenship()).toMatchObject({ status: 'short', overridable: false });
    const seen = await officer
      .post(checks(member), { kind: 'identity', seenOn: '2026-03-01', expiresOn: '2030-05-05' })
      .expect(201);
    expect(seen.body).toEqual({
      ...{ id: expect.any(String), memberId: member.memberId, kind: 'identity', seenOn: '2026-03-01' },
      ...{ expiresOn: '2030-05-05', seenBy: officer.memberId, recordedAt: expect.any(String), voided: null },
    });
    await officer.post(checks(member), { kind: 'citizenship', seenOn: '2026-03-01' }).expect(201);
    expect((await identity()).says).toContain('good through 2030-05-05');
    expect(await citizenship()).toMatchObject({ status: 'met' });
    const back = await officer
      .post(`/member-checks/${seen.body.id}/void`, { reason: 'Of a brother' })
      .expect(200);
    expect(back.body.voided).toMatchObject({ by: officer.memberId, reason: 'Of a brother' });
    await officer.post(`/member-checks/${seen.body.id}/void`, { reason: 'Of a brother' }).expect(409);
    expect(await identity()).toMatchObject({ status: 'short' });
    await policy('club.identity.required', false);
    await policy('club.citizenship.required-for-training', false);
  });

  it('are for the member and those who look after members', async () => {
    const other = await ready.club.signInAs('member');
    expect((await other.get(checks(member)).expect(403)).body.code).toBe('not-yours');
    const own = (await member.get(checks(member)).expect(200)).body as { items: { kind: string }[] };
    expect(own.items.map(({ kind }) => kind)).toEqual(['citizenship', 'identity']);
    const record = (await member.get('/my-record').expect(200)).body as {
      records: Record<string, unknown[]>;
    };
    expect(JSON.stringify(record)).toContain('"citizenship"');
  });

  it('are not recorded of oneself, ahead, or of what had run out', async () => {
    const own = { kind: 'identity', seenOn: '2026-03-01' };
    expect((await officer.post(checks(officer), own).expect(403)).body.code).toBe('own-check');
    await officer.post(checks(member), { ...own, seenOn: '2031-01-01' }).expect(422);
    await officer.post(checks(member), { ...own, expiresOn: '2026-02-28' }).expect(422);
    // There is nowhere to put a number of a document.
    await officer.post(checks(member), { ...own, number: 'X1234567' }).expect(400);
  });
});

describe('until when papers hold', () => {
  it('is told by the rules: a first class steps down', async () => {
    const who = await ready.club.signInAs('member');
    await api.sql("UPDATE members SET birth_date = '1990-06-01' WHERE id = $1", [who.memberId]);
    const medical = await who
      .post(`/members/${who.memberId}/medicals`, { class: 1, examOn: '2026-01-15' })
      .expect(201);
    const { body } = await who.get(`/members/${who.memberId}/papers-hold`).expect(200);
    const { holds } = (body.items as { paperId: string; holds: object[] }[]).find(
      ({ paperId }) => paperId === medical.body.id,
    )!;
    // 14 CFR 61.23(d): under 40, twelve calendar months for the first and second class, sixty for the third.
    expect(holds).toEqual([
      { purpose: 'airline transport privileges', through: '2027-01-31', note: null },
      { purpose: 'commercial privileges', through: '2027-01-31', note: null },
      {
        purpose: 'private, recreational, student or instructor privileges',
        through: '2031-01-31',
        note: null,
      },
    ]);
    const other = await ready.club.signInAs('member');
    await other.get(`/members/${who.memberId}/papers-hold`).expect(403);
  });
});
