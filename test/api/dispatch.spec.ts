/**
 * An aircraft handed out at its side. The self-assessment is IMSAFE of FAA-H-8083-25C, chapter 2 (from memory); what else is
 * asked before a flight is 14 CFR 91.103 and 91.213 (seen), and the order of the steps is common practice, no source.
 */
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { teach } from '../support/teach.js';
import { bookToday, dispatch, instructorOf, readyToGo, TODAY, written } from './flight-scene.js';

describe('dispatch', () => {
  let api: Api;
  let ready: ReadyClub;
  beforeAll(async () => {
    api = await startApi();
  });
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  const squawk = async (
    title: string,
    state = 'reported',
    aircraftId = ready.aircraftId,
  ): Promise<string> => {
    const id = newId();
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      ...{ id, aircraft_id: aircraftId, title, state, reported_by: ready.member.memberId },
      reported_at: '2026-03-10T14:00:00Z',
    });
    return id;
  };
  const status = async (id: string): Promise<string> =>
    (await api.sql<{ status: string }>('SELECT status FROM bookings WHERE id = $1', [id]))[0]!.status;

  test('the sheet shows the answer of now, squawks, meters and the self-assessment, and hands nothing out', async () => {
    const id = await bookToday(ready);
    await squawk('Landing light flickers');
    const { body } = await ready.member.post(`/flights/${id}/dispatch/sheet`, {}).expect(200);
    expect(body).toMatchObject({
      ...{ mayGo: true, setAside: [], from: '2026-03-10T14:00:00Z' },
      decision: { knownAt: NOW },
      squawks: [{ title: 'Landing light flickers', state: 'reported' }],
      meters: [{ kind: 'tachometer', shownH: 1050, countsForInspections: true }],
    });
    // IMSAFE, in this order: FAA-H-8083-25C, chapter 2 (from memory).
    expect(body.selfAssessment.map(({ item }: { item: string }) => item[0]).join('')).toBe('IMSAFE');
    expect(body.decision.findings.map(({ rule }: { rule: string }) => rule)).not.toContain(
      'club.booking-lead',
    );
    expect(await status(id)).toBe('booked');
  });

  test('hands the aircraft out once, with what was confirmed, and keeps nothing medical', async () => {
    const id = await bookToday(ready);
    const key = newId();
    const body = await readyToGo(ready.member, id);
    const first = await dispatch(ready.member, id, body, key).expect(201);
    expect(first.body).toMatchObject({
      booking: { id, status: 'dispatched' },
      dispatch: {
        ...{
          dispatchedAt: NOW,
          dispatchedBy: ready.member.memberId,
          personsOnBoard: 1,
          fuelUsGal: 30,
          oilQt: 6.5,
        },
        meters: [{ kind: 'tachometer', shownH: 1050, gapH: 0, gapBecause: null }],
        takenBack: null,
      },
      return: null,
      overdue: false,
    });
    const { body: again } = await dispatch(ready.member, id, body, key).expect(201);
    expect(again).toEqual(first.body);
    const { body: other } = await dispatch(ready.member, id, body).expect(409);
    expect(other).toMatchObject({ code: 'not-to-be-dispatched', state: 'dispatched' });
    const { body: kept } = await ready.member
      .get(`/decisions/${first.body.dispatch.decisionId}/replay`)
      .expect(200);
    expect(kept.identical).toBe(true);
    const [row] = await api.sql('SELECT * FROM dispatches WHERE booking_id = $1', [id]);
    expect(Object.keys(row!).filter((name) => /assess|ill|medic|stress|alcohol|fatigue/.test(name))).toEqual([
      'self_assessed',
    ]);
    const { body: out } = await ready.member.get('/flights/out').expect(200);
    expect(out.items).toEqual([expect.objectContaining({ bookingId: id, mine: true, overdue: false })]);
  });

  test('every open and deferred squawk is to be read, and none of another aircraft', async () => {
    const id = await bookToday(ready);
    const one = await squawk('Seat latch stiff');
    const fixed = await squawk('Tyre worn');
    await api.sql(
      "UPDATE squawks SET state = 'fixed', closed_at = now(), closed_from = 'reported', closings = 1, corrective_action = 'Changed', signed_by = 'Mo' WHERE id = $1",
      [fixed],
    );
    const body = await readyToGo(ready.member, id, { squawksSeen: [] });
    const { body: refused } = await dispatch(ready.member, id, body).expect(409);
    expect(refused).toMatchObject({ code: 'squawks-not-read', squawkIds: [one] });
    const { body: strange } = await dispatch(ready.member, id, {
      ...body,
      squawksSeen: [one, newId()],
    }).expect(422);
    expect(strange.errors[0].field).toBe('squawksSeen');
    await dispatch(ready.member, id, { ...body, squawksSeen: [one, fixed] }).expect(201);
  });

  test('a meter that went on is accounted for; one that shows less, is missing or is strange is refused', async () => {
    const id = await bookToday(ready);
    const body = await readyToGo(ready.member, id);
    const meters = (...told: object[]) => dispatch(ready.member, id, { ...body, meters: told });
    const tach = (shownH: number, gap?: object) => ({ kind: 'tachometer', shownH, ...(gap ? { gap } : {}) });
    expect((await meters(tach(1050.4)).expect(422)).body).toMatchObject({
      code: 'meter-gap',
      errors: [{ field: 'meters[0].gap' }],
    });
    expect((await meters(tach(1049.9)).expect(422)).body).toMatchObject({
      code: 'meter-below-last',
      errors: [{ field: 'meters[0].shownH' }],
    });
    for (const wrong of [[], [tach(1050), tach(1050)], [tach(1050), { kind: 'hobbs', shownH: 12 }]])
      expect((await meters(...wrong).expect(422)).body.code).toBe('meters-not-confirmed');
    const gap = { because: 'engine-run', note: 'Ground run after the oil change' };
    const { body: out } = await meters(tach(1050.4, gap)).expect(201);
    expect(out.dispatch.meters).toEqual([
      { kind: 'tachometer', shownH: 1050.4, gapH: 0.4, gapBecause: gap.because, gapNote: gap.note },
    ]);
    const { body: now } = await ready.member.get(`/aircraft/${ready.aircraftId}/meters`).expect(200);
    expect(now.items[0]).toMatchObject({ shownH: 1050.4, readAt: NOW });
  });

  test('whoever did not go through the self-assessment, or accept each condition, stays on the ground', async () => {
    const id = await bookToday(ready);
    const body = await readyToGo(ready.member, id);
    const { body: open } = await dispatch(ready.member, id, { ...body, selfAssessed: false }).expect(422);
    expect(open.errors[0].field).toBe('selfAssessed');
    const conditions = body['conditionsAccepted'] as string[];
    expect(conditions.length).toBeGreaterThan(0);
    const { body: left } = await dispatch(ready.member, id, {
      ...body,
      conditionsAccepted: conditions.slice(1),
    }).expect(409);
    expect(left).toMatchObject({ code: 'conditions-not-accepted', conditions: [conditions[0]] });
    expect(await status(id)).toBe('booked');
  });

  test('facts of now count: a flight booked on a yes is refused on a no, and goes with the same key once it is cured', async () => {
    const id = await bookToday(ready);
    const body = await readyToGo(ready.member, id);
    const exam = (on: string) =>
      api.sql('UPDATE medicals SET exam_on = $2 WHERE member_id = $1', [ready.member.memberId, on]);
    await exam('2019-01-01');
    const key = newId();
    const { body: refused } = await dispatch(ready.member, id, body, key).expect(409);
    expect(refused).toMatchObject({ code: 'not-bookable', caution: expect.stringContaining('aid') });
    expect(refused.findings.map(({ rule }: { rule: string }) => rule)).toContain('medical.certificate');
    await ready.member.get(`/decisions/${refused.decisionId}`).expect(200);
    await exam('2025-06-10');
    await dispatch(ready.member, id, body, key).expect(201);
  });

  test("an officer's override on the booking stays good for the rules it set aside, and for no other", async () => {
    const arrears = () =>
      api.sql("UPDATE members SET standing = 'arrears', standing_since = '2025-01-01' WHERE id = $1", [
        ready.member.memberId,
      ]);
    const plain = await bookToday(ready);
    await arrears();
    const { body: sheet } = await ready.member.post(`/flights/${plain}/dispatch/sheet`, {}).expect(200);
    expect(sheet).toMatchObject({ mayGo: false, setAside: [], decision: { answer: 'ask-officer' } });
    await ready.member
      .post(`/bookings/${plain}/cancel`, { reason: 'Not today' })
      .set('If-Match', '"1"')
      .expect(200);
    const officer = await ready.club.signInAs('safety-officer');
    const override = { reason: 'Paid at the desk, the book follows' };
    const id = await bookToday(ready, { memberId: ready.member.memberId, override }, officer);
    const { body: set } = await ready.member.post(`/flights/${id}/dispatch/sheet`, {}).expect(200);
    expect(set).toMatchObject({ mayGo: true, setAside: ['club.standing'] });
    await dispatch(ready.member, id, await readyToGo(ready.member, id)).expect(201);
  });

  test('another aircraft at short notice: judged anew, the booked one free in the same moment', async () => {
    const id = await bookToday(ready);
    const spare = await ready.addAircraft('NX102B');
    const { body } = await dispatch(
      ready.member,
      id,
      await readyToGo(ready.member, id, { aircraftId: spare }),
    ).expect(201);
    expect(body.booking).toMatchObject({ status: 'dispatched', registration: 'NX102B', ...TODAY });
    expect(body.booking.id).not.toBe(id);
    expect(await status(id)).toBe('cancelled');
    const { decisionId } = body.dispatch;
    const told = async (booking: string) =>
      (await ready.member.get(`/bookings/${booking}/changes`).expect(200)).body.items;
    const by = { byId: ready.member.memberId, decisionId };
    expect(await told(id)).toMatchObject([
      { ...by, act: 'cancelled', before: { status: 'booked' }, after: { status: 'cancelled' } },
    ]);
    expect(await told(body.booking.id)).toMatchObject([
      { ...by, act: 'edited', before: { aircraftId: ready.aircraftId }, after: { aircraftId: spare } },
    ]);
    const other = await ready.club.signInAs('member', { name: 'Sam Second' });
    await ready.makePilot(other.memberId);
    await bookToday(ready, {}, other);
  });

  test('a swap that is refused leaves the booked flight as it was', async () => {
    const id = await bookToday(ready);
    const spare = await ready.addAircraft('NX102B');
    const body = await readyToGo(ready.member, id, { aircraftId: spare });
    const grounded = await squawk('Fuel leak', 'grounding', spare);
    const { body: refused } = await dispatch(ready.member, id, { ...body, squawksSeen: [grounded] }).expect(
      409,
    );
    expect(refused.code).toBe('not-bookable');
    expect(await status(id)).toBe('booked');
    const [count] = await api.sql<{ n: number }>(
      'SELECT count(*)::int AS n FROM bookings WHERE club_id = $1',
      [ready.club.clubId],
    );
    expect(count!.n).toBe(1);
  });

  test('another pilot is put in place by an instructor, or is the second pilot; nobody else takes a flight', async () => {
    const second = await ready.club.signInAs('member', { name: 'Sam Second' });
    await ready.makePilot(second.memberId);
    const stranger = await ready.club.signInAs('member', { name: 'Terry Third' });
    await ready.makePilot(stranger.memberId);
    const two = { purpose: 'passengers', personsOnBoard: 2, secondPilotId: second.memberId };
    const id = await bookToday(ready, two);
    const as = { memberId: second.memberId };
    await stranger.post(`/flights/${id}/dispatch/sheet`, { memberId: stranger.memberId }).expect(403);
    await ready.member.post(`/flights/${id}/dispatch/sheet`, as).expect(403);
    const body = await readyToGo(second, id, as);
    const { body: out } = await dispatch(second, id, body).expect(201);
    expect(out.booking).toMatchObject({
      memberName: 'Sam Second',
      people: [{ memberId: second.memberId, role: 'pilot' }],
    });
    expect(await status(id)).toBe('cancelled');
    const instructor = await instructorOf(api, ready);
    await ready.addAircraft('NX103B');
    const later = await ready.addAircraft('NX104B');
    const third = await bookToday(ready, { aircraftId: later });
    // It is judged with the facts of whoever flies, so that an instructor puts in place whom they teach.
    const at = `/flights/${third}/dispatch/sheet`;
    await instructor.post(at, { memberId: stranger.memberId, personsOnBoard: 1, fuelUsGal: 30 }).expect(403);
    await teach(api, {
      ...{ clubId: ready.club.clubId, instructorId: instructor.memberId, memberId: stranger.memberId },
    });
    await dispatch(
      instructor,
      third,
      await readyToGo(instructor, third, { memberId: stranger.memberId }),
    ).expect(201);
  });

  test('neither too early, nor after its time, nor while the aircraft is out', async () => {
    const id = await bookToday(ready);
    const body = await readyToGo(ready.member, id);
    api.clock.set('2026-03-10T13:59:59Z');
    expect((await dispatch(ready.member, id, body).expect(409)).body).toMatchObject({
      code: 'not-to-be-dispatched',
      from: '2026-03-10T14:00:00Z',
    });
    api.clock.set('2026-03-10T18:00:00Z');
    await dispatch(ready.member, id, body).expect(409);
    api.clock.set('2026-03-10T16:30:00Z');
    // Half an hour late it is judged from now on.
    await dispatch(ready.member, id, await readyToGo(ready.member, id)).expect(201);
    api.clock.set('2026-03-10T17:00:00Z');
    const other = await ready.club.signInAs('member', { name: 'Sam Second' });
    await ready.makePilot(other.memberId);
    const next = await bookToday(
      ready,
      { departs: '2026-03-10T18:00:00Z', arrives: '2026-03-10T19:00:00Z' },
      other,
    );
    api.clock.set('2026-03-10T18:10:00Z');
    const { body: still } = await dispatch(other, next, await readyToGo(other, next)).expect(409);
    expect(still).toMatchObject({ code: 'not-to-be-dispatched', bookingId: id });
    expect(still.detail).toContain('Robin Member');
  });

  test('taken back before the flight it is booked as before, and may be handed out again', async () => {
    const id = await bookToday(ready);
    await dispatch(ready.member, id, await readyToGo(ready.member, id)).expect(201);
    const because = { reason: 'Magneto drop out of limits' };
    const stranger = await ready.club.signInAs('member', { name: 'Terry Third' });
    await stranger.post(`/flights/${id}/dispatch/take-back`, because).expect(403);
    const { body } = await ready.member.post(`/flights/${id}/dispatch/take-back`, because).expect(200);
    expect(body).toMatchObject({
      booking: { status: 'booked' },
      dispatch: { takenBack: { by: ready.member.memberId, reason: because.reason } },
    });
    await ready.member.post(`/flights/${id}/dispatch/take-back`, because).expect(409);
    await dispatch(ready.member, id, await readyToGo(ready.member, id)).expect(201);
    expect((await written(api, ready.club.clubId)).dispatches).toBe(2);
  });

  test('many at once with the same key and with others: one goes', async () => {
    const id = await bookToday(ready);
    const body = await readyToGo(ready.member, id);
    const key = newId();
    const answers = await Promise.all([
      ...Array.from({ length: 8 }, () => dispatch(ready.member, id, body, key)),
      ...Array.from({ length: 8 }, () => dispatch(ready.member, id, body)),
    ]);
    const went = answers.filter((answer) => answer.status === 201);
    expect(new Set(went.map((answer) => answer.body.dispatch.id)).size).toBe(1);
    expect(answers.filter((answer) => answer.status !== 201).map((answer) => answer.status)).toEqual(
      Array(answers.length - went.length).fill(409),
    );
    expect((await written(api, ready.club.clubId)).dispatches).toBe(1);
  });
});
