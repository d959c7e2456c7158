/**
 * `npm run mutation:near`: tries the changes of some files against the case tables and specs that are named, and nothing else. Many
 * times quicker than a whole run, for writing cases to; what it says is killed is killed, what it says survives something further off may
 * still notice. It lists nothing. With BELLCRANK_MUTATION_WORK it notes there what is killed, so that a whole run with `--open` tries
 * only the rest.
 *
 *   npm run mutation:near -- src/rules/packs/common/loading --rules load.balance,load.weight --specs test/rules/loading/lighter.spec.ts
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { clearTimeout, setTimeout } from 'node:timers';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { TypeScriptModules } from '../support/typescript-modules.mjs';
import { filesOf, keyOf, mutantsOf } from './catalogue.mjs';
import { collectTests } from './mini-jest.mjs';
import { readState, writeState } from './state.mjs';
import { SPECS } from './suites.mjs';
import { readSurvivors, told } from './survivors.mjs';

const RUN_CASE = 'src/rules/workshop/run-case.ts';
/** A change that takes longer is taken for one that never ends. */
const ENDLESS_MS = 30_000;

if (isMainThread) await main();
else tryAll(workerData);

async function main() {
  const { files, rules, specs } = readArguments(process.argv.slice(2));
  const mutants = await mutantsOf(filesOf(files));
  const listed = new Set(readSurvivors().entries.map(keyOf));
  let [next, killed, endless] = [0, 0, 0];
  const survivors = [];
  const noticed = [];
  while (next < mutants.length) {
    // A change that never ends ends with its thread; the next thread goes on after it.
    const stalled = await untilStalled({ mutants, from: next, rules, specs }, (by) => {
      if (by) {
        killed += 1;
        noticed.push(mutants[next]);
      } else survivors.push(mutants[next]);
      next += 1;
    });
    if (!stalled) break;
    endless += 1;
    noticed.push(mutants[next]);
    next += 1;
  }
  note(noticed, specs);
  for (const one of survivors) console.log(`${listed.has(keyOf(one)) ? 'listed' : 'survives'}: ${told(one)}`);
  console.log(
    `${mutants.length} changes: ${killed} killed, ${endless} without end, ${survivors.length} survive`,
  );
}

/** Only what a whole run holds against a change as well counts for it. */
function note(noticed, specs) {
  const folder = process.env.BELLCRANK_MUTATION_WORK;
  if (folder === undefined || specs.some((spec) => !SPECS.includes(spec))) return;
  mkdirSync(folder, { recursive: true });
  const state = readState(folder);
  for (const mutant of noticed) state.set(keyOf(mutant), 'Killed');
  writeState(folder, state);
}

/** Runs a thread until it is through (false), or has been at one change for too long (true). */
function untilStalled(work, onResult) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: work });
    const end = (stalled) => {
      clearTimeout(timer);
      void worker.terminate();
      resolve(stalled);
    };
    let timer = setTimeout(end, ENDLESS_MS, true);
    worker.on('message', ({ by, done }) => {
      if (done) return end(false);
      clearTimeout(timer);
      timer = setTimeout(end, ENDLESS_MS, true);
      onResult(by);
    });
    worker.on('error', reject);
  });
}

/** In the thread: each change in turn, told by what noticed it. */
function tryAll({ mutants, from, rules, specs }) {
  const modules = new TypeScriptModules(process.cwd());
  modules.load(RUN_CASE);
  const tables = modules
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
    const { missesAtDeparture, missesOf } = modules.load(RUN_CASE);
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
  const list = (name) => {
    const at = args.indexOf(name);
    return at === -1 ? [] : args.splice(at, 2)[1].split(',');
  };
  const [rules, specs] = [list('--rules'), list('--specs')];
  if (args.length === 0 || rules.length + specs.length === 0)
    throw new Error('name files, and with --rules or --specs what to hold them against');
  return { files: args, rules, specs };
}
