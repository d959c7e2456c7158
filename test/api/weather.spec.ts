/** Weather over HTTP: fetched from a stand-in on loopback, pasted, shown, and what it makes of answers. */
import { DataSource } from 'typeorm';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { WeatherStandIn } from '../support/weather-stand-in.js';

/** In the form of the examples of the AIM, 7-1; the places are invented. */
const FAIR = 'METAR XQHB 101453Z 12010G18KT 10SM FEW045 30/02 A2992 RMK AO2';
const FOG = 'SPECI XQHB 101458Z 00000KT 1/4SM FG VV002 02/02 A2992';
const FORECAST = `TAF XQHB 101120Z 1012/1112 09008KT P6SM SCT050
  TEMPO 1016/1018 2SM TSRA BKN008CB`;
const SOON = { departs: '2026-03-10T16:00:00Z', arrives: '2026-03-10T16:30:00Z' };

interface Finding {
  rule: string;
  status: string;
  says: string;
  conditions: string[];
  counted: { id: string; what: string }[];
}

describe('weather', () => {
  let api: Api;
  let standIn: WeatherStandIn;
  let ready: ReadyClub;

  beforeAll(async () => {
    standIn = await WeatherStandIn.start();
    api = await startApi({ settings: { weather: { url: standIn.url, timeoutMs: 500, cacheSeconds: 5 } } });
  }, 300_000);
  afterAll(async () => {
    await api.stop();
    await standIn.stop();
  });
  beforeEach(async () => {
    ready = await readyClub(api);
    standIn.behaviour = 'answers';
    Object.assign(standIn.texts, { metar: {}, taf: {} });
    // Whatever was remembered for another test is old by now, and a source that failed has had its rest.
    pass(40);
  }, 300_000);
  let now = Date.parse(NOW);
  const pass = (seconds: number): void => {
    now += seconds * 1000;
    api.clock.set(new Date(now).toISOString().replace('.000', ''));
  };

  const flight = (more: object = {}) => ({
    ...{ ...SOON, purpose: 'solo', personsOnBoard: 1, airspace: ['E'], maxAltitudeFtMsl: 3000 },
    ...more,
  });
  const ask = async (more: object = {}) => {
    const asked = { ...flight(more), aircraftIds: [ready.aircraftId] };
    const { body } = await ready.member.post('/decisions', asked).expect(200);
    const [decision] = body.decisions as {
      id: string;
      answer: string;
      findings: Finding[];
      conditions: string[];
    }[];
    return { ...decision!, of: (rule: string) => decision!.findings.find((one) => one.rule === rule)! };
  };
  const work = async (id: string, who = ready.member) =>
    (await who.get(`/decisions/${id}/weather`).expect(200)).body;

  it('is fetched, judged by every rule about weather, and stands behind the answer word for word', async () => {
    standIn.texts.metar['XQHB'] = FAIR;
    standIn.texts.taf['XQHB'] = FORECAST;
    const decision = await ask();
    expect(decision.of('weather.vfr_minima')).toMatchObject({ status: 'met' });
    expect(decision.of('weather.vfr_minima').says).toContain('Visibility 10 SM and ceiling 12000 ft');
    const club = decision.of('club.weather_minima');
    expect(club).toMatchObject({ status: 'met' });
    expect(club.conditions).toEqual([
      'Allow at XQHB from 2026-03-10T16:00:00Z to 2026-03-10T18:00:00Z for passing weather: visibility 2 SM; ceiling 800 ft; TSRA.',
    ]);
    expect(decision.conditions).toEqual(expect.arrayContaining(club.conditions));
    expect(club.counted.map(({ what }) => what)).toEqual([
      'report for XQHB, fetched',
      'forecast for XQHB, fetched',
    ]);

    const shown = await work(decision.id);
    expect(
      shown.reports.map(({ text, source, issuedAt }: Record<string, string>) => [text, source, issuedAt]),
    ).toEqual([
      [FAIR, 'fetched', '2026-03-10T14:53:00Z'],
      [FORECAST.replace(/\s+/g, ' '), 'fetched', '2026-03-10T11:20:00Z'],
    ]);
    // Runway 09 lies at 92° true: 28° off. 10 cos 28° = 8.8, 10 sin 28° = 4.7; with 18 kt 15.9 and 8.5 (trigonometry).
    // Pressure altitude is the field's 1,100 ft at 29.92; 30 °C is 17.2 above standard: 120 ft for each, 2,050 ft above it.
    expect(shown.fields).toHaveLength(1);
    expect(shown.fields[0]).toMatchObject({
      ...{ airfield: 'XQHB', minutesBeforeDeparture: 67, windKt: 10, gustKt: 18 },
      runways: [
        { runway: '09', headwindKt: 8.8, crosswindKt: 4.7, gustHeadwindKt: 15.9, gustCrosswindKt: 8.5 },
      ],
    });
    expect(Math.abs(shown.fields[0].densityAltitudeFt - 3150)).toBeLessThan(150);
    expect(
      shown.phases.map(({ phase, visibilitySm }: Record<string, unknown>) => [phase, visibilitySm]),
    ).toEqual([
      ['departure', 10],
      ['en-route', 6],
      ['arrival', 6],
    ]);
    expect(shown.caution).toContain('pilot in command');
  });

  it('below the minima it is no yes', async () => {
    standIn.texts.metar['XQHB'] = `${FAIR}\n${FOG}`;
    const decision = await ask();
    expect(decision.answer).toBe('no');
    expect(decision.of('weather.vfr_minima')).toMatchObject({ status: 'short' });
    // Less than a quarter promises nothing beyond; a quarter is what is told here.
    expect(decision.of('club.weather_minima').says).toContain('visibility of 0.25 SM');
  });

  it.each(['fails', 'hangs', 'nonsense', 'empty'] as const)(
    'a source that %s leaves conditions, and no error and no yes',
    async (behaviour) => {
      standIn.behaviour = behaviour;
      const decision = await ask();
      expect(decision.answer).toBe('yes-with-conditions');
      expect(decision.conditions).toContain(
        'Check that visibility and clouds allow VFR in the airspace of the flight.',
      );
      expect(decision.of('club.weather_minima').status).toBe('not-applicable');
      expect((await work(decision.id)).unknown).toContain('no report or forecast for XQHB is at hand');
    },
  );

  it('is not fetched for a flight that no forecast reaches', async () => {
    const asked = standIn.asked.length;
    const far = { departs: '2026-03-14T16:00:00Z', arrives: '2026-03-14T17:00:00Z' };
    expect((await ask(far)).answer).toBe('yes-with-conditions');
    expect(standIn.asked).toHaveLength(asked);
  });

  it('old reports do not count', async () => {
    standIn.texts.metar['XQHB'] = FAIR.replace('101453Z', '101153Z');
    const decision = await ask();
    expect(decision.of('weather.vfr_minima').status).toBe('unknown');
    expect(decision.of('club.weather_minima')).toMatchObject({ status: 'unknown' });
    expect(decision.conditions.join()).toContain('nothing at hand speaks of XQHB');
  });

  it('is pasted for one’s own flights, and for nobody else’s', async () => {
    const reports = { metar: [` ${FAIR.toLowerCase()} = `], taf: [FORECAST] };
    const decision = await ask({ reports });
    expect(decision.of('club.weather_minima').counted[0]!.what).toBe('report for XQHB, pasted');
    expect((await work(decision.id)).reports[0]).toMatchObject({ text: FAIR, source: 'pasted' });
    // It stands for the member's next question too.
    expect((await ask()).of('weather.vfr_minima').status).toBe('met');
    const other = await ready.club.signInAs('member', { name: 'Olive Other' });
    const asked = { ...flight(), aircraftIds: [ready.aircraftId] };
    const { body } = await other.post('/decisions', asked).expect(200);
    const finding = (body.decisions[0].findings as Finding[]).find(
      ({ rule }) => rule === 'weather.vfr_minima',
    )!;
    expect(finding.status).toBe('unknown');
    await other.get(`/decisions/${decision.id}/weather`).expect(404);
  });

  it('told by hand goes before a report', async () => {
    standIn.texts.metar['XQHB'] = FOG;
    const weather = { observedAt: '2026-03-10T15:30:00Z', visibilitySm: 10, ceilingFtAgl: 5000 };
    const decision = await ask({ weather });
    expect(decision.of('weather.vfr_minima').status).toBe('met');
    // The report stays in sight: the club's rule reads it.
    expect(decision.of('club.weather_minima').status).toBe('short');
  });

  it.each<[string, object, string]>([
    ['reports.metar[0]', { metar: ['hello'] }, 'begins with its station'],
    ['reports.metar[1]', { metar: [FAIR, FORECAST] }, 'is a forecast'],
    ['reports.taf[0]', { taf: [FAIR] }, 'is a report'],
    ['reports.metar[0]', { metar: [FAIR.replace('XQHB', 'XQZZ')] }, 'no such airfield'],
    ['reports.metar[0]', { metar: [FAIR.replace('101453Z', '081453Z')] }, 'no older than 36 hours'],
    ['reports.metar[0]', { metar: [FAIR.replace('101453Z', '101853Z')] }, 'not of a time to come'],
    ['reports.taf[0]', { taf: ['TAF XQHB 101120Z 1012/1012 09008KT'] }, 'span'],
  ])('refuses what cannot be used, by its field: %s %j', async (field, reports, says) => {
    const { body } = await ready.member.post('/decisions', flight({ reports })).expect(422);
    expect(body).toMatchObject({ code: 'report-unreadable', errors: [{ field }] });
    expect(body.detail).toContain(says);
  });

  it.each([
    [{ metar: 'no list' }],
    [{ metar: [''] }],
    [{ metar: ['x'.repeat(2001)] }],
    [{ sigmet: ['x'] }],
    ['x'],
  ])('refuses a body of another form: %j', async (reports) => {
    const { body } = await ready.member.post('/decisions', flight({ reports })).expect(400);
    expect(JSON.stringify(body.errors)).toContain('reports');
  });

  it('is judged again to the same bytes, whatever the weather has become', async () => {
    standIn.texts.metar['XQHB'] = FAIR;
    const decision = await ask();
    standIn.texts.metar['XQHB'] = FOG;
    pass(6);
    expect((await ask()).answer).toBe('no');
    const { body } = await ready.member.get(`/decisions/${decision.id}/replay`).expect(200);
    expect(body.identical).toBe(true);
  });

  it('a booked flight is judged again when a report comes in', async () => {
    standIn.texts.metar['XQHB'] = FAIR;
    const reports = { taf: [FORECAST] };
    const booked = await ready.member
      .post('/bookings', { ...flight({ reports }), aircraftId: ready.aircraftId })
      .set('Idempotency-Key', 'w1')
      .expect(201);
    const [row] = await api.sql<{ request: object }>('SELECT request FROM bookings WHERE id = $1', [
      booked.body.id,
    ]);
    expect(row!.request).not.toHaveProperty('reports');
    const db = new TenantDb(api.app.get(DataSource), api.database.config);
    const rejudge = () => rejudgeClub(db, ready.club.clubId, () => api.clock.now());
    await rejudge();
    const answer = async (): Promise<string> =>
      (
        await api.sql<{ answer: string }>('SELECT answer FROM standing_answers WHERE booking_id = $1', [
          booked.body.id,
        ])
      )[0]!.answer;
    expect(await answer()).toBe('yes-with-conditions');
    standIn.texts.metar['XQHB'] = FOG;
    pass(6);
    await ask();
    await rejudge();
    expect(await answer()).toBe('no');
  });

  it('texts are kept once, and go when they are old', async () => {
    standIn.texts.metar['XQHB'] = FAIR;
    const count = async (): Promise<number> =>
      (
        await api.sql<{ n: number }>('SELECT count(*)::int AS n FROM weather_reports WHERE club_id = $1', [
          ready.club.clubId,
        ])
      )[0]!.n;
    await ask();
    await ask();
    expect(await count()).toBe(1);
    await api.sql(
      `INSERT INTO weather_reports (club_id, id, airfield_id, kind, text, issued_at, obtained_at)
       VALUES ($1, gen_random_uuid(), $2, 'metar', 'METAR XQHB 010000Z NIL', '2026-02-01T00:00:00Z', now())`,
      [ready.club.clubId, ready.airfieldId],
    );
    expect(await count()).toBe(2);
    await ask();
    expect(await count()).toBe(1);
  });
});
