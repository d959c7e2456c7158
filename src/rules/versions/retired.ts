import { ruleList, type Rule } from '../engine/rule.js';
import { canadaPackComplete } from './past/canada-pack-complete.js';
import { easaPackComplete } from './past/easa-pack-complete.js';

/**
 * Rules that no pack has any more, as their last release had them: decisions made with them are judged again with them.
 * A rule that is taken out of its pack moves here; it is never deleted.
 */
export const RETIRED_RULES: readonly Rule[] = ruleList(easaPackComplete, canadaPackComplete);
