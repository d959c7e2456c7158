/** The work in the background: heard of at once, shared by replicas, and caught up with after all of them were down. */
import { setTimeout as pause } from 'node:timers/promises';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

/** Weather is not told, so it is a condition. */
const GO = 'yes-with-conditions';

describe('standing answers in the background', () => {
  let api: Api;
  let ready: ReadyClub;
  let second: Api | null = null;

  beforeAll(async () => {
    api = await startApi({ backgroundWork: true });
    ready = await readyClub(api);
  }, 60_000);
  afterAll(async () => {
    await second?.stop();
    await api.stop();
  });

  const book = async (departs: string, arrives: string): Promise<string> => {
    const body = { departs, arrives, purpose: 'solo', personsOnBoard: 1, aircraftId: ready.aircraftId };
    const made = await ready.member.post('/bookings', body).set('Idempotency-Key', newId()).expect(201);
    return (made.body as { id: string }).id;
  };
  /** Asks until it is so; the spec's own time limit ends it. */
  const until = async (bookingId: string, now: string): Promise<Record<string, unknown>> => {
    for (;;) {
      const { body } = await ready.member.get(`/standing-answers/${bookingId}`).expect(200);
      if ((body as { now: string; current: boolean }).now === now && (body as { current: boolean }).current)
        return body as Record<string, unknown>;
      await pause(100);
    }
  };
  const squawk = async (): Promise<string> => {
    const id = newId();
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      ...{ id, aircraft_id: ready.aircraftId, title: 'Fuel leak', state: 'grounding' },
      ...{ reported_at: api.clock.now(), reported_by: ready.member.memberId },
    });
    return id;
  };

  it('follow a squawk and its end, and say what changed', async () => {
    const id = await book(tomorrow.departs, tomorrow.arrives);
    const first = await until(id, GO);
    expect(first).toMatchObject({ bookedAt: GO, because: [], changes: [] });
    const squawkId = await squawk();
    const stopped = await until(id, 'no');
    expect(stopped).toMatchObject({
      because: [{ rule: 'squawk.grounding' }],
      changes: [{ before: GO, after: 'no', causes: ['open squawks'] }],
    });
    await api.sql('DELETE FROM squawks WHERE id = $1', [squawkId]);
    expect((await until(id, GO))['changes']).toHaveLength(2);
  }, 60_000);

  it('are judged once where two replicas share the work, whichever takes it', async () => {
    second = await startApi({ beside: api, backgroundWork: true });
    const ids = [];
    for (const day of ['13', '14', '15'])
      ids.push(await book(`2026-03-${day}T18:00:00Z`, `2026-03-${day}T19:00:00Z`));
    for (const id of ids) await until(id, GO);
    for (let n = 0; n < 5; n += 1) {
      const squawkId = await squawk();
      for (const id of ids) await until(id, 'no');
      await api.sql('DELETE FROM squawks WHERE id = $1', [squawkId]);
      for (const id of ids) await until(id, GO);
    }
    // Each answer changed ten times, and no change was kept twice.
    const counts = await api.sql<{ count: number }>(
      'SELECT count(*)::int AS count FROM standing_changes WHERE booking_id = ANY ($1::uuid[]) GROUP BY booking_id',
      [ids],
    );
    expect(counts.map(({ count }) => count)).toEqual([10, 10, 10]);
  }, 120_000);

  it('catch up with what happened while nobody worked', async () => {
    const id = await book('2026-03-16T18:00:00Z', '2026-03-16T19:00:00Z');
    await until(id, GO);
    await second!.stop();
    second = null;
    const idle = await startApi({ beside: api });
    // The first goes on answering; its worker is stopped as a replica is when it goes down.
    const { StandingWorker } = await import('../../src/standing/standing.worker.js');
    const { JobQueue } = await import('../../src/platform/queue/job-queue.js');
    await api.app.get(StandingWorker).onApplicationShutdown();
    await api.app.get(JobQueue).onApplicationShutdown();
    await squawk();
    await pause(500);
    const before = await ready.member.get(`/standing-answers/${id}`).expect(200);
    expect(before.body).toMatchObject({ now: GO, current: false });
    second = await startApi({ beside: api, backgroundWork: true });
    await until(id, 'no');
    await idle.stop();
  }, 60_000);
});
