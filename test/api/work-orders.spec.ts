/** Visits to the shop over HTTP: planned over members' flights, begun, signed, flown for a check, and what members are answered meanwhile. */
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { problemOf } from './fleet-scene.js';

interface Line {
  id: string;
  kind: string;
  title: string;
  outcome: string | null;
}
interface Order {
  id: string;
  state: string;
  from: string | null;
  to: string | null;
  lines: Line[];
  rowVersion: number;
  signedBy: string | null;
}
interface Result {
  order: Order;
  preview: string;
  displaced: { bookingId: string; memberName: string }[];
  bookingsJudged: number;
  bookings: { bookingId: string; before: string; after: string; because: { rule: string }[] }[];
  cautions: string[];
}

const FLIGHT = {
  ...{ departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z' },
  ...{ purpose: 'passengers', personsOnBoard: 2, flightRules: 'VFR' },
};
const SHOP = { from: '2026-03-12T14:00:00Z', to: '2026-03-14T22:00:00Z' };

describe('work orders', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;
  let items: Record<string, string>;
  let signers: Record<string, string>;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator');
    const { body } = await coordinator.get(`/aircraft/${ready.aircraftId}/items`).expect(200);
    items = Object.fromEntries(body.items.map(({ kind, id }: { kind: string; id: string }) => [kind, id]));
    signers = {};
    for (const holds of ['mechanic', 'inspection-authorization', 'pilot', 'repair-station']) {
      const signer = {
        name: `A. ${holds}`,
        certificate: `No. ${holds.length}`,
        holds,
        validFrom: '2020-01-01',
      };
      signers[holds] = (await coordinator.post('/signers', signer).expect(201)).body.id;
    }
  });
  afterAll(() => api.stop());

  const path = (below = '') => `/aircraft/${ready.aircraftId}/work-orders${below}`;
  const visit = (more: object = {}) => ({
    ...{ title: 'Annual inspection', shop: 'Harrow Bench hangar 2' },
    lines: [{ kind: 'item', aboutId: items['annual'] }],
    ...more,
  });
  const plan = async (more: object = {}): Promise<Result> =>
    (await coordinator.post(path(), visit(more)).expect(201)).body as Result;
  const begun = async (more: object = {}): Promise<Order> => {
    const { order } = await plan(more);
    return (await coordinator.post(path(`/${order.id}/begin`), {}).expect(200)).body.order as Order;
  };
  const signature = (order: Order, more: object = {}) => ({
    ...{ signerId: signers['inspection-authorization'], checkFlightNeeded: false },
    statement: 'I certify that this aircraft has been inspected and found airworthy.',
    readings: [{ kind: 'tachometer', shownH: 1050 }],
    lines: order.lines.map(({ id }) => ({ lineId: id, outcome: 'done' })),
    ...more,
  });
  const sign = (order: Order, more: object = {}) =>
    coordinator.post(path(`/${order.id}/return-to-service`), signature(order, more));
  const book = async (more: object = {}): Promise<string> =>
    (
      await ready.member
        .post('/bookings', { ...FLIGHT, ...more, aircraftId: ready.aircraftId })
        .set('Idempotency-Key', newId())
        .expect(201)
    ).body.id as string;
  const ask = async (
    more: object = {},
  ): Promise<{ answer: string; findings: { rule: string; status: string; branch: string }[] }> =>
    (
      await ready.member
        .post('/decisions', { ...FLIGHT, ...more, aircraftIds: [ready.aircraftId] })
        .expect(200)
    ).body.decisions[0];
  const finding = async (rule: string, more: object = {}) =>
    (await ask(more)).findings.find((one) => one.rule === rule);

  describe('planning', () => {
    it('is stopped by a flight unless it may be displaced, and then tells who makes room', async () => {
      const bookingId = await book();
      const stopped = await coordinator.post(path(), visit(SHOP)).expect(409);
      expect(problemOf(stopped)).toEqual({ code: 'slot-taken', field: 'from' });
      expect(stopped.body.detail).toContain('displace: true');
      const shown = (await coordinator.post(path('/preview'), visit({ ...SHOP, displace: true })).expect(200))
        .body as Result;
      expect(shown.displaced).toMatchObject([{ bookingId }]);
      expect((await coordinator.get(`/bookings/${bookingId}`).expect(200)).body.status).toBe('booked');
      const made = await plan({ ...SHOP, displace: true, preview: shown.preview });
      expect(made.displaced).toEqual(shown.displaced);
      expect(made.order).toMatchObject({
        state: 'planned',
        ...SHOP,
        lines: [{ title: 'Annual inspection' }],
      });
      expect((await coordinator.get(`/bookings/${bookingId}`).expect(200)).body.status).toBe('cancelled');
      // The member is told, with what was asked for; put away, it is gone, and nobody else sees it.
      const { body: told } = await ready.member.get('/displacements').expect(200);
      expect(told.items).toMatchObject([
        {
          bookingId,
          because: 'Annual inspection',
          backAt: SHOP.to,
          request: { purpose: 'passengers', personsOnBoard: 2 },
        },
      ]);
      await ready.addAircraft('NX102B');
      const { body: onward } = await ready.member
        .post('/decisions', { ...told.items[0].request, aircraftIds: [ready.aircraftId], ways: true })
        .expect(200);
      expect(onward.decisions[0].answer).toBe('no');
      expect(onward.ways.plans.length).toBeGreaterThan(0);
      expect((await coordinator.get('/displacements').expect(200)).body.items).toEqual([]);
      const id = told.items[0].id as string;
      await coordinator.post(`/displacements/${id}/seen`, {}).expect(404);
      await ready.member.post(`/displacements/${id}/seen`, {}).expect(204);
      expect((await ready.member.get('/displacements').expect(200)).body.items).toEqual([]);
    });

    it('is refused when it would displace others than its preview showed', async () => {
      const body = visit({ ...SHOP, displace: true });
      const { preview } = (await coordinator.post(path('/preview'), body).expect(200)).body as Result;
      await book();
      const late = await coordinator.post(path(), { ...body, preview }).expect(409);
      expect(problemOf(late).code).toBe('preview-stale');
    });

    it('never moves another block, nor a flight under way', async () => {
      const block = { aircraftId: ready.aircraftId, kind: 'club', ...SHOP, note: 'Open day' };
      await coordinator.post('/bookings/blocks', block).expect(201);
      const taken = await coordinator.post(path(), visit({ ...SHOP, displace: true })).expect(409);
      expect(taken.body.detail).not.toContain('displace: true');
      api.clock.set('2026-03-12T18:30:00Z');
      const later = { from: '2026-03-12T19:00:00Z', to: '2026-03-16T22:00:00Z', displace: true };
      await coordinator.post(path(), visit(later)).expect(409);
    });

    it.each([
      ['lines[0].aboutId', { lines: [{ kind: 'item' }] }],
      ['lines[0].aboutId', { lines: [{ kind: 'squawk', aboutId: newId() }] }],
      ['lines[0].aboutId', { lines: [{ kind: 'other', aboutId: newId(), title: 'Look' }] }],
      ['lines[0].title', { lines: [{ kind: 'other' }] }],
      ['to', { from: SHOP.from }],
      ['from', { to: SHOP.to }],
      ['to', { from: SHOP.to, to: SHOP.from }],
      ['to', { from: '2026-01-01T00:00:00Z', to: '2026-01-02T00:00:00Z' }],
    ])('refuses %s of %j', async (field, more) => {
      expect(problemOf(await coordinator.post(path(), visit(more)).expect(422)).field).toBe(field);
    });

    it('names an item once, takes lines off again, moves in time and is called off', async () => {
      const twice = [
        { kind: 'item', aboutId: items['annual'] },
        { kind: 'item', aboutId: items['annual'] },
      ];
      expect(problemOf(await coordinator.post(path(), visit({ lines: twice })).expect(422)).field).toBe(
        'lines[1].aboutId',
      );
      const { order } = await plan(SHOP);
      const more = await coordinator.post(path(`/${order.id}/lines`), { kind: 'weighing' }).expect(201);
      expect(more.body.lines.map(({ title }: Line) => title)).toEqual(['Annual inspection', 'Weighing']);
      const less = await coordinator.delete(path(`/${order.id}/lines/${more.body.lines[1].id}`)).expect(200);
      expect(less.body.lines).toHaveLength(1);
      const times = { from: '2026-03-20T14:00:00Z', to: '2026-03-21T22:00:00Z' };
      await coordinator.patch(path(`/${order.id}/times`), times).expect(428);
      const moved = await coordinator
        .patch(path(`/${order.id}/times`), times)
        .set('If-Match', `"${order.rowVersion}"`)
        .expect(200);
      expect(moved.body.order).toMatchObject(times);
      // The time it had is free again.
      expect(await finding('calendar.aircraft_free')).toMatchObject({ status: 'met' });
      const off = await coordinator
        .post(path(`/${order.id}/cancel`), { because: 'The parts are late' })
        .expect(200);
      expect(off.body.order).toMatchObject({ state: 'cancelled', from: null, to: null });
      expect(problemOf(await coordinator.post(path(`/${order.id}/begin`), {}).expect(409)).code).toBe(
        'work-not-in-that-state',
      );
      expect((await coordinator.get(path('?state=open')).expect(200)).body.items).toEqual([]);
      expect((await coordinator.get(path('?state=cancelled')).expect(200)).body.items).toHaveLength(1);
    });
  });

  describe('in work', () => {
    it('nobody flies until it is signed; after the day it is to be back, with a condition', async () => {
      await plan();
      const bookingId = await book({ departs: '2026-03-18T18:00:00Z', arrives: '2026-03-18T20:00:00Z' });
      const { order } = await plan({
        title: 'Mounts',
        lines: [{ kind: 'other', title: 'Engine mounts' }],
        ...SHOP,
      });
      const begin = (await coordinator.post(path(`/${order.id}/begin`), {}).expect(200)).body as Result;
      // That flight is after the time in the shop: it stays, and says what has to be looked up.
      expect(begin).toMatchObject({ bookingsJudged: 1, order: { state: 'in-work', begunAt: NOW } });
      expect(
        await finding('work.return_to_service', {
          departs: '2026-03-11T18:00:00Z',
          arrives: '2026-03-11T19:00:00Z',
        }),
      ).toMatchObject({ status: 'short', branch: 'in-work' });
      expect(
        await finding('work.return_to_service', {
          departs: '2026-03-18T18:00:00Z',
          arrives: '2026-03-18T19:00:00Z',
        }),
      ).toMatchObject({ status: 'met', branch: 'back-by-then' });
      expect(bookingId).toBeDefined();
      // Without a time in the calendar nobody has said when it will be back.
      const times = await coordinator
        .patch(path(`/${order.id}/times`), { from: null, to: null })
        .set('If-Match', `"${begin.order.rowVersion}"`)
        .expect(200);
      expect(times.body.bookings).toMatchObject([
        { bookingId, after: 'no', because: [{ rule: 'work.return_to_service' }] },
      ]);
    });
  });

  describe('return to service', () => {
    it('records meters, statement and interval, frees the aircraft at once, and answers flights anew', async () => {
      api.clock.set('2026-03-12T15:00:00Z');
      const order = await begun({ ...SHOP, from: '2026-03-12T15:00:00Z' });
      api.clock.set('2026-03-13T15:00:00Z');
      const asked = { departs: '2026-03-13T18:00:00Z', arrives: '2026-03-13T19:00:00Z' };
      expect((await ask(asked)).answer).toBe('no');
      const body = signature(order, { readings: [{ kind: 'tachometer', shownH: 1050.3 }] });
      const shown = (await coordinator.post(path(`/${order.id}/return-to-service/preview`), body).expect(200))
        .body as Result;
      expect((await coordinator.get(path(`/${order.id}`)).expect(200)).body.state).toBe('in-work');
      const made = await sign(order, {
        readings: [{ kind: 'tachometer', shownH: 1050.3 }],
        preview: shown.preview,
      }).expect(200);
      expect(made.body.order).toMatchObject({
        ...{
          state: 'signed',
          signedOn: '2026-03-13',
          signedAt: '2026-03-13T15:00:00Z',
          to: '2026-03-13T15:00:00Z',
        },
        ...{ signedBy: 'A. inspection-authorization, No. 24', lines: [{ outcome: 'done' }] },
      });
      const { body: done } = await coordinator
        .get(`/aircraft/${ready.aircraftId}/items/${items['annual']}`)
        .expect(200);
      expect(done.lastCompliance).toMatchObject({ doneOn: '2026-03-13', doneH: 1050.3, dueH: null });
      expect((await ask(asked)).findings.find(({ rule }) => rule === 'work.return_to_service')).toMatchObject(
        { status: 'met' },
      );
      expect((await ask(asked)).answer).not.toBe('no');
      await book(asked);
      // It stays as it was signed.
      expect(problemOf(await sign(order).expect(409)).code).toBe('work-not-in-that-state');
    });

    it('an inspection done late within its tolerance owes the overrun back', async () => {
      // 14 CFR 91.409(b): last inspection at 1000.0 h, due at 1100.0 h, reached at 1104.5 h: the next is due at 1200.0 h.
      await insertInto(api.sql, ready.club.clubId)('compliances', {
        ...{ id: newId(), item_id: items['hours-100'], done_on: '2026-03-01', done_tenths: 10_000 },
        ...{ statement: 'Inspected', signed_by: 'Mo Wrench' },
      });
      await api.sql(`UPDATE compliances SET done_tenths = 9000 WHERE item_id = $1`, [items['annual']]);
      const order = await begun({
        title: '100-hour inspection',
        lines: [{ kind: 'item', aboutId: items['hours-100'] }],
      });
      const jump = { kind: 'tachometer', shownH: 1104.5, confirmJump: true };
      await sign(order, { signerId: signers['mechanic'], readings: [jump] }).expect(200);
      const { body } = await coordinator
        .get(`/aircraft/${ready.aircraftId}/items/${items['hours-100']}`)
        .expect(200);
      expect(body.lastCompliance).toMatchObject({ doneH: 1104.5, dueH: 1100 });
    });

    it.each([
      // 14 CFR 91.409(a)(1), 65.95(a)(2): an annual takes an inspection authorization, or the shop or maker.
      ['annual', 'mechanic', 422],
      ['annual', 'repair-station', 200],
      // 14 CFR 65.85, 65.87: a mechanic signs the 100-hour inspection; a pilot preventive maintenance only (43.3(g)).
      ['hours-100', 'mechanic', 200],
      ['hours-100', 'pilot', 422],
      // 14 CFR 91.413(c): transponder tests by a repair station or the maker.
      ['transponder', 'inspection-authorization', 422],
      ['transponder', 'repair-station', 200],
      // 14 CFR 91.411(b).
      ['altimeter-static', 'mechanic', 422],
      ['elt-inspection', 'mechanic', 200],
    ])('%s signed by a %s: %i', async (kind, holds, status) => {
      const order = await begun({ lines: [{ kind: 'item', aboutId: items[kind] }] });
      const answer = await sign(order, { signerId: signers[holds] }).expect(status);
      if (status === 422)
        expect(problemOf(answer)).toEqual({ code: 'signature-not-enough', field: 'lines[0].outcome' });
    });

    it('wants each line once, the meter that counts, a reason for a check flight, and a signer of that day', async () => {
      const order = await begun();
      const [line] = order.lines;
      const done = { lineId: line!.id, outcome: 'done' };
      for (const [field, more] of [
        ['lines', { lines: [] }],
        ['lines[1].lineId', { lines: [done, done] }],
        ['lines[0].lineId', { lines: [{ ...done, lineId: newId() }] }],
        ['readings', { readings: [{ kind: 'hobbs', shownH: 12 }] }],
        [
          'readings[1].kind',
          {
            readings: [
              { kind: 'tachometer', shownH: 1050 },
              { kind: 'tachometer', shownH: 1051 },
            ],
          },
        ],
        ['checkFlightBecause', { checkFlightNeeded: true }],
        ['checkFlightNeeded', { checkFlightBecause: 'Cables' }],
        ['signerId', { signedOn: '2019-12-31' }],
        ['signedOn', { signedOn: '2026-03-11' }],
        ['signedOn', { signedOn: '2026-03-09' }],
        ['lines[0].doneOn', { lines: [{ ...done, doneOn: '2026-03-11' }] }],
      ] as const) {
        expect([field, problemOf(await sign(order, more).expect(422)).field]).toEqual([field, field]);
      }
      expect((await coordinator.get(path(`/${order.id}`)).expect(200)).body.state).toBe('in-work');
    });

    it('closes squawks, grants wishes, changes equipment and weighs in the same transaction', async () => {
      const { aircraftId } = ready;
      const { body: squawk } = await ready.member
        .post(`/aircraft/${aircraftId}/squawks`, { title: 'Door seal torn' })
        .expect(201);
      await coordinator.post(`/aircraft/${aircraftId}/squawks/${squawk.id}/ground`, {}).expect(200);
      const wish = { title: 'Second navigator', shopDays: 2, worthHours: 10 };
      const { body: wished } = await coordinator.post(`/aircraft/${aircraftId}/wishes`, wish).expect(201);
      const order = await begun({
        lines: [
          { kind: 'item', aboutId: items['annual'] },
          { kind: 'squawk', aboutId: squawk.id },
          { kind: 'wish', aboutId: wished.id },
          { kind: 'weighing' },
          { kind: 'other', title: 'Wash' },
        ],
      });
      const results = order.lines.map(({ id, kind }) => ({
        ...{
          lineId: id,
          outcome: kind === 'other' ? 'not-done' : 'done',
          note: kind === 'other' ? 'No water' : '',
        },
        ...(kind === 'squawk'
          ? { correctiveAction: 'New seal', parts: [{ partNumber: 'S-1', name: 'Seal', quantity: 1 }] }
          : {}),
      }));
      const all = {
        lines: results,
        equipmentChange: {
          ...{ title: 'Second navigator', removes: [] },
          installs: [
            { kind: 'gps-navigator', name: 'Second navigator', basis: 'stc', weightLb: 4, armIn: 20 },
          ],
        },
        weighing: { emptyWeightLb: 1461.5, emptyArmIn: 39.8 },
      };
      const unweighed = await sign(order, { ...all, weighing: null, equipmentChange: null }).expect(422);
      expect(problemOf(unweighed).field).toBe('weighing');
      const silent = results.map(({ lineId, outcome }) => ({ lineId, outcome }));
      expect(problemOf(await sign(order, { ...all, lines: silent }).expect(422)).field).toBe(
        'lines[1].correctiveAction',
      );
      const { body } = await sign(order, all).expect(200);
      expect(body.order.lines.map(({ outcome }: Line) => outcome)).toEqual([
        'done',
        'done',
        'done',
        'done',
        'not-done',
      ]);
      expect(
        (await coordinator.get(`/aircraft/${aircraftId}/squawks/${squawk.id}`).expect(200)).body,
      ).toMatchObject({
        ...{ state: 'fixed', correctiveAction: 'New seal', signedBy: 'A. inspection-authorization' },
      });
      expect(
        (await coordinator.get(`/aircraft/${aircraftId}/wishes/${wished.id}`).expect(200)).body.doneOn,
      ).toBe('2026-03-10');
      expect((await coordinator.get(`/aircraft/${aircraftId}`).expect(200)).body.emptyWeightLb).toBe(1461.5);
      const { body: changes } = await coordinator
        .get(`/aircraft/${aircraftId}/equipment-changes`)
        .expect(200);
      expect(changes.items).toMatchObject([
        { id: body.order.equipmentChangeId, installed: ['Second navigator'] },
      ]);
    });

    it('what was not done is said, and stays due', async () => {
      const order = await begun();
      const lines = order.lines.map(({ id }) => ({ lineId: id, outcome: 'not-done', note: 'Parts late' }));
      const { body } = await sign(order, { lines }).expect(200);
      expect(body.cautions).toEqual(['“Annual inspection” was not done and stands as it was.']);
      const { body: item } = await coordinator
        .get(`/aircraft/${ready.aircraftId}/items/${items['annual']}`)
        .expect(200);
      expect(item.lastCompliance.statement).not.toContain('I certify');
    });
  });

  describe('a check flight', () => {
    it('comes before passengers, is flown with a private certificate, after the signature', async () => {
      const order = await begun();
      await sign(order, { checkFlightNeeded: true, checkFlightBecause: 'Aileron cables replaced' }).expect(
        200,
      );
      expect(await finding('work.check_flight')).toMatchObject({ status: 'short', branch: 'carries-others' });
      expect(await finding('work.check_flight', { purpose: 'solo', personsOnBoard: 1 })).toMatchObject({
        status: 'met',
        branch: 'crew-alone',
      });
      api.clock.set('2026-03-10T20:00:00Z');
      const flown = { flownAt: '2026-03-10T19:30:00Z', entry: 'Flown, controls checked, no remarks.' };
      const log = (who: Session, more: object = {}) =>
        who.post(path(`/${order.id}/check-flight`), { ...flown, ...more });
      // The coordinator holds no certificate of a pilot on record, and a member logs a flight of their own.
      expect(problemOf(await log(coordinator).expect(422)).field).toBe('pilotId');
      await log(ready.member, { pilotId: newId() }).expect(403);
      for (const flownAt of ['2026-03-10T21:00:00Z', '2026-03-01T10:00:00Z'])
        expect(problemOf(await log(ready.member, { flownAt }).expect(422)).field).toBe('flownAt');
      const { body } = await log(ready.member).expect(200);
      expect(body.order).toMatchObject({ checkFlownAt: flown.flownAt, checkEntry: flown.entry });
      expect(await finding('work.check_flight')).toMatchObject({ status: 'met', branch: 'none-due' });
      expect(problemOf(await log(ready.member).expect(409)).code).toBe('work-not-in-that-state');
    });

    it('is a way to yes for who would take passengers', async () => {
      const order = await begun();
      await sign(order, { checkFlightNeeded: true, checkFlightBecause: 'Aileron cables replaced' }).expect(
        200,
      );
      const asked = { ...FLIGHT, aircraftIds: [ready.aircraftId], ways: true };
      const { body } = await ready.member.post('/decisions', asked).expect(200);
      expect(body.decisions[0].answer).toBe('no');
      const acts = (body.ways.plans as { steps: { act: string }[] }[]).map(({ steps }) =>
        steps.map(({ act }) => act),
      );
      expect(acts).toContainEqual(['fly-check-flight']);
    });

    it('is not logged where none is due', async () => {
      const order = await begun();
      await sign(order).expect(200);
      const flown = { flownAt: NOW, entry: 'Flown.' };
      expect(
        problemOf(await ready.member.post(path(`/${order.id}/check-flight`), flown).expect(409)).code,
      ).toBe('work-not-in-that-state');
    });
  });

  it('is planned and signed by the coordinator alone, and read by every member', async () => {
    const { order } = await plan();
    for (const role of ['administrator', 'safety-officer', 'instructor'] as const) {
      const other = await ready.club.signInAs(role);
      await other.post(path(), visit()).expect(403);
      await other.post(path(`/${order.id}/return-to-service`), signature(order)).expect(403);
    }
    expect((await ready.member.get(path()).expect(200)).body.items).toHaveLength(1);
    await ready.member.get('/signers').expect(403);
  });

  it('signers are edited and stay', async () => {
    const id = signers['mechanic']!;
    const edited = await coordinator
      .patch(`/signers/${id}`, { validThrough: '2026-03-31' })
      .set('If-Match', '"1"')
      .expect(200);
    expect(edited.body).toMatchObject({ validThrough: '2026-03-31', rowVersion: 2 });
    expect((await coordinator.get('/signers').expect(200)).body.items).toHaveLength(4);
  });
});
