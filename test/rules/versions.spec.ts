/**
 * A released version of a rule behaves as it did: held against src/rules/versions/versions.lock.json, which is written by
 * `npm run rules:lock` and, with a release, by `npm run rules:release`.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { projectManifest, projectPath } from '../../src/platform/paths.js';
import {
  ALL_RULES,
  defineRule,
  formsOf,
  rulesetAsThen,
  rulesetFor,
  startingPolicy,
  type LawBook,
  type Rule,
} from '../../src/rules/index.js';
import type { Case } from '../../src/rules/workshop/case-table.js';
import { readTables } from '../workshop/tables.js';
import { behaviourOf, type Form } from './versions/behaviour.js';
import { clubWrittenBehaviour, clubWrittenDecisions } from './versions/club-written.js';
import { engineBehaviour } from './versions/engine.js';
import { lawOf, lawToday, rulesByName } from './versions/forms.js';
import { problemsOf, relocked, type Lock } from './versions/guard.js';

const FILE = projectPath('src', 'rules', 'versions', 'versions.lock.json');
const WRITING = process.env['BELLCRANK_TEST_WRITE_RULES_LOCK'];

const cases = new Map(readTables().map(({ table }) => [table.rule, table.cases]));
/** A retired rule has no table any more: it is tried on the first case of every other. */
const FIRST_OF_ALL = [...cases.values()].map(([first]) => first!);
const casesOf = (rule: string): readonly Case[] => cases.get(rule) ?? FIRST_OF_ALL;

/** Every form of every rule, run on its cases with the numbers given. */
const formsNow = (law: LawBook): Form[] =>
  rulesByName(law).flatMap(([name, rule]) =>
    formsOf(rule).map((form) => behaviourOf(form, casesOf(form.id), law, name)),
  );

const locked = existsSync(FILE) ? (JSON.parse(readFileSync(FILE, 'utf8')) as Lock) : null;
describe('the lock', () => {
  let lock: Lock;
  let forms: Form[];
  const engine = { ...engineBehaviour(), ...clubWrittenBehaviour() };

  beforeAll(() => {
    forms = formsNow(lawOf(locked?.law ?? []));
    if (WRITING) {
      const releasing = WRITING === 'release' ? projectManifest().version : null;
      // What was released is tried with the numbers it was released with; everything is locked with those of today.
      const before = forms;
      const law = lawToday();
      forms = formsNow(law);
      lock = relocked(locked, forms, { engine, law, releasing, before });
      writeFileSync(FILE, `${JSON.stringify(lock, null, 2)}\n`);
      return;
    }
    if (!locked) throw new Error('src/rules/versions/versions.lock.json is missing: npm run rules:lock');
    lock = locked;
  }, 120_000);

  test('holds every form of every rule, and nothing wrong with any', () => {
    expect(forms.length).toBeGreaterThanOrEqual(ALL_RULES.length);
    expect(forms.filter((form) => Object.keys(form.behaviour).length === 0).map((form) => form.rule)).toEqual(
      [],
    );
    expect(problemsOf(lock, forms, engine)).toEqual([]);
  });

  test('holds rules written by a club in every outcome', () => {
    const findings = clubWrittenDecisions().flatMap(([, decision]) => decision.findings);
    const statuses = new Set(findings.map((finding) => finding.status));
    expect([...statuses].sort()).toEqual(['met', 'not-applicable', 'short', 'unknown']);
  });

  describe('notices', () => {
    const RULE = 'recency.passengers.day';
    const rule = ALL_RULES.find((one) => one.id === RULE)!;
    const other = (bodies: Rule['bodies'], more: Partial<Rule> = {}): Rule => ({ ...rule, ...more, bodies });
    const next = rule.bodies.map((body) => ({ ...body, version: body.version + 100 }));
    /** The lock as if it held that rule alone, released or not; the others have their say above. */
    const lockOf = (release: string | null): Lock => {
      const versions = structuredClone(lock.rules[RULE]!);
      for (const form of Object.values(versions)) form.released = release;
      return { ...lock, rules: { [RULE]: versions } };
    };
    const released = (): Lock => lockOf('0.1.0');
    const unreleased = (): Lock => lockOf(null);
    const run = (rules: readonly Rule[], law: LawBook): Form[] =>
      rules.flatMap(formsOf).map((form) => behaviourOf(form, casesOf(RULE), law));
    /** What is wrong when these stand in place of the rule. */
    const problemsWith = (rules: readonly Rule[], of: Lock = released()): string[] =>
      problemsOf(of, run(rules, of.law), engine);
    const sayingMore: Rule['bodies'] = rule.bodies.map((body) => ({
      ...body,
      judge: (facts, moment, parameters, take) => {
        const judgement = body.judge(facts, moment, parameters, take);
        return { ...judgement, conditions: [...judgement.conditions, 'Mind the gap.'] };
      },
    }));

    test('nothing when nothing changed', () => expect(problemsWith([rule])).toEqual([]));

    test.each<[string, Rule, RegExp]>([
      [
        'behaviour changed under a released number',
        other(sayingMore),
        /released with 0\.1\.0.*raise the version/,
      ],
      ['a sentence changed', other(rule.bodies, { title: 'Another title' }), /raise the version/],
      [
        'other facts declared',
        other(rule.bodies, { reads: [...rule.reads, 'pic.medicals'] }),
        /reads ".*pic\.medicals/,
      ],
      ['a released version dropped for a new one', other(next), /released with 0\.1\.0, and is gone/],
    ])('%s', (_what, form, says) => expect(problemsWith([form]).join('\n')).toMatch(says));

    test('a rule dropped', () => expect(problemsWith([]).join()).toMatch(/is gone.*retired\.ts/));

    test('a new version beside the old one, only as not locked yet', () => {
      const raised = defineRule({ ...other(next), superseded: [rule], changed: 'Says more.' }) as Rule;
      expect(problemsWith([raised])).toEqual([
        expect.stringMatching(/version 1\d\d.* is not locked\. Run `npm run rules:lock`/),
      ]);
    });

    test('what is not released yet, as to be locked again', () => {
      expect(problemsWith([other(sayingMore)], unreleased()).join()).toMatch(
        /comes out otherwise.*Run `npm run rules:lock`/,
      );
      expect(problemsWith([other(next)], unreleased()).join()).toMatch(
        /is locked, and gone\. Run `npm run rules:lock`/,
      );
    });

    test('a lock that none of the cases fits any more', () => {
      const lost = released();
      const form = Object.values(lost.rules[RULE]!)[0]!;
      form.cases = Object.fromEntries(Object.keys(form.cases).map((_key, index) => [`lost-${index}`, 'x']));
      expect(problemsWith([rule], lost).join()).toMatch(/0 can still be tried/);
    });

    test('an engine that decides otherwise', () => {
      const [name] = Object.keys(engine);
      expect(problemsOf(released(), run([rule], lock.law), { ...engine, [name!]: 'other' }).join()).toMatch(
        /The engine puts together other/,
      );
    });

    test('and refuses to lock over what was released', () => {
      const changed = run([other(sayingMore)], lock.law);
      const of = { engine, law: lock.law, releasing: null };
      expect(() => relocked(released(), changed, of)).toThrow(/raise the version/);
      expect(relocked(unreleased(), changed, of).rules[RULE]).not.toEqual(unreleased().rules[RULE]);
      const stamped = relocked(unreleased(), run([rule], lock.law), { ...of, releasing: '0.2.0' });
      expect(Object.values(stamped.rules[RULE]!).map((form) => form.released)).toEqual(['0.2.0']);
    });
  });
});

describe('a rule that supersedes another', () => {
  const rule = ALL_RULES[0]!;
  const raised = { ...rule, bodies: rule.bodies.map((body) => ({ ...body, version: body.version + 1 })) };

  test('says what changed', () =>
    expect(() => defineRule({ ...raised, superseded: [rule] })).toThrow(/must say what changed/));
  test('has versions of its own', () =>
    expect(() => defineRule({ ...rule, superseded: [rule], changed: 'x' })).toThrow(/raise the newer one/));
  test('is the same rule', () =>
    expect(() => defineRule({ ...raised, superseded: [ALL_RULES[1]!], changed: 'x' })).toThrow(
      /cannot supersede/,
    ));
});

test('the ruleset of a decision is rebuilt from today’s to the last rule, and is not today’s when it names other rules', () => {
  const policy = startingPolicy();
  const today = rulesetFor('US', policy);
  const rules = Object.fromEntries(
    today.rules.map((rule) => [rule.id, rule.bodies.map((body) => body.version)]),
  );
  const order = Object.keys(rules);
  const made = { jurisdiction: 'US', policy, rules, order, law: null } as const;
  const { ruleset, gone, since } = rulesetAsThen(made);
  expect([ruleset.rules.map((rule) => rule.id), gone, since]).toEqual([order, [], []]);
  expect(ruleset.rules.slice(0, -1)).toEqual(today.rules.slice(0, -1));
  const [first, ...rest] = order;
  const fewer = Object.fromEntries(rest.map((id) => [id, rules[id]!]));
  const less = rulesetAsThen({ ...made, rules: fewer, order: [...rest].reverse() });
  expect(less.ruleset.rules.map((rule) => rule.id)).toEqual([...rest].reverse());
  expect(less.since).toEqual([first]);
});
