/** Why a finding, or another part of a decision, comes out differently when it is judged again. */
import { canonicalJson, type Finding, type Gone } from '../../rules/index.js';

/** Kinds of reasons, the ones known for certain first. */
export const REASONS = [
  /** The program no longer has the version that the decision was made with. */
  'version-gone',
  /** The program no longer has the rule, in any version. */
  'rule-gone',
  /** The digest of the decision does not fit its facts, policy and versions: the record was altered. */
  'record-altered',
  /** The law's numbers were not kept with the decision, and are others now. */
  'numbers-changed',
  /** Nothing that is stored explains it. */
  'unexplained',
] as const;
export type Reason = (typeof REASONS)[number];

/** Why, as a code and in a sentence. */
export interface Why {
  reason: Reason;
  why: string;
}

/** What is known of a replay besides its findings. */
export interface Circumstances {
  gone: readonly Gone[];
  /** Whether the law's numbers were stored with the decision. */
  lawKept: boolean;
  /** Whether the decision's digest is that of its facts, policy and versions. */
  digestFits: boolean;
}

/** A finding before and after. */
export interface Pair {
  was: Finding | undefined;
  is: Finding | undefined;
}

/**
 * Why a finding differs.
 *
 * @param pair the findings themselves; from them the reason is found.
 * @param told the findings as the reader may see them; only these are quoted.
 */
export function whyFinding(rule: string, pair: Pair, told: Pair, of: Circumstances): Why {
  const gone = of.gone.find((one) => one.rule === rule);
  if (gone) return whyGone(gone, pair);
  if (!of.digestFits) return { reason: 'record-altered', why: ALTERED };
  if (!of.lawKept && numbersDiffer(rule, pair))
    return { reason: 'numbers-changed', why: whyNumbers(told.was, told.is) };
  return {
    reason: 'unexplained',
    why:
      'The versions, the numbers and the facts are those of the decision. Either the stored record was altered, or the ' +
      'program judges otherwise without a new version. Verify the chain of decisions.',
  };
}

/** Why a part of the decision besides its findings differs. */
export function whyPart(part: string, findingsDiffer: boolean, of: Circumstances): string {
  if (part === 'digest' && of.gone.length > 0)
    return 'It is made of the versions of the rules too, and they are not all those of the decision.';
  if (findingsDiffer) return 'It follows from the findings, and they are not all the same.';
  if (!of.digestFits) return ALTERED;
  return 'No finding differs: the stored record was altered, or the program puts findings together otherwise than it did.';
}

const ALTERED =
  "The decision's digest is not that of its facts, policy and versions: the stored record was altered. Verify the chain of decisions.";

function whyGone({ stored, instead, changed }: Gone, { was, is }: Pair): Why {
  const then = inWords(stored);
  if (instead === null)
    return {
      reason: 'rule-gone',
      why: `This program has no such rule any more; the decision was made with ${then} of it, and it was left out.`,
    };
  const same =
    was && is && canonicalJson({ ...was, version: 0 }) === canonicalJson({ ...is, version: 0 })
      ? ' It says the same.'
      : '';
  const note = changed === null ? '' : ` What changed: ${changed}`;
  return {
    reason: 'version-gone',
    why: `This program no longer has ${then} of the rule; it was judged with ${inWords(instead)} instead.${note}${same}`,
  };
}

const inWords = (versions: readonly number[]): string =>
  versions.length === 1 ? `version ${versions[0]}` : `versions ${versions.join(' and ')}`;

/** The rule that watches over the numbers reads none by itself: whatever it says rests on all of them. */
const numbersDiffer = (rule: string, { was, is }: Pair): boolean =>
  rule === 'law.parameters_checked' ||
  canonicalJson(was?.parameters ?? []) !== canonicalJson(is?.parameters ?? []);

function whyNumbers(was: Finding | undefined, is: Finding | undefined): string {
  const after = new Map((is?.parameters ?? []).map((read) => [read.id, read]));
  const changed = (was?.parameters ?? []).flatMap((before) => {
    const now = after.get(before.id);
    if (now && canonicalJson(now) === canonicalJson(before)) return [];
    const then = `${before.id} was ${String(before.value)} (${before.reference})`;
    return [now ? `${then} and is ${String(now.value)} (${now.reference})` : `${then} and is not read`];
  });
  const which = changed.length > 0 ? `: ${changed.join('; ')}` : '';
  return `The law's numbers were not yet kept with decisions when this one was stored, and they are others now${which}.`;
}
