/** The rules of every pack by the name they are locked under, and the numbers they are tried with. */
import {
  bookFrom,
  lawBookOf,
  rulesetFor,
  startingPolicy,
  THIS_RELEASE,
  type LawBook,
  type Rule,
} from '../../../src/rules/index.js';
import { parametersChecked } from '../../../src/rules/engine/stale.js';

const JURISDICTIONS = ['US', 'EU', 'CA'] as const;

/** The law's numbers of every pack today. */
export const lawToday = (): LawBook => {
  const all = JURISDICTIONS.flatMap((jurisdiction) => lawBookOf(rulesetFor(jurisdiction, startingPolicy())));
  return [...new Map(all.map((parameter) => [parameter.id, parameter])).values()].sort((a, b) =>
    a.id < b.id ? -1 : 1,
  );
};

/** The numbers as locked, so that a rule is told apart from them; with those that are new since. */
export const lawOf = (locked: LawBook): LawBook => {
  const known = new Set(locked.map(({ id }) => id));
  return [...locked, ...lawToday().filter(({ id }) => !known.has(id))];
};

/** The rules of every pack by name. A pack that takes a rule of another with its own citations has a form of its own. */
export function rulesByName(law: LawBook): [name: string, rule: Rule][] {
  const policy = startingPolicy();
  const checked = parametersChecked(
    bookFrom(law, policy),
    law.map(({ id }) => id),
  );
  const named = new Map<string, Rule>([...THIS_RELEASE.retired, checked].map((rule) => [rule.id, rule]));
  for (const jurisdiction of JURISDICTIONS)
    for (const rule of rulesetFor(jurisdiction, policy).rules) {
      const known = named.get(rule.id);
      if (!known) named.set(rule.id, rule);
      else if (known !== rule && rule.id !== checked.id) named.set(`${rule.id} (${jurisdiction})`, rule);
    }
  return [...named];
}
