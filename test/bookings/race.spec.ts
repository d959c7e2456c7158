/**
 * Sixty-four clients book, edit, give back and hand over at once, over HTTP against the service in this process. What they were answered
 * is held against a checker of histories (history-checker.ts): no overlap, no acknowledged booking lost.
 *
 * BOOKING_RACE_OPERATIONS: how many (400). BOOKING_RACE_JUDGE=off: every flight is answered yes without being judged, which the property
 * does not need: locks, versions, keys, constraints and history are those of the service. PROPERTY_SEED: what is drawn.
 */
import { setTimeout as pause } from 'node:timers/promises';
import { Agent, request as httpRequest } from 'node:http';
import type { AddressInfo } from 'node:net';
import { DecisionsService } from '../../src/decisions/decisions.service.js';
import { newId } from '../../src/platform/ids.js';
import { toInstant, toSeconds } from '../../src/rules/index.js';
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { faultsOf, type Done, type Kept, type State } from './history-checker.js';

const OPERATIONS = Number(process.env['BOOKING_RACE_OPERATIONS'] ?? 400);
const JUDGED = process.env['BOOKING_RACE_JUDGE'] !== 'off';
const SEED = Number(process.env['PROPERTY_SEED'] ?? 20260311);
const CLIENTS = 64;
const PILOTS = 24;
const AIRCRAFT = 6;
/** Days the flights are spread over, so that there is something to fight for however many there are. */
const DAYS = Math.max(2, Math.min(40, Math.round(OPERATIONS / 800)));
const FIRST = toSeconds('2026-03-11T14:00:00Z');

interface Shown {
  id: string;
  aircraftId: string;
  memberId: string;
  departs: string;
  arrives: string;
  status: string;
  rowVersion: number;
  people: { memberId: string }[];
  handOver: { toId: string } | null;
}
interface Answer {
  status: number;
  body: Shown & { code?: string; detail?: string };
}

/** Mulberry32: small, and the same everywhere. */
function drawing(seed: number): (below: number) => number {
  let a = seed >>> 0;
  return (below) => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * below);
  };
}

const stateOf = (of: Shown): State => ({
  ...{ aircraftId: of.aircraftId, people: of.people.map(({ memberId }) => memberId).sort() },
  ...{ from: toSeconds(of.departs), to: toSeconds(of.arrives), status: of.status },
});

describe('bookings changed by many at once', () => {
  let api: Api;
  let ready: ReadyClub;
  const pilots: Session[] = [];
  const fleet: string[] = [];
  const agent = new Agent({ keepAlive: true, maxSockets: CLIENTS });
  const done: Done[] = [];
  const statuses = new Map<string, number>();
  let events = 0;
  let sent = 0;
  let busy = 0;

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
    fleet.push(ready.aircraftId);
    while (fleet.length < AIRCRAFT) fleet.push(await ready.addAircraft(`NX10${fleet.length + 1}B`));
    for (let index = 0; index < PILOTS; index += 1) {
      const pilot = await ready.club.signInAs('member', { name: `Pilot ${index}` });
      await ready.makePilot(pilot.memberId);
      pilots.push(pilot);
    }
    if (!JUDGED) await answerYes();
  }, 300_000);
  afterAll(async () => {
    agent.destroy();
    await api.stop();
  });

  /** Every flight is a yes on one stored decision: bookings still stand on a decision that is there. */
  async function answerYes(): Promise<void> {
    const asked = { departs: '2026-03-11T18:00:00Z', arrives: '2026-03-11T19:00:00Z' };
    const flight = { ...asked, purpose: 'solo', personsOnBoard: 1, aircraftIds: [fleet[0]!] };
    const { body } = await pilots[0]!.post('/decisions', flight).expect(200);
    const [{ id }] = (body as { decisions: [{ id: string }] }).decisions;
    const service = api.app.get(DecisionsService, { strict: false });
    service.decideIn = ((_em: unknown, user: { memberId: string }, request: Record<string, string>) => {
      const { departs, arrives, memberId = user.memberId } = request;
      const told = { departs, arrives, memberId, instructorId: null, secondPilotId: null, plannedTenths: 10 };
      const decided = [{ id, sheet: { flight: told }, decision: { answer: 'yes', findings: [] } }];
      return Promise.resolve({ decided, policy: { values: [] } });
    }) as unknown as DecisionsService['decideIn'];
  }

  /** A service that is too busy is asked again, under the same key, as a client does who heard nothing. */
  const insist = async (of: Parameters<typeof send>[0]): Promise<Answer> => {
    for (let again = 0; ; again += 1) {
      const answer = await send(of);
      if (answer.status !== 503 || again === 50) return answer;
      busy += 1;
      await pause(200);
    }
  };
  const send = (of: {
    who: Session;
    method: string;
    path: string;
    body: object;
    version?: number;
    key: string;
  }): Promise<Answer> =>
    new Promise((resolve, reject) => {
      sent += 1;
      const { port } = api.app.getHttpServer().address() as AddressInfo;
      const outgoing = httpRequest(
        {
          ...{ host: '127.0.0.1', port, agent, method: of.method, path: `/api/v1${of.path}` },
          headers: {
            ...{ Authorization: `Bearer ${of.who.token}`, 'Content-Type': 'application/json' },
            ...{ 'Idempotency-Key': of.key, 'X-Forwarded-For': `10.1.${(sent >> 8) & 255}.${sent & 255}` },
            ...(of.version === undefined ? {} : { 'If-Match': `"${of.version}"` }),
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
      outgoing.end(JSON.stringify(of.body));
    });

  /** What clients have heard of; what they hold may be stale, as on any screen. */
  const known: Shown[] = [];
  const sessionOf = (memberId: string): Session => pilots.find((one) => one.memberId === memberId)!;

  async function operate(draw: (below: number) => number): Promise<void> {
    const hour = () => FIRST + draw(DAYS) * 86_400 + draw(8) * 3600;
    const [from, length] = [hour(), (1 + draw(3)) * 3600];
    const times = { departs: toInstant(from), arrives: toInstant(from + length) };
    const at = known.length === 0 ? -1 : Math.max(0, known.length - 1 - draw(300));
    const one = known[at];
    const kind: Done['kind'] =
      one === undefined ? 'book' : (['book', 'book', 'edit', 'edit', 'cancel', 'offer'] as const)[draw(6)]!;
    if (kind === 'book' || one === undefined) {
      const flight = { ...times, purpose: 'solo', personsOnBoard: 1, aircraftId: fleet[draw(AIRCRAFT)]! };
      return act('book', pilots[draw(PILOTS)]!, { method: 'POST', path: '/bookings', body: flight }, null);
    }
    const path = `/bookings/${one.id}`;
    const who = sessionOf(one.memberId);
    const version = one.rowVersion;
    if (kind === 'edit') {
      const end = { arrives: toInstant(toSeconds(one.departs) + length) };
      const body = [times, end, { aircraftId: fleet[draw(AIRCRAFT)]! }][draw(3)]!;
      return act('edit', who, { method: 'PATCH', path, body }, version);
    }
    if (kind === 'cancel')
      return act(
        'cancel',
        who,
        { method: 'POST', path: `${path}/cancel`, body: { reason: 'Drawn' } },
        version,
      );
    if (one.handOver)
      return act(
        'accept',
        sessionOf(one.handOver.toId),
        { method: 'POST', path: `${path}/hand-over/accept`, body: {} },
        version,
      );
    const toId = pilots[draw(PILOTS)]!.memberId;
    return act('offer', who, { method: 'POST', path: `${path}/hand-over`, body: { toId } }, version);
  }

  async function act(
    kind: Done['kind'],
    who: Session,
    of: { method: string; path: string; body: object },
    onVersion: number | null,
  ): Promise<void> {
    const calledAt = (events += 1);
    const on = onVersion === null ? {} : { version: onVersion };
    const { status, body } = await insist({ key: newId(), who, ...of, ...on });
    const answeredAt = (events += 1);
    const told = `${kind} ${status}${status >= 400 ? ` ${body.code}` : ''}`;
    statuses.set(told, (statuses.get(told) ?? 0) + 1);
    if (status >= 300) return;
    const { id: bookingId, rowVersion: version } = body;
    done.push({ kind, bookingId, calledAt, answeredAt, onVersion, version, state: stateOf(body) });
    const at = known.findLastIndex(({ id }) => id === bookingId);
    if (at === -1) known.push(body);
    else if (known[at]!.rowVersion < version) known[at] = body;
  }

  test(`${OPERATIONS} operations leave no overlap and lose nothing that was acknowledged`, async () => {
    let left = OPERATIONS;
    await Promise.all(
      Array.from({ length: CLIENTS }, async (_, client) => {
        const draw = drawing(SEED + client);
        while ((left -= 1) >= 0) await operate(draw);
      }),
    );
    const kept = (await api.sql(
      `SELECT b.id AS "bookingId", b.row_version AS version,
          (SELECT count(*)::int FROM booking_changes c WHERE c.club_id = b.club_id AND c.booking_id = b.id) AS changes,
          jsonb_build_object('aircraftId', b.aircraft_id, 'people', (SELECT jsonb_agg(p.member_id ORDER BY p.member_id::text)
            FROM booking_people p WHERE p.club_id = b.club_id AND p.booking_id = b.id),
            'from', extract(epoch FROM lower(b.during))::bigint, 'to', extract(epoch FROM upper(b.during))::bigint, 'status', b.status) AS state
         FROM bookings b WHERE b.club_id = $1`,
      [ready.club.clubId],
    )) as unknown as Kept[];
    const inOrder = kept.map((one) => {
      const { aircraftId, people, from, to, status } = one.state;
      return { ...one, state: { aircraftId, people, from, to, status } };
    });
    expect(faultsOf(done, inOrder)).toEqual([]);
    const refusals = [...statuses.keys()].filter((told) => !/ (20[01]|403|409|412|422)( |$)/.test(told));
    expect(refusals).toEqual([]);
    // Something of everything went through, and something was fought over; otherwise nothing was tried.
    for (const kind of ['book', 'edit', 'cancel', 'offer'] as const)
      expect([kind, done.some((one) => one.kind === kind)]).toEqual([kind, true]);
    expect([...statuses.keys()].some((told) => told.includes('slot-taken'))).toBe(true);
    expect([...statuses.values()].reduce((sum, count) => sum + count, 0)).toBe(OPERATIONS);
    if (process.env['BOOKING_RACE_OPERATIONS'])
      console.log(
        [...statuses, ['asked again because the service was busy', busy] as const]
          .sort()
          .map(([told, count]) => `${told}: ${count}`)
          .join('\n'),
      );
  }, 3_600_000);
});
