/**
 * The law's numbers as a release declared them. They are stored with every decision, once for all decisions of a release,
 * so that a later correction of a value, or a later check of one, does not reach into a decision made before it.
 */
import { canonicalJson, sha256 } from '../engine/digest.js';
import type { Ruleset } from '../engine/judge.js';
import { ParameterBook } from '../engine/parameters.js';
import { declaredBy } from '../engine/stale.js';
import type { Policy } from '../facts/sheet.js';
import { POLICY_PARAMETERS } from '../packs/index.js';
import type { Parameter } from '../parameters/parameter.js';

/** Declarations of the law's parameters, in order of id. */
export type LawBook = readonly Parameter[];

/** The law's parameters that the rules of a set declare. The club's own values are in the policy. */
export function lawBookOf({ rules, book }: Ruleset): LawBook {
  const ids = [...new Set(declaredBy(rules))].filter((id) => !id.startsWith('club.')).sort();
  return ids
    .map((id) => book.declaration(id))
    .filter((declared): declared is Parameter => declared !== undefined);
}

/** A law book as it is stored. */
export interface WrittenLaw {
  law: LawBook;
  body: string;
  digest: string;
}

/** The books written last. There is one a jurisdiction; a club's own rules may read less or more of the law. */
const written: WrittenLaw[] = [];
const MOST_WRITTEN = 12;

/** The law book of a ruleset in canonical bytes. Written out once, not once for each question. */
export function writtenLawOf(ruleset: Ruleset): WrittenLaw {
  const law = lawBookOf(ruleset);
  const before = written.find(
    (one) => one.law.length === law.length && one.law.every((parameter, index) => parameter === law[index]),
  );
  if (before) return before;
  const body = canonicalJson(law);
  const one = { law, body, digest: sha256(body) };
  written.push(one);
  if (written.length > MOST_WRITTEN) written.shift();
  return one;
}

/** A book to judge with: the law as kept, the club's policy over it. */
export const bookFrom = (law: LawBook, policy: Policy): ParameterBook =>
  new ParameterBook([...law, ...POLICY_PARAMETERS], policy);
