/**
 * `npm run bench` (`-- engine`: without the service; `-- plan`: the season plan alone; `-- board`: the officer's board alone; `-- standing`: booked flights judged again alone; `-- http`, `-- bookings`, `-- flights`, `-- start`: those rows alone): Bellcrank side by side with its peers in one run. Prints what was measured and what is in it; no time
 * passes or fails anything. Only two things end it early: writings of the same rules that disagree, and an answer that is
 * not the expected kind.
 */
import 'reflect-metadata';
import { performance } from 'node:perf_hooks';
import { boardRows } from './board/rows.mjs';
import { bookingRows } from './bookings/rows.mjs';
import { engineRows } from './engine/rows.mjs';
import { flightRows } from './flights/rows.mjs';
import { demoClub } from './http/demo.mjs';
import { httpRows } from './http/rows.mjs';
import { startBenchService } from './http/service.mjs';
import { planRows } from './plan/rows.mjs';
import { standingRows } from './standing/rows.mjs';
import { startRows } from './start/rows.mjs';
import { machineLine } from './support/machine.mjs';
import { say } from './support/print.mjs';

const began = performance.now();
say(`Bellcrank bench. ${machineLine()}.`);
const only = process.argv.slice(2);
const all = only.length === 0;
if (all || only.includes('engine')) await engineRows();
if (all || only.includes('plan')) await planRows();
if (all || ['http', 'bookings', 'board'].some((part) => only.includes(part))) await serviceRows();
if (all || only.includes('standing')) await standingRows();
if (all || only.includes('flights')) await flightRows();
if (all || only.includes('start')) await startRows();
say();
say(`Whole run: ${((performance.now() - began) / 1000).toFixed(0)} s.`);

async function serviceRows() {
  const service = await startBenchService(demoClub);
  try {
    const { aircraft, members, log, bookings } = service.prepared;
    say();
    say(
      `Service in this process on embedded PostgreSQL ${service.database.serverVersion}, disk waited for; ` +
        `demo club: ${aircraft} aircraft, ${members} members, ${log} log entries, ${bookings.booked} flights booked.`,
    );
    if (all || only.includes('http')) await httpRows(service, service.prepared);
    if (all || only.includes('bookings')) await bookingRows(service);
    if (all || only.includes('board')) await boardRows(service);
  } finally {
    await service.stop();
  }
}
