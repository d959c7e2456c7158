/** Runs one case of a table against its rule alone, and says in words what differs from what the case expects. */
import { startOfDay, toInstant, toSeconds } from '../calendar/instants.js';
import { decide } from '../engine/decide.js';
import type { Finding } from '../engine/finding.js';
import type { HorizonLimits } from '../engine/horizon.js';
import { judgeAll, type Ruleset } from '../engine/judge.js';
import type { Effect, Remedy } from '../engine/remedy.js';
import type { Counted } from '../engine/rule.js';
import type { FactSheet, Policy, PolicyValue } from '../facts/sheet.js';
import { rulesetFor } from '../packs/index.js';
import { startingPolicy } from '../packs/club/starting-policy.js';
import type { Case, Expected, ExpectedCounted, ExpectedRemedy } from './case-table.js';
import { proofsAgainst } from './proofs.js';
import { sheetOf } from './sheet-of.js';

/** A case as it came out. */
export interface Outcome {
  sheet: FactSheet;
  policy: Policy;
  /** The pack's parameters with the one rule. */
  ruleset: Ruleset;
  finding: Finding;
}

/** Far enough for every `until` that tables tell; what follows the sun is followed for a month. */
export const CASE_HORIZON: HorizonLimits = { days: 400, stepsPerRule: 120 };

/** A later row for the same id and date replaces the starting one. */
function withPolicy(changes: readonly PolicyValue[]): Policy {
  const kept = startingPolicy().values.filter((value) => !changes.some((change) => change.id === value.id));
  return { values: [...kept, ...changes] };
}

/** The sheet of a case, and the pack that judges it with the one rule alone. Throws when no pack has the rule. */
function laidOut(ruleId: string, one: Case): Omit<Outcome, 'finding'> {
  const { sheet, policy } = sheetOf(one);
  const whole = withPolicy(policy);
  const pack = rulesetFor(sheet.jurisdiction, whole);
  const rules = pack.rules.filter((rule) => rule.id === ruleId);
  if (rules.length !== 1)
    throw new Error(`${rules.length} rules ${ruleId} in the ${sheet.jurisdiction} pack`);
  return { sheet, policy: whole, ruleset: { ...pack, rules } };
}

/** The finding of one rule on a case; the other rules have their own tables. */
export function runCase(ruleId: string, one: Case): Outcome {
  const laid = laidOut(ruleId, one);
  const { sheet, policy, ruleset } = laid;
  const { findings } = decide(sheet, policy, ruleset, sheet.flight.departs, CASE_HORIZON);
  return { ...laid, finding: findings[0]! };
}

/**
 * What is wrong with a case: what differs from its expectation, then what no finding may be (proofs.ts). Empty when all
 * is well.
 */
export function missesOf(ruleId: string, one: Case): string[] {
  if (one.todo !== undefined) return [`to be filled in: ${one.todo}`];
  const outcome = runCase(ruleId, one);
  const misses = differences(one.expect, outcome.finding, outcome.sheet.zone);
  return misses.length > 0 ? misses : proofsAgainst(outcome);
}

/** The quick part of that: what differs from the expectation at the departure, without the search for `until`. */
export function missesAtDeparture(
  ruleId: string,
  { expect: { until: _later, ...now }, ...one }: Case,
): string[] {
  const { sheet, ruleset } = laidOut(ruleId, { ...one, expect: now });
  const { finding } = judgeAll(sheet, ruleset, toSeconds(sheet.flight.departs)).judged[0]!;
  return differences(now, finding, sheet.zone);
}

function differences(wanted: Expected, finding: Finding, zone: string): string[] {
  const misses: string[] = [];
  const same = (what: string, expected: unknown, found: unknown): void => {
    const [a, b] = [JSON.stringify(expected), JSON.stringify(found)];
    if (a !== b) misses.push(`${what} should be ${a} and is ${b}`);
  };
  if (finding.status !== wanted.status) same('status', wanted.status, `${finding.status}: ${finding.says}`);
  if (wanted.branch !== undefined) same('branch', wanted.branch, finding.branch);
  for (const part of [wanted.says ?? []].flat())
    if (!finding.says.includes(part))
      misses.push(`the sentence should say "${part}" and says "${finding.says}"`);
  if (wanted.until !== undefined) same('until', instantOf(wanted.until, zone), finding.until);
  if (wanted.counted) misses.push(...countedAmiss(wanted.counted, finding.counted));
  if (wanted.remedies) misses.push(...remediesAmiss(wanted.remedies, finding.remedies));
  if (wanted.conditions) {
    const { conditions } = finding;
    const told = wanted.conditions.every((part, index) => conditions[index]?.includes(part));
    if (!told || conditions.length !== wanted.conditions.length)
      same('conditions', wanted.conditions, conditions);
  }
  return misses;
}

function countedAmiss(wanted: NonNullable<Expected['counted']>, found: readonly Counted[]): string[] {
  const whole = wanted.map((one) => (typeof one === 'string' ? { id: one } : one));
  const [ids, counted] = [whole.map(({ id }) => id), found.map(({ id }) => id)];
  if (ids.join() !== counted.join())
    return [`counted should be ${JSON.stringify(ids)} and is ${JSON.stringify(counted)}`];
  return whole.flatMap(({ id, on, what }: ExpectedCounted, index) => {
    const one = found[index]!;
    const right = (on === undefined || on === one.on) && (what === undefined || one.what.includes(what));
    return right ? [] : [`${id} should count as ${JSON.stringify({ on, what })}: ${JSON.stringify(one)}`];
  });
}

function remediesAmiss(wanted: NonNullable<Expected['remedies']>, found: readonly Remedy[]): string[] {
  const whole = wanted.map((one) => (typeof one === 'string' ? { act: one } : one));
  const [acts, offered] = [whole.map(({ act }) => act), found.map(({ act }) => act)];
  if (acts.join() !== offered.join())
    return [`remedies should be ${JSON.stringify(acts)} and is ${JSON.stringify(offered)}`];
  return whole.flatMap(({ act, title, by, changes }: ExpectedRemedy, index) => {
    const remedy = found[index]!;
    return [
      ...(title === undefined || remedy.title.includes(title)
        ? []
        : [`${act} should say "${title}": "${remedy.title}"`]),
      ...(changes === undefined || remedy.effects.some((effect) => holds(changedBy(effect), changes))
        ? []
        : [`${act} should change ${JSON.stringify(changes)}: ${JSON.stringify(remedy.effects)}`]),
      ...(by === undefined || remedy.by === by ? [] : [`${act} should be by ${by}, not ${remedy.by}`]),
    ];
  });
}

const changedBy = (effect: Effect): unknown => ('fields' in effect ? effect.fields : effect.value);

/** Does a value have all that is wanted of it? */
function holds(found: unknown, wanted: unknown): boolean {
  if (typeof wanted !== 'object' || wanted === null || Array.isArray(wanted))
    return JSON.stringify(found) === JSON.stringify(wanted);
  return Object.entries(wanted).every(([key, value]) =>
    holds((found as Record<string, unknown> | null | undefined)?.[key], value),
  );
}

const instantOf = (until: string | null, zone: string): string | null =>
  until?.length === 10 ? toInstant(startOfDay(until, zone)) : until;
