import type { Decision, Finding } from '../api/types.js';
import { Link } from '../parts/link.js';
import { me } from '../session/session.js';
import { countedAt, readsOthers } from './types.js';

/** Whose log a rule read for a decision; null: nobody's. */
function logReadBy({ reads }: Finding, { crew, memberId }: Decision): string | null {
  if (reads.includes('pic.log')) return crew.picId;
  return reads.includes('member.log') ? memberId : null;
}

/** Opens what a finding counted to the entries of the log, for who may read it. */
export function CountedEntries({ decision, finding }: { decision: Decision; finding: Finding }) {
  const whose = logReadBy(finding, decision);
  const reader = me.value;
  const ids = finding.counted.map(({ id }) => id);
  if (whose === null || !reader || ids.length === 0) return null;
  if (whose !== reader.memberId && !readsOthers(reader)) return null;
  return (
    <p class="counted-entries">
      <Link to={countedAt(whose, reader.memberId, ids)}>Open what was counted in the log</Link>
    </p>
  );
}
