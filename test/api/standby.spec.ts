/** Standby: who waits for a slot, to whom one that came free is offered, and what becomes of the offer. Club handbook, section 4.6. */
import { setTimeout as pause } from 'node:timers/promises';
import { passOn } from '../../src/bookings/standby/pass-on.js';
import { DecisionsService } from '../../src/decisions/decisions.service.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api, type Session } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

interface Offer {
  id: string;
  aircraftId: string;
  state: string;
  expiresAt: string;
  bookingId: string | null;
}
interface Entry {
  id: string;
  state: string;
  ahead: number;
  rowVersion: number;
  offer: Offer | null;
}
const FLIGHT = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

describe('standby', () => {
  let api: Api;
  let ready: ReadyClub;
  let holder: Session;
  let first: Session;
  let second: Session;

  beforeAll(async () => {
    api = await startApi();
  }, 300_000);
  afterAll(() => api.stop());
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
    holder = ready.member;
    first = await pilot('Fay First');
    second = await pilot('Sol Second');
  }, 60_000);

  const pilot = async (name: string): Promise<Session> => {
    const session = await ready.club.signInAs('member', { name });
    await ready.makePilot(session.memberId);
    return session;
  };
  const book = (who: Session, more: object = {}) =>
    who
      .post('/bookings', { ...FLIGHT, aircraftId: ready.aircraftId, ...more })
      .set('Idempotency-Key', newId());
  const wait = async (who: Session, more: object = {}): Promise<Entry> => {
    const body = { ...FLIGHT, aircraftId: ready.aircraftId, ...more };
    return (await who.post('/standby', body).set('Idempotency-Key', newId()).expect(201)).body as Entry;
  };
  const pass = () =>
    passOn(api.app.get(TenantDb), ready.club.clubId, { now: api.clock.now(), note: () => undefined });
  const own = async (who: Session): Promise<Entry[]> =>
    (await who.get('/standby').expect(200)).body.items as Entry[];
  const offerOf = async (who: Session): Promise<Offer | null> => (await own(who))[0]!.offer;
  const cancel = async (who: Session, booking: { id: string; rowVersion: number }) =>
    who.post(`/bookings/${booking.id}/cancel`).set('If-Match', `"${booking.rowVersion}"`).expect(200);
  const answer = (who: Session, offer: Offer, what: 'accept' | 'decline') =>
    who.post(`/standby/offers/${offer.id}/${what}`);

  it('offers what was cancelled to who asked first, keeps it, and books it in one step', async () => {
    const { body: booking } = await book(holder).expect(201);
    await wait(first);
    expect(await wait(second)).toMatchObject({ state: 'waiting', ahead: 1, offer: null });
    expect(await pass()).toEqual({ expired: 0, offered: 0 });
    await cancel(holder, booking);
    expect(await pass()).toEqual({ expired: 0, offered: 1 });
    const offer = (await offerOf(first))!;
    // Four hours, by the club's starting policy.
    expect(offer).toMatchObject({ state: 'open', holds: true, expiresAt: '2026-03-10T19:00:00Z' });
    expect(await offerOf(second)).toBeNull();
    const told = async (who: Session) =>
      ((await who.get('/notices').expect(200)).body.items as { kind: string }[]).map(({ kind }) => kind);
    expect(await told(first)).toEqual(['standby-offer']);
    expect(await told(second)).toEqual([]);
    // Done again, it comes out the same.
    expect(await pass()).toEqual({ expired: 0, offered: 0 });

    const kept = await book(second).expect(409);
    expect(kept.body).toMatchObject({ code: 'slot-kept', keptUntil: '2026-03-10T19:00:00Z' });
    expect(JSON.stringify(kept.body)).not.toContain('Fay');
    const made = (await answer(first, offer, 'accept').expect(200)).body;
    expect(made).toMatchObject({ memberId: first.memberId, ...tomorrow, status: 'booked' });
    // Taken twice, it is the same booking.
    expect((await answer(first, offer, 'accept').expect(200)).body.id).toBe(made.id);
    expect((await own(first))[0]).toMatchObject({ state: 'booked', offer: { bookingId: made.id } });
    expect(await pass()).toEqual({ expired: 0, offered: 0 });
  });

  it('goes on to the next when it is declined, and when its time runs out', async () => {
    await wait(first);
    await wait(second);
    const third = await pilot('Thea Third');
    await wait(third);
    await pass();
    await answer(first, (await offerOf(first))!, 'decline').expect(200);
    await pass();
    const offer = (await offerOf(second))!;
    expect(offer.state).toBe('open');
    api.clock.set(offer.expiresAt);
    // Run out, whether or not anybody has looked yet.
    for (const late of ['accept', 'decline'] as const)
      expect((await answer(second, offer, late).expect(409)).body.code).toBe('offer-over');
    expect(await pass()).toMatchObject({ expired: 1, offered: 1 });
    expect((await answer(second, offer, 'accept').expect(409)).body.code).toBe('offer-over');
    expect((await offerOf(third))!.state).toBe('open');
    // Neither is offered the same aircraft again for that flight.
    await answer(third, (await offerOf(third))!, 'decline').expect(200);
    expect(await pass()).toEqual({ expired: 0, offered: 0 });
  });

  it('an offer that runs out while it is being taken was taken in time', async () => {
    await wait(first);
    await pass();
    const offer = (await offerOf(first))!;
    // In time when the offer is read, over by when the flight is booked.
    api.clock.set('2026-03-10T18:59:59Z');
    const decisions = api.app.get(DecisionsService, { strict: false });
    const mayAsk = jest.spyOn(decisions, 'mayAsk').mockImplementationOnce((user, request) => {
      api.clock.set(offer.expiresAt);
      return decisions.mayAsk(user, request);
    });
    const made = await answer(first, offer, 'accept');
    mayAsk.mockRestore();
    expect(made.status).toBe(200);
    const id: string = made.body.id;
    expect((await own(first))[0]).toMatchObject({
      state: 'booked',
      offer: { state: 'accepted', bookingId: id },
    });
  });

  it('an offer that has run out stands in nobody’s way before anybody looks', async () => {
    await wait(first);
    await pass();
    api.clock.set((await offerOf(first))!.expiresAt);
    await book(second).expect(201);
  });

  it('keeps the slot from a flight that is moved there and from a hold, until it runs out', async () => {
    const elsewhere = { departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z' };
    const { body: booking } = await book(second, elsewhere).expect(201);
    const teacher = await ready.club.signInAs('instructor', { name: 'Tess Teacher' });
    await wait(first);
    await pass();
    const move = () =>
      second
        .patch(`/bookings/${booking.id}`, tomorrow, `"${booking.rowVersion}"`)
        .set('Idempotency-Key', newId());
    const hold = () =>
      teacher
        .post('/bookings/holds', { ...tomorrow, aircraftId: ready.aircraftId, memberId: second.memberId })
        .set('Idempotency-Key', newId());
    const { expiresAt } = (await offerOf(first))!;
    for (const refused of [await move().expect(409), await hold().expect(409)])
      expect(refused.body).toMatchObject({ code: 'slot-kept', keptUntil: expiresAt });
    // Nobody has looked yet.
    api.clock.set(expiresAt);
    await move().expect(200);
    expect((await hold().expect(409)).body.code).toBe('slot-taken');
  });

  it('is never offered to whom the engine says no, and passes them by', async () => {
    await api.sql("UPDATE members SET standing = 'suspended' WHERE id = $1", [first.memberId]);
    await wait(first);
    await wait(second);
    await pass();
    expect(await offerOf(first)).toBeNull();
    expect((await offerOf(second))!.state).toBe('open');
  });

  it('is judged again when it is taken: a squawk in between refuses, and the offer stays open', async () => {
    await wait(first);
    await pass();
    const offer = (await offerOf(first))!;
    const id = newId();
    await api.sql(
      `INSERT INTO squawks (club_id, id, aircraft_id, title, state, reported_at, reported_by)
       VALUES ($1, $2, $3, 'Fuel leak', 'grounding', $4, $5)`,
      [ready.club.clubId, id, ready.aircraftId, NOW, first.memberId],
    );
    expect((await answer(first, offer, 'accept').expect(409)).body.code).toBe('not-bookable');
    await api.sql('DELETE FROM squawks WHERE id = $1', [id]);
    await answer(first, offer, 'accept').expect(200);
  });

  it('goes by the fewest hours booked ahead where the club says so', async () => {
    await policy('club.standby.fewest-hours-first', true);
    await book(first, { departs: '2026-03-20T18:00:00Z', arrives: '2026-03-20T19:00:00Z' }).expect(201);
    await wait(first);
    await wait(second);
    await pass();
    expect(await offerOf(first)).toBeNull();
    expect((await offerOf(second))!.state).toBe('open');
  });

  it('keeps nothing where the club says so: whoever comes first has it, and the offer is taken back', async () => {
    await policy('club.standby.hold-slot', false);
    await wait(first);
    await pass();
    await book(second).expect(201);
    await pass();
    expect((await offerOf(first))!.state).toBe('withdrawn');
  });

  it('gives way to maintenance', async () => {
    await wait(first);
    await pass();
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    const shop = { aircraftId: ready.aircraftId, kind: 'maintenance', note: 'Tyres' };
    await coordinator
      .post('/bookings/blocks', { ...shop, from: tomorrow.departs, to: tomorrow.arrives })
      .expect(201);
    await pass();
    expect((await offerOf(first))!.state).toBe('withdrawn');
  });

  it('offers no slot shortly before departure, and ends what has passed', async () => {
    await wait(first);
    api.clock.set('2026-03-11T17:00:01Z');
    await pass();
    expect(await offerOf(first)).toBeNull();
    api.clock.set('2026-03-11T18:00:00Z');
    await pass();
    expect((await own(first))[0]!.state).toBe('over');
  });

  it('takes any aircraft that will do, and after a no the other one', async () => {
    const other = await ready.addAircraft('NX202B');
    const entry = await wait(first, { aircraftId: undefined });
    expect(entry).toMatchObject({ registration: null });
    await pass();
    const offer = (await offerOf(first))!;
    expect(offer.aircraftId).toBe(ready.aircraftId);
    await answer(first, offer, 'decline').expect(200);
    await pass();
    expect(await offerOf(first)).toMatchObject({ aircraftId: other, state: 'open' });
  });

  it('is withdrawn with what was offered, by its version', async () => {
    const entry = await wait(first);
    await wait(second);
    await pass();
    const path = `/standby/${entry.id}`;
    expect((await first.get(path).expect(200)).headers.etag).toBe('"1"');
    await second.get(path).expect(404);
    await first.post(`${path}/withdraw`).expect(428);
    await first.post(`${path}/withdraw`).set('If-Match', '"7"').expect(412);
    await second.post(`${path}/withdraw`).set('If-Match', '"1"').expect(404);
    await first.post(`${path}/withdraw`).set('If-Match', '"1"').expect(200);
    expect((await first.post(`${path}/withdraw`).set('If-Match', '"2"').expect(409)).body.code).toBe(
      'standby-over',
    );
    expect(await own(first)).toEqual([]);
    await pass();
    expect((await offerOf(second))!.state).toBe('open');
  });

  it('refuses what cannot be waited for, naming the field', async () => {
    await wait(first);
    const post = (body: object) => first.post('/standby', body).set('Idempotency-Key', newId());
    expect((await post({ ...FLIGHT, arrives: '2026-03-11T21:00:00Z' }).expect(409)).body).toMatchObject({
      ...{ code: 'standby-twice' },
    });
    expect((await post({ ...FLIGHT, memberId: second.memberId }).expect(403)).body.errors).toEqual([
      expect.objectContaining({ field: 'memberId' }),
    ]);
    await post({ ...FLIGHT, aircraftId: newId() }).expect(404);
    await post({ ...FLIGHT, departs: '2026-03-09T18:00:00Z' }).expect(422);
    await post({ ...FLIGHT, route: ['XQHB', 'NOPE'] }).expect(422);
    const key = newId();
    const once = { ...FLIGHT, departs: '2026-03-14T18:00:00Z', arrives: '2026-03-14T19:00:00Z' };
    const twice = await Promise.all(
      [1, 2].map(() => first.post('/standby', once).set('Idempotency-Key', key)),
    );
    expect(twice.map(({ status }) => status)).toEqual([201, 201]);
    expect(twice[0]!.body.id).toBe(twice[1]!.body.id);
    expect((await answer(second, { id: newId() } as Offer, 'accept').expect(404)).body.code).toBe(
      'not-found',
    );
  });

  const policy = (id: string, value: unknown) =>
    api.sql('UPDATE policy_values SET value = $3 WHERE club_id = $1 AND parameter_id = $2', [
      ...[ready.club.clubId, id, JSON.stringify(value)],
    ]);
});

describe('standby in the background', () => {
  it('hears of a cancellation and passes the slot on, by one of two replicas', async () => {
    const api = await startApi({ backgroundWork: true });
    const beside = await startApi({ beside: api, backgroundWork: true });
    try {
      const ready = await readyClub(api);
      const waiting = await ready.club.signInAs('member', { name: 'Wim Waiting' });
      await ready.makePilot(waiting.memberId);
      const body = { ...FLIGHT, aircraftId: ready.aircraftId };
      const { body: booking } = await ready.member
        .post('/bookings', body)
        .set('Idempotency-Key', newId())
        .expect(201);
      await waiting.post('/standby', body).set('Idempotency-Key', newId()).expect(201);
      await ready.member.post(`/bookings/${booking.id}/cancel`).set('If-Match', '"1"').expect(200);
      for (let offer: Offer | null = null; offer === null; await pause(100))
        offer = ((await waiting.get('/standby').expect(200)).body.items as Entry[])[0]!.offer;
      const offers = await api.sql('SELECT state FROM standby_offers WHERE club_id = $1', [
        ready.club.clubId,
      ]);
      expect(offers).toEqual([{ state: 'open' }]);
    } finally {
      await beside.stop();
      await api.stop();
    }
  }, 60_000);
});
