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
