/**
 * A dry run judges one rule and puts it to stored findings. On arbitrary sheets the answer is the one that judging all the
 * rules again gives.
 */
import fc from 'fast-check';
import {
  answerWith,
  compileUndated,
  decide,
  rulesetFor,
  toSeconds,
  tryRule,
  versionsOf,
  weigh,
  type Answer,
  type ClubRule,
  type Decision,
  type FactSheet,
  type Policy,
} from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { anySheet, SEED } from './engine-sheets.js';

const rule = (of: Partial<ClubRule>): ClubRule => ({
  ...{
    code: 'club.own.any',
    version: 1,
    title: 'Any',
    weight: 'club',
    appliesWhen: 'true',
    requirement: 'true',
  },
  ...{ message: 'Not kept.', condition: null, document: 'Handbook', from: '2000-01-01', to: null, ...of },
});
/** Conditions that come out each way on some sheets, with and without an instructor. */
const conditions = fc.constantFrom(
  ...['true', 'false', 'flight.instruction', '!flight.instruction', 'flight.passengers == 0', 'flight.alone'],
  ...[
    'pilot.ageYears > 40',
    'member.landingsInDays(90) >= 3',
    'wind.speedKt < 9.0',
    'instructor.ageYears > 30',
  ],
  ...[
    'flight.departsHour >= 9',
    'flight.personsOnBoard <= 2',
    '!flight.instructorNamed || instructor.ageYears > 0',
  ],
);
const anyRule = fc.record({
  appliesWhen: conditions,
  requirement: conditions,
  weight: fc.constantFrom('club' as const, 'club' as const, 'advice' as const),
  condition: fc.constantFrom(null, 'Wait for the weather.'),
});
const SHORT = { days: 1, stepsPerRule: 1 };

interface Stored {
  decision: Decision;
  policy: Policy;
}
/** What is stored when the flight is decided with these rules of the club. */
const stored = (sheet: FactSheet, rules: ClubRule[]): Stored => {
  const policy: Policy = { ...startingPolicy(), ...(rules.length > 0 ? { rules } : {}) };
  const ruleset = rulesetFor(sheet.jurisdiction, policy);
  return { policy, decision: decide(sheet, policy, ruleset, sheet.flight.departs, SHORT) };
};

/** The answer by the dry run, and whether everything had to be judged again for it. */
function byDryRun(
  sheet: FactSheet,
  { decision, policy }: Stored,
  draft: ClubRule,
): { answer: Answer; whole: boolean } {
  const ruleset = rulesetFor(sheet.jurisdiction, policy);
  const of = { sheet, policy, asOf: decision.asOf, answer: decision.answer, rules: versionsOf(ruleset) };
  const tried = tryRule(compileUndated(draft), of);
  if (!tried.matters) return { answer: decision.answer, whole: false };
  let whole = false;
  const asThen = () => ((whole = true), ruleset);
  return { answer: answerWith(compileUndated(draft), tried, { ...of, decision, asThen }), whole };
}

function byJudgingAll(sheet: FactSheet, { decision, policy }: Stored, draft: ClubRule): Answer {
  const { rules, book } = rulesetFor(sheet.jurisdiction, policy);
  const set = [...rules.filter(({ id }) => id !== draft.code), compileUndated(draft)];
  return weigh(sheet, { rules: set, book }, toSeconds(decision.asOf)).answer;
}

function holds<T>(property: fc.IProperty<T>, numRuns: number): void {
  const out = fc.check(property, { seed: SEED, numRuns, endOnFailure: true });
  if (!out.failed) return;
  const cause = out.errorInstance instanceof Error ? out.errorInstance.message : String(out.errorInstance);
  throw new Error(
    `${cause}\n(seed ${out.seed}, path "${out.counterexamplePath}", after ${out.numRuns} runs)`,
  );
}

test('a new rule: the answer is that of judging all again, and changes happen', () => {
  const changes = new Map<string, number>();
  let again = 0;
  holds(
    fc.property(anySheet, anyRule, (sheet, of) => {
      const before = stored(sheet, []);
      const draft = rule(of);
      const { answer, whole } = byDryRun(sheet, before, draft);
      if (whole) again += 1;
      const wanted = byJudgingAll(sheet, before, draft);
      if (answer !== wanted)
        throw new Error(`${JSON.stringify(of)}: ${before.decision.answer} becomes ${wanted}, not ${answer}`);
      const change = `${before.decision.answer} ${answer}`;
      changes.set(change, (changes.get(change) ?? 0) + 1);
    }),
    900,
  );
  for (const change of [
    'yes-with-conditions ask-officer',
    'yes-with-conditions dual-only',
    'dual-only no',
    'no no',
  ])
    expect([change, (changes.get(change) ?? 0) > 0]).toEqual([change, true]);
  // Judging everything is the exception.
  expect(again).toBeGreaterThan(0);
  expect(again).toBeLessThan(400);
});

test('the next version of a rule, beside another rule of the club', () => {
  const improved = new Set<boolean>();
  holds(
    fc.property(anySheet, anyRule, anyRule, anyRule, (sheet, old, next, other) => {
      const before = stored(sheet, [
        rule({ ...old, code: 'club.own.any' }),
        rule({ ...other, code: 'club.own.other' }),
      ]);
      const draft = rule({ ...next, weight: old.weight, version: 2 });
      const { answer } = byDryRun(sheet, before, draft);
      const wanted = byJudgingAll(sheet, before, draft);
      if (answer !== wanted)
        throw new Error(
          `${JSON.stringify([old, next, other])}: ${before.decision.answer} becomes ${wanted}, not ${answer}`,
        );
      const rank = ['no', 'ask-officer', 'dual-only', 'yes-with-conditions', 'yes'];
      if (answer !== before.decision.answer)
        improved.add(rank.indexOf(answer) > rank.indexOf(before.decision.answer));
    }),
    400,
  );
  expect(improved).toEqual(new Set([true, false]));
});
