import type { Instant } from './calendar/instants.js';
import { DEFAULT_HORIZON, decide } from './engine/decide.js';
import type { Decision } from './engine/finding.js';
import type { HorizonLimits } from './engine/horizon.js';
import type { FactSheet, Policy } from './facts/sheet.js';
import { rulesetFor } from './packs/index.js';

/**
 * The engine's front door: what the club's jurisdiction and policy say of a flight, as of `asOf` (its departure unless
 * given). Same facts and policy give the same bytes, whenever and wherever it runs.
 */
export function judge(
  facts: FactSheet,
  policy: Policy,
  asOf: Instant = facts.flight.departs,
  limits: HorizonLimits = DEFAULT_HORIZON,
): Decision {
  return decide(facts, policy, rulesetFor(facts.jurisdiction, policy), asOf, limits);
}
