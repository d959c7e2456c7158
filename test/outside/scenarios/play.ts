/** Plays a scenario: the rule through time, the whole answer through time, and the ways to yes. */
import { Temporal } from 'temporal-polyfill';
import {
  judge,
  rulesetFor,
  stepsOf,
  timelineOf,
  toInstant,
  toSeconds,
  type Decision,
  type FactSheet,
  type Finding,
  type Rule,
  type Ruleset,
} from '../../../src/rules/index.js';
import { findWays, type FoundWays } from '../../../src/rules/ways/ways.js';
import type { CaseLine, Scenario, Step, WayLine } from './read.js';
import { inOrder, knownBy, laidOver, POLICY, withAdded } from './world.js';

/** A run of departures as it came out, or as it should. */
export interface Run {
  from: string;
  is: string;
}

export const rulesetOf = ({ jurisdiction }: Scenario): Ruleset => rulesetFor(jurisdiction, POLICY);

export function ruleOf(scenario: Scenario): Rule {
  const rule = rulesetOf(scenario).rules.find(({ id }) => id === scenario.rule);
  if (!rule) throw new Error(`the ${scenario.jurisdiction} pack has no rule ${scenario.rule}`);
  return rule;
}

/** The facts of the timeline, known at its beginning. */
export function sheetOfTimeline(scenario: Scenario): FactSheet {
  const { from, to } = scenario.timeline!;
  return laidOver(inOrder(scenario.jurisdiction, from, to), scenario.given, from);
}

const lengthOf = ({ flight }: FactSheet): number => toSeconds(flight.arrives) - toSeconds(flight.departs);

/** Midnight at the beginning of a date in the club's zone; reckoned here, not by the engine. */
export const midnight = (date: string, zone: string): number =>
  Temporal.PlainDate.from(date).toZonedDateTime(zone).epochMilliseconds / 1000;

/** The first departure after the last one whose flight is over on `date`. */
export const dayOver = (date: string, sheet: FactSheet): number =>
  midnight(Temporal.PlainDate.from(date).add({ days: 1 }).toString(), sheet.zone) - lengthOf(sheet);

/** Where a step of the scenario ends. */
export function endOf(step: Step, sheet: FactSheet): number {
  if (step.through !== undefined) return dayOver(step.through, sheet);
  if (step.before !== undefined) return midnight(step.before, sheet.zone);
  return toSeconds(step.until!);
}

const refused = ({ is }: Step): boolean => is === 'short' || is === 'unknown';

/** What the scenario asks of the rule: its verdicts. Branches are looked at where the edges are judged. */
export function runsWanted({ timeline }: Scenario, sheet: FactSheet): Run[] {
  let from = toSeconds(timeline!.from);
  const runs: Run[] = [];
  timeline!.steps.forEach((step, index, all) => {
    if (runs.at(-1)?.is !== step.is) runs.push({ from: toInstant(from), is: step.is });
    if (index < all.length - 1) from = endOf(step, sheet);
  });
  return runs;
}

/**
 * Edges that lie within the tolerance of what is wanted are taken for those: only what hangs on the sun has any. No more is
 * shown than tells that it is too much.
 */
export function settled<T extends { from: string }>(
  found: T[],
  wanted: readonly T[],
  { timeline }: Scenario,
): T[] {
  return found.slice(0, wanted.length + 2).map((run, index) => {
    const want = wanted[index];
    const off = want ? Math.abs(toSeconds(run.from) - toSeconds(want.from)) : Infinity;
    return off <= timeline!.toleranceSeconds ? { ...run, from: want!.from } : run;
  });
}

/** The rule's verdict over the span, runs of one verdict joined. */
export function runsFound(scenario: Scenario, sheet: FactSheet): Run[] {
  const { timeline } = scenario;
  const span = { from: toSeconds(timeline!.from), to: toSeconds(timeline!.to) };
  const { steps, cutAt } = stepsOf(ruleOf(scenario), sheet, rulesetOf(scenario), span, 4000);
  if (cutAt !== null) throw new Error(`not followed beyond ${toInstant(cutAt)}`);
  const runs: Run[] = [];
  for (const { from, verdict } of steps)
    if (runs.at(-1)?.is !== verdict.status) runs.push({ from: toInstant(from), is: verdict.status });
  return runs;
}

/** A run of the answer: may it be flown, and what stands in the way. */
export interface AnswerRun {
  from: string;
  yes: boolean;
  inTheWay: string[];
}

/** Is the rule one that can stand in the way? */
const advises = (scenario: Scenario): boolean => ruleOf(scenario).weight === 'advice';

export function answersWanted(scenario: Scenario, sheet: FactSheet): AnswerRun[] {
  const { timeline } = scenario;
  let from = toSeconds(timeline!.from);
  const runs: AnswerRun[] = [];
  timeline!.steps.forEach((step, index, all) => {
    const own = refused(step) && !advises(scenario) ? [scenario.rule] : [];
    const inTheWay = step.inTheWay ?? own;
    const last = runs.at(-1);
    if (!last || last.inTheWay.join() !== inTheWay.join())
      runs.push({ from: toInstant(from), yes: inTheWay.length === 0, inTheWay });
    if (index < all.length - 1) from = endOf(step, sheet);
  });
  return runs;
}

export const isYes = (answer: string): boolean => answer === 'yes' || answer === 'yes-with-conditions';

export function answersFound(scenario: Scenario, sheet: FactSheet): AnswerRun[] {
  const { from, to, besides } = scenario.timeline!;
  const span = { from: toSeconds(from), to: toSeconds(to) };
  const { steps, cutAt } = timelineOf(sheet, rulesetOf(scenario), span);
  if (cutAt !== null) throw new Error(`not followed beyond ${toInstant(cutAt)}`);
  const runs: AnswerRun[] = [];
  for (const step of steps) {
    const inTheWay = step.inTheWay.filter((rule) => rule !== besides);
    const yes = isYes(step.answer) || (step.inTheWay.length > 0 && inTheWay.length === 0);
    const run = { from: toInstant(step.from), yes, inTheWay };
    const last = runs.at(-1);
    if (!last || last.yes !== run.yes || last.inTheWay.join() !== run.inTheWay.join()) runs.push(run);
  }
  return runs;
}

/** The whole decision for a departure, judged on its own. */
export function judgedAt(sheet: FactSheet, departs: number): Decision {
  return judge(sheet, POLICY, toInstant(departs), { days: 1, stepsPerRule: 4 });
}

export const findingOf = ({ findings }: Decision, rule: string): Finding =>
  findings.find((finding) => finding.rule === rule)!;

/** The facts of one case, known the day before. */
export function sheetOfCase(scenario: Scenario, line: CaseLine): FactSheet {
  const before = Temporal.Instant.from(line.departs).subtract({ hours: 24 }).toString();
  const given = { ...scenario.given, ...line.given };
  const sheet = laidOver(inOrder(scenario.jurisdiction, before, line.departs), given, line.departs);
  return withAdded(sheet, line.add);
}

/** The facts as known when somebody asks for a way. */
export function sheetOfWay(scenario: Scenario, line: WayLine): FactSheet {
  const sheet = inOrder(scenario.jurisdiction, line.asked, line.asked);
  const today = Temporal.Instant.from(line.asked).toZonedDateTimeISO(sheet.zone).toPlainDate().toString();
  return laidOver(sheet, { ...knownBy(scenario.given, today), ...line.given }, line.departs);
}

export const waysFor = (sheet: FactSheet): FoundWays =>
  findWays({ sheet, policy: POLICY, limits: { nodes: 20_000 } });

/** First departure from the sheet's own at which the rule says something else; null within nine years. */
export function changesAt(scenario: Scenario, sheet: FactSheet): number | null {
  const from = toSeconds(sheet.flight.departs);
  const span = { from, to: from + 9 * 366 * 86_400 };
  const { steps } = stepsOf(ruleOf(scenario), sheet, rulesetOf(scenario), span, 4000);
  const first = steps[0]!.verdict.status;
  return steps.find(({ verdict }) => verdict.status !== first)?.from ?? null;
}
