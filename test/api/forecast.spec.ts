/** What falls due when, asked over HTTP. The reckoning itself: test/maintenance. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import { problemOf } from './fleet-scene.js';

interface Item {
  title: string;
  state: string;
  leftH: number | null;
  leftDays: number | null;
  likelyOn: string | null;
  earliestOn: string | null;
  passing: { bookingId: string } | null;
  says: string;
}

describe('maintenance forecast', () => {
  let api: Api;
  let ready: ReadyClub;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  const items = async (body: object = {}): Promise<Item[]> =>
    (await ready.member.post('/maintenance/forecast', body).expect(200)).body.aircraft[0].items as Item[];
  const named = (of: Item[], title: string): Item => of.find((one) => one.title === title)!;

  it('tells hours and days left by the records, without bounds where little was flown', async () => {
    const { body } = await ready.member.post('/maintenance/forecast', {}).expect(200);
    expect(body).toMatchObject({ today: '2026-03-10', coverage: null, testedBy: 0 });
    expect(body.caution).toContain('certificated mechanic');
    expect(body.aircraft).toHaveLength(1);
    const all = body.aircraft[0].items as Item[];
    // Inspected 2025-11-05 at 1020.0 h; the tachometer stands at 1050.0 h.
    expect(named(all, '100-hour inspection')).toMatchObject({
      state: 'running',
      leftH: 70,
      earliestOn: null,
    });
    expect(named(all, 'Annual inspection')).toMatchObject({ leftDays: 265, likelyOn: null });
    expect(named(all, 'Transponder')).toMatchObject({ says: 'good through 2027-11-30.' });
  });

  it('tells the hours booked before the shop visit, and the booking that would run past', async () => {
    const row = insertInto(api.sql, ready.club.clubId);
    await row('meter_readings', {
      ...{ id: newId(), aircraft_id: ready.aircraftId, kind: 'tachometer', shown_tenths: 11_190 },
      ...{ read_at: '2026-03-10T10:00:00Z', source: 'coordinator' },
    });
    const book = (day: string) =>
      ready.member
        .post('/bookings', {
          ...{
            departs: `2026-03-${day}T18:00:00Z`,
            arrives: `2026-03-${day}T19:00:00Z`,
            aircraftId: ready.aircraftId,
          },
          ...{ purpose: 'solo', personsOnBoard: 1, flightRules: 'VFR' },
        })
        .set('Idempotency-Key', newId());
    await book('11').expect(201);
    const { body: second } = await book('12').expect(201);
    const coordinator = await ready.club.signInAs('maintenance-coordinator');
    await coordinator
      .post('/bookings/blocks', {
        ...{ aircraftId: ready.aircraftId, kind: 'maintenance', note: '100-hour inspection' },
        ...{ from: '2026-03-16T14:00:00Z', to: '2026-03-17T22:00:00Z' },
      })
      .expect(201);
    const hundred = named(await items({ aircraftIds: [ready.aircraftId], weeks: 2 }), '100-hour inspection');
    expect(hundred).toMatchObject({ leftH: 1, likelyOn: '2026-03-12', passing: { bookingId: second.id } });
    expect(hundred.says).toBe('1.0 h left, 2.0 h booked before the shop visit of 2026-03-16.');
  });

  it('refuses an aircraft of nobody, and spans beyond a year', async () => {
    const nobody = await ready.member.post('/maintenance/forecast', { aircraftIds: [newId()] }).expect(404);
    expect(problemOf(nobody)).toEqual({ code: 'not-found', field: 'aircraftIds' });
    const long = await ready.member.post('/maintenance/forecast', { weeks: 53 }).expect(400);
    expect(problemOf(long).field).toBe('weeks');
  });
});
