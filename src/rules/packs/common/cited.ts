import type { Citation, Rule } from '../../engine/rule.js';

/** Under which law of a country a rule that holds everywhere stands there, by rule id. */
export type Citations = Readonly<Record<string, Citation>>;

/**
 * The same rules under another country's law: ids, versions and judgement are the same, the citation is its own. A rule
 * of law without a citation is refused; the club's rules cite the club and stay as they are.
 */
export function citedBy(rules: readonly Rule[], citations: Citations): readonly Rule[] {
  return rules.map((rule) => {
    const citation = citations[rule.id];
    if (citation)
      return {
        ...rule,
        bodies: rule.bodies.map((body) => ({ ...body, citation })),
        // Earlier forms were cited there as this one is.
        ...(rule.superseded && { superseded: citedBy(rule.superseded, citations) }),
      };
    if (rule.weight === 'law') throw new Error(`no law of this country is cited for ${rule.id}`);
    return rule;
  });
}
