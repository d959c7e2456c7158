/** The decision: findings, answer, horizon, digest. */
import { toInstant, toSeconds, type Instant } from '../calendar/instants.js';
import type { FactSheet, Policy } from '../facts/sheet.js';
import { answerSays, conditionsOf } from './combine.js';
import { canonicalJson, canonicalOf, canonicalOnce, canonicalSheet, sha256 } from './digest.js';
import { CAUTION, type Decision, type Finding } from './finding.js';
import { searchHorizon, type HorizonLimits } from './horizon.js';
import type { Ruleset } from './judge.js';
import { weigh } from './weigh.js';

export const DEFAULT_HORIZON: HorizonLimits = { days: 400, stepsPerRule: 400 };

/**
 * Decides the flight of the sheet as of `asOf` (its departure unless given). Same sheet, policy and rules give the same
 * bytes, whenever and wherever it runs.
 */
export function decide(
  sheet: FactSheet,
  policy: Policy,
  ruleset: Ruleset,
  asOf: Instant = sheet.flight.departs,
  limits: HorizonLimits = DEFAULT_HORIZON,
): Decision {
  const departs = toSeconds(asOf);
  const weighed = weigh(sheet, ruleset, departs);
  const { horizon, untils } = searchHorizon(sheet, ruleset, departs, weighed, limits);
  const findings: Finding[] = weighed.judged.map(({ finding }, index) => {
    const until = untils[index];
    return { ...finding, until: until === null || until === undefined ? null : toInstant(until) };
  });
  const conditions = conditionsOf(findings);
  return {
    schema: 'bellcrank.decision/1',
    answer: weighed.answer,
    says: answerSays(weighed.answer),
    asOf: toInstant(departs),
    knownAt: sheet.knownAt,
    crew: weighed.crew,
    findings,
    conditions,
    horizon,
    caution: CAUTION,
    digest: sha256(
      canonicalOf({
        sheet: canonicalSheet(sheet),
        policy: canonicalOnce(policy),
        asOf: canonicalJson(toInstant(departs)),
        rules: canonicalOnce(versionsOf(ruleset)),
      }),
    ),
  };
}

const versions = new WeakMap<Ruleset, Readonly<Record<string, number[]>>>();

/** Rule ids with the versions of their bodies: what a replay must match. The same object for the same ruleset. */
export function versionsOf(ruleset: Ruleset): Readonly<Record<string, number[]>> {
  let known = versions.get(ruleset);
  if (known === undefined) {
    known = Object.fromEntries(
      ruleset.rules.map((rule) => [rule.id, rule.bodies.map((body) => body.version)]),
    );
    versions.set(ruleset, known);
  }
  return known;
}
