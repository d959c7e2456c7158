/**
 * Another time due back of a flight that is out: the clock for overdue aircraft goes by it, the calendar follows where nobody else is in
 * the way. What a club does with it is common practice, no source.
 */
import { lookForOverdue } from '../../src/bookings/overdue/look-for-overdue.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { bookToday, bringBack, flownBy, goOut, TODAY } from './flight-scene.js';

const LATE = '2026-03-10T19:30:00Z';

describe('time due back', () => {
  let api: Api;
  let ready: ReadyClub;
  let officer: Session;
  beforeAll(async () => {
    api = await startApi();
  }, 300_000);
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
    officer = await ready.club.signInAs('safety-officer', { name: 'Olive Officer' });
  }, 60_000);
  afterAll(() => api.stop());

  const setTo = (who: Session, id: string, dueBackAt: string, key: string = newId()) =>
    who.post(`/flights/${id}/due-back`, { dueBackAt }).set('Idempotency-Key', key);
  const at = (clock: string): Promise<number> => {
    api.clock.set(`2026-03-10T${clock}Z`);
    return api.app
      .get(TenantDb)
      .run(ready.club.clubId, (em) => lookForOverdue(em, ready.club.clubId, api.clock.now()));
  };
  const changes = async (id: string, who = ready.member) =>
    (await who.get(`/bookings/${id}/changes`).expect(200)).body.items as object[];

  test('is put off with the booking, once under a key, and nobody is told before', async () => {
    const id = await goOut(api, ready);
    api.clock.set('2026-03-10T17:40:00Z');
    const key = newId();
    const { body } = await setTo(ready.member, id, LATE, key).expect(200);
    expect(body).toMatchObject({
      ...{ kept: true, inTheWay: [] },
      flight: { dueBackAt: LATE, overdue: false, booking: { status: 'dispatched', arrives: LATE } },
    });
    expect(body.caution).toMatch(/not judged/);
    expect((await setTo(ready.member, id, LATE, key).expect(200)).body).toEqual(body);
    expect(await changes(id)).toMatchObject([
      {
        ...{ act: 'edited', byId: ready.member.memberId, decisionId: null },
        before: { dueBackAt: TODAY.arrives, arrives: TODAY.arrives },
        after: { dueBackAt: LATE, arrives: LATE },
      },
    ]);
    const { body: out } = await officer.get('/flights/out').expect(200);
    expect(out.items).toMatchObject([{ bookingId: id, dueBackAt: LATE, overdue: false }]);
    expect(await at('19:00:00')).toBe(0);
    // Thirty minutes after it the crew, an hour after it the officers: the club's starting policy.
    expect(await at('20:00:00')).toBe(1);
    expect(await at('20:30:00')).toBe(1);
    await bringBack(ready.member, id, flownBy(ready.member.memberId)).expect(201);
    expect((await ready.member.get(`/flights/${id}`).expect(200)).body).toMatchObject({
      ...{ dueBackAt: null, overdue: false },
    });
  });

  test('with somebody booked next only the clock is put off; they are told, and both bookings stand', async () => {
    const id = await goOut(api, ready);
    api.clock.set(NOW);
    const next = await ready.club.signInAs('member', { name: 'Nat Next' });
    await ready.makePilot(next.memberId);
    const after = { departs: '2026-03-10T19:00:00Z', arrives: '2026-03-10T20:00:00Z' };
    const booked = await bookToday(ready, after, next);
    api.clock.set('2026-03-10T17:40:00Z');
    const { body } = await setTo(ready.member, id, LATE).expect(200);
    expect(body).toMatchObject({
      kept: false,
      inTheWay: [{ bookingId: booked, holder: 'Nat Next', ...after }],
      flight: { dueBackAt: LATE, booking: { arrives: TODAY.arrives } },
    });
    const { items } = (await next.get('/notices').expect(200)).body as { items: { kind: string }[] };
    expect(items.map(({ kind }) => kind)).toEqual(['aircraft-late']);
    expect(JSON.stringify(items)).toContain(LATE);
    expect(await at('19:59:59')).toBe(0);
    expect(await at('20:00:00')).toBe(1);
    // Put off once more, it is still not kept.
    expect((await setTo(ready.member, id, '2026-03-10T21:00:00Z').expect(200)).body.kept).toBe(false);
    expect(await changes(booked, next)).toEqual([]);
  });

  test('whoever was told of one time is told again when the next passes too', async () => {
    const id = await goOut(api, ready);
    expect(await at('19:00:00')).toBe(2);
    await setTo(ready.member, id, '2026-03-10T20:00:00Z').expect(200);
    expect(await at('20:29:59')).toBe(0);
    expect(await at('21:00:00')).toBe(2);
    expect(await at('21:10:00')).toBe(0);
  });

  test('an edit of the end moves it too', async () => {
    const id = await goOut(api, ready);
    const { body: booking } = await ready.member.get(`/bookings/${id}`).expect(200);
    await ready.member
      .patch(`/bookings/${id}`, { arrives: '2026-03-10T17:00:00Z' }, `"${booking.rowVersion}"`)
      .set('Idempotency-Key', newId())
      .expect(200);
    expect((await ready.member.get(`/flights/${id}`).expect(200)).body.dueBackAt).toBe(
      '2026-03-10T17:00:00Z',
    );
    expect(await at('17:30:00')).toBe(1);
  });

  test('refuses what is past or far away, flights that are not out, and strangers', async () => {
    const id = await goOut(api, ready);
    api.clock.set('2026-03-10T17:40:00Z');
    await setTo(ready.member, id, 'soon').expect(400);
    for (const wrong of ['2026-03-10T17:40:00Z', '2026-03-11T17:40:01Z']) {
      const { body } = await setTo(ready.member, id, wrong).expect(422);
      expect(body.errors[0].field).toBe('dueBackAt');
    }
    const stranger = await ready.club.signInAs('member', { name: 'Terry Third' });
    await setTo(stranger, id, LATE).expect(403);
    await setTo(ready.member, newId(), LATE).expect(404);
    await ready.member.post(`/flights/${id}/due-back`, { dueBackAt: LATE }).expect(400);
    await setTo(officer, id, LATE).expect(200);
    await bringBack(ready.member, id, flownBy(ready.member.memberId)).expect(201);
    expect((await setTo(ready.member, id, LATE).expect(409)).body.code).toBe('not-out');
  });
});
