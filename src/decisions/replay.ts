import { canonicalJson, decide, rulesetFor, sha256, versionsOf, type Decision } from '../rules/index.js';
import type { StoredDecision } from './decision-store.js';

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

/** Judges the stored facts again and compares byte for byte. */
export function replay(stored: StoredDecision): Replay {
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
    differences: identical ? [] : differencesOf(before, after),
  };
}

function differencesOf(before: Decision, after: Decision): ReplayDifference[] {
  const rules = new Set([...before.findings, ...after.findings].map((finding) => finding.rule));
  return [...rules].sort().flatMap((rule) => {
    const was = before.findings.find((finding) => finding.rule === rule);
    const is = after.findings.find((finding) => finding.rule === rule);
    if (was && is && canonicalJson(was) === canonicalJson(is)) return [];
    return [
      {
        rule,
        storedVersion: was?.version ?? null,
        replayedVersion: is?.version ?? null,
        stored: was ? `${was.status}: ${was.says}` : null,
        replayed: is ? `${is.status}: ${is.says}` : null,
      },
    ];
  });
}
