import type { Ruleset } from '../engine/judge.js';
import type { Rule } from '../engine/rule.js';
import type { Jurisdiction, Policy } from '../facts/sheet.js';
import { rulesetFor } from '../packs/index.js';
import { RETIRED_RULES } from './retired.js';

/** What a release of the program can judge with. */
export interface Release {
  /** The rules and numbers for new decisions. */
  rulesetFor(jurisdiction: Jurisdiction, policy: Policy): Ruleset;
  /** Rules kept for replays only. */
  retired: readonly Rule[];
}

/** The release that is running. */
export const THIS_RELEASE: Release = { rulesetFor, retired: RETIRED_RULES };
