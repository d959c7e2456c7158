import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

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
      expect(answer.body.findings.map((finding: { rule: string }) => finding.rule)).toContain(
        'inspection.hours_100',
      );
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
  return memberId;
}
