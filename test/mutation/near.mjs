/**
 * `npm run mutation:near`: tries the changes of some files against the case tables and specs that are named, and nothing else. Many
 * times quicker than a whole run, for writing cases to; what it says is killed is killed, what it says survives something further off may
 * still notice. With BELLCRANK_MUTATION_WORK it notes there what is killed: `--open` leaves that out, here and in a whole run. `--list`
 * writes what survives into the list, where each wants its reason; what something further off notices after all, a whole run tells.
 *
 *   npm run mutation:near -- src/rules/packs/common/loading --rules load.balance,load.weight --specs test/rules/loading/lighter.spec.ts
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { clearInterval, setInterval } from 'node:timers';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { TypeScriptModules } from '../support/typescript-modules.mjs';
import { filesOf, keyOf, mutantsOf } from './catalogue.mjs';
import { collectTests } from './mini-jest.mjs';
import { openIn, readState, writeState } from './state.mjs';
import { SPECS } from './suites.mjs';
import { readSurvivors, told, writeSurvivors } from './survivors.mjs';

const RUN_CASE = 'src/rules/workshop/run-case.ts';
const WORK = process.env.BELLCRANK_MUTATION_WORK;
/** A change that takes longer is taken for one that never ends. */
const ENDLESS_MS = 8000;

if (isMainThread) await main();
else tryAll(workerData);

async function main() {
  const { parts, rules, specs, open, list } = readArguments(process.argv.slice(2));
  const files = filesOf(parts);
  const all = await mutantsOf(files);
  const mutants = open ? openIn(readState(WORK), all) : all;
  const known = readSurvivors();
  const listed = new Set(known.entries.map(keyOf));
  let [next, killed, endless] = [0, all.length - mutants.length, 0];
  const survivors = [];
  const notes = notesFor(specs);
  while (next < mutants.length) {
    // A change that never ends ends with its thread; the next thread goes on after it.
    const stalled = await untilStalled({ mutants, from: next, rules, specs }, (by) => {
      if (by) {
        killed += 1;
        notes.note(mutants[next]);
      } else survivors.push(mutants[next]);
      next += 1;
    });
    if (!stalled) break;
    endless += 1;
    notes.note(mutants[next]);
    next += 1;
  }
  notes.write();
  for (const one of survivors) console.log(`${listed.has(keyOf(one)) ? 'listed' : 'survives'}: ${told(one)}`);
  console.log(`${all.length} changes: ${killed} killed, ${endless} without end, ${survivors.length} survive`);
  if (list) await writeSurvivors(known, survivors, new Set(files));
}

/** Only what a whole run holds against a change as well counts for it. Written now and then, for a run that is broken off. */
function notesFor(specs) {
  if (WORK === undefined || specs.some((spec) => !SPECS.includes(spec)))
    return { note: () => {}, write: () => {} };
  mkdirSync(WORK, { recursive: true });
  const state = readState(WORK);
  let unwritten = 0;
  const write = () => {
    writeState(WORK, state);
    unwritten = 0;
  };
  const note = (mutant) => {
    state.set(keyOf(mutant), 'Killed');
    unwritten += 1;
    if (unwritten === 20) write();
  };
  return { note, write };
}

/** Runs a thread until it is through (false), or has been at one change for too long (true). */
function untilStalled(work, onResult) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: work });
    // Time of the processor, not of the clock: on a busy machine a change is not endless for having to wait.
    let since = process.cpuUsage();
    const end = (stalled) => {
      clearInterval(watch);
      void worker.terminate();
      resolve(stalled);
    };
    const watch = setInterval(() => {
      const { user, system } = process.cpuUsage(since);
      if ((user + system) / 1000 > ENDLESS_MS) end(true);
    }, 1000);
    worker.on('message', ({ by, done }) => {
      if (done) return end(false);
      since = process.cpuUsage();
      onResult(by);
    });
    worker.on('error', reject);
  });
}

/** In the thread: each change in turn, told by what noticed it. */
function tryAll({ mutants, from, rules, specs }) {
  const modules = new TypeScriptModules(process.cwd());
  const tables =
    rules.length === 0
      ? []
      : modules
          .load('test/workshop/tables.ts')
          .readTables()
          .map(({ table }) => table)
          .filter(({ rule }) => rules.includes(rule));
  for (const mutant of mutants.slice(from)) {
    const text = readFileSync(mutant.file, 'utf8');
    modules.replace(mutant.file, text.slice(0, mutant.from) + mutant.replacement + text.slice(mutant.to));
    parentPort.postMessage({ by: noticedBy(modules, tables, specs) });
    modules.replace(mutant.file, null);
  }
  parentPort.postMessage({ done: true });
}

/** The name of the case or test that comes out otherwise; null when none does. */
function noticedBy(modules, tables, specs) {
  try {
    // All the rules are run anew only where a table asks for them.
    const { missesAtDeparture, missesOf } = tables.length > 0 ? modules.load(RUN_CASE) : {};
    for (const misses of [missesAtDeparture, missesOf])
      for (const { rule, cases } of tables)
        for (const one of cases) if (misses(rule, one).length > 0) return `${rule} › ${one.name}`;
    for (const spec of specs) {
      modules.forget(spec);
      for (const { name, run } of collectTests(() => modules.load(spec))) {
        try {
          run();
        } catch {
          return `${spec} › ${name}`;
        }
      }
    }
    return null;
  } catch {
    return 'loading the modules';
  }
}

function readArguments(args) {
  const named = (name) => {
    const at = args.indexOf(name);
    return at === -1 ? [] : args.splice(at, 2)[1].split(',');
  };
  const [rules, specs] = [named('--rules'), named('--specs')];
  const parts = args.filter((one) => !one.startsWith('--'));
  if (parts.length === 0 || rules.length + specs.length === 0)
    throw new Error('name files, and with --rules or --specs what to hold them against');
  const strays = parts.filter((part) => !part.startsWith('src/'));
  if (strays.length > 0)
    throw new Error(`${strays.join(', ')}: not of src; specs and rules are one list each, parted by commas`);
  if (args.includes('--open') && WORK === undefined)
    throw new Error('--open wants BELLCRANK_MUTATION_WORK, where it is noted what is killed');
  return { parts, rules, specs, open: args.includes('--open'), list: args.includes('--list') };
}
