import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { leastQueries } from '../support/least-queries.js';

describe('booking', () => {
  let api: Api;
  let ready: ReadyClub;
  const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

  beforeAll(async () => {
    api = await startApi();
  });
  beforeEach(async () => {
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  const book = (who: Session, request: object, key: string = newId()) =>
    who.post('/bookings', { aircraftId: ready.aircraftId, ...request }).set('Idempotency-Key', key);
  const anotherPilot = async (name = 'Sam Second'): Promise<Session> => {
    const pilot = await ready.club.signInAs('member', { name });
    await ready.makePilot(pilot.memberId);
    return pilot;
  };

  test('books, keeps the decision, and shows it in the calendar', async () => {
    const { body, headers } = await book(ready.member, { ...alone, note: 'pattern work' }).expect(201);
    expect(body).toMatchObject({
      kind: 'flight',
      status: 'booked',
      registration: 'NX101B',
      memberName: 'Robin Member',
      ...tomorrow,
      expectedHours: 2,
      note: 'pattern work',
      people: [{ memberId: ready.member.memberId, role: 'pilot' }],
    });
    expect(headers.etag).toBe('"1"');
    const { body: replay } = await ready.member.get(`/decisions/${body.decisionId}/replay`).expect(200);
    expect(replay.identical).toBe(true);
    const { body: list } = await ready.member.get('/bookings?from=2026-03-11T00:00:00Z').expect(200);
    expect(list.items.map((item: { id: string }) => item.id)).toEqual([body.id]);
  });

  test('the second who asks for the slot is told who has it until when', async () => {
    await book(ready.member, alone).expect(201);
    const second = await anotherPilot();
    const { body } = await book(second, {
      ...alone,
      departs: '2026-03-11T19:00:00Z',
      arrives: '2026-03-11T21:00:00Z',
    }).expect(409);
    expect(body).toMatchObject({ code: 'slot-taken', conflict: { holder: 'Robin Member', ...tomorrow } });
    // 18:00Z to 20:00Z is 13:00 to 15:00 in the club's zone.
    expect(body.detail).toContain('Robin Member has NX101B from 13:00 to 15:00 on 2026-03-11');
    const { body: asked } = await second
      .post('/decisions', { ...alone, aircraftIds: [ready.aircraftId] })
      .expect(200);
    expect(asked.decisions[0].answer).not.toMatch(/^yes/);
  });

  test('back to back is no overlap', async () => {
    await book(ready.member, alone).expect(201);
    await book(await anotherPilot(), {
      ...alone,
      departs: tomorrow.arrives,
      arrives: '2026-03-11T21:00:00Z',
    }).expect(201);
  });

  test('one person cannot be in two aircraft', async () => {
    const other = await ready.addAircraft('NX102B');
    await book(ready.member, alone).expect(201);
    const { body } = await book(ready.member, { ...alone, aircraftId: other }).expect(409);
    expect(body.code).toBe('slot-taken');
    expect(body.detail).toContain('Robin Member is booked in NX101B');
  });

  test('the same key books once and gives the same answer; another request under it is refused', async () => {
    const key = newId();
    const first = await book(ready.member, alone, key).expect(201);
    const again = await book(ready.member, alone, key).expect(201);
    expect(again.body).toEqual(first.body);
    const { body } = await book(ready.member, { ...alone, note: 'other' }, key).expect(422);
    expect(body.code).toBe('idempotency-key-reused');
    const { body: list } = await ready.member.get('/bookings').expect(200);
    expect(list.items).toHaveLength(1);
  });

  test('the same key at the same time books once', async () => {
    const key = newId();
    const answers = await Promise.all(Array.from({ length: 6 }, () => book(ready.member, alone, key)));
    expect(answers.map((answer) => answer.status)).toEqual(Array(6).fill(201));
    expect(new Set(answers.map((answer) => answer.body.id)).size).toBe(1);
  });

  test('no key, no booking', async () => {
    const { body } = await ready.member
      .post('/bookings', { aircraftId: ready.aircraftId, ...alone })
      .expect(400);
    expect(body.errors[0].field).toBe('Idempotency-Key');
  });

  test('a flight the law refuses is not booked, and the findings say why', async () => {
    await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [
      ready.member.memberId,
      '2019-01-01',
    ]);
    const { body } = await book(ready.member, alone).expect(409);
    expect(body).toMatchObject({ code: 'not-bookable', caution: expect.stringContaining('aid') });
    expect(body.findings.map((finding: { rule: string }) => finding.rule)).toContain('medical.certificate');
    const { body: kept } = await ready.member.get(`/decisions/${body.decisionId}`).expect(200);
    expect(kept.answer).toBe(body.answer);
    const { body: list } = await ready.member.get('/bookings').expect(200);
    expect(list.items).toEqual([]);
  });

  describe("an officer's override", () => {
    const inArrears = () =>
      api.sql("UPDATE members SET standing = 'arrears', standing_since = '2025-01-01' WHERE id = $1", [
        ready.member.memberId,
      ]);
    const override = { reason: 'Paid at the desk, the book follows' };

    test('sets a club rule aside, with a reason, audited', async () => {
      await inArrears();
      const { body: refused } = await book(ready.member, alone).expect(409);
      expect(refused.answer).toBe('ask-officer');
      const officer = await ready.club.signInAs('safety-officer');
      const { body } = await book(officer, { ...alone, memberId: ready.member.memberId, override }).expect(
        201,
      );
      expect(body.overrides).toEqual([
        { ruleId: 'club.standing', officerId: officer.memberId, reason: override.reason },
      ]);
      const [audit] = await api.sql(
        "SELECT actor_id, after FROM audit_log WHERE action = 'override' AND row_id = $1",
        [body.id],
      );
      expect(audit).toMatchObject({
        actor_id: officer.memberId,
        after: { rules: ['club.standing'], reason: override.reason },
      });
    });

    test('is not for members, nor for oneself, nor without a reason', async () => {
      await inArrears();
      await book(ready.member, { ...alone, override }).expect(403);
      const officer = await ready.club.signInAs('safety-officer');
      await ready.makePilot(officer.memberId);
      await api.sql("UPDATE members SET standing = 'arrears', standing_since = '2025-01-01' WHERE id = $1", [
        officer.memberId,
      ]);
      await book(officer, { ...alone, override }).expect(403);
      const { body } = await book(officer, {
        ...alone,
        memberId: ready.member.memberId,
        override: { reason: 'ok' },
      }).expect(400);
      expect(body.errors[0].field).toContain('reason');
    });

    test('needs its reason: nothing, null or a list is none', async () => {
      await inArrears();
      const officer = await ready.club.signInAs('safety-officer');
      const wanted = { ...alone, memberId: ready.member.memberId };
      for (const none of [null, [], [override], {}, 'please'])
        await book(officer, { ...wanted, override: none }).expect(400);
      await book(officer, wanted).expect(409);
      const { body } = await officer.get('/bookings').expect(200);
      expect(body.items).toEqual([]);
    });

    test('is not for a flight on which the officer is crew', async () => {
      await inArrears();
      const officer = await ready.club.signInAs('safety-officer');
      await ready.makePilot(officer.memberId);
      const wanted = {
        ...tomorrow,
        ...{ purpose: 'passengers', personsOnBoard: 2, secondPilotId: officer.memberId },
      };
      const { body } = await book(officer, { ...wanted, memberId: ready.member.memberId, override }).expect(
        403,
      );
      expect(body.detail).toContain('a flight of their own');
    });

    test('does not make up for an instructor who is not named', async () => {
      await inArrears();
      const officer = await ready.club.signInAs('safety-officer');
      const lesson = { ...tomorrow, purpose: 'dual', personsOnBoard: 2, memberId: ready.member.memberId };
      const { body } = await book(officer, { ...lesson, override }).expect(409);
      expect(body).toMatchObject({ code: 'not-bookable' });
      expect(await api.sql('SELECT 1 FROM overrides WHERE club_id = $1', [ready.club.clubId])).toEqual([]);
    });

    test('counts from the policy’s day in the club’s zone', async () => {
      await inArrears();
      await api.sql(
        "DELETE FROM policy_values WHERE club_id = $1 AND parameter_id = 'club.override.allowed'",
        [ready.club.clubId],
      );
      await insertInto(api.sql, ready.club.clubId)('policy_values', {
        ...{ id: newId(), parameter_id: 'club.override.allowed', valid_from: '2026-03-11' },
        ...{ value: 'true', reference: 'Committee minutes' },
      });
      const officer = await ready.club.signInAs('safety-officer');
      const wanted = { ...alone, memberId: ready.member.memberId, override };
      try {
        // Already the eleventh in Greenwich, still the tenth in Chicago.
        api.clock.set('2026-03-11T02:00:00Z');
        await book(officer, wanted).expect(403);
        api.clock.set('2026-03-11T12:00:00Z');
        await book(officer, wanted).expect(201);
      } finally {
        api.clock.set('2026-03-10T15:00:00Z');
      }
    });

    test('is read by the crew and officers, not by the whole club', async () => {
      await inArrears();
      const officer = await ready.club.signInAs('safety-officer');
      const { body } = await book(officer, { ...alone, memberId: ready.member.memberId, override }).expect(
        201,
      );
      const read = async (who: Session) => [
        (await who.get(`/bookings/${body.id}`).expect(200)).body.overrides.length,
        (await who.get('/bookings').expect(200)).body.items[0].overrides.length,
      ];
      expect(await read(ready.member)).toEqual([1, 1]);
      expect(await read(await ready.club.signInAs('instructor'))).toEqual([1, 1]);
      expect(await read(await ready.club.signInAs('member'))).toEqual([0, 0]);
      expect(await read(await ready.club.signInAs('maintenance-coordinator'))).toEqual([0, 0]);
    });

    test('never sets the law aside', async () => {
      await inArrears();
      await api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [
        ready.member.memberId,
        '2019-01-01',
      ]);
      const officer = await ready.club.signInAs('safety-officer');
      const { body } = await book(officer, { ...alone, memberId: ready.member.memberId, override }).expect(
        409,
      );
      expect(body.code).toBe('not-bookable');
    });
  });

  test('hours booked before a 100-hour limit are counted once, even at the same moment', async () => {
    // 100 h since the inspection at 1020.0 end at 1120.0; the meter stands at 1116.0: two lessons of 2 h fit, not three.
    await insertInto(api.sql, ready.club.clubId)('meter_readings', {
      id: newId(),
      aircraft_id: ready.aircraftId,
      kind: 'tachometer',
      shown_tenths: 11_160,
      read_at: '2026-03-09T23:00:00Z',
      source: 'coordinator',
    });
    const lessons = await Promise.all(
      [0, 1, 2, 3].map(async (index) => {
        const learner = await anotherPilot(`Learner ${index}`);
        const instructor = await instructorOf(ready, api, `Instructor ${index}`);
        const departs = `2026-03-1${1 + index}T18:00:00Z`;
        return {
          learner,
          request: {
            departs,
            arrives: departs.replace('18:', '20:'),
            purpose: 'dual',
            personsOnBoard: 2,
            instructorId: instructor,
          },
        };
      }),
    );
    const answers = await Promise.all(lessons.map(({ learner, request }) => book(learner, request)));
    const refused = answers.filter((answer) => answer.status !== 201);
    // Booked in whatever order they came: nobody's flight may start after the limit has been used up by those before it.
    const { body: list } = await ready.member.get('/bookings?limit=200').expect(200);
    const hours = list.items.reduce(
      (sum: number, item: { expectedHours: number }) => sum + item.expectedHours,
      0,
    );
    expect(hours).toBeLessThanOrEqual(4);
    expect(refused.length).toBe(2);
    for (const answer of refused) {
      // Those for whom nothing is left, and those who would take what is promised to a later day.
      const rules: string[] = answer.body.findings.map((finding: { rule: string }) => finding.rule);
      expect(rules.some((rule) => /^(inspection\.hours_100|club\.hours_promised)$/.test(rule))).toBe(true);
    }
  });

  describe('giving it back', () => {
    test('frees the slot; needs the ETag, and a right to it', async () => {
      const { body: booking } = await book(ready.member, alone).expect(201);
      await ready.member.post(`/bookings/${booking.id}/cancel`).expect(428);
      await ready.member.post(`/bookings/${booking.id}/cancel`).set('If-Match', '"7"').expect(412);
      const second = await anotherPilot();
      await second.post(`/bookings/${booking.id}/cancel`).set('If-Match', '"1"').expect(403);
      const { body } = await ready.member
        .post(`/bookings/${booking.id}/cancel`)
        .set('If-Match', '"1"')
        .expect(200);
      expect(body).toMatchObject({ status: 'cancelled', rowVersion: 2 });
      await ready.member.post(`/bookings/${booking.id}/cancel`).set('If-Match', '"2"').expect(409);
      await book(second, alone).expect(201);
    });
  });

  test('maintenance blocks the aircraft; only its coordinator may block', async () => {
    const block = {
      aircraftId: ready.aircraftId,
      kind: 'maintenance',
      from: tomorrow.departs,
      to: '2026-03-13T00:00:00Z',
      note: 'annual inspection',
    };
    await ready.member.post('/bookings/blocks', block).expect(403);
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    await coordinator.post('/bookings/blocks', { ...block, to: tomorrow.departs }).expect(422);
    await coordinator.post('/bookings/blocks', block).expect(201);
    const { body } = await book(ready.member, alone).expect(409);
    expect(body.detail).toContain('Maintenance has NX101B');
  });

  test('times that cannot be are refused by the name of the field, and nothing is kept', async () => {
    const bad: [object, number, string][] = [
      [{ departs: tomorrow.arrives, arrives: tomorrow.departs }, 422, 'arrives'],
      [{ departs: tomorrow.departs, arrives: tomorrow.departs }, 422, 'arrives'],
      [{ departs: tomorrow.departs, arrives: '2026-03-11T18:05:00Z' }, 422, 'arrives'],
      [{ departs: tomorrow.departs, arrives: '2030-03-11T18:05:00Z' }, 422, 'arrives'],
      [{ departs: '2026-03-01T18:00:00Z', arrives: '2026-03-01T19:00:00Z' }, 422, 'departs'],
      [{ note: null }, 400, 'note'],
    ];
    for (const [change, status, field] of bad) {
      const key = newId();
      const { body } = await book(ready.member, { ...alone, ...change }, key).expect(status);
      expect(body.errors[0].field).toBe(field);
    }
    const [kept] = await api.sql(
      'SELECT (SELECT count(*) FROM bookings WHERE club_id = $1) + (SELECT count(*) FROM idempotency_keys WHERE club_id = $1) AS n',
      [ready.club.clubId],
    );
    expect(kept).toEqual({ n: '0' });
  });

  test('for another member is refused before anything is told about the slot', async () => {
    await book(ready.member, alone).expect(201);
    const second = await anotherPilot();
    const { body } = await book(second, { ...alone, memberId: ready.member.memberId }).expect(403);
    expect(body.errors[0].field).toBe('memberId');
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    await book(coordinator, { ...alone, memberId: ready.member.memberId }).expect(403);
  });

  test('an instructor books a lesson for a member', async () => {
    const instructor = await ready.club.signInAs('instructor', { name: 'Ines Booker' });
    await certify(ready, api, instructor.memberId);
    const lesson = { ...tomorrow, purpose: 'dual', personsOnBoard: 2, instructorId: instructor.memberId };
    const { body } = await book(instructor, { ...lesson, memberId: ready.member.memberId }).expect(201);
    expect(body.people).toEqual([
      expect.objectContaining({ memberId: instructor.memberId, role: 'instructor' }),
      expect.objectContaining({ memberId: ready.member.memberId, role: 'pilot' }),
    ]);
  });

  test('of a crew, only who clashes is named', async () => {
    const other = await ready.addAircraft('NX102B');
    const second = await anotherPilot('Sam Second');
    const two = { ...tomorrow, purpose: 'passengers', personsOnBoard: 2 };
    await book(ready.member, { ...two, secondPilotId: second.memberId }).expect(201);
    const { body } = await book(second, { ...alone, aircraftId: other }).expect(409);
    expect(body.detail).toContain('Sam Second is booked in NX101B');
    expect(body.detail).not.toContain('Robin');
  });

  test('one crew in two aircraft at the same moment, each the other way round: one booking', async () => {
    const other = await ready.addAircraft('NX102B');
    const second = await anotherPilot();
    const two = { ...tomorrow, purpose: 'passengers', personsOnBoard: 2 };
    for (let round = 0; round < 4; round += 1) {
      const day = { departs: `2026-03-1${1 + round}T18:00:00Z`, arrives: `2026-03-1${1 + round}T20:00:00Z` };
      const answers = await Promise.all([
        book(ready.member, { ...two, ...day, secondPilotId: second.memberId }),
        book(second, { ...two, ...day, aircraftId: other, secondPilotId: ready.member.memberId }),
      ]);
      expect(answers.map((answer) => answer.status).sort()).toEqual([201, 409]);
      expect(answers.find((answer) => answer.status === 409)!.body.code).toBe('slot-taken');
    }
  });
  test('waits for whoever else is booking one of its people, before the exclusion constraint would', async () => {
    const second = await anotherPilot();
    await api.sql('BEGIN');
    try {
      await api.sql('SELECT 1 FROM members WHERE id = $1 FOR NO KEY UPDATE', [second.memberId]);
      let answered = false;
      const booking = book(ready.member, {
        ...{ ...tomorrow, purpose: 'passengers', personsOnBoard: 2, secondPilotId: second.memberId },
      }).then((answer) => {
        answered = true;
        return answer;
      });
      const waiting = async (): Promise<number> => {
        await api.sql('SELECT pg_stat_clear_snapshot()');
        const [row] = await api.sql<{ n: number }>(
          `SELECT count(*)::int AS n FROM pg_stat_activity
            WHERE datname = current_database() AND wait_event_type = 'Lock' AND query LIKE '%FROM members%'`,
        );
        return row!.n;
      };
      while (!answered && (await waiting()) === 0) await new Promise((next) => setTimeout(next, 20));
      expect(answered).toBe(false);
      await api.sql('COMMIT');
      expect((await booking).status).toBe(201);
    } finally {
      await api.sql('ROLLBACK');
    }
  });

  describe('the calendar', () => {
    test('cannot be asked for a span that ends before it begins, nor for somebody unknown', async () => {
      const { body } = await ready.member
        .get('/bookings?from=2026-03-12T00:00:00Z&to=2026-03-11T00:00:00Z')
        .expect(422);
      expect(body.errors[0].field).toBe('to');
      const elsewhere = await readyClub(api);
      for (const [name, id] of [
        ['memberId', elsewhere.member.memberId],
        ['aircraftId', elsewhere.aircraftId],
      ]) {
        const { body: unknown } = await ready.member.get(`/bookings?${name}=${id}`).expect(404);
        expect(unknown.errors[0].field).toBe(name);
      }
      await ready.member.get(`/bookings?memberId=${ready.member.memberId}`).expect(200);
    });

    test('takes the same number of statements, however long it is', async () => {
      const count = (): Promise<number> =>
        leastQueries(api, () => ready.member.get('/bookings?limit=200').expect(200));
      await book(ready.member, alone).expect(201);
      const one = await count();
      for (const day of [12, 13, 14])
        await book(ready.member, {
          ...alone,
          ...{ departs: `2026-03-${day}T18:00:00Z`, arrives: `2026-03-${day}T20:00:00Z` },
        }).expect(201);
      expect(await count()).toBe(one);
    });
  });

  test('what has ended is not cancelled, what has begun is', async () => {
    const { body: booking } = await book(ready.member, alone).expect(201);
    try {
      api.clock.set(tomorrow.arrives);
      const { body } = await ready.member
        .post(`/bookings/${booking.id}/cancel`)
        .set('If-Match', '"1"')
        .expect(409);
      expect(body.code).toBe('booking-not-open');
      api.clock.set('2026-03-11T18:30:00Z');
      // It is late by then, and the club asks for a reason.
      await ready.member
        .post(`/bookings/${booking.id}/cancel`, { reason: 'Carburettor ice' })
        .set('If-Match', '"1"')
        .expect(200);
    } finally {
      api.clock.set('2026-03-10T15:00:00Z');
    }
    const [row] = await api.sql<{ at: string }>(
      "SELECT to_char(cancelled_at AT TIME ZONE 'UTC', 'YYYY-MM-DD HH24:MI') AS at FROM bookings WHERE id = $1",
      [booking.id],
    );
    expect(row!.at).toBe('2026-03-11 18:30');
  });

  test('a block that is over, too short or too long is refused, and one over midnight is told with both dates', async () => {
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    const block = { aircraftId: ready.aircraftId, kind: 'maintenance', note: 'annual inspection' };
    for (const [from, to] of [
      ['2026-03-01T12:00:00Z', '2026-03-02T12:00:00Z'],
      ['2026-03-11T18:00:00Z', '2026-03-11T18:05:00Z'],
      ['2026-03-11T18:00:00Z', '2028-03-11T18:00:00Z'],
    ]) {
      const { body } = await coordinator.post('/bookings/blocks', { ...block, from, to }).expect(422);
      expect(body.errors[0].field).toBe('to');
    }
    await coordinator
      .post('/bookings/blocks', { ...block, from: '2026-03-09T12:00:00Z', to: '2026-03-12T18:00:00Z' })
      .expect(201);
    const { body } = await book(ready.member, alone).expect(409);
    expect(body.detail).toContain('Maintenance has NX101B from 07:00 on 2026-03-09 to 13:00 on 2026-03-12');
  });

  test("another club's booking does not exist here", async () => {
    const { body: booking } = await book(ready.member, alone).expect(201);
    const elsewhere = await readyClub(api);
    await elsewhere.member.get(`/bookings/${booking.id}`).expect(404);
    await elsewhere.member.post(`/bookings/${booking.id}/cancel`).set('If-Match', '"1"').expect(404);
    const { body } = await elsewhere.member.get('/bookings').expect(200);
    expect(body.items).toEqual([]);
  });
});

/** An instructor who may teach in the model. */
async function instructorOf(ready: ReadyClub, api: Api, name: string): Promise<string> {
  const { memberId } = await ready.club.createMember('instructor', { name });
  await certify(ready, api, memberId);
  return memberId;
}

/** Makes somebody a commercial pilot who may teach in the model. */
async function certify(ready: ReadyClub, api: Api, memberId: string): Promise<void> {
  await ready.makePilot(memberId);
  await insertInto(api.sql, ready.club.clubId)('instructor_certificates', {
    id: newId(),
    member_id: memberId,
    issued_on: '2020-05-01',
    ratings: ['airplane-single-engine'],
    recent_experience_on: '2025-06-01',
    verified_by: memberId,
    verified_at: '2026-01-02T00:00:00Z',
  });
  await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [memberId]);
}
