/** Idempotency-Keys are kept for 30 days and then go with the club's daily round. How long is common practice, no source. */
import { NoticesWorker } from '../../src/notices/notices.worker.js';
import { startApi, type Api, type TestClub } from '../support/api.js';
import { insertInto } from '../support/ready-club.js';

let api: Api;
beforeAll(async () => {
  api = await startApi();
}, 300_000);
afterAll(() => api.stop());

const keysOf = async ({ clubId }: TestClub): Promise<unknown[]> =>
  (
    await api.sql<{ key: string }>('SELECT key FROM idempotency_keys WHERE club_id = $1 ORDER BY key', [
      clubId,
    ])
  ).map(({ key }) => key);

/** Keys of just over and just under 30 days ago. */
const withKeys = async (): Promise<TestClub> => {
  const club = await api.createClub();
  const { memberId } = await club.createMember();
  for (const [key, age] of [
    ['old', '30 days 1 minute'],
    ['young', '29 days 23 hours'],
  ] as const) {
    const [{ at }] = (await api.sql('SELECT now() - $1::interval AS at', [age])) as [{ at: Date }];
    await insertInto(api.sql, club.clubId)('idempotency_keys', {
      ...{ member_id: memberId, key, request_digest: 'a'.repeat(64), status: 201, body: '{}' },
      recorded_at: at,
    });
  }
  return club;
};

it('the daily round forgets old keys of its club, and no others', async () => {
  const [club, other] = [await withKeys(), await withKeys()];
  const workOff = () => api.app.get(NoticesWorker).workOff(club.clubId);
  const dueAt = (at: string) =>
    api.sql('UPDATE notice_due SET due_at = $2 WHERE club_id = $1', [club.clubId, at]);
  await dueAt('2026-03-10T15:00:01Z');
  await workOff();
  expect(await keysOf(club)).toEqual(['old', 'young']);
  await dueAt('2026-03-10T15:00:00Z');
  await workOff();
  expect(await keysOf(club)).toEqual(['young']);
  expect(await keysOf(other)).toEqual(['old', 'young']);
});
