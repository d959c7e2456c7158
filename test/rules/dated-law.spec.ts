/**
 * A decision as of a date uses the law of that date: one sheet is judged on the last day of the old law and on the first
 * of the new. Every dated body and every dated number of law in the packs must stand in the list.
 */
import type { Jurisdiction } from '../../src/rules/index.js';
import { lawBookOf, rulesetFor, startingPolicy } from '../../src/rules/index.js';
import { addDays } from '../../src/rules/calendar/dates.js';
import { Scene } from '../../src/cli/check-values/scene.js';
import { missesOf, runCase } from '../../src/rules/workshop/run-case.js';
import type { Case, Expected } from '../../src/rules/workshop/case-table.js';
import { CANADA, EUROPE, NUMBERS, UNITED_STATES, type Change } from './dated-law/changes.js';

const LISTED: Record<Jurisdiction, readonly Change[]> = { US: UNITED_STATES, EU: EUROPE, CA: CANADA };
const ALL = Object.entries(LISTED).flatMap(([jurisdiction, changes]) =>
  changes.map((change) => ({ jurisdiction: jurisdiction as Jurisdiction, ...change })),
);

/** At eleven in the morning of the club's zone. */
const onDay = (
  { jurisdiction, given, source, what }: Change & { jurisdiction: Jurisdiction },
  on: string,
  expect: Expected,
): Case => ({
  name: what,
  source,
  given: { jurisdiction, asOf: `${on}T18:00:00Z`, ...given },
  expect,
});

describe.each(ALL)('$rule from $on: $what [$source; $seen]', (change) => {
  const { rule, on, before, after } = change;
  const old = onDay(change, addDays(on, -1), before);
  const now = onDay(change, on, after);

  test('the day before', () => expect(missesOf(rule, old)).toEqual([]));
  test('the day', () => expect(missesOf(rule, now)).toEqual([]));
  test('the finding names the law of its day', () => {
    const found = [old, now].map((one) => runCase(rule, one).finding);
    // What changes is the text of the law, one of its numbers, or that there is a law at all.
    const law = found.map(({ version, citation, parameters, branch }) =>
      branch === 'not-in-force' ? null : { version, citation: citation.text, parameters },
    );
    expect(law[0]).not.toEqual(law[1]);
  });
});

test.each(NUMBERS)('$parameter from $on [$source; $seen]', ({ parameter, on, before, after }) => {
  const numberOn = (day: string): number => new Scene(day).parameters([parameter]).number(parameter);
  expect([numberOn(addDays(on, -1)), numberOn(on)]).toEqual([before, after]);
});

describe.each(['US', 'EU', 'CA'] as const)('the %s pack', (jurisdiction) => {
  const ruleset = rulesetFor(jurisdiction, startingPolicy());
  const listed = LISTED[jurisdiction];

  test('has no dated body that is not in the list', () => {
    const dated = ruleset.rules.flatMap(({ id, bodies }) =>
      bodies.flatMap(({ from, to }) => [from, to].flatMap((on) => (on === null ? [] : [`${id} ${on}`]))),
    );
    const known = new Set(listed.map(({ rule, on }) => `${rule} ${on}`));
    expect(dated.filter((one) => !known.has(one))).toEqual([]);
  });

  test('has no dated number of law that is not in the list', () => {
    const dated = lawBookOf(ruleset).flatMap(({ id, values }) =>
      values.flatMap(({ from }) => (from === null ? [] : [`${id} ${from}`])),
    );
    const known = new Set([
      ...listed.flatMap(({ on, parameters }) => (parameters ?? []).map((id) => `${id} ${on}`)),
      ...NUMBERS.map(({ parameter, on }) => `${parameter} ${on}`),
    ]);
    expect(dated.filter((one) => !known.has(one))).toEqual([]);
  });
});
