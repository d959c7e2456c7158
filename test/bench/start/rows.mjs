/** From nothing running to the first answer, against what the embedded database alone takes to start. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { DEMO_SEED, DEMO_SLUG } from '../../../dist/src/demo/ids.js';
import { everybody } from '../../../dist/src/demo/people/person.js';
import { DEMO_PASSWORD } from '../../../dist/src/demo/sign-in.js';
import { tries } from '../../../dist/src/demo/tries.js';
import { When } from '../../../dist/src/demo/when.js';
import { Clock } from '../../../dist/src/platform/clock.js';
import { startEmbedded } from '../../../dist/src/platform/database/embedded/index.js';
import { median, spread, times } from '../support/measure.mjs';
import { post } from '../support/post.mjs';
import { heading, notes, table } from '../support/print.mjs';

const ROUNDS = 3;
const MAIN = new URL('../../../dist/src/main.js', import.meta.url).pathname;

/** Service and database take turns, on folders of their own that are thrown away. */
export async function startRows() {
  const ms = { databaseFirst: [], demoFirst: [], databaseAgain: [], serveAgain: [] };
  for (let round = 0; round < ROUNDS; round += 1) {
    await inFolder(async (dataDir) => {
      ms.databaseFirst.push(await database(dataDir));
      ms.databaseAgain.push(await database(dataDir));
    });
    await inFolder(async (dataDir) => {
      ms.demoFirst.push(await firstAnswer('demo', dataDir));
      ms.serveAgain.push(await firstAnswer('serve', dataDir));
    });
  }
  heading('11. From nothing running to the first decision');
  const row = (name, taken, base) => [
    name,
    spread(taken),
    base ? times(median(taken) / median(base)) : 'base',
  ];
  table([
    ['what', 'ms: median (least to most)', 'against the database'],
    row('peer: embedded database alone, made and started', ms.databaseFirst),
    row('demo: the same, schema, demo club, service, sign-in, decision', ms.demoFirst, ms.databaseFirst),
    row('peer: embedded database alone, started again', ms.databaseAgain),
    row('serve: the same, schema checked, service, sign-in, decision', ms.serveAgain, ms.databaseAgain),
  ]);
  notes(
    `${ROUNDS} rounds in turn. The database counts until it answers one SELECT; the service from the start of its process until a decision has come over HTTP.`,
  );
}

async function inFolder(work) {
  const dataDir = mkdtempSync(join(tmpdir(), 'bellcrank-bench-start-'));
  try {
    await work(dataDir);
  } finally {
    rmSync(dataDir, { recursive: true, force: true });
  }
}

async function database(dataDir) {
  const began = performance.now();
  const server = await startEmbedded({ dataDir });
  try {
    const client = new pg.Client({ connectionString: server.superuserUrl() });
    await client.connect();
    await client.query('SELECT 1');
    const taken = performance.now() - began;
    await client.end();
    return taken;
  } finally {
    await server.stop();
  }
}

async function firstAnswer(command, dataDir) {
  const port = await freePort();
  const began = performance.now();
  const child = spawn(process.execPath, [MAIN, command], {
    env: { ...process.env, BELLCRANK_DATA_DIR: dataDir, PORT: String(port), LOG_LEVEL: 'silent' },
    stdio: 'ignore',
  });
  const ended = once(child, 'exit');
  try {
    await decide(`http://127.0.0.1:${port}`, child);
    return performance.now() - began;
  } finally {
    child.kill('SIGTERM');
    await ended;
  }
}

async function decide(url, child) {
  const when = new When(new Clock().now());
  const people = everybody(DEMO_SEED, when);
  const { ask } = tries(people, when).find(({ answer }) => answer === 'yes-with-conditions');
  const { memberId, ...question } = ask;
  const { email } = people.find(({ id }) => id === memberId);
  let signedIn = null;
  while (signedIn === null) {
    if (child.exitCode !== null) throw new Error(`the service ended with ${child.exitCode}`);
    const body = { club: DEMO_SLUG, email, password: DEMO_PASSWORD };
    signedIn = await post(`${url}/api/v1/auth/sign-in`, { body }).catch(() => null);
    if (signedIn === null) await pause(20);
  }
  if (signedIn.status >= 300) throw new Error(`signing in answers ${signedIn.status}: ${signedIn.text}`);
  const { accessToken: token } = JSON.parse(signedIn.text);
  const answer = await post(`${url}/api/v1/decisions`, { token, body: question });
  if (answer.status !== 200) throw new Error(`asking answers ${answer.status}: ${answer.text}`);
}

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}
