/** Weather of booked flights, fetched by itself from a stand-in on loopback. How early and how often is common practice, no source. */
import { WeatherService } from '../../src/weather/weather.service.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { WeatherStandIn } from '../support/weather-stand-in.js';

/** Each test has a day of its own, so that nothing is remembered from another. */
let day = 9;
const FAIR = () => `METAR XQHB ${day}1453Z 12010G18KT 10SM FEW045 30/02 A2992`;
const FOG = () => `SPECI XQHB ${day}1558Z 00000KT 1/4SM FG VV002 02/02 A2992`;

let api: Api;
let standIn: WeatherStandIn;
let ready: ReadyClub;

beforeAll(async () => {
  standIn = await WeatherStandIn.start();
  api = await startApi({ settings: { weather: { url: standIn.url, timeoutMs: 20_000, cacheSeconds: 0 } } });
}, 300_000);
afterAll(async () => {
  await api?.stop();
  await standIn?.stop();
});
beforeEach(async () => {
  day += 1;
  at('15:00:00');
  ready = await readyClub(api);
  standIn.behaviour = 'answers';
  standIn.texts.metar = {};
  standIn.texts.taf = {};
}, 60_000);

const round = () => api.app.get(WeatherService, { strict: false }).bringInBooked(ready.club.clubId);
const at = (clock: string) => api.clock.set(`2026-03-${day}T${clock}Z`);
/** Booked while nothing was fetched, at the source's silence. */
const book = async (clock = '18:00:00', more: object = {}): Promise<string> => {
  const departs = `2026-03-${day}T${clock}Z`;
  const arrives = new Date(Date.parse(departs) + 3_600_000).toISOString().replace('.000', '');
  const flight = {
    departs,
    arrives,
    purpose: 'solo',
    personsOnBoard: 1,
    airspace: ['E'],
    maxAltitudeFtMsl: 3000,
  };
  const { body } = await ready.member
    .post('/bookings', { ...flight, aircraftId: ready.aircraftId, ...more })
    .set('Idempotency-Key', newId())
    .expect(201);
  standIn.asked.length = 0;
  return body.id as string;
};
const kept = async (): Promise<number> =>
  (
    await api.sql<{ n: number }>('SELECT count(*)::int AS n FROM weather_reports WHERE club_id = $1', [
      ready.club.clubId,
    ])
  )[0]!.n;
const policy = (id: string, value: number) =>
  api.sql('UPDATE policy_values SET value = $3 WHERE club_id = $1 AND parameter_id = $2', [
    ...[ready.club.clubId, id, JSON.stringify(value)],
  ]);

it('asks once an interval for each airfield, and the booked flight is judged by what came', async () => {
  const id = await book();
  const rejudge = () => rejudgeClub(api.app.get(TenantDb), ready.club.clubId, () => api.clock.now());
  const answer = async () =>
    (await api.sql<{ answer: string }>('SELECT answer FROM standing_answers WHERE booking_id = $1', [id]))[0]!
      .answer;
  at('15:10:00');
  standIn.texts.metar['XQHB'] = FAIR();
  expect(await round()).toEqual({ stations: 1, reports: 1 });
  expect(standIn.asked.sort()).toEqual(['metar XQHB', 'taf XQHB']);
  await rejudge();
  const before = await answer();
  for (const clock of ['15:10:01', '15:40:00', '16:09:59']) {
    at(clock);
    expect(await round()).toEqual({ stations: 0, reports: 0 });
  }
  expect(standIn.asked).toHaveLength(2);
  at('16:10:00');
  standIn.texts.metar['XQHB'] = FOG();
  // Two replicas at once: one of them asks.
  const both = await Promise.all([round(), round()]);
  expect(both.map(({ stations }) => stations).sort()).toEqual([0, 1]);
  expect(standIn.asked).toHaveLength(4);
  await rejudge();
  // A quarter of a mile in fog, reported two hours before: no plain yes, whatever it was before.
  expect(await answer()).not.toBe('yes');
  const told = await api.sql('SELECT 1 FROM standing_answers WHERE booking_id = $1 AND judged_at >= $2', [
    ...[id, `2026-03-${day}T16:10:00Z`],
  ]);
  expect([before, told.length]).toEqual([expect.any(String), 1]);
});

it('asks for departure and destination, and not for flights far ahead or given back', async () => {
  await api.sql(
    `INSERT INTO airfields (club_id, id, code, name, latitude_deg, longitude_deg, elevation_ft, zone)
     SELECT club_id, $2, 'XQPV', 'Pine Vale', 41, -95, 900, zone FROM airfields WHERE club_id = $1 AND code = 'XQHB'`,
    [ready.club.clubId, newId()],
  );
  const id = await book('21:30:00', { route: ['XQHB', 'XQPV'] });
  at('15:29:00');
  expect((await round()).stations).toBe(0);
  at('15:30:00');
  expect((await round()).stations).toBe(2);
  expect(standIn.asked.sort()).toEqual(['metar XQHB,XQPV', 'taf XQHB,XQPV']);
  await ready.member.post(`/bookings/${id}/cancel`, { reason: 'Fog' }).set('If-Match', '"1"').expect(200);
  at('17:30:00');
  expect((await round()).stations).toBe(0);
});

it('a source that fails gives nothing and is asked again an interval later; policy turns it off', async () => {
  await book();
  at('15:15:00');
  standIn.behaviour = 'fails';
  standIn.texts.metar['XQHB'] = FAIR();
  expect(await round()).toEqual({ stations: 1, reports: 0 });
  expect(await kept()).toBe(0);
  standIn.behaviour = 'answers';
  at('15:20:00');
  expect((await round()).stations).toBe(0);
  await policy('club.weather.fetch-ahead-hours', 0);
  at('16:15:00');
  expect((await round()).stations).toBe(0);
  await policy('club.weather.fetch-ahead-hours', 6);
  expect(await round()).toEqual({ stations: 1, reports: 1 });
});
