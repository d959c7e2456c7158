/** Meters held against the log over HTTP. The arithmetic: test/maintenance/rates.spec.ts. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { problemOf } from './fleet-scene.js';

describe('meter rates', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator');
  }, 60_000);
  afterAll(() => api.stop());

  const rates = async (query = '') =>
    (await coordinator.get(`/aircraft/${ready.aircraftId}/meters/rates${query}`).expect(200)).body;

  it('says where the meter ran and nothing is logged, and leaves out what was taken back', async () => {
    const path = `/aircraft/${ready.aircraftId}/meters/readings`;
    const read = (shownH: number, readAt: string) =>
      coordinator.post(path, { kind: 'tachometer', shownH, readAt }).expect(201);
    // 1050.0 h at 2026-03-09 20:00.
    const { body: wrong } = await read(1052, '2026-03-10T09:00:00Z');
    expect((await rates()).stretches).toMatchObject([
      { kind: 'tachometer', meterH: 2, flownH: 0, ratio: null, look: 'nothing-logged' },
    ]);
    await coordinator.post(`${path}/${wrong.id}/void`, { reason: 'Read of another aircraft' }).expect(200);
    expect((await rates()).stretches).toEqual([]);
    await read(1050.9, '2026-03-10T09:00:00Z');
    const administrator = await ready.club.signInAs('administrator');
    await administrator
      .post(`/members/${ready.member.memberId}/log`, {
        ...{
          aircraftId: ready.aircraftId,
          departedAt: '2026-03-10T06:00:00Z',
          arrivedAt: '2026-03-10T07:00:00Z',
        },
        ...{ fromAirfield: 'XQHB', toAirfield: 'XQHB', role: 'pilot-in-command', soleManipulator: true },
        ...{ takeoffs: 1, landings: 1, fullStopLandings: 1, nightTakeoffs: 0, nightFullStopLandings: 0 },
        totalH: 1,
      })
      .expect(201);
    const { stretches, usual, caution } = await rates();
    expect(stretches).toMatchObject([{ meterH: 0.9, flownH: 1, ratio: 0.9, look: 'as-usual' }]);
    expect(usual).toEqual([{ kind: 'tachometer', ratio: 0.85, stretches: 0 }]);
    expect(caution).toContain('pilot in command');
    expect((await rates('?from=2026-03-10')).stretches).toEqual([]);
  });

  it('is for the coordinator and the officers', async () => {
    await ready.member.get(`/aircraft/${ready.aircraftId}/meters/rates`).expect(403);
    await coordinator.get(`/aircraft/${newId()}/meters/rates`).expect(404);
    const bad = await coordinator.get(`/aircraft/${ready.aircraftId}/meters/rates?from=soon`).expect(400);
    expect(problemOf(bad).field).toBe('from');
  });
});
