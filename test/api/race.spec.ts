import { request as httpRequest, Agent } from 'node:http';
import type { AddressInfo } from 'node:net';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

const ATTEMPTS = 200;

interface Answer {
  status: number;
  body: { code?: string; id?: string; memberName?: string; conflict?: { holder: string } };
}

describe('two hundred members at once want one slot, over real HTTP', () => {
  let api: Api;
  let ready: ReadyClub;
  const agent = new Agent({ keepAlive: true, maxSockets: ATTEMPTS });

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
  });
  afterAll(async () => {
    agent.destroy();
    await api.stop();
  });

  const post = (who: Session, body: object): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const { port } = api.app.getHttpServer().address() as AddressInfo;
      const outgoing = httpRequest(
        {
          host: '127.0.0.1',
          port,
          path: '/api/v1/bookings',
          method: 'POST',
          agent,
          headers: {
            Authorization: `Bearer ${who.token}`,
            'Content-Type': 'application/json',
            'Idempotency-Key': newId(),
          },
        },
        (response) => {
          let text = '';
          response.on('data', (chunk) => (text += chunk));
          response.on('end', () =>
            resolve({ status: response.statusCode ?? 0, body: JSON.parse(text) as Answer['body'] }),
          );
        },
      );
      outgoing.on('error', reject);
      outgoing.end(JSON.stringify(body));
    });

  test('one has it; everybody else is told who', async () => {
    const pilots: Session[] = [];
    for (let index = 0; index < 20; index += 1) {
      const pilot = await ready.club.signInAs('member', { name: `Pilot ${index}` });
      await ready.makePilot(pilot.memberId);
      pilots.push(pilot);
    }
    const request = { aircraftId: ready.aircraftId, ...tomorrow, purpose: 'solo', personsOnBoard: 1 };
    const answers = await Promise.all(
      Array.from({ length: ATTEMPTS }, (_, index) => post(pilots[index % pilots.length]!, request)),
    );

    const won = answers.filter((answer) => answer.status === 201);
    const lost = answers.filter((answer) => answer.status === 409);
    expect({ won: won.length, lost: lost.length }).toEqual({ won: 1, lost: ATTEMPTS - 1 });
    const holder = won[0]!.body.memberName;
    for (const { body } of lost) expect(body).toMatchObject({ code: 'slot-taken', conflict: { holder } });

    const rows = await api.sql('SELECT id FROM bookings WHERE club_id = $1', [ready.club.clubId]);
    expect(rows.map((row) => row.id)).toEqual([won[0]!.body.id]);
    const [{ kept }] = (await api.sql(
      'SELECT count(*)::int AS kept FROM idempotency_keys WHERE club_id = $1',
      [ready.club.clubId],
    )) as [{ kept: number }];
    expect(kept).toBe(1);
  }, 120_000);
});
