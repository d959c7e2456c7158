import type { Ruleset } from '../../rules/index.js';
import type { NamedRuleDto } from './timeline.dto.js';

/** Names the rules of a set; each name is made once, however often it is told. */
export function ruleNames({ rules }: Ruleset): (id: string) => NamedRuleDto {
  const names = new Map(rules.map(({ id, title }) => [id, { rule: id, title }]));
  return (id) => names.get(id) ?? { rule: id, title: id };
}
