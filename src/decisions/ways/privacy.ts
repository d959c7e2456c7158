import type { SignedIn } from '../../accounts/current-user.js';
import type { FoundWays, Proof, Way, WaysToYes } from '../../rules/ways/index.js';
import { asSeenBy } from '../privacy.js';
import type { StoredDecision } from '../stored-decision.js';

/**
 * The ways as this person may read them. No way touches a closed record (the search leaves those out), but conditions of a
 * person who would be named, and findings on the flight as asked, may tell of one.
 */
export function waysAsSeenBy(
  viewer: SignedIn,
  stored: Pick<StoredDecision, 'sheet' | 'decision'>,
  found: FoundWays,
): WaysToYes {
  const { ways, proofs, laterProof } = found;
  const seen = asSeenBy(viewer, stored.sheet, stored.decision);
  const open = (way: Way, proof: Proof): Way => {
    const { crew, findings, sheet } = proof;
    const { conditions } = asSeenBy(viewer, sheet, {
      ...stored.decision,
      ...{ crew, findings, conditions: way.conditions },
    });
    return { ...way, conditions };
  };
  return {
    ...ways,
    plans: proofs.map((proof) => open(proof.way, proof)),
    later: ways.later && laterProof && { ...ways.later, way: open(ways.later.way, laterProof) },
    none: ways.none && {
      ...ways.none,
      because: ways.none.because.map((one) => {
        const says = seen.findings.find(({ rule }) => rule === one.rule)?.says ?? one.says;
        // What would cure a record that is closed was not looked for.
        return says === one.says ? one : { ...one, says, why: '' };
      }),
    },
  };
}
