/**
 * The clients of the contention rows, in a thread of their own: as many as there are lists of work, each doing one thing
 * after the other. `kind` says how a slot is booked. Sends back how each attempt ended and how long all of them took.
 */
import http from 'node:http';
import { performance } from 'node:perf_hooks';
import { parentPort, workerData } from 'node:worker_threads';
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { post } from '../support/post.mjs';

const { url, tokens, databaseUrls, clubId, memberIds } = workerData;
const agent = new http.Agent({ keepAlive: true, maxSockets: tokens.length });
const pools = new Map(
  Object.entries(databaseUrls).map(([name, connectionString]) => [
    name,
    new pg.Pool({ connectionString, max: tokens.length, idleTimeoutMillis: 0 }),
  ]),
);

/** Books over HTTP as the client's own member. */
async function service(client, slot) {
  const { status, text } = await post(`${url}/api/v1/bookings`, {
    agent,
    token: tokens[client],
    headers: {
      'idempotency-key': randomUUID(),
      'x-forwarded-for': `10.1.${slot.number % 250}.${client + 1}`,
    },
    body: {
      ...{ aircraftId: slot.aircraftId, departs: slot.from, arrives: slot.to },
      ...{ purpose: 'solo', personsOnBoard: 1, plannedHours: 0.1 },
    },
  });
  if (status === 201) return 'booked';
  if (status === 409 && JSON.parse(text).code === 'slot-taken') return 'taken';
  throw new Error(`the service answers ${status}: ${text}`);
}

/** One INSERT into a table that has the exclusion constraint and nothing else. */
async function insert(_client, slot) {
  // Not pool.query: it throws a connection away after an error, and the next attempt would pay for a new one.
  const connection = await pools.get('owner').connect();
  try {
    await connection.query(
      `INSERT INTO bench_slots (club_id, id, aircraft_id, during, occupies) VALUES ($1, $2, $3, tstzrange($4, $5, '[)'), true)`,
      [clubId, randomUUID(), slot.aircraftId, slot.from, slot.to],
    );
    return 'booked';
  } catch (error) {
    return refused(error);
  } finally {
    connection.release();
  }
}

/** One INSERT into the service's own table, as the service's role, in a transaction of the club. */
async function insertInClub(client, slot) {
  const connection = await pools.get('service').connect();
  try {
    await connection.query('BEGIN');
    await connection.query("SELECT set_config('bellcrank.club_id', $1, true)", [clubId]);
    await connection.query(
      `INSERT INTO bookings (club_id, id, kind, aircraft_id, member_id, during, expected_tenths, request)
       VALUES ($1, $2, 'club', $3, $4, tstzrange($5, $6, '[)'), 0, '{}')`,
      [clubId, randomUUID(), slot.aircraftId, memberIds[client], slot.from, slot.to],
    );
    await connection.query('COMMIT');
    return 'booked';
  } catch (error) {
    await connection.query('ROLLBACK');
    return refused(error);
  } finally {
    connection.release();
  }
}

/** Two that wait for each other's row at the exclusion constraint are a deadlock: PostgreSQL ends one after a second. */
function refused(error) {
  if (error.code === '23P01') return 'taken';
  if (error.code === '40P01') return 'deadlock';
  throw error;
}

const KINDS = { service, insert, insertInClub };

/** `lists[client]` is that client's slots; `together` makes all clients start each slot at the same time. */
async function work({ kind, lists, together }) {
  const book = KINDS[kind];
  const ends = [];
  const began = performance.now();
  if (together) {
    for (let turn = 0; turn < lists[0].length; turn += 1)
      ends.push(await Promise.all(lists.map((list, client) => book(client, list[turn]))));
  } else {
    await Promise.all(
      lists.map(async (list, client) => {
        for (const slot of list) ends.push([await book(client, slot)]);
      }),
    );
  }
  return { ends, ms: performance.now() - began };
}

parentPort.on('message', async (message) => {
  if (message === 'stop') {
    agent.destroy();
    await Promise.all([...pools.values()].map((pool) => pool.end()));
    parentPort.close();
    return;
  }
  try {
    parentPort.postMessage(await work(message));
  } catch (error) {
    parentPort.postMessage({ failed: error.message });
  }
});
