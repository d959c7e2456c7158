/** The catalogue says what the engine says, and has a word for everything the rules read. */
import { known } from '../../../src/rules/facts/fact.js';
import {
  ALL_RULES,
  answerSays,
  decide,
  defineRule,
  ruleList,
  rulesetFor,
  type Answer,
  type Body,
  type Finding,
} from '../../../src/rules/index.js';
import {
  ANSWER_SAYS,
  cannotTell,
  factWords,
  NOT_IN_FORCE,
  notJudged,
} from '../../../src/rules/explain/index.js';
import { showFact } from '../../../src/rules/explain/shown/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { startingPolicy } from '../../../src/rules/packs/club/starting-policy.js';

test.each(Object.keys(ANSWER_SAYS) as Answer[])('the sentence of %s is the engine’s', (answer) => {
  expect(ANSWER_SAYS[answer]).toBe(answerSays(answer));
});

/** What the engine says of a rule made for the purpose. */
function said(of: Partial<Pick<Body<'pic.log', 'held'>, 'from' | 'judge'>>): Finding {
  const rule = defineRule<'pic.log', 'held'>({
    ...{ id: 'x.y', title: 'X', weight: 'advice', binds: 'club', reads: ['pic.log'], parameters: [] },
    branches: { held: { status: 'met', says: 'Held.' } },
    bodies: [
      {
        ...{ version: 1, from: null, to: null, citation: { text: 'X', status: 'seen' } },
        judge: (_f, _m, _p, take) => take('held'),
        ...of,
      },
    ],
  });
  const policy = startingPolicy();
  const sheet = baseSheet();
  sheet.people['member-1']!.log = { known: false, because: 'the log is being copied' };
  return decide(sheet, policy, { ...rulesetFor('US', policy), rules: ruleList(rule) }).findings[0]!;
}

test('what the engine adds to the rules is in the catalogue', () => {
  expect(said({ from: '2099-01-01' }).says).toBe(NOT_IN_FORCE);
  const unknown = said({
    judge: (f, _m, _p, take) => {
      f.get('pic.log');
      return take('held');
    },
  });
  expect(unknown.says).toBe(cannotTell('the log is being copied'));
  const failed = said({
    judge: () => {
      throw new Error('a slip');
    },
  });
  expect(failed.says).toBe(notJudged('a slip'));
});

/** Values of facts that the base sheet does not have and that are no lists. */
const EMPTY: Record<string, unknown> = { logBefore: { through: null, sums: [] } };

test('every fact a rule may read has a name and can be shown', () => {
  const sheet = baseSheet();
  const keys = [...new Set(ALL_RULES.flatMap((rule) => rule.reads))].sort();
  expect(keys.length).toBeGreaterThan(15);
  for (const key of keys) {
    expect(factWords(key)).toMatch(/^the \w+’s [a-zA-Z][-a-zA-Z ]+$/);
    const [owner, subject] = key.split('.') as [string, never];
    const facts = owner === 'aircraft' ? sheet.aircraft : sheet.people['member-1']!;
    const fact =
      (facts[subject] as ReturnType<typeof known> | undefined) ?? known(EMPTY[subject] ?? [], sheet.knownAt);
    const shown = showFact(key, fact.value, { fields: new Set(['seats', 'status']), zone: sheet.zone });
    for (const { says } of shown) expect(says).not.toMatch(/undefined|null|NaN|\[object|[{}]/);
  }
});
