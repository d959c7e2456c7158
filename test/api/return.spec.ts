/**
 * An aircraft brought back. What goes into a log is 14 CFR 61.51 (seen): dual received and given, sole manipulator; night
 * take-offs and landings 14 CFR 61.57(b) (seen); night hours 14 CFR 1.1 (seen). Fields of a journey log: common practice, no source.
 */
import { newId } from '../../src/platform/ids.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { returnedFlight } from '../../src/bookings/return/returned-flight.js';
import { plusSeconds, sunTimes, toInstant } from '../../src/rules/index.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { type Session } from '../support/session.js';
import {
  type Body,
  bookToday,
  bringBack,
  dispatch,
  entryOf,
  flownBy,
  goOut,
  instructorOf,
  readyToGo,
  written,
} from './flight-scene.js';

const AFTER = '2026-03-10T17:40:00Z';

describe('return', () => {
  let api: Api;
  let ready: ReadyClub;
  let robin: string;
  beforeAll(async () => {
    api = await startApi();
  });
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
    robin = ready.member.memberId;
  });
  afterAll(() => api.stop());

  const log = async (who: Session): Promise<Body[]> =>
    (await who.get(`/members/${who.memberId}/log`).expect(200)).body.items as Body[];
  const tach = async (): Promise<Body> =>
    (await ready.member.get(`/aircraft/${ready.aircraftId}/meters`).expect(200)).body.items[0] as Body;
  const flightOf = (id: string) =>
    api.app.get(TenantDb).run(ready.club.clubId, (em) => returnedFlight(em, id), { readOnly: true });

  test('log, meters and squawks are written together, and the slot is free', async () => {
    const id = await goOut(api, ready);
    api.clock.set(AFTER);
    const body = flownBy(robin, {
      squawks: [{ title: 'Left brake soft', detail: 'After landing' }],
      ...{ fuelBoughtUsGal: 10.2, fuelPaid: 66.1, oilAddedQt: 1 },
    });
    const { body: back } = await bringBack(ready.member, id, body).expect(201);
    expect(back).toMatchObject({
      booking: { status: 'returned' },
      return: {
        meters: [{ kind: 'tachometer', shownH: 1051.3, flownH: 1.3 }],
        ...{ fuelUsGal: 18, fuelBoughtUsGal: 10.2, fuelPaid: 66.1, oilAddedQt: 1, payerId: robin },
        entries: [{ memberId: robin, landings: 3, totalH: 1.5 }],
      },
    });
    const [entry] = await log(ready.member);
    expect(entry).toMatchObject({
      ...{ bookingId: id, role: 'pilot-in-command', totalH: 1.5, landings: 3, aircraftId: ready.aircraftId },
      ...{ departedAt: body['departedAt'], flownOn: '2026-03-10' },
    });
    expect(await tach()).toMatchObject({ shownH: 1051.3, readAt: body['arrivedAt'] });
    const { body: squawks } = await ready.member.get(`/aircraft/${ready.aircraftId}/squawks`).expect(200);
    expect(squawks.items).toEqual([
      expect.objectContaining({ title: 'Left brake soft', bookingId: id, reportedBy: robin }),
    ]);
    expect((await ready.member.get('/flights/out').expect(200)).body.items).toEqual([]);
    expect(await flightOf(id)).toMatchObject({
      ...{ bookingId: id, memberId: robin, payerId: robin, instructorId: null, instructionTenths: 0 },
      flownTenths: { hobbs: null, tachometer: 13, airframe: null },
      fuelBought: { usGal: 10.2, cents: 6610 },
    });
    // The rest of its time is anybody's.
    const other = await ready.club.signInAs('member', { name: 'Sam Second' });
    await ready.makePilot(other.memberId);
    await bookToday(ready, { departs: '2026-03-10T17:45:00Z' }, other);
  });

  test('it is charged with the return, to who pays, and charged anew when it is put right', async () => {
    const treasurer = await ready.club.signInAs('administrator', { name: 'Tess Treasurer' });
    const rate = { basis: 'tachometer', perHourMinor: 12_000, fuel: 'wet', fuelPerUsGalMinor: 500 };
    await treasurer
      .post(`/aircraft/${ready.aircraftId}/rates`, { ...rate, validFrom: '2026-01-01' })
      .expect(201);
    const id = await goOut(api, ready);
    api.clock.set(AFTER);
    const charged = async (): Promise<{ amounts: number[]; balance: number }> => {
      const { body } = await ready.member
        .get(`/members/${robin}/statement?from=2026-03-01&to=2026-03-31`)
        .expect(200);
      const amounts = (body.entries as { amountMinor: number }[]).map(({ amountMinor }) => amountMinor);
      return { amounts, balance: body.closingMinor };
    };
    const { body: back } = await bringBack(ready.member, id, flownBy(robin)).expect(201);
    // 1.3 h by the tachometer at 120.00.
    expect(await charged()).toEqual({ amounts: [15_600], balance: 15_600 });
    await ready.member
      .post(`/flights/${id}/return/corrections`, {
        ...flownBy(robin, { meters: [{ kind: 'tachometer', shownH: 1051.5 }] }),
        ...{ replacesId: back.return.id, because: 'Misread by two tenths' },
      })
      .set('Idempotency-Key', newId())
      .expect(201);
    expect(await charged()).toEqual({ amounts: [15_600, -15_600, 18_000], balance: 18_000 });
  });

  test('recency and hours follow: the next decision counts the landings and the hours', async () => {
    const id = await goOut(api, ready);
    api.clock.set(AFTER);
    await bringBack(ready.member, id, flownBy(robin)).expect(201);
    const asked = {
      departs: '2026-03-11T16:00:00Z',
      arrives: '2026-03-11T17:00:00Z',
      purpose: 'solo',
      personsOnBoard: 1,
    };
    const { body } = await ready.member
      .post('/decisions', { ...asked, aircraftIds: [ready.aircraftId] })
      .expect(200);
    const [entry] = await log(ready.member);
    const recency = body.decisions[0].findings.find(
      ({ rule }: { rule: string }) => rule === 'club.model_recency',
    );
    expect(recency?.counted.map(({ id: one }: { id: string }) => one)).toContain(entry!['id']);
  });

  test('a lesson goes into both logs: dual received and dual given', async () => {
    const instructor = await instructorOf(api, ready);
    const dual = { purpose: 'dual', personsOnBoard: 2, instructorId: instructor.memberId };
    const id = await goOut(api, ready, dual);
    api.clock.set(AFTER);
    const flown = flownBy(robin);
    const { departedAt, arrivedAt, fromAirfield, toAirfield } = flown;
    const { body: proposed } = await ready.member
      .post(`/flights/${id}/return/proposal`, {
        ...{ departedAt, arrivedAt, fromAirfield, toAirfield, landings: 5, fullStopLandings: 2 },
      })
      .expect(200);
    expect(proposed.entries).toMatchObject([
      {
        memberId: robin,
        role: 'dual-received',
        soleManipulator: true,
        landings: 5,
        dualGivenH: 0,
        totalH: 1.5,
      },
      {
        ...{ memberId: instructor.memberId, role: 'instructor', soleManipulator: false, landings: 0 },
        dualGivenH: 1.5,
      },
    ]);
    const entries = proposed.entries.map(({ name: _name, ...entry }: Body) => entry);
    await bringBack(instructor, id, { ...flown, entries }).expect(201);
    expect((await log(ready.member))[0]).toMatchObject({ role: 'dual-received', landings: 5, bookingId: id });
    expect((await log(instructor))[0]).toMatchObject({ role: 'instructor', dualGivenH: 1.5, bookingId: id });
    expect(await flightOf(id)).toMatchObject({
      instructorId: instructor.memberId,
      instructionTenths: 15,
    });
  });

  test('night is proposed from the sun: an hour after sunset to the minute (14 CFR 61.57(b)), unknown where the field is', async () => {
    const id = await goOut(api, ready);
    const field = { latitudeDeg: 40, longitudeDeg: -95 };
    const sunset = sunTimes('2026-03-10', field, 'America/Chicago').sunset!;
    const proposal = async (landsAfterSunset: number, more: Body = {}): Promise<Body> => {
      // The last landing is taken to be five minutes before the blocks.
      const arrivedAt = toInstant(sunset + landsAfterSunset + 300);
      const { body } = await ready.member
        .post(`/flights/${id}/return/proposal`, {
          ...{
            departedAt: plusSeconds(arrivedAt, -3600),
            arrivedAt,
            fromAirfield: 'XQHB',
            toAirfield: 'XQHB',
          },
          ...more,
        })
        .expect(200);
      return body.entries[0] as Body;
    };
    expect(await proposal(3600 - 120)).toMatchObject({ nightFullStopLandings: 0, nightTakeoffs: 0 });
    expect(await proposal(3600 + 120)).toMatchObject({ nightFullStopLandings: 1, nightTakeoffs: 0 });
    expect(await proposal(0)).toMatchObject({ nightH: 0 });
    expect((await proposal(3 * 3600))['nightH']).toBe(1);
    expect(await proposal(3600, { toAirfield: 'NOWHERE' })).toMatchObject({
      ...{ nightH: null, nightTakeoffs: null, nightFullStopLandings: null, crossCountryH: 1 },
    });
  });

  test('what cannot be is refused by name, and nothing is written', async () => {
    const id = await goOut(api, ready);
    api.clock.set(AFTER);
    const stranger = await ready.club.signInAs('member', { name: 'Terry Third' });
    const before = await written(api, ready.club.clubId);
    const wrong: [Body, string][] = [
      [{ arrivedAt: '2026-03-10T17:41:00Z' }, 'arrivedAt'],
      [{ arrivedAt: '2026-03-10T16:05:00Z' }, 'arrivedAt'],
      [{ departedAt: '2026-03-10T14:49:00Z' }, 'departedAt'],
      [{ meters: [{ kind: 'tachometer', shownH: 1049 }] }, 'meters[0].shownH'],
      [{ meters: [{ kind: 'tachometer', shownH: 1061.3 }] }, 'meters[0].shownH'],
      [{ meters: [] }, 'meters'],
      [{ payerId: stranger.memberId }, 'payerId'],
      [{ entries: [] }, 'entries'],
      [{ entries: [entryOf(stranger.memberId)] }, 'entries[0].memberId'],
      [{ entries: [entryOf(robin), entryOf(robin)] }, 'entries[1].memberId'],
      [{ entries: [entryOf(robin, { role: 'instructor' })] }, 'entries[0].role'],
      [{ entries: [entryOf(robin, { role: 'dual-received' })] }, 'entries[0].role'],
      [{ entries: [entryOf(robin, { totalH: 3 })] }, 'entries[0].totalH'],
      [{ entries: [entryOf(robin, { fullStopLandings: 4 })] }, 'entries[0].fullStopLandings'],
      [{ squawks: [{ title: 'Radio dead', equipmentId: newId() }] }, 'equipmentId'],
    ];
    for (const [more, field] of wrong) {
      const { body } = await bringBack(ready.member, id, flownBy(robin, more)).expect(422);
      expect([more, body.errors?.[0]?.field]).toEqual([more, field]);
    }
    await bringBack(stranger, id, flownBy(robin)).expect(403);
    expect(await written(api, ready.club.clubId)).toEqual(before);
    await bringBack(
      ready.member,
      id,
      flownBy(robin, { meters: [{ kind: 'tachometer', shownH: 1061.3, confirmJump: true }] }),
    ).expect(201);
  });

  test('what never went out does not come back', async () => {
    const id = await bookToday(ready);
    api.clock.set(AFTER);
    expect((await bringBack(ready.member, id, flownBy(robin)).expect(409)).body).toMatchObject({
      code: 'not-out',
      state: 'booked',
    });
  });

  test('many at once with the same key and with others: it comes back once', async () => {
    const id = await goOut(api, ready);
    api.clock.set(AFTER);
    const body = flownBy(robin, { squawks: [{ title: 'Left brake soft' }] });
    const key = newId();
    const answers = await Promise.all([
      ...Array.from({ length: 8 }, () => bringBack(ready.member, id, body, key)),
      ...Array.from({ length: 8 }, () => bringBack(ready.member, id, body)),
    ]);
    const came = answers.filter(({ status }) => status === 201);
    expect(new Set(came.map((answer) => answer.body.return.id)).size).toBe(1);
    for (const lost of answers.filter(({ status }) => status !== 201))
      expect([lost.status, lost.body.code]).toEqual([409, 'not-out']);
    expect(await written(api, ready.club.clubId)).toEqual({
      ...{ dispatches: 1, returns: 1, entries: 1, readings: 1, squawks: 1 },
    });
  });

  describe('a correction', () => {
    let id: string;
    let standing: string;
    const right = (more: Body = {}): Body => ({
      ...flownBy(robin, { meters: [{ kind: 'tachometer', shownH: 1051.5 }], ...more }),
      ...{ replacesId: standing, because: 'Misread by two tenths' },
    });
    const correct = (who: Session, body: Body, key: string = newId()) =>
      who.post(`/flights/${id}/return/corrections`, body).set('Idempotency-Key', key);
    beforeEach(async () => {
      id = await goOut(api, ready);
      api.clock.set(AFTER);
      standing = (await bringBack(ready.member, id, flownBy(robin)).expect(201)).body.return.id;
    });

    test('meters and log follow; what the member wrote since stays', async () => {
      const [entry] = await log(ready.member);
      await ready.member
        .patch(
          `/members/${robin}/log/${entry!['id']}`,
          { remarks: 'Crosswind practice', approaches: 1 },
          '"1"',
        )
        .expect(200);
      const key = newId();
      const body = right({ entries: [entryOf(robin, { landings: 4, takeoffs: 4 })] });
      const first = await correct(ready.member, body, key).expect(201);
      expect(first.body.return).toMatchObject({ replacesId: standing, because: 'Misread by two tenths' });
      expect((await correct(ready.member, body, key).expect(201)).body).toEqual(first.body);
      expect(await log(ready.member)).toMatchObject([
        { id: entry!['id'], landings: 4, takeoffs: 4, remarks: 'Crosswind practice', approaches: 1 },
        { landings: 3 },
      ]);
      expect(await tach()).toMatchObject({ shownH: 1051.5 });
      const { body: readings } = await ready.member
        .get(`/aircraft/${ready.aircraftId}/meters/readings`)
        .expect(200);
      expect(readings.items.map((one: Body) => [one['shownH'], one['voidReason']])).toContainEqual([
        1051.3,
        'Return corrected: Misread by two tenths',
      ]);
      expect(await flightOf(id)).toMatchObject({
        flownTenths: { tachometer: 15 },
        returnId: first.body.return.id,
      });
    });

    test('an entry that the member took out stays out', async () => {
      const [entry] = await log(ready.member);
      await ready.member
        .post(`/members/${robin}/log/${entry!['id']}/void`)
        .set('If-Match', '"1"')
        .expect(200);
      await correct(ready.member, right({ entries: [entryOf(robin, { landings: 4, takeoffs: 4 })] })).expect(
        201,
      );
      expect((await log(ready.member)).map((one) => one['id'])).not.toContain(entry!['id']);
    });

    test('is for the pilot, the coordinator and officers, and for the return that stands', async () => {
      const instructor = await ready.club.signInAs('instructor', { name: 'Ian Other' });
      await correct(instructor, right()).expect(403);
      const coordinator = await ready.club.signInAs('maintenance-coordinator');
      await correct(coordinator, right()).expect(201);
      const { body } = await correct(ready.member, right()).expect(409);
      expect(body.code).toBe('return-corrected');
      expect(
        (await correct(ready.member, { ...right(), replacesId: newId() }).expect(422)).body.errors[0].field,
      ).toBe('replacesId');
    });

    test('many at once: one stands', async () => {
      const answers = await Promise.all(Array.from({ length: 8 }, () => correct(ready.member, right())));
      expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array(7).fill(409)]);
      expect(await tach()).toMatchObject({ shownH: 1051.5 });
    });

    test('does not pass what the next flight found before it left', async () => {
      const next = await bookToday(ready, {
        departs: '2026-03-10T18:00:00Z',
        arrives: '2026-03-10T19:00:00Z',
      });
      api.clock.set('2026-03-10T17:55:00Z');
      const body = await readyToGo(ready.member, next);
      const gap = { because: 'engine-run', note: 'Moved to the pump' };
      const meters = [{ kind: 'tachometer', shownH: 1051.4, gap }];
      await dispatch(ready.member, next, { ...body, meters }).expect(201);
      const { body: refused } = await correct(ready.member, right()).expect(422);
      expect(refused).toMatchObject({ code: 'meter-above-next', errors: [{ field: 'meters[0].shownH' }] });
      expect(await tach()).toMatchObject({ shownH: 1051.4 });
    });
  });
});
