/**
 * Sixty-four clients book, edit, give back, hand over, wait on standby and answer offers at once, over HTTP against the service in this
 * process, while free slots are passed on and the clock runs. What they were answered is held against checkers of histories
 * (history-checker.ts, standby-checker.ts): no overlap, no acknowledged booking lost, no slot taken from who it is kept for.
 *
 * BOOKING_RACE_OPERATIONS: how many (600). BOOKING_RACE_JUDGE=off: every flight is answered yes without being judged, which the property
 * does not need: locks, versions, keys, constraints and history are those of the service. BOOKING_RACE_MINUTES: begins nothing more after
 * so long. PROPERTY_SEED: what is drawn.
 */
import { setTimeout as pause } from 'node:timers/promises';
import { Agent, request as httpRequest, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { passOn } from '../../../src/bookings/standby/pass-on.js';
import { DecisionsService } from '../../../src/decisions/decisions.service.js';
import { sqlStateOf } from '../../../src/platform/database/constraint-problems.js';
import { TenantDb } from '../../../src/platform/database/tenant.js';
import { newId } from '../../../src/platform/ids.js';
import { toInstant, toSeconds } from '../../../src/rules/index.js';
import { NOW, startApi, type Api } from '../../support/api.js';
import { readyClub, type ReadyClub } from '../../support/ready-club.js';
import type { Session } from '../../support/session.js';
import { faultsOf, type Done, type Kept, type State } from './history-checker.js';
import { StandbyNotes, type EntryShown } from './standby-notes.js';
import { standbyFaultsOf, type KeptEntry } from './standby-checker.js';

const OPERATIONS = Number(process.env['BOOKING_RACE_OPERATIONS'] ?? 600);
/** Long enough that everything there is to do goes through, and offers run out. */
const LONG = OPERATIONS >= 3000;
const ALWAYS = ['book', 'edit', 'cancel', 'join', 'take'];
const WANTED = LONG ? [...ALWAYS, 'offer', 'accept', 'decline', 'withdraw'] : ALWAYS;
const JUDGED = process.env['BOOKING_RACE_JUDGE'] !== 'off';
const SEED = Number(process.env['PROPERTY_SEED'] ?? 20260311);
const MINUTES = Number(process.env['BOOKING_RACE_MINUTES'] ?? 600);
const CLIENTS = 64;
const PILOTS = 24;
const AIRCRAFT = 6;
/** Days the flights are spread over, so that there is something to fight for however many there are. */
const DAYS = Math.max(2, Math.min(40, Math.round(OPERATIONS / 800)));
const FIRST = toSeconds('2026-03-11T14:00:00Z');
/** How far the clock goes with each operation: all of it before the first flight, and none so long that a request comes too late. */
const STEP_S = Math.min(1, (20 * 3600) / OPERATIONS);
/** How long an offer is open: so long that some are answered, and in a long run some run out. */
const OFFER_HOURS = 0.5;

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
interface Sent {
  who: Session;
  method: string;
  path: string;
  body?: object;
  version?: number;
  key: string;
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
  /** A second replica, which passes slots on. */
  let beside: Api;
  let ready: ReadyClub;
  const pilots: Session[] = [];
  const fleet: string[] = [];
  const agent = new Agent({ keepAlive: true, maxSockets: CLIENTS });
  const done: Done[] = [];
  const statuses = new Map<string, number>();
  let events = 0;
  let sent = 0;
  let busy = 0;
  let operations = 0;
  const standby = new StandbyNotes();
  const rounds = { done: 0, offered: 0, expired: 0, broken: 0 };

  beforeAll(async () => {
    api = await startApi();
    beside = await startApi({ beside: api });
    ready = await readyClub(api);
    fleet.push(ready.aircraftId);
    while (fleet.length < AIRCRAFT) fleet.push(await ready.addAircraft(`NX10${fleet.length + 1}B`));
    for (let index = 0; index < PILOTS; index += 1) {
      const pilot = await ready.club.signInAs('member', { name: `Pilot ${index}` });
      await ready.makePilot(pilot.memberId);
      pilots.push(pilot);
    }
    await api.sql(
      "UPDATE policy_values SET value = $2 WHERE club_id = $1 AND parameter_id = 'club.standby.offer-hours'",
      [...[ready.club.clubId, JSON.stringify(OFFER_HOURS)]],
    );
    // A client that was kept waiting must not meet a connection that the service has just closed.
    const server = api.app.getHttpServer() as Server;
    server.keepAliveTimeout = 3_600_000;
    if (!JUDGED) await answerYes();
  }, 300_000);
  afterAll(async () => {
    agent.destroy();
    await beside.stop();
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
  const insist = async (of: Sent): Promise<Answer> => {
    for (let again = 0; ; again += 1) {
      const answer = await send(of);
      if (answer.status !== 503 || again === 50) return answer;
      busy += 1;
      await pause(200);
    }
  };
  const send = (of: Sent): Promise<Answer> =>
    new Promise((resolve, reject) => {
      sent += 1;
      const { port } = api.app.getHttpServer().address() as AddressInfo;
      const outgoing = httpRequest(
        {
          ...{ host: '127.0.0.1', port, agent, method: of.method, path: `/api/v1${of.path}` },
          headers: {
            ...{ Authorization: `Bearer ${ready.club.tokenFor(of.who)}`, 'Content-Type': 'application/json' },
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
      outgoing.end(of.body === undefined ? undefined : JSON.stringify(of.body));
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
    // One that was given back is tried again at times, and no more.
    const over = one === undefined || (one.status === 'cancelled' && draw(10) > 0);
    const kind: Done['kind'] = over
      ? 'book'
      : (['book', 'book', 'edit', 'edit', 'cancel', 'offer'] as const)[draw(6)]!;
    // A quarter of what is done is about standby.
    if (draw(4) === 0) return operateStandby(draw, { ...times, purpose: 'solo', personsOnBoard: 1 });
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

  /** Goes on standby, or sees what is offered to somebody who waits, and answers it: taken mostly, at times by two clients at once. */
  async function operateStandby(
    draw: (below: number) => number,
    flight: { departs: string; arrives: string; purpose: string; personsOnBoard: number },
  ): Promise<void> {
    const join = (): Promise<void> =>
      joinStandby(pilots[draw(PILOTS)]!, {
        ...flight,
        ...(draw(3) === 0 ? {} : { aircraftId: fleet[draw(AIRCRAFT)]! }),
      });
    const waits = draw(3) === 0 ? null : standby.someWaiting(draw);
    if (!waits) return join();
    const who = sessionOf(waits.memberId);
    const path = `/standby/${waits.entryId}`;
    const { body } = await insist({ key: newId(), who, method: 'GET', path });
    const entry = body as unknown as EntryShown;
    standby.note(entry, (events += 1), toSeconds(api.clock.now()));
    const { offer, rowVersion } = entry;
    const chance = draw(8);
    if (!offer || (offer.state !== 'open' && chance > 1))
      return chance === 0
        ? answerStandby('withdraw', who, { entry, path: `${path}/withdraw`, version: rowVersion })
        : join();
    // One that is open waits a little longer at times, until it runs out; one that is over is tried all the same.
    if (offer.state === 'open' && chance > 5) return join();
    const kind = chance === 5 ? 'decline' : 'take';
    const answer = { entry, path: `/standby/offers/${offer.id}/${kind === 'take' ? 'accept' : kind}` };
    const clients = chance === 4 ? 2 : 1;
    await Promise.all(Array.from({ length: clients }, () => answerStandby(kind, who, answer)));
  }

  async function joinStandby(
    who: Session,
    flight: { departs: string; arrives: string; aircraftId?: string },
  ): Promise<void> {
    const { body } = await operation('join', { who, method: 'POST', path: '/standby', body: flight });
    if (!body) return;
    const { id: entryId } = body;
    const { aircraftId = null, departs, arrives } = flight;
    standby.join({
      entryId,
      memberId: who.memberId,
      aircraftId,
      from: toSeconds(departs),
      to: toSeconds(arrives),
    });
  }

  async function answerStandby(
    kind: 'take' | 'decline' | 'withdraw',
    who: Session,
    { entry, path, version }: { entry: EntryShown; path: string; version?: number },
  ): Promise<void> {
    const { body, calledAt, answeredAt } = await operation(kind, {
      ...{ who, method: 'POST', path, body: {} },
      ...(version === undefined ? {} : { version }),
    });
    if (!body) return;
    standby.answer({
      ...{ kind, entryId: entry.id, calledAt, answeredAt },
      ...{
        offerId: kind === 'withdraw' ? null : entry.offer!.id,
        bookingId: kind === 'take' ? body.id : null,
      },
    });
    if (kind === 'take') keep('take', { body, calledAt, answeredAt, onVersion: null });
  }

  async function act(
    kind: Done['kind'],
    who: Session,
    of: { method: string; path: string; body: object },
    onVersion: number | null,
  ): Promise<void> {
    const on = onVersion === null ? {} : { version: onVersion };
    const { body, calledAt, answeredAt } = await operation(kind, { who, ...of, ...on });
    if (body) keep(kind, { body, calledAt, answeredAt, onVersion });
  }

  /** One operation, counted by what it was answered; without a body where it was refused. */
  async function operation(
    kind: string,
    of: Omit<Sent, 'key'>,
  ): Promise<{ body: Shown | null; calledAt: number; answeredAt: number }> {
    runClock();
    const calledAt = (events += 1);
    const { status, body } = await insist({ key: newId(), ...of });
    const answeredAt = (events += 1);
    const told = `${kind} ${status}${status >= 400 ? ` ${body.code}` : ''}`;
    statuses.set(told, (statuses.get(told) ?? 0) + 1);
    return { body: status < 300 ? body : null, calledAt, answeredAt };
  }

  /** The clock goes on with the operations. */
  function runClock(): void {
    operations += 1;
    const now = toInstant(toSeconds(NOW) + Math.floor(Math.min(operations, OPERATIONS) * STEP_S));
    if (now === api.clock.now()) return;
    api.clock.set(now);
    standby.clockAt(toSeconds(now), (events += 1));
  }

  function keep(
    kind: Done['kind'],
    {
      body,
      calledAt,
      answeredAt,
      onVersion,
    }: { body: Shown; calledAt: number; answeredAt: number; onVersion: number | null },
  ): void {
    const { id: bookingId, rowVersion: version } = body;
    done.push({ kind, bookingId, calledAt, answeredAt, onVersion, version, state: stateOf(body) });
    const at = known.findLastIndex(({ id }) => id === bookingId);
    if (at === -1) known.push(body);
    else if (known[at]!.rowVersion < version) known[at] = body;
  }

  const wentThrough = (kind: string): boolean =>
    [...statuses.keys()].some((told) => told.startsWith(`${kind} 20`));
  /** Few operations may happen to be refused one and all: then a few more are done. */
  const enough = (): boolean =>
    operations >= OPERATIONS && (WANTED.every(wentThrough) || operations >= 3 * OPERATIONS);

  /** Passes free slots on, again and again, as the service does in the background. */
  async function passOnUntil(ended: () => boolean): Promise<void> {
    const db = beside.app.get(TenantDb, { strict: false });
    while (!ended()) {
      try {
        const round = await passOn(db, ready.club.clubId, { now: api.clock.now(), note: () => undefined });
        rounds.offered += round.offered;
        rounds.expired += round.expired;
        rounds.done += 1;
        const open = await api.sql<{ id: string }>(
          "SELECT entry_id AS id FROM standby_offers WHERE club_id = $1 AND state = 'open'",
          [ready.club.clubId],
        );
        standby.tell(open.map(({ id }) => id));
      } catch (error) {
        // The queue would have it done again; anything else is a fault.
        if (!['40001', '40P01'].includes(sqlStateOf(error) ?? '')) throw error;
        rounds.broken += 1;
      }
      await pause(20);
    }
  }

  test(`${OPERATIONS} operations leave no overlap and lose nothing that was acknowledged`, async () => {
    let ended = false;
    const stopAt = performance.now() + MINUTES * 60_000;
    const passing = passOnUntil(() => ended);
    await Promise.all(
      Array.from({ length: CLIENTS }, async (_, client) => {
        const draw = drawing(SEED + client);
        while (!enough() && performance.now() < stopAt) await operate(draw);
      }),
    );
    ended = true;
    await passing;
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
    const entries = await api.sql<KeptEntry>(
      `SELECT e.id AS "entryId", e.state, (SELECT coalesce(jsonb_agg(jsonb_build_object('offerId', o.id, 'state', o.state,
            'bookingId', o.booking_id, 'aircraftId', o.aircraft_id)), '[]'::jsonb)
          FROM standby_offers o WHERE o.club_id = e.club_id AND o.entry_id = e.id) AS offers
         FROM standby_entries e WHERE e.club_id = $1`,
      [ready.club.clubId],
    );
    if (process.env['BOOKING_RACE_OPERATIONS']) await tell();
    expect(faultsOf(done, inOrder)).toEqual([]);
    expect(standbyFaultsOf(standby.history(entries), done)).toEqual([]);
    const refusals = [...statuses.keys()].filter((told) => !/ (20[01]|403|409|412|422)( |$)/.test(told));
    expect(refusals).toEqual([]);
    // Something of everything went through, and something was fought over; otherwise nothing was tried.
    expect(WANTED.filter((kind) => !wentThrough(kind))).toEqual([]);
    expect([...statuses.keys()].some((told) => told.includes('slot-taken'))).toBe(true);
    if (LONG) expect(rounds.expired).toBeGreaterThan(0);
    expect([...statuses.values()].reduce((sum, count) => sum + count, 0)).toBe(operations);
  }, 7_200_000);

  /** What was done, for who asked for a run of their own. */
  async function tell(): Promise<void> {
    const [{ deadlocks }] = (await api.sql(
      'SELECT deadlocks::int FROM pg_stat_database WHERE datname = current_database()',
    )) as [{ deadlocks: number }];
    const more = [
      ['operations', operations],
      ['asked again because the service was busy', busy],
      ['deadlocks', deadlocks],
      ...Object.entries(rounds).map(([what, count]) => [`rounds of standby: ${what}`, count]),
    ] as [string, number][];
    console.log(
      [...statuses, ...more]
        .sort()
        .map(([told, count]) => `${told}: ${count}`)
        .join('\n'),
    );
  }
});
