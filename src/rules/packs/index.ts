/** Rule packs by jurisdiction. A club names its jurisdiction; the club pack comes with every one. */
import { rulesOfClub } from '../club-rules/compile.js';
import { ParameterBook } from '../engine/parameters.js';
import type { Rule } from '../engine/rule.js';
import { declaredBy, parametersChecked } from '../engine/stale.js';
import type { Ruleset } from '../engine/judge.js';
import type { Jurisdiction, Policy } from '../facts/sheet.js';
import type { Parameter } from '../parameters/parameter.js';
import { CA_PARAMETERS, CA_RULES } from './ca/index.js';
import { CLUB_PARAMETERS, CLUB_RULES } from './club/index.js';
import { EU_PARAMETERS, EU_RULES } from './eu/index.js';
import { US_PARAMETERS, US_RULES } from './us/index.js';

const LAW: Record<Jurisdiction, { rules: readonly Rule[]; parameters: readonly Parameter[] }> = {
  US: { rules: US_RULES, parameters: US_PARAMETERS },
  EU: { rules: EU_RULES, parameters: EU_PARAMETERS },
  CA: { rules: CA_RULES, parameters: CA_PARAMETERS },
};

/** Rulesets already made, by the policy they stand on: one question asks for the same one for every aircraft. */
const made = new WeakMap<Policy, Map<Jurisdiction, Ruleset>>();

/**
 * The rules and parameters that judge a club's flights: its jurisdiction's law, then the club's own. A policy is a value:
 * once it has been handed in it must not be changed in place.
 */
export function rulesetFor(jurisdiction: Jurisdiction, policy: Policy): Ruleset {
  const known = made.get(policy)?.get(jurisdiction);
  if (known) return known;
  const law = LAW[jurisdiction];
  const rules = [...law.rules, ...CLUB_RULES, ...rulesOfClub(policy.rules ?? [])];
  const book = new ParameterBook([...law.parameters, ...CLUB_PARAMETERS], policy);
  const ruleset = { rules: [...rules, parametersChecked(book, declaredBy(rules))], book };
  made.set(policy, (made.get(policy) ?? new Map<Jurisdiction, Ruleset>()).set(jurisdiction, ruleset));
  return ruleset;
}

/** Every rule of every pack once, for the rule book and the check-values command; what packs share as the first has it. */
export const ALL_RULES: readonly Rule[] = [...US_RULES, ...EU_RULES, ...CA_RULES, ...CLUB_RULES].filter(
  (rule, index, all) => all.findIndex(({ id }) => id === rule.id) === index,
);
/** The policy parameters a club may set. */
export const POLICY_PARAMETERS: readonly Parameter[] = CLUB_PARAMETERS;
