/** Properties that hold for every rule of every pack, on arbitrary sheets. */
import fc from 'fast-check';
import {
  ALL_RULES,
  applyRemedy,
  blocks,
  canonicalJson,
  decide,
  judgeAll,
  rulesetFor,
  toInstant,
  toSeconds,
  weigh,
  type Answer,
  type Decision,
  type FactSheet,
  type Finding,
  type Policy,
  type Ruleset,
} from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { ADVERSITIES } from './engine-adversity.js';
import { anySheet, runs, SEED } from './engine-sheets.js';

const KEPT_UNDER = 'club.airworthiness.kept-under';
/** As a new club starts, with the paper recorded without which nothing flies under law that is not held here. */
const POLICY: Policy = {
  values: startingPolicy().values.map((one) =>
    one.id === KEPT_UNDER ? { ...one, value: 'Maintenance programme' } : one,
  ),
};
/** Checkouts of equipment and conditions start off; the European club asks for all of them. */
const ASKED: Record<string, boolean | number> = {
  'club.model-checkout.like-models': true,
  'club.equipment-checkout.glass-panel': true,
  'club.equipment-checkout.autopilot': true,
  'club.condition-checkout.night': true,
  'club.condition-checkout.mountain-ft': 5300,
  'club.condition-checkout.short-field-ft': 3000,
  'club.condition-checkout.crosswind-kt': 9,
};
const ASKING: Policy = {
  values: POLICY.values.map((one) => ({ ...one, value: ASKED[one.id] ?? one.value })),
};
const policyOf = (sheet: FactSheet): Policy => (sheet.jurisdiction === 'EU' ? ASKING : POLICY);
const RULESETS = {
  US: rulesetFor('US', POLICY),
  EU: rulesetFor('EU', ASKING),
  CA: rulesetFor('CA', POLICY),
};
const RANK: Record<Answer, number> = {
  yes: 4,
  'yes-with-conditions': 3,
  'dual-only': 2,
  'ask-officer': 1,
  no: 0,
};
const rulesOf = (sheet: FactSheet): Ruleset => RULESETS[sheet.jurisdiction];
/** Steps enough never to be cut short: a cut gives an `until` at which nothing need change. */
const HORIZON = { days: 60, stepsPerRule: 5000 };

/** Runs a property; a failure names the cause and the seed and path that replay it, not the whole sheet. */
function holds<T>(property: fc.IProperty<T>, numRuns: number): void {
  const out = fc.check(property, { seed: SEED, numRuns: runs(numRuns), endOnFailure: true });
  if (!out.failed) return;
  const cause = out.errorInstance instanceof Error ? out.errorInstance.message : String(out.errorInstance);
  throw new Error(
    `${cause}\n(seed ${out.seed}, path "${out.counterexamplePath}", after ${out.numRuns} sheets)`,
  );
}

/** What a finding says, without the sentences that count days and without the ids of evidence. */
const verdict = (finding: Finding): string =>
  `${finding.rule} ${finding.status} ${finding.conditions.join('|')}`;

const answerOf = (sheet: FactSheet): Answer =>
  weigh(sheet, rulesOf(sheet), toSeconds(sheet.flight.departs)).answer;
const judgeNow = (sheet: FactSheet): ReturnType<typeof judgeAll> =>
  judgeAll(sheet, rulesOf(sheet), toSeconds(sheet.flight.departs));

describe(`the engine on arbitrary sheets (seed ${SEED})`, () => {
  test('the sheets reach every answer, and most rules both ways', () => {
    const answers = new Map<string, number>();
    const statuses = new Map<string, Set<string>>();
    for (const sheet of fc.sample(anySheet, { seed: SEED, numRuns: 600 })) {
      const answer = answerOf(sheet);
      answers.set(answer, (answers.get(answer) ?? 0) + 1);
      for (const { finding } of judgeNow(sheet).judged) {
        statuses.set(finding.rule, (statuses.get(finding.rule) ?? new Set()).add(finding.status));
      }
    }
    expect([...answers.keys()].sort()).toEqual(Object.keys(RANK).sort());
    const both = ALL_RULES.filter(
      ({ id }) => statuses.get(id)?.has('short') || statuses.get(id)?.has('unknown'),
    );
    expect(both.length / ALL_RULES.length).toBeGreaterThan(0.75);
  });

  test('no rule fails on any sheet', () => {
    holds(
      fc.property(anySheet, (sheet) => {
        const errors = judgeNow(sheet).judged.filter(({ finding }) => finding.status === 'error');
        expect(errors.map(({ finding }) => `${finding.rule}: ${finding.says}`)).toEqual([]);
      }),
      400,
    );
  });

  test('a change for the worse never improves the answer', () => {
    holds(
      fc.property(anySheet, fc.constantFrom(...ADVERSITIES), fc.nat(), (sheet, adversity, pick) => {
        const worse = adversity.apply(sheet, pick);
        if (worse === null) return;
        const [before, after] = [answerOf(sheet), answerOf(worse)];
        if (RANK[after] > RANK[before]) {
          const now = new Map(judgeNow(worse).judged.map(({ finding }) => [finding.rule, finding]));
          const changed = judgeNow(sheet)
            .judged.map(({ finding }) => [finding, now.get(finding.rule)!] as const)
            .filter(([was, is]) => blocks(was) && !blocks(is))
            .map(([was, is]) => `${was.rule}: ${was.status} (${was.says}) became ${is.status} (${is.says})`);
          throw new Error(`${before} became ${after} when ${adversity.name}: ${changed.join('; ')}`);
        }
      }),
      4000,
    );
  });

  test('each remedy cures its own finding', () => {
    holds(
      fc.property(anySheet, (sheet) => {
        const ruleset = rulesOf(sheet);
        const { crew, judged } = judgeNow(sheet);
        judged.forEach(({ finding }, index) => {
          for (const remedy of finding.remedies) {
            const cured = applyRemedy(sheet, crew, remedy);
            const after = judgeAll(
              cured,
              { ...ruleset, rules: [ruleset.rules[index]!] },
              toSeconds(cured.flight.departs),
            ).judged[0]!.finding;
            if (after.status !== 'met' && after.status !== 'not-applicable') {
              throw new Error(
                `${finding.rule} (${finding.says}) offers ${remedy.act}, after which it is ${after.status}: ${after.says}`,
              );
            }
          }
        });
      }),
      1500,
    );
  });

  test('the answer changes only at its horizon, and each verdict only at its until', () => {
    holds(
      fc.property(
        anySheet,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
        (sheet, parts) => {
          const ruleset = rulesOf(sheet);
          const at = toSeconds(sheet.flight.departs);
          const decision = decide(sheet, policyOf(sheet), ruleset, toInstant(at), HORIZON);
          const holdsTo = toSeconds(decision.horizon.until ?? decision.horizon.searchedTo);
          for (const later of [...parts.map((part) => at + Math.floor(part * (holdsTo - at))), holdsTo - 1]) {
            if (later < at || later >= holdsTo) continue;
            const answer = weigh(sheet, ruleset, later).answer;
            if (answer !== decision.answer)
              throw new Error(
                `${decision.answer} until ${toInstant(holdsTo)}, but ${answer} already at ${toInstant(later)}`,
              );
          }
          expectUntils(sheet, decision, at, parts);
          if (decision.horizon.until !== null) {
            expect(weigh(sheet, ruleset, holdsTo).answer).toBe(decision.horizon.becomes);
            expect(decision.horizon.becomes).not.toBe(decision.answer);
          }
        },
      ),
      150,
    );
  });

  test('the order of records and of rules, and the way through JSON, change nothing', () => {
    holds(
      fc.property(anySheet, fc.integer(), (sheet, salt) => {
        const ruleset = rulesOf(sheet);
        const at = toSeconds(sheet.flight.departs);
        const found = (of: FactSheet, set: Ruleset): Map<string, string> => {
          const { answer, judged } = weigh(of, set, at);
          const findings = judged.map(({ finding }) => [finding.rule, canonicalJson(finding)] as const);
          return new Map([['the answer', answer], ...findings]);
        };
        const before = found(sheet, ruleset);
        const differing = (after: Map<string, string>): string[] =>
          [...before].filter(([rule, finding]) => after.get(rule) !== finding).map(([rule]) => rule);
        const mixed = { ...ruleset, rules: shuffled(ruleset.rules, salt) };
        expect(differing(found(shuffledSheet(sheet, salt), mixed))).toEqual([]);

        const again = JSON.parse(JSON.stringify(sheet)) as FactSheet;
        expect(canonicalJson(again)).toBe(canonicalJson(sheet));
        expect(differing(found(again, ruleset))).toEqual([]);
      }),
      1000,
    );
  });

  test('the same sheet gives the same decision, byte for byte', () => {
    holds(
      fc.property(anySheet, (sheet) => {
        const one = decide(sheet, policyOf(sheet), rulesOf(sheet), sheet.flight.departs, {
          days: 10,
          stepsPerRule: 100,
        });
        const copy = JSON.parse(JSON.stringify(sheet)) as FactSheet;
        const fresh = rulesetFor(sheet.jurisdiction, JSON.parse(JSON.stringify(policyOf(sheet))) as Policy);
        const two = decide(copy, policyOf(copy), fresh, copy.flight.departs, { days: 10, stepsPerRule: 100 });
        expect(canonicalJson(two)).toBe(canonicalJson(one));
      }),
      80,
    );
  });
});

/** Up to its `until` (or the end of the search) a finding keeps its verdict; at it, the verdict is another. */
function expectUntils(sheet: FactSheet, decision: Decision, at: number, parts: readonly number[]): void {
  const ruleset = rulesOf(sheet);
  const end = at + HORIZON.days * 86_400;
  decision.findings.forEach((finding, index) => {
    const alone = { ...ruleset, rules: [ruleset.rules[index]!] };
    const judge = (when: number): string => verdict(judgeAll(sheet, alone, when).judged[0]!.finding);
    const until = finding.until === null ? null : toSeconds(finding.until);
    // Null claims that time alone never changes the verdict: it is tried as far as the search went.
    const known = until ?? end;
    for (const later of [...parts.map((part) => at + Math.floor(part * (known - at))), known - 1]) {
      if (later >= at && later < known && judge(later) !== verdict(finding))
        throw new Error(
          `${finding.rule} is ${verdict(finding)} until ${String(finding.until)}, but ${judge(later)} at ${toInstant(later)}`,
        );
    }
    // Beyond the end of the search `until` is the next point at which the verdict may change: a claim up to it only.
    if (until !== null && until < end && judge(until) === verdict(finding))
      throw new Error(`${finding.rule} should change at ${String(finding.until)} and does not`);
  });
}

/** A permutation that depends on nothing but the salt. */
function shuffled<T>(list: readonly T[], salt: number): T[] {
  return list
    .map((one, index) => ({
      one,
      key: Math.imul(index + 1, 2_654_435_761) ^ Math.imul(salt + index, 40_503),
    }))
    .sort((a, b) => a.key - b.key)
    .map(({ one }) => one);
}

/** Shuffles every list of records in the sheet; the route keeps its order, which means something. */
function shuffledSheet(sheet: FactSheet, salt: number): FactSheet {
  const facts = <T extends object>(of: T): T =>
    Object.fromEntries(
      Object.entries(of).map(([key, fact]: [string, unknown]) => {
        const list = (fact as { value?: unknown } | null)?.value;
        return [key, Array.isArray(list) ? { ...(fact as object), value: shuffled(list, salt) } : fact];
      }),
    ) as T;
  return {
    ...sheet,
    flight: { ...sheet.flight, airspace: sheet.flight.airspace && shuffled(sheet.flight.airspace, salt) },
    people: Object.fromEntries(Object.entries(sheet.people).map(([id, person]) => [id, facts(person)])),
    aircraft: facts(sheet.aircraft),
  };
}
