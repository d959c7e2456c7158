/** The season plan over HTTP. The planner itself: test/maintenance/plan. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { problemOf } from './fleet-scene.js';

interface Visit {
  registration: string;
  from: string;
  work: { title: string; kind: string; dueWeek: string | null }[];
  why: string[];
  otherWeeks: { week: string; more: number | null }[];
}

describe('season plan', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator');
    // The annual of the trainer runs out within the span: it is 2026-03-10.
    await api.sql(
      `UPDATE compliances SET done_on = '2025-05-20' WHERE club_id = $1 AND item_id IN
        (SELECT id FROM airworthiness_items WHERE club_id = $1 AND kind = 'annual')`,
      [ready.club.clubId],
    );
  });
  afterAll(() => api.stop());

  const plan = async (body: object = {}) =>
    (await coordinator.post('/maintenance/season/plan', body).expect(200)).body;

  it('puts what falls due into a week, says why, and lets an upgrade ride along', async () => {
    await coordinator
      .post(`/aircraft/${ready.aircraftId}/wishes`, {
        title: 'Second navigator',
        shopDays: 1,
        worthHours: 30,
        partsOn: '2026-04-01',
      })
      .expect(201);
    const { body: found } = await coordinator.post('/maintenance/season/plan', { weeks: 20 }).expect(200);
    expect(found).toMatchObject({ status: 'optimal', because: null, wishesLeft: [], tooSoon: [] });
    expect(found.caution).toContain('certificated mechanic');
    const [visit] = found.visits as Visit[];
    // Good through 2026-05-31, a Sunday: the week of 25 May is the last.
    expect(visit!.work).toMatchObject([
      { title: 'Annual inspection', kind: 'need', dueWeek: '2026-05-25' },
      { title: 'Second navigator', kind: 'wish' },
    ]);
    expect(visit!.from <= '2026-05-25' && visit!.from >= '2026-04-01').toBe(true);
    expect(visit!.why[0]).toMatch(/displaces/);
    expect(visit!.otherWeeks.find(({ week }) => week === '2026-06-01')).toEqual({
      week: '2026-06-01',
      more: null,
    });
    expect(found.byHand.total).toBeGreaterThanOrEqual(found.cost.total);
    // Nothing is booked in the shop today, so the annual finds no place there.
    expect(found.asBooked).toEqual({ total: null, left: ['Annual inspection, NX101B'] });
  });

  it('keeps to pins and shop visits booked already', async () => {
    await coordinator
      .post('/bookings/blocks', {
        ...{ aircraftId: ready.aircraftId, kind: 'maintenance', note: 'annual inspection' },
        ...{ from: '2026-04-13T14:00:00Z', to: '2026-04-16T22:00:00Z' },
      })
      .expect(201);
    const booked = await plan({ weeks: 20 });
    expect(booked.visits).toMatchObject([{ from: '2026-04-13' }]);
    // A booked slot is kept, and need not be the best one.
    expect(booked.asBooked.left).toEqual([]);
    expect(booked.asBooked.total).toBeGreaterThanOrEqual(booked.cost.total);
    const pinned = await plan({ weeks: 20, pins: [{ aircraftId: ready.aircraftId, on: '2026-05-06' }] });
    expect((pinned.visits as Visit[]).map(({ from }) => from)).toEqual(['2026-04-13', '2026-05-04']);
  });

  describe('accepted', () => {
    interface Planned {
      aircraftId: string;
      firstDay: string;
      lastDay: string;
      booked: boolean;
      work: { kind: string; id: string }[];
    }
    const visitsOf = (found: { visits: Planned[] }) =>
      found.visits.map(({ aircraftId, firstDay, lastDay, work }) => ({
        ...{ aircraftId, firstDay, lastDay, work: work.map(({ kind, id }) => ({ kind, id })) },
      }));

    it('makes work orders in the calendar, displaces flights and tells their people; a new plan keeps to it', async () => {
      const wish = { title: 'Second navigator', shopDays: 1, worthHours: 30 };
      await coordinator.post(`/aircraft/${ready.aircraftId}/wishes`, wish).expect(201);
      const found = await plan({ weeks: 20 });
      expect(found.visits).toMatchObject([{ booked: false }]);
      // Sooner than planned, where the member flies.
      const visits = [{ ...visitsOf(found)[0]!, firstDay: '2026-03-12', lastDay: '2026-03-14' }];
      const [visit] = visits;
      const flight = {
        ...{ departs: `${visit!.firstDay}T18:00:00Z`, arrives: `${visit!.firstDay}T20:00:00Z` },
        ...{ purpose: 'solo', personsOnBoard: 1, aircraftId: ready.aircraftId },
      };
      const booked = await ready.member.post('/bookings', flight).set('Idempotency-Key', newId()).expect(201);
      const stopped = await coordinator.post('/maintenance/season/accept', { visits }).expect(409);
      expect(problemOf(stopped).code).toBe('slot-taken');
      const body = { visits, displace: true };
      const { body: shown } = await coordinator.post('/maintenance/season/accept/preview', body).expect(200);
      expect(shown.displaced).toMatchObject([{ bookingId: booked.body.id }]);
      expect(
        (await coordinator.get(`/aircraft/${ready.aircraftId}/work-orders`).expect(200)).body.items,
      ).toEqual([]);
      const { body: made } = await coordinator
        .post('/maintenance/season/accept', { ...body, preview: shown.preview })
        .expect(201);
      expect(made.orders).toMatchObject([
        {
          ...{ state: 'planned', title: 'Annual inspection and 1 more' },
          lines: [{ title: 'Annual inspection' }, { title: 'Second navigator' }],
        },
      ]);
      expect((await ready.member.get('/displacements').expect(200)).body.items).toHaveLength(1);
      const again = await plan({ weeks: 20 });
      expect((again.visits as Planned[]).filter(({ booked: there }) => there)).toMatchObject([
        { firstDay: '2026-03-09' },
      ]);
    });

    it('is refused as a whole when one visit cannot be', async () => {
      const [visit] = visitsOf(await plan({ weeks: 20 }));
      const other = { ...visit!, firstDay: '2026-06-01', lastDay: '2026-06-02' };
      const accept = (visits: object[]) => coordinator.post('/maintenance/season/accept', { visits });
      for (const [field, visits] of [
        ['visits', []],
        ['visits[0].aircraftId', [{ ...visit!, aircraftId: newId() }]],
        ['visits[1].lastDay', [visit!, { ...other, lastDay: '2026-05-31' }]],
        ['visits[1].lastDay', [visit!, { ...other, firstDay: '2026-01-01', lastDay: '2026-01-02' }]],
        ['visits[1].lines[0].aboutId', [visit!, { ...other, work: [{ kind: 'need', id: newId() }] }]],
      ] as const)
        expect(problemOf(await accept([...visits] as object[]).expect(422)).field).toBe(field);
      expect(problemOf(await accept([visit!, visit!]).expect(409)).code).toBe('slot-taken');
      expect(
        (await coordinator.get(`/aircraft/${ready.aircraftId}/work-orders`).expect(200)).body.items,
      ).toEqual([]);
      const officer = await ready.club.signInAs('safety-officer');
      await officer.post('/maintenance/season/accept', { visits: [visit!] }).expect(403);
    });
  });

  it('says which needs stand in each other’s way when there is no plan', async () => {
    const closed = ['2026-03-09', '2026-03-16', '2026-03-23', '2026-03-30', '2026-04-06', '2026-04-13'];
    const more = ['2026-04-20', '2026-04-27', '2026-05-04', '2026-05-11', '2026-05-18', '2026-05-25'];
    const none = await plan({ weeks: 20, closed: [...closed, ...more].map((on) => ({ on })) });
    expect(none.status).toBe('infeasible');
    expect(none.because).toMatch(
      /^Annual inspection of NX101B by the week of 2026-05-25 finds no place at all/,
    );
  });

  it('is the coordinator’s and the officers’, and refuses what lies outside', async () => {
    await ready.member.post('/maintenance/season/plan', {}).expect(403);
    const out = await coordinator
      .post('/maintenance/season/plan', { weeks: 4, closed: [{ on: '2026-06-01' }] })
      .expect(422);
    expect(problemOf(out)).toEqual({ code: 'value-refused', field: 'closed[0].on' });
    const nobody = await coordinator
      .post('/maintenance/season/plan', { pins: [{ aircraftId: newId(), on: '2026-04-01' }] })
      .expect(422);
    expect(problemOf(nobody)).toEqual({ code: 'value-refused', field: 'pins[0].aircraftId' });
  });
});
