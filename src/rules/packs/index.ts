/** Rule packs by jurisdiction. A club names its jurisdiction; the club pack comes with every one. */
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

/** The rules and parameters that judge a club's flights: its jurisdiction's law, then the club's own. */
export function rulesetFor(jurisdiction: Jurisdiction, policy: Policy): Ruleset {
  const law = LAW[jurisdiction];
  const rules = [...law.rules, ...CLUB_RULES];
  const book = new ParameterBook([...law.parameters, ...CLUB_PARAMETERS], policy);
  return { rules: [...rules, parametersChecked(book, declaredBy(rules))], book };
}

/** Every rule of every pack, for the rule book and the check-values command. */
export const ALL_RULES: readonly Rule[] = [...US_RULES, ...EU_RULES, ...CA_RULES, ...CLUB_RULES];
/** The policy parameters a club may set. */
export const POLICY_PARAMETERS: readonly Parameter[] = CLUB_PARAMETERS;
