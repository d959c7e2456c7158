/**
 * `npm run mutation`: changes the rules in every way Stryker knows (and two of our own, mutators.mjs) and counts the changes that no
 * case table and no spec notices. Each such survivor must stand in survivors.yaml with its explanation.
 *
 *   npm run mutation -- src/rules/packs/us/pilot      a part
 *   npm run mutation -- --sample 300                  so many changes, drawn anew whenever the rules change
 *   npm run mutation -- --open                        those that were not noticed last time, and what is new
 *   npm run mutation -- --quick src/rules/ways        without properties and almanacs, to see what else has a gap; nothing is listed
 *   npm run mutation -- --list                        writes the list of survivors of what was run
 *   npm run mutation -- --suggest                     notes, for each survivor, cases that come out differently
 */
import { Stryker } from '@stryker-mutator/core';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { basename, relative, resolve } from 'node:path';
import { filesOf, keyOf, mutantsOf, placeOf } from './catalogue.mjs';
import { EXCLUDED } from './mutators.mjs';
import { rangesOf, sampleOf } from './sample.mjs';
import { openIn, readDiary, readState, writeState } from './state.mjs';
import { isDetected, isLost, summary } from './summary.mjs';
import { OTHERWISE } from './suites.mjs';
import { readSurvivors, told, wrongWithList, writeSurvivors } from './survivors.mjs';

/** Another folder lets several parts be run at the same time. */
const WORK = process.env.BELLCRANK_MUTATION_WORK ?? '.bellcrank/mutation';

const { parts, sample, open, quick, list, suggest } = readArguments(process.argv.slice(2));
mkdirSync(WORK, { recursive: true });
const differences = resolve(WORK, 'differences.jsonl');
rmSync(differences, { force: true });
const diary = (process.env.BELLCRANK_MUTATION_DIARY = resolve(WORK, 'diary.jsonl'));
// Properties are run for each change that nothing else notices.
process.env.PROPERTY_SHARE ??= '0.05';
process.env.WAYS_RUNS ??= '30';
if (quick) process.env.BELLCRANK_MUTATION_QUICK = 'yes';
if (suggest) process.env.BELLCRANK_MUTATION_DIFFERENCES = differences;

const files = filesOf(parts);
const mutants = await mutantsOf(files);
const state = readState(WORK);
// What a run that was broken off had found out, of whatever part.
const before = readDiary(diary).filter(({ file }) => existsSync(file));
intoState(before, await mutantsOf([...new Set(before.map(({ file }) => file))]));
rmSync(diary, { force: true });
const chosen =
  sample !== null ? rangesOf(sampleOf(mutants, sample)) : open ? rangesOf(openIn(state, mutants)) : files;
const results = await new Stryker({
  packageManager: 'npm',
  plugins: [new URL('runner.mjs', import.meta.url).pathname],
  testRunner: 'in-process',
  checkers: [],
  coverageAnalysis: 'perTest',
  mutate: chosen,
  mutator: { excludedMutations: EXCLUDED, plugins: null },
  // The sandbox needs the rules and what is run against them, and lies where jest does not look for specs.
  ignorePatterns: [
    '**',
    '!src/rules/**',
    '!src/cli/check-values/**',
    '!test/{workshop,outside,property}/**',
    '!test/rules/*.spec.ts',
    '!test/rules/{air,club,club-rules,engine,explain,loading,papers,runway,sky,versions,ways}/**',
    '!package.json',
  ],
  tempDirName: `node_modules/.cache/mutation/${basename(WORK)}`,
  concurrency: 1,
  // Generous: most loops without an end are cut short by counting.
  timeoutMS: quick ? 10_000 : 30_000,
  timeoutFactor: 2,
  reporters: ['diary', process.stdout.isTTY ? 'progress' : 'progress-append-only'],
  disableTypeChecks: true,
  allowConsoleColors: false,
  logLevel: 'warn',
  warnings: { slow: false },
  thresholds: { high: 95, low: 90, break: null },
}).runMutationTest();
const tried = intoState(
  results.map((result) => ({ ...result, file: relative('.', result.fileName) })),
  mutants,
);
rmSync(diary, { force: true });

// A sample stands for itself; otherwise what was found out before counts as well.
const all =
  sample !== null
    ? tried
    : mutants.map((mutant) => ({ ...mutant, status: state.get(keyOf(mutant)) ?? 'Pending' }));
console.log(`\n${summary(all)}\n`);
const survivors = all.filter(isLost);
const survivorsList = readSurvivors();
if (list) await writeSurvivors(survivorsList, survivors, new Set(files));
else {
  const listed = new Set(survivorsList.entries.map(keyOf));
  const killed = new Set(all.filter(isDetected).map(keyOf));
  const wrong = [
    ...survivors.filter((mutant) => !listed.has(keyOf(mutant))).map((mutant) => `survives: ${told(mutant)}`),
    ...survivorsList.entries
      .filter((entry) => killed.has(keyOf(entry)))
      .map((entry) => `listed, and killed: ${told(entry)}`),
    ...wrongWithList(
      { ...survivorsList, entries: survivorsList.entries.filter(({ file }) => files.includes(file)) },
      mutants,
    ),
  ];
  if (wrong.length > 0) {
    console.error(
      `${wrong.join('\n')}\n\n${wrong.length} changes to look at: write a case that tells them, or list and explain them`,
    );
    process.exitCode = 1;
  }
}

/** Remembers what became of mutants. Ranges bring along what is excluded: that is passed over. */
function intoState(results, mutants) {
  const byPlace = new Map(mutants.map((mutant) => [mutant.place, mutant]));
  const known = results.flatMap((result) => {
    const mutant = byPlace.get(placeOf(result, 1));
    // What only the lock of released rules notices is told apart: it holds what a rule does, and does not say why.
    const locked = result.status === 'Killed' && result.statusReason?.includes(OTHERWISE);
    return mutant ? [{ ...mutant, status: locked ? 'Locked' : result.status }] : [];
  });
  for (const mutant of known) state.set(keyOf(mutant), mutant.status);
  writeState(WORK, state);
  return known;
}

function readArguments(args) {
  const at = args.indexOf('--sample');
  const size = at === -1 ? null : Number(args.splice(at, 2)[1]);
  if (size !== null && !(size > 0)) throw new Error('--sample takes a number of changes');
  if (args.includes('--quick') && args.includes('--list'))
    throw new Error('--quick leaves out properties, so what it finds is not listed');
  return {
    parts: args.filter((one) => !one.startsWith('--')),
    sample: size,
    open: args.includes('--open'),
    quick: args.includes('--quick'),
    list: args.includes('--list'),
    suggest: args.includes('--suggest'),
  };
}
