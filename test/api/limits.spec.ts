import { newId } from '../../src/platform/ids.js';
import { type Api, type Session, startApi } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { teach } from '../support/teach.js';

let api: Api;
let ready: ReadyClub;
let instructor: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  instructor = await ready.club.signInAs('instructor');
});
afterAll(() => api.stop());

const pilot = async (): Promise<Session> => {
  const who = await ready.club.signInAs('member');
  await ready.makePilot(who.memberId);
  return who;
};
const of = (who: Session) => `/members/${who.memberId}/limits`;
const set = async (who: Session, limits: object, by = who) =>
  (await by.post(of(who), limits).expect(201)).body;
/** Today is 2026-03-10 in the club's zone. */
const weather = { observedAt: '2026-03-10T16:30:00Z', visibilitySm: 10, ceilingFtAgl: 6000 };
const ask = async (who: Session, more: object = {}) => {
  const request = {
    ...{ departs: '2026-03-10T17:00:00Z', arrives: '2026-03-10T18:00:00Z', purpose: 'solo' },
    ...{ personsOnBoard: 1, memberId: who.memberId, aircraftIds: [ready.aircraftId] },
    ...more,
  };
  const { decisions } = (await who.post('/decisions', request).expect(200)).body;
  return decisions[0] as {
    answer: string;
    conditions: string[];
    findings: { rule: string; status: string; weight: string; says: string; remedies: { act: string }[] }[];
  };
};
const finding = async (who: Session, rule: string, more: object = {}) =>
  (await ask(who, more)).findings.find((one) => one.rule === rule)!;

describe('one’s own limits', () => {
  it('hold at once when nothing was set, and are seen by those who may', async () => {
    const who = await pilot();
    const before = (await who.get(of(who)).expect(200)).body;
    expect(before).toMatchObject({
      ...{ today: '2026-03-10', looserFrom: '2026-03-11' },
      own: { inForce: null, toCome: [] },
    });
    const { own } = await set(who, { windKt: 18, crosswindKt: 8, note: 'After the winter' });
    expect(own).toMatchObject({
      inForce: {
        ...{ windKt: 18, crosswindKt: 8, gustSpreadKt: null, night: null, validFrom: '2026-03-10' },
        ...{ note: 'After the winter', setBy: { id: who.memberId } },
      },
      toCome: [],
    });
    expect((await instructor.get(of(who)).expect(403)).body.detail).toMatch(/do not teach/);
    await teach(api, {
      ...{ clubId: ready.club.clubId, instructorId: instructor.memberId, memberId: who.memberId },
    });
    await instructor.get(of(who)).expect(200);
    const other = await ready.club.signInAs('member');
    expect((await other.get(of(who)).expect(403)).body.code).toBe('not-yours');
    await other.post(of(who), { windKt: 1 }).expect(403);
  });

  it('get stricter at once and looser the next day, figure by figure', async () => {
    const who = await pilot();
    await set(who, { windKt: 18, crosswindKt: 8, runwayFt: 2500 });
    const { own } = await set(who, { windKt: 25, crosswindKt: 6, runwayFt: 2500, night: false });
    expect(own.inForce).toMatchObject({ windKt: 18, crosswindKt: 6, runwayFt: 2500, night: false });
    expect(own.toCome).toMatchObject([{ validFrom: '2026-03-11', windKt: 25, crosswindKt: 6 }]);
    // Looser only: today stays as it is.
    const looser = (await set(who, { windKt: 30 })).own;
    expect(looser.inForce).toMatchObject({ windKt: 18, crosswindKt: 6 });
    expect(looser.toCome).toMatchObject([{ validFrom: '2026-03-11', windKt: 30, crosswindKt: null }]);
    // Thought better of: what was to come is gone.
    const back = (await set(who, { windKt: 15, crosswindKt: 6, runwayFt: 2500, night: false })).own;
    expect(back).toMatchObject({ inForce: { windKt: 15 }, toCome: [] });
    const count = async (): Promise<number> =>
      (await api.sql('SELECT 1 FROM personal_limits WHERE member_id = $1', [who.memberId])).length;
    const rows = await count();
    await set(who, { windKt: 15, crosswindKt: 6, runwayFt: 2500, night: false });
    expect(await count()).toBe(rows);
  });

  it('go by the club’s number of days', async () => {
    const other = await readyClub(api);
    await api.sql(
      "UPDATE policy_values SET value = '3' WHERE club_id = $1 AND parameter_id = 'club.limits.looser-after-days'",
      [other.club.clubId],
    );
    const who = await other.club.signInAs('member');
    await set(who, { windKt: 18 });
    expect((await set(who, { windKt: 20 })).own.toCome).toMatchObject([{ validFrom: '2026-03-13' }]);
  });

  it('set twice at the same moment do not loosen the day', async () => {
    const who = await pilot();
    await set(who, { windKt: 20 });
    await Promise.all([1, 2, 3, 4].map((less) => set(who, { windKt: 20 - less, crosswindKt: less })));
    const { own } = (await who.get(of(who)).expect(200)).body;
    expect(own.inForce).toMatchObject({ windKt: 16, crosswindKt: 1 });
  });

  it.each([
    [{ from: '2026-03-09' }, 422, 'from'],
    [{ from: '2027-03-12' }, 422, 'from'],
    [{ bindsThrough: '2026-04-01' }, 422, 'bindsThrough'],
    [{ windKt: 81 }, 400, 'windKt'],
    [{ crosswindKt: 7.5 }, 400, 'crosswindKt'],
    [{ runwayFt: 99 }, 400, 'runwayFt'],
    [{ night: 'no' }, 400, 'night'],
    [{ visibilityDaySm: -1 }, 400, 'visibilityDaySm'],
    [{ bankDeg: 30 }, 400, 'bankDeg'],
  ])('refuse %j, naming the field', async (body, status, field) => {
    const who = await pilot();
    expect((await who.post(of(who), body).expect(status)).body.errors[0].field).toBe(field);
    expect((await who.get(of(who)).expect(200)).body.own.inForce).toBeNull();
  });

  it('are advice on a flight: told, a condition where the weather is not, and never a refusal', async () => {
    const who = await pilot();
    expect(await finding(who, 'personal.wind')).toMatchObject({ status: 'not-applicable' });
    await set(who, { windKt: 15, night: false });
    const untold = await ask(who);
    expect(untold.findings.find(({ rule }) => rule === 'personal.wind')).toMatchObject({ status: 'unknown' });
    expect(untold.conditions).toContain(
      'Check the wind before departure against the limits set: wind 15 kt.',
    );
    const windy = { weather: { ...weather, windFromDeg: 92, windKt: 16, gustKt: 16 } };
    const told = await ask(who, windy);
    expect(['yes', 'yes-with-conditions']).toContain(told.answer);
    expect(told.findings.find(({ rule }) => rule === 'personal.wind')).toMatchObject({
      ...{ status: 'short', weight: 'advice' },
      remedies: [{ act: 'fly-with-instructor' }],
    });
    const calm = { weather: { ...weather, windFromDeg: 92, windKt: 15, gustKt: 15 } };
    expect(await finding(who, 'personal.wind', calm)).toMatchObject({ status: 'met' });
    const late = { departs: '2026-03-11T02:30:00Z', arrives: '2026-03-11T03:30:00Z' };
    expect(await finding(who, 'personal.night', late)).toMatchObject({ status: 'short' });
  });

  it('of tomorrow judge the flights of tomorrow', async () => {
    const who = await pilot();
    await set(who, { runwayFt: 4200 });
    await set(who, { runwayFt: 4000 });
    await set(who, { runwayFt: 5000, from: '2026-03-12' });
    const on = (day: string) => ({ departs: `${day}T17:00:00Z`, arrives: `${day}T18:00:00Z` });
    for (const [day, status, asks] of [
      ['2026-03-10', 'met', '4200 ft'],
      ['2026-03-11', 'met', '4000 ft'],
      ['2026-03-12', 'short', '5000 ft'],
    ] as const) {
      const found = await finding(who, 'personal.runway', on(day));
      expect([day, found.status, found.says]).toEqual([
        day,
        status,
        expect.stringContaining(`ask for ${asks}`),
      ]);
    }
  });
});

describe('limits an instructor set', () => {
  const student = async (): Promise<Session> => {
    const who = await pilot();
    await api.sql("UPDATE certificates SET level = 'student' WHERE member_id = $1", [who.memberId]);
    return who;
  };

  it('stand beside the student’s own, change at once either way, and bind by an officer’s leave', async () => {
    const who = await student();
    await set(who, { windKt: 30 });
    const set1 = await set(who, { windKt: 12, runwayFt: 5000 }, instructor);
    expect(set1).toMatchObject({
      own: { inForce: { windKt: 30 } },
      instructor: { inForce: { windKt: 12, setBy: { id: instructor.memberId } } },
    });
    const bound = await ask(who);
    const short = bound.findings.find(({ rule }) => rule === 'club.student_limits.runway')!;
    expect(short).toMatchObject({ status: 'short', weight: 'club' });
    expect(['no', 'ask-officer', 'dual-only']).toContain(bound.answer);
    expect(bound.findings.find(({ rule }) => rule === 'club.student_limits.wind')).toMatchObject({
      status: 'unknown',
    });
    expect(bound.conditions).toContain('Check the wind before departure against the limits set: wind 12 kt.');
    await set(who, { windKt: 12, runwayFt: 3000 }, instructor);
    expect(await finding(who, 'club.student_limits.runway')).toMatchObject({ status: 'met' });
  });

  it('leave a rated pilot alone, but through the day named', async () => {
    const who = await pilot();
    await set(who, { runwayFt: 5000 }, instructor);
    expect(await finding(who, 'club.student_limits.runway')).toMatchObject({ status: 'not-applicable' });
    await set(who, { runwayFt: 5000, bindsThrough: '2026-03-10' }, instructor);
    const bound = await ask(who);
    expect(bound.answer).toBe('dual-only');
    const day = { departs: '2026-03-11T17:00:00Z', arrives: '2026-03-11T18:00:00Z' };
    expect(await finding(who, 'club.student_limits.runway', day)).toMatchObject({ status: 'not-applicable' });
  });

  it('are an instructor’s to set, for somebody else, and bind through their first day at least', async () => {
    const who = await student();
    const officer = await ready.club.signInAs('safety-officer');
    await officer.post(of(who), { windKt: 12 }).expect(403);
    const wrong = { windKt: 12, from: '2026-03-12', bindsThrough: '2026-03-11' };
    const refused = (await instructor.post(of(who), wrong).expect(422)).body;
    expect(refused.errors[0].field).toBe('bindsThrough');
    // An instructor's for oneself are one's own.
    const own = await set(instructor, { windKt: 25 });
    expect(own).toMatchObject({ own: { inForce: { windKt: 25 } }, instructor: { inForce: null } });
  });

  it('go with the member’s other data', async () => {
    const who = await student();
    await set(who, { windKt: 12 }, instructor);
    const mine = (await who.get('/my-record').expect(200)).body;
    expect(mine.records.limits).toHaveLength(1);
    const chief = await ready.club.signInAs('administrator');
    const erased = await chief
      .post(`/members/${who.memberId}/erasure`, { reason: 'Asked for it in writing' })
      .expect(200);
    expect(erased.body.deleted.limits).toBe(1);
    expect(await api.sql('SELECT 1 FROM personal_limits WHERE member_id = $1', [who.memberId])).toEqual([]);
  });
});

describe('suggestions', () => {
  interface SuggestedNow {
    limit: string;
    value: unknown;
    says: string;
    evidence: { kind: string; id: string }[];
  }
  const suggested = async (who: Session, by = who): Promise<Record<string, SuggestedNow>> => {
    const { suggestions } = (await by.get(`${of(who)}/suggestions`).expect(200)).body;
    return Object.fromEntries((suggestions as SuggestedNow[]).map((one) => [one.limit, one]));
  };

  it('come from landings signed to standard and from the log, each with its records', async () => {
    const who = await pilot();
    const none = await suggested(who);
    expect(none.crosswindKt).toMatchObject({ value: null, evidence: [] });
    expect(none.windKt).toMatchObject({ value: null });
    const landing = { flownOn: '2026-03-01', manoeuvre: 'normal_landing', crosswindKt: 9, toStandard: true };
    const at = `/members/${who.memberId}/practice`;
    const signed = (await instructor.post(at, { ...landing, gustSpreadKt: 6 }).expect(201)).body;
    // One's own word that it went well does not count.
    await who.post(at, { ...landing, crosswindKt: 20 }).expect(201);
    await instructor.post(at, { ...landing, crosswindKt: 15, flownOn: '2025-09-10' }).expect(201);
    const row = insertInto(api.sql, ready.club.clubId);
    const flight = {
      ...{ member_id: who.memberId, aircraft_id: ready.aircraftId, model_id: ready.modelId },
      ...{
        aircraft_words: 'Sparrow 150',
        category: 'airplane',
        class: 'single-engine-land',
        tailwheel: false,
      },
      ...{ role: 'pilot-in-command', sole_manipulator: true, from_airfield: 'XQHB', to_airfield: 'XQHB' },
      ...{ departed_at: '2026-03-02T01:00:00Z', arrived_at: '2026-03-02T02:00:00Z', flown_on: '2026-03-01' },
      ...{ takeoffs: 1, landings: 1, full_stop_landings: 1, night_takeoffs: 1, night_full_stop_landings: 1 },
      total_tenths: 10,
    };
    const logId = newId();
    await row('log_entries', { id: logId, ...flight });
    const found = await suggested(who, instructor);
    expect(found.crosswindKt).toMatchObject({ value: 9, evidence: [{ kind: 'practice', id: signed.id }] });
    expect(found.gustSpreadKt).toMatchObject({ value: 6 });
    expect(found.runwayFt).toMatchObject({ value: 4200 });
    expect(found.night).toMatchObject({ value: true, evidence: [{ kind: 'log', id: logId }] });
    const gone = { because: 'Another member flew', record: null };
    await instructor.post(`${at}/${signed.id}/correct`, gone).expect(201);
    expect((await suggested(who)).crosswindKt).toMatchObject({ value: null });
  });

  it('are for those who may read the member’s record', async () => {
    const [who, other] = [await pilot(), await ready.club.signInAs('member')];
    expect((await other.get(`${of(who)}/suggestions`).expect(403)).body.code).toBe('not-yours');
    await instructor.get(`/members/${newId()}/limits/suggestions`).expect(404);
  });
});
