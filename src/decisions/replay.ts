import type { SignedIn } from '../accounts/current-user.js';
import {
  canonicalJson,
  decide,
  rulesetFor,
  sha256,
  versionsOf,
  type Decision,
  type FactSheet,
  type Finding,
} from '../rules/index.js';
import type { StoredDecision } from './decision-store.js';
import { asSeenBy } from './privacy.js';

/** One finding that comes out differently when judged again. */
export interface ReplayDifference {
  rule: string;
  storedVersion: number | null;
  replayedVersion: number | null;
  stored: string | null;
  replayed: string | null;
}

/** The outcome of judging a stored decision's facts again with the rules of today. */
export interface Replay {
  identical: boolean;
  storedSha256: string;
  replayedSha256: string;
  /** Rules whose versions are not those of the stored decision. */
  changedRules: string[];
  differences: ReplayDifference[];
}

/** Judges the stored facts again and compares byte for byte; differences are told as the viewer may read them. */
export function replay(stored: StoredDecision, viewer: SignedIn): Replay {
  const before = JSON.parse(stored.body) as Decision;
  const ruleset = rulesetFor(stored.sheet.jurisdiction, stored.policy);
  const after = decide(stored.sheet, stored.policy, ruleset, before.asOf);
  const versions = versionsOf(ruleset);
  const ids = new Set([...Object.keys(stored.rules), ...Object.keys(versions)]);
  const bytes = canonicalJson(after);
  const identical = bytes === stored.body;
  return {
    identical,
    storedSha256: sha256(stored.body),
    replayedSha256: sha256(bytes),
    changedRules: [...ids]
      .filter((id) => canonicalJson(stored.rules[id] ?? null) !== canonicalJson(versions[id] ?? null))
      .sort(),
    differences: identical ? [] : differencesOf(before, after, stored.sheet, viewer),
  };
}

function differencesOf(
  before: Decision,
  after: Decision,
  sheet: FactSheet,
  viewer: SignedIn,
): ReplayDifference[] {
  const rules = new Set([...before.findings, ...after.findings].map((finding) => finding.rule));
  const told = (decision: Decision): Map<string, Finding> =>
    new Map(asSeenBy(viewer, sheet, decision).findings.map((finding) => [finding.rule, finding]));
  const toldBefore = told(before);
  const toldAfter = told(after);
  return [...rules].sort().flatMap((rule) => {
    const was = before.findings.find((finding) => finding.rule === rule);
    const is = after.findings.find((finding) => finding.rule === rule);
    if (was && is && canonicalJson(was) === canonicalJson(is)) return [];
    return [
      {
        rule,
        storedVersion: was?.version ?? null,
        replayedVersion: is?.version ?? null,
        stored: inWords(toldBefore.get(rule)),
        replayed: inWords(toldAfter.get(rule)),
      },
    ];
  });
}

const inWords = (finding: Finding | undefined): string | null =>
  finding ? `${finding.status}: ${finding.says}` : null;
