/**
 * Bookings edited, handed over and given back. What the answers rest on: 14 CFR 61.23 (medical), common practice of clubs, no source,
 * for lead times and hand-overs.
 */
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

/** A booking as the API gives it, as far as it is read here. */
interface Shown {
  id: string;
  rowVersion: number;
  decisionId: string;
  memberId: string;
  departs: string;
  arrives: string;
  expectedHours: number;
}

describe('changing a booking', () => {
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

  const booked = async (who: Session = ready.member, more: object = {}): Promise<Shown> =>
    (
      await who
        .post('/bookings', { aircraftId: ready.aircraftId, ...alone, ...more })
        .set('Idempotency-Key', newId())
        .expect(201)
    ).body as Shown;
  const edit = (who: Session, of: Shown, change: object, key = newId()) =>
    who.patch(`/bookings/${of.id}`, change, `"${of.rowVersion}"`).set('Idempotency-Key', key);
  const pilot = async (name = 'Sam Second'): Promise<Session> => {
    const one = await ready.club.signInAs('member', { name });
    await ready.makePilot(one.memberId);
    return one;
  };
  const setPolicy = async (parameter: string, value: unknown): Promise<void> => {
    await api.sql('DELETE FROM policy_values WHERE club_id = $1 AND parameter_id = $2', [
      ready.club.clubId,
      parameter,
    ]);
    await insertInto(api.sql, ready.club.clubId)('policy_values', {
      ...{ id: newId(), parameter_id: parameter, valid_from: '2026-01-01', value: JSON.stringify(value) },
      reference: 'Committee minutes',
    });
  };
  const history = async (of: Shown, who = ready.member) =>
    (await who.get(`/bookings/${of.id}/changes`).expect(200)).body as {
      items: {
        act: string;
        before: object;
        after: object;
        also: string[];
        decisionId: string | null;
        byName: string;
      }[];
      names: { id: string; name: string }[];
    };

  describe('editing', () => {
    test('moves it, judged anew, and the history tells from what to what', async () => {
      const first = await booked(ready.member, { note: 'pattern work', plannedHours: 1.2 });
      const times = { departs: '2026-03-12T17:00:00Z', arrives: '2026-03-12T20:00:00Z' };
      const { body, headers } = await edit(ready.member, first, { ...times, note: 'cross-country' }).expect(
        200,
      );
      // The hours told were for a flight of two hours; of this one the whole time counts.
      expect(body).toMatchObject({ ...times, note: 'cross-country', rowVersion: 2, expectedHours: 3 });
      expect(headers.etag).toBe('"2"');
      expect(body.decisionId).not.toBe(first.decisionId);
      const { body: replay } = await ready.member.get(`/decisions/${body.decisionId}/replay`).expect(200);
      expect(replay.identical).toBe(true);
      const { items } = await history(first);
      expect(items).toEqual([
        expect.objectContaining({
          ...{ act: 'edited', byName: 'Robin Member', decisionId: body.decisionId },
          ...{ before: { departs: tomorrow.departs, arrives: tomorrow.arrives }, after: times },
          also: ['note', 'plannedHours'],
        }),
      ]);
    });

    test('into another aircraft gives the first one back', async () => {
      const other = await ready.addAircraft('NX102B');
      const first = await booked();
      const { body } = await edit(ready.member, first, { aircraftId: other }).expect(200);
      expect(body).toMatchObject({ registration: 'NX102B', memberId: ready.member.memberId });
      await booked(await pilot());
      const { items, names } = await history(first);
      expect(items[0]).toMatchObject({
        before: { aircraftId: ready.aircraftId },
        after: { aircraftId: other },
      });
      expect(names).toContainEqual({ id: other, name: 'NX102B' });
    });

    test('into a slot that is taken is refused, by whom, and it stays as it was', async () => {
      const first = await booked();
      const later = { departs: '2026-03-11T20:00:00Z', arrives: '2026-03-11T22:00:00Z' };
      await booked(await pilot(), later);
      const { body } = await edit(ready.member, first, { arrives: '2026-03-11T20:30:00Z' }).expect(409);
      expect(body).toMatchObject({ code: 'slot-taken', conflict: { holder: 'Sam Second' } });
      const { body: still } = await ready.member.get(`/bookings/${first.id}`).expect(200);
      expect(still).toEqual(first);
      expect((await history(first)).items).toEqual([]);
    });

    test('a longer flight that is no longer allowed is refused; a shorter one is not, and stands on the old decision', async () => {
      const first = await booked();
      await api.sql("UPDATE medicals SET exam_on = '2019-01-01' WHERE member_id = $1", [
        ready.member.memberId,
      ]);
      const { body: no } = await edit(ready.member, first, { arrives: '2026-03-11T21:00:00Z' }).expect(409);
      expect(no.code).toBe('not-bookable');
      expect(no.findings.map(({ rule }: { rule: string }) => rule)).toContain('medical.certificate');
      const { body } = await edit(ready.member, first, { arrives: '2026-03-11T19:00:00Z' }).expect(200);
      expect(body).toMatchObject({ arrives: '2026-03-11T19:00:00Z', decisionId: first.decisionId });
      const { items } = await history(first);
      const { body: judged } = await ready.member.get(`/decisions/${items[0]!.decisionId}`).expect(200);
      expect(judged.answer).not.toMatch(/^yes/);
    });

    test('of a flight under way only the end is changed, and no time that has passed', async () => {
      const first = await booked();
      api.clock.set('2026-03-11T19:00:00Z');
      await edit(ready.member, first, { departs: '2026-03-11T19:15:00Z' }).expect(409);
      const { body: past } = await edit(ready.member, first, { arrives: '2026-03-11T18:45:00Z' }).expect(422);
      expect(past.errors[0].field).toBe('arrives');
      const { body } = await edit(ready.member, first, { arrives: '2026-03-11T20:45:00Z' }).expect(200);
      expect(body).toMatchObject({ departs: tomorrow.departs, arrives: '2026-03-11T20:45:00Z' });
      api.clock.set('2026-03-11T20:45:00Z');
      await edit(ready.member, body, { arrives: '2026-03-11T21:00:00Z' }).expect(409);
    });

    test('needs the ETag, a key, a right to it, and something to change', async () => {
      const first = await booked();
      const longer = { arrives: '2026-03-11T21:00:00Z' };
      await ready.member.patch(`/bookings/${first.id}`, longer).set('Idempotency-Key', newId()).expect(428);
      await ready.member.patch(`/bookings/${first.id}`, longer, '"1"').expect(400);
      await edit(ready.member, { ...first, rowVersion: 7 }, longer).expect(412);
      await edit(await pilot(), first, longer).expect(403);
      const { body: none } = await edit(ready.member, first, { arrives: tomorrow.arrives }).expect(422);
      expect(none.code).toBe('nothing-to-change');
      const { body: wrong } = await edit(ready.member, first, { arrives: tomorrow.departs }).expect(422);
      expect(wrong.errors[0].field).toBe('arrives');
      const key = newId();
      const once = await edit(ready.member, first, longer, key).expect(200);
      const again = await edit(ready.member, first, longer, key).expect(200);
      expect(again.body).toEqual(once.body);
      expect((await history(first)).items).toHaveLength(1);
    });

    test('does not carry an override along: it is asked for again', async () => {
      await api.sql("UPDATE members SET standing = 'arrears', standing_since = '2025-01-01' WHERE id = $1", [
        ready.member.memberId,
      ]);
      const officer = await ready.club.signInAs('safety-officer');
      const override = { reason: 'Paid at the desk, the book follows' };
      const first = await booked(officer, { memberId: ready.member.memberId, override });
      const longer = { arrives: '2026-03-11T21:00:00Z' };
      const { body: no } = await edit(ready.member, first, longer).expect(409);
      expect(no).toMatchObject({ code: 'not-bookable', answer: 'ask-officer' });
      const reason = 'Paid meanwhile, the receipt was seen';
      const { body } = await edit(officer, first, { ...longer, override: { reason } }).expect(200);
      expect(body.overrides).toEqual([{ ruleId: 'club.standing', officerId: officer.memberId, reason }]);
    });
  });

  describe('handing over', () => {
    const offer = (who: Session, of: Shown, toId: string) =>
      who.post(`/bookings/${of.id}/hand-over`, { toId }).set('If-Match', `"${of.rowVersion}"`);
    const accept = (who: Session, of: Shown, more: object = {}, key = newId()) =>
      who
        .post(`/bookings/${of.id}/hand-over/accept`, more)
        .set('If-Match', `"${of.rowVersion}"`)
        .set('Idempotency-Key', key);

    test('is offered, judged for the new member, and taken by them', async () => {
      const first = await booked();
      const second = await pilot();
      const { body: offered } = await offer(ready.member, first, second.memberId).expect(200);
      expect(offered.handOver).toMatchObject({ toId: second.memberId, toName: 'Sam Second' });
      const { body: mine } = await second.get('/hand-overs').expect(200);
      expect(mine.items).toEqual([
        expect.objectContaining({
          ...{ bookingId: first.id, fromName: 'Robin Member', bookingVersion: offered.rowVersion },
        }),
      ]);
      const { body: told } = await second.get('/notices').expect(200);
      expect(told.items).toEqual([expect.objectContaining({ kind: 'hand-over' })]);
      const { body } = await accept(second, offered).expect(200);
      expect(body).toMatchObject({
        ...{ memberId: second.memberId, memberName: 'Sam Second', handOver: null, ...tomorrow },
        people: [{ memberId: second.memberId, role: 'pilot' }],
      });
      const { body: decision } = await second.get(`/decisions/${body.decisionId}`).expect(200);
      expect(decision.memberId).toBe(second.memberId);
      // Who had it is free again, and may read what became of it; everybody else may not.
      const other = await ready.addAircraft('NX102B');
      await booked(ready.member, { aircraftId: other });
      const { items } = await history(first);
      expect(items.map(({ act }) => act)).toEqual(['handed-over']);
      await (await pilot('Nosy')).get(`/bookings/${first.id}/changes`).expect(403);
      await accept(second, body).expect(403);
    });

    test('to somebody who may not fly it is refused for their reasons, and it stays where it was', async () => {
      const first = await booked();
      const second = await pilot();
      await api.sql("UPDATE medicals SET exam_on = '2019-01-01' WHERE member_id = $1", [second.memberId]);
      const { body: offered } = await offer(ready.member, first, second.memberId).expect(200);
      const { body: no } = await accept(second, offered).expect(409);
      expect(no.findings.map(({ rule }: { rule: string }) => rule)).toContain('medical.certificate');
      const { body: still } = await ready.member.get(`/bookings/${first.id}`).expect(200);
      expect(still).toMatchObject({ memberId: ready.member.memberId, handOver: { toId: second.memberId } });
    });

    test('is not for who did not get the offer; an officer takes it for them; the member declines', async () => {
      const first = await booked();
      const second = await pilot();
      const { body: offered } = await offer(ready.member, first, second.memberId).expect(200);
      await offer(ready.member, offered, (await pilot('Third')).memberId).expect(409);
      await accept(ready.member, offered).expect(403);
      await accept(await pilot('Nosy'), offered).expect(403);
      const { body: declined } = await second.delete(`/bookings/${first.id}/hand-over`).expect(200);
      expect(declined.handOver).toBeNull();
      await second.delete(`/bookings/${first.id}/hand-over`).expect(403);
      await ready.member.delete(`/bookings/${first.id}/hand-over`).expect(409);
      const officer = await ready.club.signInAs('safety-officer');
      const { body: again } = await offer(officer, declined, second.memberId).expect(200);
      const key = newId();
      const once = await accept(officer, again, {}, key).expect(200);
      expect((await accept(officer, again, {}, key).expect(200)).body).toEqual(once.body);
      expect(once.body.memberId).toBe(second.memberId);
    });

    test('to who is busy then is told as the conflict it is', async () => {
      const other = await ready.addAircraft('NX102B');
      const first = await booked();
      const second = await pilot();
      await booked(second, { aircraftId: other });
      const { body: offered } = await offer(ready.member, first, second.memberId).expect(200);
      const { body } = await accept(second, offered).expect(409);
      expect(body.detail).toContain('Sam Second is booked in NX102B');
      await offer(ready.member, offered, ready.member.memberId).expect(409);
      await offer(ready.member, offered, newId()).expect(404);
    });
  });

  describe('giving it back', () => {
    const cancel = (who: Session, of: Shown, more: object = {}) =>
      who.post(`/bookings/${of.id}/cancel`, more).set('If-Match', `"${of.rowVersion}"`);

    test('late is recorded as late and asks for a reason; in time it is not', async () => {
      const late = await booked();
      api.clock.set('2026-03-10T18:00:01Z');
      const { body: no } = await cancel(ready.member, late).expect(422);
      expect(no).toMatchObject({ code: 'cancel-reason-missing', errors: [{ field: 'reason' }] });
      const { body } = await cancel(ready.member, late, { reason: 'A cold' }).expect(200);
      expect(body.cancellation).toEqual({ at: '2026-03-10T18:00:01Z', late: true, reason: 'A cold' });
      const stranger = await ready.club.signInAs('member');
      const { body: seen } = await stranger.get(`/bookings/${late.id}`).expect(200);
      expect(seen.cancellation).toBeNull();
      api.clock.set(NOW);
      const early = await booked(ready.member, {
        ...{ departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z' },
      });
      // To the second 24 hours ahead, which is in time.
      api.clock.set('2026-03-11T18:00:00Z');
      const { body: inTime } = await cancel(ready.member, early).expect(200);
      expect(inTime.cancellation).toMatchObject({ late: false, reason: '' });
      expect((await history(early)).items.map(({ act }) => act)).toEqual(['cancelled']);
    });

    test('follows the policy: no lead, nothing is late; and an officer who is not aboard is never late', async () => {
      await setPolicy('club.cancellation.lead-hours', 0);
      api.clock.set('2026-03-11T12:00:00Z');
      const { body } = await cancel(ready.member, await booked()).expect(200);
      expect(body.cancellation.late).toBe(false);
      await setPolicy('club.cancellation.lead-hours', 24);
      await setPolicy('club.cancellation.late-reason', false);
      const { body: unasked } = await cancel(ready.member, await booked()).expect(200);
      expect(unasked.cancellation).toMatchObject({ late: true, reason: '' });
      const officer = await ready.club.signInAs('safety-officer');
      const { body: by } = await cancel(officer, await booked()).expect(200);
      expect(by.cancellation.late).toBe(false);
    });

    test('withdraws an open offer with it', async () => {
      const first = await booked();
      const second = await pilot();
      const { body: offered } = await ready.member
        .post(`/bookings/${first.id}/hand-over`, { toId: second.memberId })
        .set('If-Match', '"1"')
        .expect(200);
      await cancel(ready.member, offered, { reason: 'A cold' }).expect(200);
      expect((await second.get('/hand-overs').expect(200)).body.items).toEqual([]);
    });
  });
});
