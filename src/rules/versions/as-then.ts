/**
 * Rebuilds the ruleset that a stored decision was made with: of each rule the form whose versions the decision names, and
 * the law's numbers as they were stored with it. What this release no longer has is told, never passed over.
 */
import { versionsOf } from '../engine/decide.js';
import type { Ruleset } from '../engine/judge.js';
import { formsOf, type Rule } from '../engine/rule.js';
import { declaredBy, parametersChecked } from '../engine/stale.js';
import type { Jurisdiction, Policy } from '../facts/sheet.js';
import { bookFrom, type LawBook } from './law-book.js';
import { THIS_RELEASE, type Release } from './release.js';

/** What a stored decision says of the rules it was made with. */
export interface MadeWith {
  jurisdiction: Jurisdiction;
  policy: Policy;
  /** Versions of the rules' bodies by rule id. */
  rules: Record<string, readonly number[]>;
  /** Rule ids in the order of the decision's findings. */
  order: readonly string[];
  /** The law's numbers; null for a decision stored before they were kept. */
  law: LawBook | null;
}

/** A rule whose stored versions this release does not have. */
export interface Gone {
  rule: string;
  stored: readonly number[];
  /** The versions judged with instead; null when no form of the rule is left, and it is left out. */
  instead: readonly number[] | null;
  /** What the form judged with says of its change. */
  changed: string | null;
}

/** The ruleset of a stored decision. */
export interface AsThen {
  ruleset: Ruleset;
  gone: Gone[];
  /** Rules of today that the decision did not know. They are left out. */
  since: string[];
}

/** Rebuilds the ruleset from what is stored and what the release has. */
export function rulesetAsThen(made: MadeWith, release: Release = THIS_RELEASE): AsThen {
  const today = release.rulesetFor(made.jurisdiction, made.policy);
  const book = made.law === null ? today.book : bookFrom(made.law, made.policy);
  const gone: Gone[] = [];
  const pick = (newest: Rule): Rule => {
    const stored = made.rules[newest.id]!;
    const forms = formsOf(newest);
    const form = forms.find((one) => sameVersions(versions(one), stored));
    if (form) return form;
    gone.push({
      ...{ rule: newest.id, stored, instead: versions(newest) },
      changed: newest.changed ?? null,
    });
    return newest;
  };
  const checkId = parametersChecked(book, []).id;
  const byId = new Map([...release.retired, ...today.rules].map((rule) => [rule.id, rule]));
  const ids = [...new Set([...made.order, ...Object.keys(made.rules)])].filter((id) => id in made.rules);
  const rules = ids.flatMap((id): Rule[] => {
    const newest = byId.get(id);
    if (newest) return [id === checkId ? newest : pick(newest)];
    gone.push({ rule: id, stored: made.rules[id]!, instead: null, changed: null });
    return [];
  });
  // This one is made for the numbers that the other rules declare, so it is made anew for theirs.
  const others = rules.filter((rule) => rule.id !== checkId);
  const checked = rules.map((rule) =>
    rule.id === checkId ? pick(parametersChecked(book, declaredBy(others))) : rule,
  );
  return {
    ruleset: { rules: checked, book },
    gone,
    since: today.rules.map((rule) => rule.id).filter((id) => !(id in made.rules)),
  };
}

/** Rules whose versions of today are not those of the decision, in order of id. */
export function changedSince(made: MadeWith, release: Release = THIS_RELEASE): string[] {
  const today = versionsOf(release.rulesetFor(made.jurisdiction, made.policy));
  return [...new Set([...Object.keys(made.rules), ...Object.keys(today)])]
    .filter((id) => !sameVersions(today[id] ?? [], made.rules[id] ?? []))
    .sort();
}

const versions = (rule: Rule): number[] => rule.bodies.map((body) => body.version);

const sameVersions = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((version, index) => version === b[index]);
