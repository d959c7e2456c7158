/** Any aircraft that will do: judged, put in order, explained, and booked in one step. Club handbook, section 4.7. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

const FLIGHT = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

describe('any aircraft that will do', () => {
  let api: Api;
  let ready: ReadyClub;
  let small: string;

  beforeAll(async () => {
    api = await startApi();
  }, 300_000);
  afterAll(() => api.stop());
  beforeEach(async () => {
    ready = await readyClub(api);
    small = await ready.addAircraft('NX202B');
    await api.sql('UPDATE aircraft SET seats = 2, occupants_certificated = 2 WHERE id = $1', [small]);
  });
  const any = (body: object, key = newId()) =>
    ready.member.post('/bookings/any', body).set('Idempotency-Key', key);
  const bookings = async () =>
    (await api.sql('SELECT aircraft_id AS id FROM bookings WHERE club_id = $1', [ready.club.clubId])).map(
      ({ id }) => id,
    );

  it('is the one with fewer empty seats, and the answer says so', async () => {
    const { body } = await any(FLIGHT).expect(201);
    expect(body.booking).toMatchObject({ aircraftId: small, memberId: ready.member.memberId, ...tomorrow });
    expect(body.missedIds).toEqual([]);
    expect(body.order.map((one: { registration: string }) => one.registration)).toEqual(['NX202B', 'NX101B']);
    // The weather is not told yet: one condition each, 30 points, and 10 for each empty seat.
    expect(body.order[0]).toMatchObject({
      ...{ answer: 'yes-with-conditions', bookable: true },
      parts: expect.arrayContaining([{ kind: 'empty-seats', count: 1, points: 10, features: [] }]),
    });
    expect(body.order[1].parts).toContainEqual({ kind: 'empty-seats', count: 3, points: 30, features: [] });
    expect(await bookings()).toEqual([small]);
  });

  it('is the other one when the first is taken, and none when both are', async () => {
    const second = await ready.club.signInAs('member', { name: 'Sol Second' });
    await ready.makePilot(second.memberId);
    const third = await ready.club.signInAs('member', { name: 'Thea Third' });
    await ready.makePilot(third.memberId);
    const all = await Promise.all(
      [ready.member, second, third].map((who) =>
        who.post('/bookings/any', FLIGHT).set('Idempotency-Key', newId()),
      ),
    );
    expect(all.map(({ status }) => status).sort()).toEqual([201, 201, 409]);
    expect((await bookings()).sort()).toEqual([ready.aircraftId, small].sort());
    const none = all.find(({ status }) => status === 409)!.body;
    expect(none).toMatchObject({ code: 'no-aircraft-will-do' });
    expect(none.order).toHaveLength(2);
  });

  it('books once for one key, and not at all where none may fly', async () => {
    const key = newId();
    const [one, two] = [await any(FLIGHT, key).expect(201), await any(FLIGHT, key).expect(201)];
    expect(two.body).toEqual(one.body);
    expect(await bookings()).toHaveLength(1);
    await any({ ...FLIGHT, personsOnBoard: 2 }, key).expect(422);
    await api.sql("UPDATE members SET standing = 'suspended' WHERE id = $1", [ready.member.memberId]);
    const later = { ...FLIGHT, departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z' };
    const none = await any(later).expect(409);
    expect(none.body.order.map((each: { bookable: boolean }) => each.bookable)).toEqual([false, false]);
  });

  it('keeps to the aircraft named, and says which is not there', async () => {
    const { body } = await any({ ...FLIGHT, aircraftIds: [ready.aircraftId] }).expect(201);
    expect(body.booking.aircraftId).toBe(ready.aircraftId);
    expect(body.order).toHaveLength(1);
    await any({ ...FLIGHT, aircraftIds: [newId()] }).expect(404);
    await any({ ...FLIGHT, memberId: (await ready.club.createMember('member')).memberId }).expect(403);
  });
});

describe('fair use, where the club sets it (handbook, section 4.4)', () => {
  it('refuses the booking too many, as a club rule that names what is open', async () => {
    const api = await startApi();
    try {
      const { member, club, aircraftId } = await readyClub(api);
      const set = (id: string, value: number) =>
        api.sql('UPDATE policy_values SET value = $3 WHERE club_id = $1 AND parameter_id = $2', [
          ...[club.clubId, id, JSON.stringify(value)],
        ]);
      const book = (day: string, hours = 2) =>
        member
          .post('/bookings', {
            ...{ aircraftId, purpose: 'solo', personsOnBoard: 1, departs: `2026-03-${day}T16:00:00Z` },
            arrives: `2026-03-${day}T${16 + hours}:00:00Z`,
          })
          .set('Idempotency-Key', newId());
      const refusedBy = async (day: string, hours = 2): Promise<string[]> => {
        const { body } = await book(day, hours).expect(409);
        return (body.findings as { rule: string }[]).map(({ rule }) => rule);
      };
      // 2026-03-14 and 15 are a Saturday and a Sunday, the 11th a Wednesday.
      await set('club.fair-use.weekend-bookings', 1);
      await book('14').expect(201);
      expect(await refusedBy('15')).toEqual(['club.fair_use.weekend_bookings']);
      await book('11').expect(201);
      await set('club.fair-use.hours-ahead', 5);
      expect(await refusedBy('12')).toEqual(['club.fair_use.hours_ahead']);
      await book('12', 1).expect(201);
      await set('club.fair-use.hours-ahead', 0);
      await set('club.fair-use.open-bookings', 3);
      expect(await refusedBy('13')).toEqual(['club.fair_use.open_bookings']);
    } finally {
      await api.stop();
    }
  }, 60_000);
});
