import type { RuleListed } from '../api/why-types.js';

/** Everything of a rule that it may be found by, in small letters. */
const haystacks = new WeakMap<RuleListed, string>();

function haystack(rule: RuleListed): string {
  let text = haystacks.get(rule);
  if (text === undefined) {
    text = [
      ...[rule.id, rule.title, rule.bindsWord, rule.inForce?.citation.text, rule.inForce?.citation.reading],
      ...rule.branches.map((branch) => branch.says),
      ...rule.numbers.flatMap((number) => [number.title, number.says]),
    ]
      .join(' ')
      .toLowerCase();
    haystacks.set(rule, text);
  }
  return text;
}

/** Does the rule have every word that was typed? */
export function matches(rule: RuleListed, search: string): boolean {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return words.every((word) => haystack(rule).includes(word));
}
