/** Flights by one recurrence, blocks that make flights give way, and slots held for checkouts. Common practice of clubs, no source. */
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

interface Occurrence {
  departs: string;
  booking: { id: string; rowVersion: number; arrives: string; status: string } | null;
  problem: { code: string; detail: string } | null;
}

let api: Api;
let ready: ReadyClub;
const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

beforeAll(async () => {
  api = await startApi();
});
beforeEach(async () => {
  api.clock.set(NOW);
  ready = await readyClub(api);
});
afterAll(() => api.stop());

const keyed = (who: Session, path: string, body: object, key = newId()) =>
  who.post(path, body).set('Idempotency-Key', key);
const pilot = async (name = 'Sam Second'): Promise<Session> => {
  const one = await ready.club.signInAs('member', { name });
  await ready.makePilot(one.memberId);
  return one;
};
const occurrencesIn = (body: unknown): Occurrence[] => (body as { occurrences: Occurrence[] }).occurrences;

describe('a series', () => {
  const weekly = (more: object = {}) => ({
    ...{ ...alone, aircraftId: ready.aircraftId, recurrence: 'FREQ=WEEKLY;COUNT=3' },
    ...more,
  });

  test('books each flight alone and says which could not be had and why', async () => {
    const second = await pilot();
    const taken = { departs: '2026-03-18T17:00:00Z', arrives: '2026-03-18T19:00:00Z' };
    await keyed(second, '/bookings', { ...alone, ...taken, aircraftId: ready.aircraftId }).expect(201);
    const key = newId();
    const { body } = await keyed(ready.member, '/booking-series', weekly({ note: 'training' }), key).expect(
      200,
    );
    const [first, middle, last] = occurrencesIn(body);
    expect([first!.booking?.status, last!.booking?.status]).toEqual(['booked', 'booked']);
    expect(middle).toMatchObject({ booking: null, problem: { code: 'slot-taken' } });
    expect(middle!.problem!.detail).toContain('Sam Second has NX101B');
    const again = await keyed(ready.member, '/booking-series', weekly({ note: 'training' }), key).expect(200);
    expect(again.body).toEqual(body);
    const { body: read } = await ready.member.get(`/booking-series/${body.id}`).expect(200);
    expect(occurrencesIn(read).map(({ booking }) => booking!.id)).toEqual([
      first!.booking!.id,
      last!.booking!.id,
    ]);
  });

  test('by choice is booked whole or not at all, and a look books nothing', async () => {
    const taken = { departs: '2026-03-18T17:00:00Z', arrives: '2026-03-18T19:00:00Z' };
    const second = await pilot();
    await keyed(second, '/bookings', { ...alone, ...taken, aircraftId: ready.aircraftId }).expect(201);
    const { body: no } = await keyed(ready.member, '/booking-series', weekly({ whole: true })).expect(409);
    expect(no).toMatchObject({ code: 'series-refused' });
    expect(occurrencesIn(no).map(({ problem }) => problem?.code ?? null)).toEqual([null, 'slot-taken', null]);
    const { body: look } = await keyed(ready.member, '/booking-series', weekly({ preview: true })).expect(
      200,
    );
    expect(look).toMatchObject({ id: null, preview: true });
    expect(occurrencesIn(look).map(({ problem }) => problem?.code ?? null)).toEqual([
      null,
      'slot-taken',
      null,
    ]);
    const { body: mine } = await ready.member.get(`/bookings?memberId=${ready.member.memberId}`).expect(200);
    expect(mine.items).toEqual([]);
  });

  test('judges each on its day: the one after the medical has lapsed is refused', async () => {
    // Third class, examined under forty: sixty calendar months (14 CFR 61.23(d)(1)(iii)); through 31 March 2026.
    await api.sql("UPDATE medicals SET exam_on = '2021-03-15' WHERE member_id = $1", [ready.member.memberId]);
    const { body } = await keyed(
      ready.member,
      '/booking-series',
      weekly({ recurrence: 'FREQ=WEEKLY;COUNT=4' }),
    ).expect(200);
    expect(
      occurrencesIn(body).map(({ departs, problem }) => [departs.slice(0, 10), problem?.code ?? null]),
    ).toEqual([
      ['2026-03-11', null],
      ['2026-03-18', null],
      ['2026-03-25', null],
      ['2026-04-01', 'not-bookable'],
    ]);
  });

  test('is changed and given back from one flight on', async () => {
    const { body } = await keyed(ready.member, '/booking-series', weekly()).expect(200);
    const all = occurrencesIn(body).map(({ booking }) => booking!);
    const at = `/booking-series/${body.id}`;
    const stranger = await pilot('Nosy');
    const change = { fromBookingId: all[1]!.id, departsAt: '14:00', lastsMinutes: 90 };
    await keyed(stranger, `${at}/edit`, change).expect(403);
    const { body: edited } = await keyed(ready.member, `${at}/edit`, change).expect(200);
    // 14:00 in Chicago in summer time.
    expect(occurrencesIn(edited).map(({ departs, problem }) => [departs, problem])).toEqual([
      ['2026-03-18T19:00:00Z', null],
      ['2026-03-25T19:00:00Z', null],
    ]);
    const { body: untouched } = await ready.member.get(`/bookings/${all[0]!.id}`).expect(200);
    expect(untouched).toMatchObject({ ...tomorrow, rowVersion: 1 });
    await stranger.post(`${at}/cancel`, { fromBookingId: all[2]!.id }).expect(403);
    const { body: given } = await ready.member
      .post(`${at}/cancel`, { fromBookingId: all[2]!.id })
      .expect(200);
    expect(occurrencesIn(given).map(({ booking }) => booking!.status)).toEqual(['cancelled']);
    await ready.member.post(`${at}/cancel`, { fromBookingId: all[2]!.id }).expect(409);
    await ready.member.post(`${at}/cancel`, { fromBookingId: newId() }).expect(404);
    const { body: read } = await ready.member.get(at).expect(200);
    expect(occurrencesIn(read).map(({ booking }) => booking!.status)).toEqual([
      'booked',
      'booked',
      'cancelled',
    ]);
  });

  test('of daily flights moves by a day’s half without one finding the next in its way', async () => {
    const long = { departs: '2026-03-11T14:00:00Z', arrives: '2026-03-11T18:00:00Z' };
    const daily = weekly({ ...long, recurrence: 'FREQ=DAILY;COUNT=3' });
    const { body } = await keyed(ready.member, '/booking-series', daily).expect(200);
    const [first] = occurrencesIn(body);
    const later = { fromBookingId: first!.booking!.id, departsAt: '12:00', whole: true };
    await keyed(ready.member, `/booking-series/${body.id}/edit`, later).expect(200);
  });

  test('that cannot be read is refused by the name of its field', async () => {
    for (const recurrence of ['FREQ=WEEKLY', 'FREQ=WEEKLY;BYHOUR=3;COUNT=2']) {
      const { body } = await keyed(ready.member, '/booking-series', weekly({ recurrence })).expect(422);
      expect(body.errors[0].field).toBe('recurrence');
    }
    const { body } = await keyed(ready.member, '/booking-series', weekly({ recurrence: 'weekly' })).expect(
      400,
    );
    expect(body.errors[0].field).toBe('recurrence');
  });
});

describe('a block', () => {
  const block = (more: object = {}) => ({
    ...{ aircraftId: ready.aircraftId, kind: 'club', note: 'open day' },
    ...{ from: '2026-03-11T16:00:00Z', to: '2026-03-11T23:00:00Z' },
    ...more,
  });

  test('shows what is in its way, and by choice makes it give way and tells the people', async () => {
    const { body: flight } = await keyed(ready.member, '/bookings', {
      ...alone,
      aircraftId: ready.aircraftId,
    }).expect(201);
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    const { body: no } = await coordinator.post('/bookings/blocks', block()).expect(409);
    expect(no).toMatchObject({
      code: 'slot-taken',
      inTheWay: [{ bookingId: flight.id, memberName: 'Robin Member' }],
    });
    const { body } = await coordinator.post('/bookings/blocks', block({ displace: true })).expect(201);
    expect(body.displaced).toEqual([expect.objectContaining({ bookingId: flight.id })]);
    const { body: told } = await ready.member.get('/displacements').expect(200);
    expect(told.items).toEqual([
      expect.objectContaining({ bookingId: flight.id, because: 'open day', backAt: '2026-03-11T23:00:00Z' }),
    ]);
    const { body: gone } = await ready.member.get(`/bookings/${flight.id}`).expect(200);
    // Making room is nobody's lateness.
    expect(gone).toMatchObject({ status: 'cancelled', cancellation: { late: false } });
    const { body: history } = await ready.member.get(`/bookings/${flight.id}/changes`).expect(200);
    expect(history.items.map(({ act }: { act: string }) => act)).toEqual(['displaced']);
  });

  test('is moved, and given back; not by members, and not where it belongs to a visit to the shop', async () => {
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    const { body } = await coordinator.post('/bookings/blocks', block()).expect(201);
    const at = `/bookings/blocks/${body.id}`;
    const later = { from: '2026-03-11T20:00:00Z' };
    await ready.member.patch(at, later, '"1"').expect(403);
    await coordinator.patch(at, later).expect(428);
    await coordinator.patch(at, { to: '2026-03-11T16:00:00Z' }, '"1"').expect(422);
    const { body: moved } = await coordinator.patch(at, { ...later, note: 'fly-in' }, '"1"').expect(200);
    expect(moved).toMatchObject({
      departs: later.from,
      arrives: '2026-03-11T23:00:00Z',
      note: 'fly-in',
      displaced: [],
    });
    await coordinator.patch(at, later, `"${moved.rowVersion}"`).expect(422);
    const { body: history } = await ready.member.get(`/bookings/${body.id}/changes`).expect(200);
    expect(history.items).toEqual([
      expect.objectContaining({
        before: { departs: '2026-03-11T16:00:00Z' },
        after: { departs: later.from },
        also: ['note'],
      }),
    ]);
    await keyed(ready.member, '/bookings', { ...alone, aircraftId: ready.aircraftId }).expect(201);
    await coordinator.patch(at, { from: '2026-03-11T19:00:00Z' }, `"${moved.rowVersion}"`).expect(409);
    await coordinator
      .post(`/bookings/${body.id}/cancel`, {})
      .set('If-Match', `"${moved.rowVersion}"`)
      .expect(200);
    await coordinator.patch(at, later, '"3"').expect(409);
    const visit = {
      ...{ title: 'Door seals', lines: [], from: '2026-03-20T14:00:00Z', to: '2026-03-20T20:00:00Z' },
    };
    await coordinator.post(`/aircraft/${ready.aircraftId}/work-orders`, visit).expect(201);
    const { body: then } = await coordinator.get('/bookings?from=2026-03-20T00:00:00Z').expect(200);
    const shop = `/bookings/blocks/${then.items[0].id}`;
    const { body: no } = await coordinator.patch(shop, { note: 'another' }, '"1"').expect(409);
    expect(no.code).toBe('block-of-shop');
  });
});

describe('a slot held for a checkout', () => {
  const held = (memberId: string, more: object = {}) => ({
    ...{ ...tomorrow, aircraftId: ready.aircraftId, memberId },
    ...more,
  });
  const teacher = async (name = 'Ina Structor'): Promise<Session> => {
    const one = await ready.club.signInAs('instructor', { name });
    await ready.makePilot(one.memberId);
    await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [one.memberId]);
    await insertInto(api.sql, ready.club.clubId)('instructor_certificates', {
      ...{
        id: newId(),
        member_id: one.memberId,
        issued_on: '2020-05-01',
        ratings: ['airplane-single-engine'],
      },
      ...{
        recent_experience_on: '2025-06-01',
        verified_by: one.memberId,
        verified_at: '2026-01-02T00:00:00Z',
      },
    });
    return one;
  };
  const confirm = (who: Session, of: { id: string; rowVersion: number }) =>
    keyed(who, `/bookings/${of.id}/confirm`, {}).set('If-Match', `"${of.rowVersion}"`);

  test('keeps the aircraft and its two people, and becomes the flight when it is judged', async () => {
    const instructor = await teacher();
    await keyed(ready.member, '/bookings/holds', held(ready.member.memberId)).expect(403);
    const { body } = await keyed(instructor, '/bookings/holds', held(ready.member.memberId)).expect(201);
    // Forty-eight hours are more than there are left: it holds until departure and no longer.
    expect(body).toMatchObject({ kind: 'hold', decisionId: null, holdUntil: tomorrow.departs });
    const second = await pilot();
    const { body: taken } = await keyed(second, '/bookings', {
      ...alone,
      aircraftId: ready.aircraftId,
    }).expect(409);
    expect(taken.code).toBe('slot-taken');
    await confirm(second, body).expect(403);
    const { body: flight } = await confirm(ready.member, body).expect(200);
    expect(flight).toMatchObject({ id: body.id, kind: 'flight', holdUntil: null, ...tomorrow });
    expect(flight.decisionId).not.toBeNull();
    const { body: history } = await instructor.get(`/bookings/${body.id}/changes`).expect(200);
    expect(history.items.map(({ act }: { act: string }) => act)).toEqual(['confirmed']);
    await confirm(ready.member, flight).expect(409);
  });

  test('ends by itself: the next who wants the slot has it, and it is confirmed no more', async () => {
    const instructor = await teacher();
    const far = { departs: '2026-03-14T18:00:00Z', arrives: '2026-03-14T20:00:00Z' };
    const { body } = await keyed(instructor, '/bookings/holds', held(ready.member.memberId, far)).expect(201);
    expect(body.holdUntil).toBe('2026-03-12T15:00:00Z');
    const second = await pilot();
    const wanted = { ...alone, ...far, aircraftId: ready.aircraftId };
    api.clock.set('2026-03-12T14:59:59Z');
    await keyed(second, '/bookings', wanted).expect(409);
    api.clock.set('2026-03-12T15:00:00Z');
    await confirm(ready.member, body).expect(409);
    await keyed(second, '/bookings', wanted).expect(201);
    const { body: history } = await instructor.get(`/bookings/${body.id}/changes`).expect(200);
    expect(history.items).toEqual([expect.objectContaining({ act: 'lapsed', byId: null })]);
  });

  test('is not for oneself, not more than the club allows, and is given back', async () => {
    const instructor = await teacher();
    await keyed(instructor, '/bookings/holds', held(instructor.memberId)).expect(422);
    await keyed(instructor, '/bookings/holds', held(newId())).expect(404);
    const on = (day: number) => ({
      departs: `2026-03-${day}T18:00:00Z`,
      arrives: `2026-03-${day}T20:00:00Z`,
    });
    const all = [];
    for (const day of [12, 13, 14, 15, 16])
      all.push(
        (await keyed(instructor, '/bookings/holds', held(ready.member.memberId, on(day))).expect(201)).body,
      );
    const { body: no } = await keyed(
      instructor,
      '/bookings/holds',
      held(ready.member.memberId, on(17)),
    ).expect(409);
    expect(no.code).toBe('hold-refused');
    await ready.member.post(`/bookings/${all[0].id}/cancel`, {}).set('If-Match', '"1"').expect(200);
    await keyed(instructor, '/bookings/holds', held(ready.member.memberId, on(17))).expect(201);
  });
});
