/** Loading sheets over HTTP, and what they make of a decision. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { BODIES } from './hostile/bodies.js';

const SHEET = BODIES['addModelLoading']!({});

describe('loading sheets', () => {
  let api: Api;
  let ready: ReadyClub;
  let chief: Session;

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
    chief = await ready.club.signInAs('administrator', { name: 'Ada Ministrator' });
    await api.sql('UPDATE aircraft_models SET fuel_burn_us_gal_per_hour = 9 WHERE id = $1', [ready.modelId]);
  }, 60_000);
  afterAll(() => api.stop());

  const finding = async (baggageLb: number): Promise<{ status: string; branch: string; says: string }> => {
    const loading = { occupantsLb: 170, baggageLb, fuelUsGal: 40 };
    const asked = {
      ...tomorrow,
      purpose: 'solo',
      personsOnBoard: 1,
      aircraftIds: [ready.aircraftId],
      loading,
    };
    const { body } = await ready.member.post('/decisions', asked).expect(200);
    return body.decisions[0].findings.find((one: { rule: string }) => one.rule === 'load.balance');
  };

  it('without a sheet the centre of gravity is not known', async () => {
    expect(await finding(10)).toMatchObject({ status: 'unknown' });
  });

  it("a model's sheet and a weighing make it known, and its limits are held", async () => {
    await chief.post(`/models/${ready.modelId}/loading`, SHEET).expect(201);
    expect(await finding(10)).toMatchObject({ status: 'unknown' });
    await insertInto(api.sql, ready.club.clubId)('weighings', {
      ...{ id: newId(), aircraft_id: ready.aircraftId, effective_on: '2026-01-05', source: 'weighing' },
      ...{ empty_weight_lb: 1450, empty_arm_in: 84 },
    });
    // (1,450 * 84 + 170 * 81 + 10 * 142 + 240 * 95) / 1,870 = 85.4.
    expect((await finding(10)).says).toMatch(/^85\.4 inches at take-off/);
    expect(await finding(121)).toMatchObject({
      status: 'short',
      says: 'Baggage: 121 lb, but only 120 lb allowed.',
    });
  });

  it("an aircraft's own sheet goes before its model's", async () => {
    const stations = SHEET['stations'] as { name: string; maxLb?: number }[];
    const own = { ...SHEET, stations: stations.map((one) => (one.maxLb ? { ...one, maxLb: 5 } : one)) };
    await chief.post(`/aircraft/${ready.aircraftId}/loading`, own).expect(201);
    expect((await finding(10)).says).toBe('Baggage: 10 lb, but only 5 lb allowed.');
    await chief.post(`/aircraft/${ready.aircraftId}/loading`, own).expect(409);
    const put = (version: string) => chief.put(`/aircraft/${ready.aircraftId}/loading`, SHEET, version);
    await put('"7"').expect(412);
    await put('"1"').expect(200);
    expect(await finding(10)).toMatchObject({ status: 'met' });
  });

  describe('worked out for a decision', () => {
    const soon = { departs: '2026-03-10T16:00:00Z', arrives: '2026-03-10T17:00:00Z' };
    const weather = {
      ...{ observedAt: '2026-03-10T15:00:00Z', windFromDeg: 92, windKt: 10, visibilitySm: 10 },
      ...{ temperatureC: 15, altimeterInHg: 29.92, wet: false },
    };
    const ask = async (more: object): Promise<string> => {
      const asked = { ...soon, purpose: 'solo', personsOnBoard: 1, aircraftIds: [ready.aircraftId], ...more };
      return (await ready.member.post('/decisions', asked).expect(200)).body.decisions[0].id as string;
    };
    const work = async (id: string, who = ready.member) =>
      (await who.get(`/decisions/${id}/loading`).expect(200)).body;

    it('every line and point is shown, as FAA-H-8083-1 adds them up', async () => {
      const id = await ask({ loading: { rowsLb: [170], compartmentsLb: [10], fuelUsGal: 40 } });
      const { lines, points, unknown, caution } = await work(id);
      const at = (what: string) => lines.find((line: { what: string }) => line.what === what);
      expect(lines[0]).toEqual({ what: 'Empty aircraft', weightLb: 1450, armIn: 84, momentLbIn: 121_800 });
      expect(at('Baggage')).toMatchObject({ weightLb: 10, armIn: 142, momentLbIn: 1420 });
      // 1,450 * 84 + 170 * 81 + 10 * 142 + 240 * 95 = 159,790 over 1,870 lb; an hour burns 9 gal, 54 lb at 95 in: 154,660 over 1,816.
      expect(points).toMatchObject([
        { when: 'takeoff', weightLb: 1870, momentLbIn: 159_790, categories: ['normal'] },
        { when: 'landing', weightLb: 1816, momentLbIn: 154_660 },
        { when: 'zero-fuel', weightLb: 1630, momentLbIn: 136_990 },
      ]);
      expect(points[0].armIn).toBeCloseTo(159_790 / 1870, 9);
      expect(unknown).toEqual(['no recent weather is declared for the flight']);
      expect(caution).toContain('pilot in command');
    });

    it('every factor of a distance is shown, and the club’s margin', async () => {
      await chief
        .post(`/models/${ready.modelId}/performance`, BODIES['addModelPerformance']!({}))
        .expect(201);
      const id = await ask({ loading: { occupantsLb: 170, baggageLb: 0, fuelUsGal: 30 }, weather });
      const { runways, marginFactor, unknown } = await work(id);
      expect(unknown).toEqual([]);
      expect(
        runways.map(({ does, runway }: { does: string; runway: string }) => `${does} ${runway}`),
      ).toEqual(['takeoff 09', 'landing 09']);
      for (const one of runways) {
        expect(one.steps[0]).toMatchObject({ step: 'table', percent: null });
        expect(one.steps.map(({ step }: { step: string }) => step)).toContain('headwind');
        expect(one.steps.at(-1).over50Ft).toBe(one.over50Ft);
        expect(one.neededFt).toBe(Math.ceil(one.over50Ft * marginFactor - 1e-6));
        // Standard day: pressure altitude is the elevation; density altitude by ICAO Doc 7488 some 250 ft above it at 15 °C.
        expect(Math.abs(one.pressureAltitudeFt - 1100)).toBeLessThan(5);
        expect(one.densityAltitudeFt).toBeGreaterThan(1300);
        expect(one.densityAltitudeFt).toBeLessThan(1400);
      }
    });

    it('says why it cannot be, and stays with who may read the decision', async () => {
      const id = await ask({});
      const none = await work(id);
      expect(none).toMatchObject({ lines: [], points: [], runways: [] });
      expect(none.unknown).toEqual([
        'the loading is not declared yet',
        'no recent weather is declared for the flight',
      ]);
      const other = await ready.club.signInAs('member', { name: 'Olive Other' });
      await other.get(`/decisions/${id}/loading`).expect(404);
      expect((await work(id, chief)).lines).toEqual([]);
    });
  });

  it.each([
    ['stations', { stations: [{ name: 'Tank', kind: 'fuel', armIn: 95, usableUsGal: 48 }] }],
    ['stations[0].seats', { stations: [{ name: 'Seats', kind: 'seats', armIn: 81 }] }],
    ['envelopes[0].points', { envelopes: [{ category: 'normal', points: [{ armIn: 82, weightLb: 1400 }] }] }],
  ])('refuses what cannot be read, by its field: %s', async (field, wrong) => {
    const spare = await ready.addAircraft(`NX${100 + field.length}C`);
    const { body } = await chief.post(`/aircraft/${spare}/loading`, { ...SHEET, ...wrong }).expect(422);
    expect(JSON.stringify(body)).toContain(field);
  });

  it('a member may read a sheet and not write one', async () => {
    await ready.member.get(`/models/${ready.modelId}/loading`).expect(200);
    await ready.member
      .post(`/models/${ready.modelId}/performance`, BODIES['addModelPerformance']!({}))
      .expect(403);
  });
});
