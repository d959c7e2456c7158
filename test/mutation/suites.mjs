/**
 * What is run against a mutant: each case of each case table, then the specs of the pure functions. A suite knows which files it
 * hangs on, so that a mutant at a module's top level, for which coverage by test says nothing, meets only those that could see it.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { collectTests } from './mini-jest.mjs';

/** Tests of a test, which say nothing of the rules. */
const OF_THE_CHECK_ITSELF = /can fail|refuses a fact|reach every/;

const RULES = 'src/rules/index.ts';
const RUN_CASE = 'src/rules/workshop/run-case.ts';
const TABLES = 'test/workshop/tables.ts';
/** Specs that need neither jest nor a database. */
export const SPECS = [
  'test/rules/calendar.spec.ts',
  'test/rules/due.spec.ts',
  'test/rules/cited.spec.ts',
  'test/rules/calendar-pieces.spec.ts',
  'test/rules/insurance-supply.spec.ts',
  'test/rules/never-set-aside.spec.ts',
  'test/rules/parameter.spec.ts',
  'test/rules/shortfalls.spec.ts',
  'test/rules/air/acs.spec.ts',
  'test/rules/air/envelope.spec.ts',
  'test/rules/air/field-length.spec.ts',
  'test/rules/air/formulae.spec.ts',
  'test/rules/air/performance-table.spec.ts',
  'test/rules/air/weather-and-fuel.spec.ts',
  'test/rules/air/transponder-airspace.spec.ts',
  'test/rules/air/primary-airports.spec.ts',
  'test/rules/loading/lighter.spec.ts',
  'test/rules/loading/worked.spec.ts',
  'test/rules/runway/fields.spec.ts',
  'test/rules/declared.spec.ts',
  'test/rules/club/booking.spec.ts',
  'test/rules/club/checks.spec.ts',
  'test/rules/club/fair-use.spec.ts',
  'test/rules/club/teaching-windows.spec.ts',
  'test/rules/papers/hold.spec.ts',
  'test/rules/weather/declared.spec.ts',
  'test/rules/weather/phases.spec.ts',
  'test/rules/weather/worked.spec.ts',
  'test/rules/sky/crossings.spec.ts',
  'test/rules/sky/nights.spec.ts',
  'test/rules/sky/sun.spec.ts',
  'test/rules/engine/club-timeline.spec.ts',
  'test/rules/engine/combine.spec.ts',
  'test/rules/engine/facts.spec.ts',
  'test/rules/engine/horizon.spec.ts',
  'test/rules/engine/judge.spec.ts',
  'test/rules/engine/moment.spec.ts',
  'test/rules/engine/remedy.spec.ts',
  'test/rules/engine/stale.spec.ts',
  'test/rules/engine/stand.spec.ts',
  'test/rules/engine/timeline.spec.ts',
  'test/rules/club-rules/cases-told.spec.ts',
  'test/rules/club-rules/compile.spec.ts',
  'test/rules/club-rules/dates.spec.ts',
  'test/rules/club-rules/dry-run.spec.ts',
  'test/rules/club-rules/environment.spec.ts',
  'test/rules/club-rules/expression.spec.ts',
  'test/rules/club-rules/published.spec.ts',
  'test/rules/club-rules/refusals.spec.ts',
  'test/rules/club-rules/remedies.spec.ts',
  'test/rules/club-rules/run.spec.ts',
  'test/rules/club-rules/schema.spec.ts',
  'test/rules/club-rules/texts.spec.ts',
  'test/rules/club-rules/unknown.spec.ts',
  'test/rules/club-rules/values.spec.ts',
  'test/rules/club-rules/values-flown.spec.ts',
  'test/rules/club-rules/verdict.spec.ts',
  'test/rules/club-rules/warnings.spec.ts',
  'test/rules/ways/priced.spec.ts',
  'test/rules/ways/bills.spec.ts',
  'test/rules/ways/state.spec.ts',
  'test/rules/ways/hypotheses.spec.ts',
  'test/rules/ways/outlook.spec.ts',
  'test/rules/ways/own.spec.ts',
  'test/rules/ways/moves.spec.ts',
  'test/rules/ways/deeds.spec.ts',
  'test/rules/ways/shown.spec.ts',
  'test/rules/ways/parts.spec.ts',
  'test/rules/ways/search.spec.ts',
  'test/rules/ways/ways.spec.ts',
  'test/rules/explain/shown.spec.ts',
  'test/rules/explain/request.spec.ts',
  'test/rules/explain/wording.spec.ts',
  'test/rules/explain/trace.spec.ts',
  'test/rules/explain/explained.spec.ts',
  'test/rules/explain/words.spec.ts',
  'test/rules/explain/derivation.spec.ts',
  'test/outside/air.spec.ts',
  'test/outside/distance.spec.ts',
  'test/outside/weight-balance.spec.ts',
  'test/outside/sun.spec.ts',
  'test/outside/numbers.spec.ts',
  'test/outside/primary-airports.spec.ts',
  'test/outside/check-values.spec.ts',
  'test/property/engine.spec.ts',
  'test/property/club-timeline.spec.ts',
  'test/property/club-rules.spec.ts',
  'test/property/ways.spec.ts',
];
/** Specs that take seconds. */
export const LONG = /^test\/(outside\/(sun|check-values)\.|property\/)/;

/**
 * All tests, in the order in which they are tried: `{ id, file, line, run, quick, lock, sees(file) }`, `quick` being a part of `run`
 * that is worth trying first, `lock` what the lock of released rules holds of the case.
 * @param {import('../support/typescript-modules.mjs').TypeScriptModules} modules
 */
export function allTests(modules) {
  const specs = process.env.BELLCRANK_MUTATION_QUICK ? SPECS.filter((file) => !LONG.test(file)) : SPECS;
  return [...tableTests(modules), ...specs.flatMap((file) => specTests(modules, file))];
}

function tableTests(modules) {
  const { ALL_RULES, rulesetFor, startingPolicy } = modules.load(RULES);
  modules.load(RUN_CASE);
  const { readTables } = modules.load(TABLES);
  const pack = rulesetFor('US', startingPolicy());
  const rules = new Map([...ALL_RULES, ...pack.rules].map((rule) => [rule.id, rule]));
  const under = (path) => relative(modules.root, path);
  const declaredIn = parameterFiles(modules);
  const everything = files(modules, RUN_CASE);
  return readTables().flatMap(({ file, table, lines }) => {
    const home = file.replace('.cases.yaml', '.ts');
    const own = existsSync(join(modules.root, home)) ? files(modules, home) : null;
    const parameters = rules.get(table.rule)?.parameters ?? [];
    const read = new Set(parameters.map((id) => declaredIn.get(id)));
    const sees = (path) => {
      if (own === null) return true;
      if (own.has(path) || read.has(path)) return true;
      // Rules and parameters of others do not matter; what puts the packs together and runs them does.
      const ofOthers =
        /^src\/rules\/(packs\/.+\/|parameters\/.+\/)/.test(path) && !path.endsWith('/index.ts');
      return !ofOthers && everything.has(path);
    };
    return table.cases.map((one, index) => ({
      id: `${table.rule} › ${one.name}`,
      file,
      line: lines[index],
      sees,
      finding: () => modules.load(RUN_CASE).runCase(table.rule, one).finding,
      lock: () => failOn(unlike(modules, table.rule, one)),
      quick: () => failOn(modules.load(RUN_CASE).missesAtDeparture(table.rule, one)),
      run: () => failOn(modules.load(RUN_CASE).missesOf(table.rule, one)),
    }));
  });

  function files(of, file) {
    of.load(file);
    return new Set([...of.closureOf(file)].map(under));
  }
}

const locked = JSON.parse(readFileSync('src/rules/versions/versions.lock.json', 'utf8'));
/** What the lock says of a change. */
export const OTHERWISE = 'comes out otherwise than locked';

/** Forms of the rules as they are now, by id; the modules are new ones after each change. */
const forms = new WeakMap();

/** Whether any form of the rule comes out otherwise on the case than is locked. */
function unlike(modules, id, one) {
  const { lawOf, rulesByName } = modules.load('test/rules/versions/forms.ts');
  const { behaviourOf, versionsKey } = modules.load('test/rules/versions/behaviour.ts');
  const { formsOf } = modules.load(RULES);
  if (!forms.has(rulesByName)) {
    const law = lawOf(locked.law);
    const all = rulesByName(law).flatMap(([name, rule]) => formsOf(rule).map((form) => ({ name, form })));
    forms.set(rulesByName, { law, all });
  }
  const { law, all } = forms.get(rulesByName);
  return all
    .filter(({ form }) => form.id === id)
    .flatMap(({ name, form }) => {
      const then = locked.rules[name]?.[versionsKey(form)]?.cases ?? {};
      const now = behaviourOf(form, [one], law, name).behaviour;
      return Object.entries(now).flatMap(([key, digest]) =>
        key in then && then[key] !== digest ? [`${name} ${OTHERWISE}`] : [],
      );
    });
}

function failOn(misses) {
  if (misses.length > 0) throw new Error(misses.join('; '));
}

/** The file that declares each parameter, by the parameter's id. */
function parameterFiles(modules) {
  const declared = new Map();
  for (const path of modules.closureOf(RULES)) {
    const file = relative(modules.root, path);
    if (!file.startsWith('src/rules/parameters/')) continue;
    for (const list of Object.values(modules.load(file)))
      if (Array.isArray(list)) for (const { id } of list) declared.set(id, file);
  }
  return declared;
}

/** The tests of one spec, over the modules as they are now. */
export function specTests(modules, file) {
  // A spec says what its tests are only while it runs.
  modules.forget(file);
  const tests = collectTests(() => modules.load(file));
  const seen = new Set([...modules.closureOf(file)].map((path) => relative(modules.root, path)));
  const sees = (path) => seen.has(path);
  return tests
    .filter(({ name }) => !OF_THE_CHECK_ITSELF.test(name))
    .map(({ name, run }) => ({ id: `${file} › ${name}`, file, line: 1, sees, run }));
}
