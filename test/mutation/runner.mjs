/**
 * A test runner for Stryker that stays in one warm process: modules touched by a mutant are run anew (milliseconds), then only
 * the tests that could see it, up to the first that fails. Stryker ends the process if a mutant never comes back.
 */
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { PluginKind, declareClassPlugin } from '@stryker-mutator/api/plugin';
import { TestStatus } from '@stryker-mutator/api/test-runner';
import { appendFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { performance } from 'node:perf_hooks';
import { TypeScriptModules } from '../support/typescript-modules.mjs';
import { allTests, LONG, specTests } from './suites.mjs';

const NAMESPACE = INSTRUMENTER_CONSTANTS.NAMESPACE;

/** Files behind answers that are remembered from one question to the next. */
const REMEMBERED = /^src\/rules\/(calendar|sky)\/|^src\/rules\/(engine\/sentence|facts\/keys)\.ts$/;

/** Rules and their numbers, which have case tables of their own. */
const ABOUT_RULES = /^src\/rules\/(packs|parameters)\//;
/** The numbers are written down a second time, which is quicker to compare than the cases are. */
const NUMBERS = /^src\/rules\/parameters\/|\/primary-airports\.ts$/;
const SECOND_ENTRY = /^test\/outside\/(numbers|primary-airports)\./;
/** What a single rule does is not their concern. */
const OF_MANY_RULES = /^test\/property\/(ways|club-)/;
/** Cases run against a change of what every rule uses: all of them would take a minute for each that nothing notices. */
const MOST_CASES = 200;

/** So many of the cases, spread evenly over the tables. */
function thinned(cases, file) {
  if (ABOUT_RULES.test(file) || cases.length <= MOST_CASES) return cases;
  const step = cases.length / MOST_CASES;
  return Array.from({ length: MOST_CASES }, (_, index) => cases[Math.floor(index * step)]);
}

class InProcessRunner {
  #modules = new TypeScriptModules(process.cwd());
  /** State shared with the instrumented code. */
  #shared = (globalThis[NAMESPACE] ??= {});
  /** Tests of the unmutated code, for what they see. */
  #tests = null;

  capabilities() {
    // A mutant at a module's top level is met by running the module again.
    return { reloadEnvironment: true };
  }

  async dryRun() {
    const tests = (this.#tests = allTests(this.#modules));
    const results = tests.map((test) => {
      const { run } = test;
      this.#shared.currentTestId = test.id;
      const start = performance.now();
      let failure;
      try {
        run();
      } catch (error) {
        failure = messageOf(error);
      }
      this.#shared.currentTestId = undefined;
      const base = {
        id: test.id,
        name: test.id,
        timeSpentMs: performance.now() - start,
        fileName: join(process.cwd(), test.file),
        startPosition: { line: test.line, column: 0 },
      };
      return failure === undefined
        ? { ...base, status: TestStatus.Success }
        : { ...base, status: TestStatus.Failed, failureMessage: failure };
    });
    return { status: 'complete', tests: results, mutantCoverage: this.#shared.mutantCoverage };
  }

  async mutantRun({ activeMutant, mutantActivation, testFilter, hitLimit, sandboxFileName }) {
    this.#tests ??= allTests(this.#modules);
    if (this.#differencesTo !== undefined && this.#findings.size === 0)
      for (const { id, finding } of this.#tests) if (finding) this.#findings.set(id, finding());
    const file = relative(process.cwd(), sandboxFileName);
    const covering = new Set(testFilter);
    const tests = [
      ...this.#tests.filter(({ id }) => covering.has(id)),
      // Where answers are remembered, only the first test to ask is known to cover the code behind them.
      ...(testFilter && !REMEMBERED.test(file)
        ? []
        : this.#tests.filter((test) => !covering.has(test.id) && test.sees(file))),
    ];
    this.#shared.hitCount = hitLimit === undefined ? undefined : 0;
    this.#shared.hitLimit = hitLimit;
    const activate = () => (this.#shared.activeMutant = activeMutant.id);
    try {
      if (mutantActivation === 'static') activate();
      try {
        this.#fresh(file);
      } catch (error) {
        return killed('loading the modules', error, 0);
      }
      activate();
      // Most changes are noticed by what a case expects; what holds for every finding takes longer to prove.
      const tables = thinned(
        tests.filter(({ quick }) => quick),
        file,
      );
      const inTables = [
        ...tables.map(({ id, quick }) => [id, quick]),
        ...tables.map(({ id, run }) => [id, run]),
      ];
      const inLock = tables.map(({ id, lock }) => [id, lock]);
      const inSpecs = tests
        .filter(({ quick }) => !quick)
        .map((test) => [test.id, () => this.#current(test, mutantActivation, activate).run()]);
      // Specs are collected anew for each change, and come first only where they are what was written for the file; the almanacs
      // come last of all.
      const early = inSpecs.filter(([id]) => NUMBERS.test(file) && SECOND_ENTRY.test(id));
      const light = inSpecs.filter((one) => !early.includes(one) && !LONG.test(one[0]));
      const long = inSpecs.filter(
        ([id]) => LONG.test(id) && !(ABOUT_RULES.test(file) && OF_MANY_RULES.test(id)),
      );
      const attempts = ABOUT_RULES.test(file)
        ? [...early, ...inTables, ...light, ...inLock, ...long]
        : [...light, ...inTables, ...inLock, ...long];
      for (const [index, [id, attempt]] of attempts.entries()) {
        try {
          attempt();
        } catch (error) {
          return killed(id, error, Math.min(index + 1, tests.length));
        }
      }
      if (this.#differencesTo !== undefined) this.#recordDifferences(file, activeMutant, tables);
      return { status: 'survived', nrOfTests: tests.length };
    } finally {
      this.#shared.activeMutant = undefined;
      this.#shared.hitCount = undefined;
      this.#specs.clear();
      this.#modules.forget(file);
    }
  }

  /** Where to write what the survivors change that no case says (`--suggest`). */
  #differencesTo = process.env.BELLCRANK_MUTATION_DIFFERENCES;
  /** What each case comes to without a mutant, where differences are wanted. */
  #findings = new Map();

  /** Notes the cases that come out differently under a surviving mutant: those to say more. */
  #recordDifferences(file, { location, mutatorName, replacement }, tests) {
    const differing = [];
    for (const test of tests) {
      if (!test.finding) continue;
      let now;
      try {
        now = test.finding();
      } catch (error) {
        now = { error: messageOf(error) };
      }
      const before = this.#findings.get(test.id);
      const changes = Object.keys({ ...before, ...now })
        .filter((key) => JSON.stringify(before[key]) !== JSON.stringify(now[key]))
        .map((key) => ({ key, before: before[key], now: now[key] }));
      if (changes.length > 0) differing.push({ case: test.id, file: test.file, line: test.line, changes });
      if (differing.length === 3) break;
    }
    const line = {
      file,
      location,
      mutatorName,
      replacement,
      tried: tests.length,
      differing,
    };
    appendFileSync(this.#differencesTo, `${JSON.stringify(line)}\n`);
  }

  #specs = new Map();

  /** Runs the file and all that hangs on it anew, so that nothing is remembered from before. */
  #fresh(file) {
    this.#modules.forget(file);
    this.#specs.clear();
    this.#modules.load('src/rules/workshop/run-case.ts');
  }

  /**
   * The test of a spec over the modules as they are now: it holds on to what it imported. A change that is only to be active while
   * tests run is put aside while they are collected.
   */
  #current(test, mutantActivation, activate) {
    if (!this.#specs.has(test.file)) {
      if (mutantActivation === 'runtime') this.#shared.activeMutant = undefined;
      const again = specTests(this.#modules, test.file);
      activate();
      this.#specs.set(test.file, new Map(again.map((one) => [one.id, one])));
    }
    const now = this.#specs.get(test.file).get(test.id);
    if (!now) throw new Error(`${test.id} is gone`);
    return now;
  }
}

const messageOf = (error) => (error instanceof Error ? error.message : String(error)).slice(0, 500);
const killed = (id, error, nrOfTests) => ({
  status: 'killed',
  killedBy: [id],
  failureMessage: messageOf(error),
  nrOfTests,
});

/** Writes down what became of each mutant as it is known, so that a run that is broken off was not for nothing. */
class Diary {
  onMutantTested({ fileName, location, mutatorName, replacement, status, statusReason }) {
    const file = relative(process.cwd(), fileName);
    const line = { file, location, mutatorName, replacement, status, statusReason };
    appendFileSync(process.env.BELLCRANK_MUTATION_DIARY, `${JSON.stringify(line)}\n`);
  }
}

export const strykerPlugins = [
  declareClassPlugin(PluginKind.TestRunner, 'in-process', InProcessRunner),
  declareClassPlugin(PluginKind.Reporter, 'diary', Diary),
];
