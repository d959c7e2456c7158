/** Judges a stored decision again with what it was made with, and compares the bytes. */
import type { SignedIn } from '../../accounts/current-user.js';
import {
  canonicalJson,
  changedSince,
  decide,
  digestOf,
  rulesetAsThen,
  sha256,
  THIS_RELEASE,
  type Decision,
  type Finding,
  type Release,
} from '../../rules/index.js';
import { asSeenBy } from '../privacy.js';
import { DamagedDecision, madeWith, type StoredDecision } from '../stored-decision.js';
import { whyFinding, whyPart, type Circumstances, type Why } from './why.js';

/** One finding that comes out differently when judged again. */
export interface ReplayDifference extends Why {
  rule: string;
  storedVersion: number | null;
  replayedVersion: number | null;
  stored: string | null;
  replayed: string | null;
}

/** A part of the decision besides its findings that differs. */
export interface PartDifference {
  part: string;
  why: string;
}

/** The outcome of judging a stored decision's facts again. */
export interface Replay {
  identical: boolean;
  storedSha256: string;
  replayedSha256: string;
  /** Rules whose versions of today are not those of the stored decision, which was judged with its own. */
  changedRules: string[];
  /** Whether the law's numbers were stored with the decision; else those of today were taken. */
  lawKept: boolean;
  differences: ReplayDifference[];
  parts: PartDifference[];
}

/**
 * Judges the stored facts again, with the rules and numbers of then as far as the release has them, and compares byte for
 * byte. Differences are told as the viewer may read them.
 *
 * @throws DamagedDecision when the stored facts cannot be judged at all.
 */
export function replay(stored: StoredDecision, viewer: SignedIn, release: Release = THIS_RELEASE): Replay {
  try {
    return compare(stored, viewer, release);
  } catch (error) {
    if (error instanceof DamagedDecision) throw error;
    throw new DamagedDecision(
      stored.id,
      stored.memberId,
      `it cannot be judged again (${(error as Error).message})`,
    );
  }
}

function compare(stored: StoredDecision, viewer: SignedIn, release: Release): Replay {
  const { decision: before, sheet, policy, law, rules } = stored;
  const made = madeWith(stored);
  const { ruleset, gone } = rulesetAsThen(made, release);
  const after = decide(sheet, policy, ruleset, before.asOf);
  const bytes = canonicalJson(after);
  const identical = bytes === stored.body;
  const of = (): Circumstances => ({
    ...{ gone, lawKept: law !== null },
    digestFits: digestOf({ sheet, policy, asOf: before.asOf, rules }) === before.digest,
  });
  return {
    identical,
    storedSha256: sha256(stored.body),
    replayedSha256: sha256(bytes),
    changedRules: changedSince(made, release),
    lawKept: law !== null,
    ...(identical ? { differences: [], parts: [] } : differencesOf(stored, after, viewer, of())),
  };
}

function differencesOf(
  { decision: before, sheet }: StoredDecision,
  after: Decision,
  viewer: SignedIn,
  of: Circumstances,
): Pick<Replay, 'differences' | 'parts'> {
  const byRule = (decision: Decision): Map<string, Finding> =>
    new Map(decision.findings.map((finding) => [finding.rule, finding]));
  const [was, is] = [byRule(before), byRule(after)];
  const [toldWas, toldIs] = [before, after].map((one) => byRule(asSeenBy(viewer, sheet, one))) as [
    Map<string, Finding>,
    Map<string, Finding>,
  ];
  const differences = [...new Set([...was.keys(), ...is.keys()])].sort().flatMap((rule) => {
    const pair = { was: was.get(rule), is: is.get(rule) };
    if (canonicalJson(pair.was ?? null) === canonicalJson(pair.is ?? null)) return [];
    const told = { was: toldWas.get(rule), is: toldIs.get(rule) };
    return [
      {
        rule,
        storedVersion: pair.was?.version ?? null,
        replayedVersion: pair.is?.version ?? null,
        stored: inWords(told.was),
        replayed: inWords(told.is),
        ...whyFinding(rule, pair, told, of),
      },
    ];
  });
  const whole = (decision: Decision): Record<string, unknown> => ({ ...decision });
  const parts = [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((part) => part !== 'findings')
    .filter(
      (part) => canonicalJson(whole(before)[part] ?? null) !== canonicalJson(whole(after)[part] ?? null),
    )
    .sort()
    .map((part) => ({ part, why: whyPart(part, differences.length > 0, of) }));
  return { differences, parts: parts.length + differences.length > 0 ? parts : BYTES_ONLY };
}

/** Same content, other bytes: a record that was not written by this program. */
const BYTES_ONLY: PartDifference[] = [
  { part: 'bytes', why: 'Same content in other bytes: the stored text is not in canonical form.' },
];

const inWords = (finding: Finding | undefined): string | null =>
  finding ? `${finding.status}: ${finding.says}` : null;
