/**
 * The answer over a span, asked over HTTP. What holds it: decisions asked for at the same departures, one by one, and the
 * bookings that the service then makes or refuses.
 */
import type { SignedIn } from '../../src/accounts/current-user.js';
import { aircraftTimeline, type Telling } from '../../src/decisions/timeline/aircraft-timeline.js';
import { newId } from '../../src/platform/ids.js';
import {
  pullOf,
  rulesetFor,
  toInstant,
  toSeconds,
  type Crew,
  type Finding,
  type Timeline,
} from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';
import { startApi, type Api } from '../support/api.js';
import { leastQueries } from '../support/least-queries.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { teach } from '../support/teach.js';

interface Step {
  from: string;
  to: string;
  answer: string;
  inTheWay: { rule: string; title: string }[];
  changed: { rule: string; title: string; was: string; is: string; withInstructor: boolean }[];
}
interface Slot {
  departs: string;
  arrives: string;
  answer: string;
}
interface OfAircraft {
  aircraft: { id: string; registration: string; makeModel: string };
  steps: Step[];
  firstSlot: Slot | null;
  firstDualSlot: Slot | null;
  cutAt: string | null;
  horizonNote: string | null;
}

const GOOD = ['yes', 'yes-with-conditions'];
const later = (instant: string, seconds: number): string => toInstant(toSeconds(instant) + seconds);

describe('timelines', () => {
  let api: Api;
  let ready: ReadyClub;

  beforeAll(async () => {
    api = await startApi();
  });
  beforeEach(async () => {
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  const withTwo = { purpose: 'passengers', personsOnBoard: 3, durationMinutes: 120 };
  const alone = { purpose: 'solo', personsOnBoard: 1, durationMinutes: 120 };
  const week = { from: '2026-03-11T14:00:00Z', to: '2026-03-18T14:00:00Z' };

  const ask = async (who: Session, body: object): Promise<OfAircraft[]> =>
    (await who.post('/decisions/timeline', body).expect(200)).body.aircraft;
  const stepAt = (steps: Step[], at: string): Step => steps.find(({ from, to }) => from <= at && at < to)!;
  const book = (who: Session, departs: string, arrives: string, more: object = {}) =>
    who
      .post('/bookings', {
        ...{ departs, arrives, aircraftId: ready.aircraftId, purpose: 'solo', personsOnBoard: 1 },
        ...more,
      })
      .set('Idempotency-Key', newId());
  const pilot = async (name: string): Promise<Session> => {
    const session = await ready.club.signInAs('member', { name });
    await ready.makePilot(session.memberId);
    return session;
  };
  const instructor = async (): Promise<Session> => {
    const session = await ready.club.signInAs('instructor', { name: 'Ines Structor' });
    await ready.makePilot(session.memberId);
    await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [session.memberId]);
    await insertInto(api.sql, ready.club.clubId)('instructor_certificates', {
      ...{ id: newId(), member_id: session.memberId, issued_on: '2020-05-01' },
      ...{ ratings: ['airplane-single-engine'], recent_experience_on: '2025-06-01' },
      ...{ verified_by: session.memberId, verified_at: '2026-01-02T00:00:00Z' },
    });
    return session;
  };
  /** Takes the aircraft off the calendar for the club's own use, on which the meter is expected to run. */
  const clubUse = (aircraftId: string, from: string, to: string, expectedTenths: number): Promise<void> =>
    insertInto(api.sql, ready.club.clubId)('bookings', {
      ...{ id: newId(), kind: 'club', aircraft_id: aircraftId, member_id: ready.member.memberId },
      ...{ during: `[${from},${to})`, expected_tenths: expectedTenths, request: '{}' },
    });

  test('a span is covered by steps, each with what changes at its edge', async () => {
    const { body } = await ready.member.post('/decisions/timeline', { ...withTwo, ...week }).expect(200);
    expect(body).toMatchObject({
      ...{ memberId: ready.member.memberId, ...week, durationMinutes: 120, join: 'detail' },
      knownAt: '2026-03-10T15:00:00Z',
      caution: expect.stringContaining('pilot in command decides'),
    });
    const [{ aircraft, steps, cutAt, horizonNote }] = body.aircraft as [OfAircraft];
    expect(aircraft).toEqual({ id: ready.aircraftId, registration: 'NX101B', makeModel: 'Harrow Lark 160' });
    expect([cutAt, horizonNote]).toEqual([null, null]);
    expect(steps[0]!.from).toBe(week.from);
    expect(steps.at(-1)!.to).toBe(week.to);
    expect(steps.slice(1).map(({ from }) => from)).toEqual(steps.slice(0, -1).map(({ to }) => to));
    // By day with passengers, but not at night: no landings by night are in the log. Seven evenings, seven mornings.
    const nights = steps.filter(({ inTheWay }) =>
      inTheWay.some(({ rule }) => rule === 'recency.passengers.night'),
    );
    expect(nights.length).toBeGreaterThanOrEqual(7);
    const dusk = steps.find(({ changed }) =>
      changed.some(({ rule }) => rule === 'recency.passengers.night'),
    )!;
    expect(dusk.changed).toContainEqual({
      rule: 'recency.passengers.night',
      title: expect.stringMatching(/night/i),
      ...{ was: expect.any(String), is: 'short', withInstructor: false },
    });
    expect(steps[0]!.changed).toEqual([]);
  });

  test('agrees with decisions at every edge, the second before it and in between', async () => {
    const other = await pilot('Sam Second');
    await book(other, '2026-03-12T15:00:00Z', '2026-03-12T18:00:00Z').expect(201);
    const second = await ready.addAircraft('NX102B');
    await book(ready.member, '2026-03-13T19:00:00Z', '2026-03-13T21:00:00Z', { aircraftId: second }).expect(
      201,
    );
    // So many hours before the 100-hour inspection that a later flight may overrun it.
    await clubUse(ready.aircraftId, '2026-03-20T14:00:00Z', '2026-03-21T14:00:00Z', 690);
    await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [
      ready.member.memberId,
      '2021-03-25',
    ]);
    const span = { from: '2026-03-11T14:00:00Z', to: '2026-05-30T14:00:00Z' };
    const mixed = { ...withTwo, forHire: false, ...span, aircraftIds: [ready.aircraftId] };
    const [{ steps }] = (await ask(ready.member, mixed)) as [OfAircraft];
    const edges = steps.slice(1).map(({ from }) => from);
    expect(edges.length).toBeGreaterThan(100);
    const first = edges.slice(0, 12);
    // Beyond the first days the edges without the sun: medical, inspection, how far ahead, recency.
    const rare = steps
      .slice(13)
      .filter(({ changed }) => changed.some(({ rule }) => !/night|sun|kinds|light/.test(rule)))
      .map(({ from }) => from)
      .slice(0, 14);
    const at = [...first, ...rare].flatMap((edge) => [later(edge, -1), edge]);
    at.push(...[3, 11, 31, 52, 64, 78].map((day) => later(span.from, day * 86_400 + 4321)));
    expect(at.length).toBeGreaterThanOrEqual(40);
    const answers = new Set<string>();
    for (const departs of at) {
      const { body } = await ready.member
        .post('/decisions', {
          ...{ purpose: 'passengers', personsOnBoard: 3, departs, arrives: later(departs, 7200) },
          aircraftIds: [ready.aircraftId],
        })
        .expect(200);
      const [decision] = body.decisions as { answer: string; findings: Finding[]; crew: Crew }[];
      const inTheWay = decision!.findings
        .filter((finding) => pullOf(finding, decision!.crew) !== 'none')
        .map(({ rule }) => rule);
      const step = stepAt(steps, departs);
      expect({ departs, answer: step.answer, inTheWay: step.inTheWay.map(({ rule }) => rule) }).toEqual({
        ...{ departs, answer: decision!.answer, inTheWay },
      });
      answers.add(decision!.answer);
    }
    expect(answers.size).toBeGreaterThanOrEqual(3);
  }, 120_000);

  test('the first slot that works is free, and may then be booked', async () => {
    const other = await pilot('Sam Second');
    const second = await ready.addAircraft('NX102B');
    await book(other, '2026-03-11T15:00:00Z', '2026-03-11T18:00:00Z').expect(201);
    // The member is promised to another aircraft straight after, and then the aircraft to its maintenance.
    await book(ready.member, '2026-03-11T18:00:00Z', '2026-03-11T19:00:00Z', { aircraftId: second }).expect(
      201,
    );
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    await coordinator
      .post('/bookings/blocks', {
        ...{ aircraftId: ready.aircraftId, kind: 'maintenance', note: 'oil change' },
        ...{ from: '2026-03-11T19:30:00Z', to: '2026-03-11T20:15:00Z' },
      })
      .expect(201);
    const question = { ...alone, ...week, aircraftIds: [ready.aircraftId] };
    const [{ firstSlot, firstDualSlot, steps }] = (await ask(ready.member, question)) as [OfAircraft];
    expect(firstSlot).toEqual({
      ...{ departs: '2026-03-11T20:15:00Z', arrives: '2026-03-11T22:15:00Z' },
      answer: expect.stringMatching(/^yes/),
    });
    expect(firstDualSlot).toBeNull();
    const inTheWay = (at: string) => stepAt(steps, at).inTheWay.map(({ rule }) => rule);
    expect(inTheWay('2026-03-11T14:00:00Z')).toEqual(['calendar.aircraft_free']);
    expect(inTheWay('2026-03-11T18:00:00Z')).toEqual(['calendar.aircraft_free', 'calendar.member_free']);
    const { departs, arrives } = firstSlot!;
    await book(ready.member, later(departs, -60), later(arrives, -60)).expect(409);
    await book(ready.member, departs, arrives).expect(201);
    // And now it is taken: back to back is no overlap.
    const [{ firstSlot: next }] = (await ask(ready.member, question)) as [OfAircraft];
    expect(next!.departs).toBe(arrives);
  });

  test('across all aircraft the earliest slot comes first, at the same time the better answer', async () => {
    const other = await pilot('Sam Second');
    const second = await ready.addAircraft('NX102B');
    await book(other, '2026-03-11T14:00:00Z', '2026-03-11T18:00:00Z').expect(201);
    const { body } = await ready.member.post('/decisions/timeline', { ...alone, ...week }).expect(200);
    const [first, spare] = body.aircraft as OfAircraft[];
    expect([first!.aircraft.registration, spare!.aircraft.registration]).toEqual(['NX101B', 'NX102B']);
    expect(first!.firstSlot!.departs).toBe('2026-03-11T18:00:00Z');
    expect(spare!.firstSlot!.departs).toBe(week.from);
    expect(body.across).toEqual({ ...spare!.firstSlot, aircraft: spare!.aircraft });
    expect(body.across.aircraft.id).toBe(second);
  });

  test('slots begin on whole minutes, and never before now', async () => {
    // The sun sets to the second. Without landings by night the first slot with passengers is in the morning.
    const span = { from: '2026-03-11T04:00:00Z', to: '2026-03-13T04:00:00Z' };
    const [{ firstSlot, steps }] = (await ask(ready.member, { ...withTwo, ...span })) as [OfAircraft];
    expect(firstSlot!.departs).toMatch(/:00Z$/);
    const opens = steps.find(({ answer }) => GOOD.includes(answer))!;
    const wait = toSeconds(firstSlot!.departs) - toSeconds(opens.from);
    expect(wait).toBeGreaterThanOrEqual(0);
    expect(wait).toBeLessThan(60);
    const ago = { from: '2026-03-10T14:50:00Z', to: '2026-03-10T20:00:00Z' };
    const [{ firstSlot: soonest }] = (await ask(ready.member, { ...alone, ...ago })) as [OfAircraft];
    expect(soonest!.departs).toBe('2026-03-10T15:00:00Z');
  });

  test('lead times count from when the question is asked', async () => {
    await api.sql(
      `UPDATE policy_values SET value = '48' WHERE club_id = $1 AND parameter_id = 'club.booking-lead.min-hours'`,
      [ready.club.clubId],
    );
    const [{ firstSlot, steps }] = (await ask(ready.member, { ...alone, ...week })) as [OfAircraft];
    // 10 March 15:00 and two days.
    expect(firstSlot!.departs).toBe('2026-03-12T15:00:00Z');
    expect(steps[0]!.inTheWay.map(({ rule }) => rule)).toEqual(['club.booking_lead']);
  });

  test('hours promised within the span are counted against the inspection', async () => {
    // The tachometer reads 1050.0, the 100-hour inspection is due at 1120.0: 69.0 h of club use leave 1.0 h.
    await clubUse(ready.aircraftId, '2026-03-14T14:00:00Z', '2026-03-16T14:00:00Z', 690);
    const teacher = await instructor();
    const lesson = {
      ...{ purpose: 'dual', personsOnBoard: 2, durationMinutes: 120, instructorId: teacher.memberId },
      ...{ from: '2026-03-11T18:00:00Z', to: '2026-03-20T18:00:00Z' },
    };
    const [{ steps }] = (await ask(ready.member, lesson)) as [OfAircraft];
    const due = (at: string) =>
      stepAt(steps, at)
        .inTheWay.map(({ rule }) => rule)
        .filter((rule) => /100/.test(rule));
    expect(due('2026-03-13T18:00:00Z')).toEqual([]);
    expect(due('2026-03-17T18:00:00Z')).toHaveLength(1);
    expect(stepAt(steps, '2026-03-17T18:00:00Z').answer).toBe('no');
  });

  test('a lesson waits for its instructor; without one named the slot is for an instructor to be named', async () => {
    const teacher = await instructor();
    const learner = await pilot('Lee Learner');
    const other = await ready.addAircraft('NX102B');
    await book(learner, '2026-03-11T14:00:00Z', '2026-03-11T16:30:00Z', {
      ...{ aircraftId: other, purpose: 'dual', personsOnBoard: 2, instructorId: teacher.memberId },
    }).expect(201);
    const lesson = {
      purpose: 'dual',
      personsOnBoard: 2,
      durationMinutes: 60,
      ...week,
      aircraftIds: [ready.aircraftId],
    };
    const [named] = (await ask(ready.member, { ...lesson, instructorId: teacher.memberId })) as [OfAircraft];
    expect(named.firstSlot!.departs).toBe('2026-03-11T16:30:00Z');
    expect(named.steps[0]!.inTheWay.map(({ rule }) => rule)).toEqual(['calendar.instructor_free']);
    const [unnamed] = (await ask(ready.member, lesson)) as [OfAircraft];
    expect(unnamed.firstSlot).toBeNull();
    expect(unnamed.firstDualSlot).toEqual({
      ...{ departs: week.from, arrives: '2026-03-11T15:00:00Z', answer: 'dual-only' },
    });
  });

  test('a flight refused alone has its first slot with an instructor', async () => {
    await api.sql('DELETE FROM reviews WHERE member_id = $1', [ready.member.memberId]);
    const [{ firstSlot, firstDualSlot, steps }] = (await ask(ready.member, { ...alone, ...week })) as [
      OfAircraft,
    ];
    expect(firstSlot).toBeNull();
    expect(firstDualSlot).toMatchObject({ departs: week.from, answer: 'dual-only' });
    expect(steps[0]!.inTheWay.map(({ rule }) => rule)).toContain('review.flight_24_months');
  });

  test('joined, neighbouring steps differ in their answer', async () => {
    // Two things in the way one after the other: what stands in the way changes, the answer does not.
    await clubUse(ready.aircraftId, '2026-03-12T15:00:00Z', '2026-03-12T17:00:00Z', 0);
    const other = await ready.addAircraft('NX102B');
    await book(ready.member, '2026-03-12T17:00:00Z', '2026-03-12T18:00:00Z', { aircraftId: other }).expect(
      201,
    );
    const detail = (await ask(ready.member, { ...withTwo, ...week }))[0]!;
    const joined = (await ask(ready.member, { ...withTwo, ...week, join: 'answer' }))[0]!;
    expect(joined.steps.length).toBeLessThan(detail.steps.length);
    for (const [index, step] of joined.steps.entries()) {
      expect(step.answer).not.toBe(joined.steps[index - 1]?.answer);
      expect(stepAt(detail.steps, step.from).answer).toBe(step.answer);
    }
    expect(joined.firstSlot).toEqual(detail.firstSlot);
  });

  test('aircraft of other homes are asked about on their own routes', async () => {
    const far = newId();
    await insertInto(api.sql, ready.club.clubId)('airfields', {
      ...{ id: far, code: 'XQFE', name: 'Far East', latitude_deg: 40, longitude_deg: -60, elevation_ft: 100 },
      zone: 'America/Halifax',
    });
    const second = await ready.addAircraft('NX000B');
    await api.sql('UPDATE aircraft SET home_airfield_id = $2 WHERE id = $1', [second, far]);
    const both = await ask(ready.member, { ...withTwo, ...week });
    expect(both.map(({ aircraft }) => aircraft.registration)).toEqual(['NX000B', 'NX101B']);
    const opening = both.map(({ steps }) => steps.slice(1).find(({ answer }) => GOOD.includes(answer))!.from);
    // Thirty-five degrees further east the sun rises two hours and twenty minutes earlier.
    const hours = (toSeconds(opening[1]!) - toSeconds(opening[0]!)) / 3600;
    expect(hours).toBeGreaterThan(2.2);
    expect(hours).toBeLessThan(2.5);
  });

  test('as many statements for a day as for a year, for one aircraft as for six; and nothing is stored', async () => {
    const rows = async () =>
      (
        await api.sql('SELECT (SELECT count(*) FROM decisions) AS d, (SELECT count(*) FROM fact_parts) AS f')
      )[0];
    const before = await rows();
    const count = (body: object): Promise<number> =>
      leastQueries(api, () =>
        ready.member.post('/decisions/timeline', { ...alone, from: week.from, ...body }).expect(200),
      );
    const day = { to: '2026-03-12T14:00:00Z' };
    const year = { to: '2027-03-12T14:00:00Z', join: 'answer' };
    await count(day);
    const few = await count(day);
    expect(few).toBeGreaterThan(3);
    for (const registration of ['NX103B', 'NX104B', 'NX105B', 'NX106B', 'NX107B'])
      await ready.addAircraft(registration);
    expect(await count(day)).toBe(few);
    expect(await count(year)).toBe(few);
    expect(await rows()).toEqual(before);
  });

  test('for another member: their instructors and officers only; other clubs have nothing here', async () => {
    const body = { ...alone, ...week, memberId: ready.member.memberId };
    for (const role of ['member', 'maintenance-coordinator'] as const) {
      const { body: refused } = await (
        await ready.club.signInAs(role)
      )
        .post('/decisions/timeline', body)
        .expect(403);
      expect(refused.errors[0].field).toBe('memberId');
    }
    for (const role of ['instructor', 'safety-officer', 'administrator'] as const) {
      const asker = await ready.club.signInAs(role);
      if (role === 'instructor') {
        await asker.post('/decisions/timeline', body).expect(403);
        await teach(api, {
          ...{ clubId: ready.club.clubId, instructorId: asker.memberId, memberId: ready.member.memberId },
        });
      }
      const { body: told } = await asker.post('/decisions/timeline', body).expect(200);
      expect(told.memberId).toBe(ready.member.memberId);
      expect(told.aircraft[0].firstSlot).not.toBeNull();
    }
    await api.http.post('/api/v1/decisions/timeline').send(body).expect(401);
    const elsewhere = await readyClub(api);
    const officer = await ready.club.signInAs('safety-officer');
    const foreign: [string, object][] = [
      ['memberId', { memberId: elsewhere.member.memberId }],
      ['aircraftIds', { aircraftIds: [elsewhere.aircraftId] }],
      ['instructorId', { purpose: 'dual', personsOnBoard: 2, instructorId: elsewhere.member.memberId }],
      ['secondPilotId', { personsOnBoard: 2, secondPilotId: elsewhere.member.memberId }],
    ];
    for (const [field, more] of foreign) {
      const { body: refused } = await officer.post('/decisions/timeline', { ...body, ...more }).expect(404);
      expect(refused.errors[0].field).toBe(field);
    }
  });

  describe('a question that cannot be read names the field', () => {
    const bad: [string, object, number, string][] = [
      ['weather', { weather: { windKt: 10 } }, 422, 'weather'],
      ['weather that is none', { weather: null }, 422, 'weather'],
      ['a span that ends before it begins', { to: '2026-03-11T13:00:00Z' }, 422, 'to'],
      ['an empty span', { to: week.from }, 422, 'to'],
      ['more than a year', { to: '2027-03-13T14:00:00Z' }, 422, 'to'],
      ['the past', { from: '2026-03-10T14:44:00Z' }, 422, 'from'],
      ['a departure', { departs: week.from }, 400, 'departs'],
      ['no length', { durationMinutes: undefined }, 400, 'durationMinutes'],
      ['no time at all', { durationMinutes: 0 }, 400, 'durationMinutes'],
      ['half a minute', { durationMinutes: 0.5 }, 400, 'durationMinutes'],
      ['a length beyond any booking', { durationMinutes: 576_001 }, 400, 'durationMinutes'],
      ['an unknown join', { join: 'maybe' }, 400, 'join'],
      ['30 February', { from: '2026-02-30T18:00:00Z' }, 400, 'from'],
      ['an unknown airfield', { route: ['XQHB', 'XQ00'] }, 422, 'route[1]'],
      [
        'oneself as instructor',
        { purpose: 'dual', personsOnBoard: 2, instructorId: 'SELF' },
        422,
        'instructorId',
      ],
      ['an unknown aircraft', { aircraftIds: [newId()] }, 404, 'aircraftIds'],
      ['an unknown field', { colour: 'red' }, 400, 'colour'],
    ];
    test.each(bad)('%s', async (_name, more, status, field) => {
      const text = JSON.stringify({ ...alone, ...week, ...more }).replace('SELF', ready.member.memberId);
      const { body, headers } = await ready.member.post('/decisions/timeline', JSON.parse(text) as object);
      expect({ status: body.status, type: headers['content-type'] }).toEqual({
        ...{ status, type: expect.stringContaining('application/problem+json') },
      });
      expect(body.errors.map((error: { field: string }) => error.field).join()).toContain(field);
      expect(body.detail.length).toBeGreaterThan(10);
    });

    test('a year is taken, leap years too', async () => {
      await ready.member
        .post('/decisions/timeline', { ...alone, ...week, to: '2027-03-12T14:00:00Z', join: 'answer' })
        .expect(200);
    });

    test('a fleet too large for a year is told what to do', async () => {
      await api.sql(
        `INSERT INTO aircraft (club_id, id, registration, model_id, home_airfield_id, seats, occupants_certificated,
           certificated_after_1996_03_11, instruction_for_hire, carries_for_hire, inspection_meter)
         SELECT club_id, gen_random_uuid(), 'NX9' || n || 'C', model_id, home_airfield_id, 4, 4, false, false, false, 'tachometer'
         FROM aircraft, generate_series(100, 150) n WHERE id = $1`,
        [ready.aircraftId],
      );
      const { body } = await ready.member
        .post('/decisions/timeline', { ...alone, ...week, to: '2027-03-11T14:00:00Z' })
        .expect(422);
      expect(body).toMatchObject({ code: 'span-too-large', detail: expect.stringContaining('52 aircraft') });
      expect(body.detail).toContain('shorter span');
    });
  });

  describe('what is told', () => {
    const sheet = baseSheet();
    const ruleset = rulesetFor('US', startingPolicy());
    const from = toSeconds('2026-11-25T18:00:00Z');
    const telling: Telling = {
      viewer: { clubId: 'c', accountId: 'a', memberId: sheet.flight.memberId, roles: ['member'] } as SignedIn,
      ...{ ruleset, span: { from, to: from + 7200 }, join: 'detail', notBefore: from, durationSeconds: 3600 },
    };
    const moved = (rule: string, was: string, is: string) => ({ rule, was, is, withInstructor: false });
    const timeline = {
      cutAt: from + 3600,
      steps: [
        { from, to: from + 3600, answer: 'yes', inTheWay: [], changed: [] },
        {
          ...{ from: from + 3600, to: from + 7200, answer: 'yes-with-conditions', inTheWay: [] },
          changed: [
            moved('recency.passengers.day', 'met', 'met'),
            moved('medical.certificate', 'met', 'short'),
            moved('calendar.aircraft_free', 'met', 'met'),
          ],
        },
      ],
    } as unknown as Timeline;

    test('where the search stopped, in a sentence', () => {
      const told = aircraftTimeline(timeline, sheet, telling);
      expect(told.cutAt).toBe('2026-11-25T19:00:00Z');
      expect(told.horizonNote).toBe(
        'Not every rule could be followed beyond 2026-11-25T19:00:00Z; from there on it counts as one that cannot be told.',
      );
      expect(told.steps[1]!.changed).toHaveLength(3);
    });

    test('of somebody else’s record, whether a rule is met and no more', () => {
      const flight = { ...sheet.flight, secondPilotId: 'other', actingPilotId: 'other' };
      const theirs = {
        ...sheet,
        flight,
        people: { ...sheet.people, other: { ...sheet.people[sheet.flight.memberId]!, id: 'other' } },
      };
      const rules = (viewer: SignedIn) =>
        aircraftTimeline(timeline, theirs, { ...telling, viewer }).steps[1]!.changed.map(({ rule }) => rule);
      expect(rules(telling.viewer)).toEqual(['medical.certificate', 'calendar.aircraft_free']);
      expect(rules({ ...telling.viewer, roles: ['instructor'] })).toHaveLength(2);
      expect(rules({ ...telling.viewer, roles: ['safety-officer'] })).toHaveLength(3);
    });
  });
});
