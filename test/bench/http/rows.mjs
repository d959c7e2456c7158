/** One decision over HTTP against routes that do one SELECT, on the same pool, at 1 and at 50 connections. */
import { Buffer } from 'node:buffer';
import autocannon from 'autocannon';
import { post } from '../support/post.mjs';
import { median, spread, times } from '../support/measure.mjs';
import { heading, notes, table } from '../support/print.mjs';
import { BARE_PATH, GUARDED_PATH } from './service.mjs';

const ROUNDS = 3;
/** About how long one measurement of one route takes; the number of requests follows from the uncounted round. */
const SECONDS = 2;
const ADDRESSES = 240;

/** @param asks the demo club's questions, with answers (src/demo/tries.ts). */
export async function httpRows(service, { asker, asks, aircraft }) {
  heading('5. One decision over HTTP, loopback, against one SELECT');
  const { ask, aircraftId } = asks.find(
    (one) => one.ask.purpose === 'passengers' && one.answer === 'yes-with-conditions',
  );
  const { memberId, ...flight } = ask;
  const person = await asker(memberId);
  const token = service.tokenFor(person);
  const one = { ...flight, aircraftIds: [aircraftId] };
  const targets = [
    { name: 'POST /api/v1/decisions, one aircraft', path: '/api/v1/decisions', body: one, decisions: 1 },
    {
      name: `POST /api/v1/decisions, fleet of ${aircraft}`,
      path: '/api/v1/decisions',
      body: flight,
      decisions: aircraft,
    },
    { name: 'peer: one SELECT behind guards, in a transaction', path: GUARDED_PATH, body: one },
    { name: 'peer: one SELECT, bare Express route', path: BARE_PATH, body: one },
  ];
  const size = new Map();
  for (const target of targets) size.set(target, await tryOnce(service.url, target, token));
  for (const connections of [1, 50]) {
    const measured = new Map(targets.map((target) => [target, []]));
    const amounts = new Map(targets.map((target) => [target, target.decisions ? 2 * connections : 300]));
    for (let round = -1; round < ROUNDS; round += 1) {
      for (const target of targets) {
        const result = await load(service.url, target, token, connections, amounts.get(target));
        if (round >= 0) measured.get(target).push(result);
        else amounts.set(target, Math.max(2 * connections, Math.round(result.perSecond * SECONDS)));
      }
    }
    const rate = (target) => measured.get(target).map((result) => result.perSecond);
    const bare = rate(targets[3]);
    table([
      [
        `${connections} connection${connections > 1 ? 's' : ''}`,
        'requests/s: median (least to most)',
        'ms p50',
        'ms p99',
        'against bare',
        'answer, KiB',
      ],
      ...targets.map((target) => [
        target.name,
        spread(rate(target), median(rate(target)) < 100 ? 1 : 0),
        median(measured.get(target).map(({ p50 }) => p50)).toFixed(1),
        median(measured.get(target).map(({ p99 }) => p99)).toFixed(1),
        target === targets[3] ? 'base' : times(median(rate(target)) / median(bare)),
        (size.get(target) / 1024).toFixed(1),
      ]),
    ]);
  }
  notes(
    `${ROUNDS} rounds of about ${SECONDS} s in turn after a short one uncounted, every request waited for; load from autocannon in a thread of its own on the same machine; pool of ${service.poolMax}; request log off.`,
    'Demo club with 18 months of flights. A decision includes: token, validation, one transaction (facts gathered, rules judged with horizon, decision and facts stored for replay), JSON out.',
    'Each request names one of many addresses, because the service allows one address 1200 requests a minute on a route.',
  );
}

async function tryOnce(url, { name, path, body, decisions }, token) {
  const response = await post(`${url}${path}`, { token, body });
  if (response.status !== 200) throw new Error(`${name} answers ${response.status}: ${response.text}`);
  if (decisions !== undefined && JSON.parse(response.text).decisions.length !== decisions)
    throw new Error(`${name} does not answer with ${decisions} decisions`);
  return Buffer.byteLength(response.text);
}

async function load(url, { name, path, body }, token, connections, amount) {
  const result = await autocannon({
    url,
    connections,
    amount,
    workers: 1,
    // It looks for its end this often (ms): the duration is no finer.
    sampleInt: 10,
    requests: Array.from({ length: ADDRESSES }, (_, index) => ({
      method: 'POST',
      path,
      headers: {
        'content-type': 'application/json',
        authorization: `Bearer ${token}`,
        'x-forwarded-for': `10.0.0.${index + 1}`,
      },
      body: JSON.stringify(body),
    })),
  });
  if (result.non2xx > 0 || result.errors > 0 || result['2xx'] < amount)
    throw new Error(
      `${name}: ${result.non2xx} refused, ${result.errors} failed, ${result['2xx']} of ${amount} answered`,
    );
  return {
    perSecond: result['2xx'] / result.duration,
    p50: result.latency.p50,
    p99: result.latency.p99,
  };
}
