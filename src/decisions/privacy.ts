/**
 * What a member may read of somebody else's record through a decision: whether a rule is met, and no more.
 *
 * Whoever names an instructor or a second pilot gets findings about that person's medical, log and papers. Those are
 * open to safety officers and administrators; to anyone else the record behind such a finding is hidden, but one's own, and to
 * an instructor the record of the pilot whose flight they were let in to (may-read.ts). The stored decision keeps everything.
 */
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import { OFFICERS } from '../members/members.access.js';
import { COVERED, coveredCondition, type Hidden } from '../rules/explain/index.js';
import { personInRole, type Crew, type Decision, type FactSheet, type Finding } from '../rules/index.js';

const ROLES = ['pic', 'member', 'instructor'] as const;

/** The people whose record a finding tells of. */
export function recordsBehind(
  finding: Pick<Finding, 'reads'>,
  of: { sheet: FactSheet; crew: Crew },
): string[] {
  const ids = ROLES.filter((role) => finding.reads.some((key) => key.startsWith(`${role}.`)))
    .map((role) => personInRole(of.sheet, of.crew, role))
    .filter((id): id is string => id !== null);
  return [...new Set(ids)];
}

/** Whose records the viewer reads, of whom an instructor was let in to; null: everybody's. */
export function recordsOpenTo(viewer: SignedIn, taughtIds: readonly string[]): string[] | null {
  if (hasAnyRole(viewer, ...OFFICERS)) return null;
  return hasAnyRole(viewer, 'instructor') ? [viewer.memberId, ...taughtIds] : [viewer.memberId];
}

/**
 * Of people whose record is told of, the one hidden from the viewer; null when nobody's is.
 *
 * @param of `taughtIds`: those an instructor was let in to, whose records they read.
 */
export function hiddenAmong(
  viewer: SignedIn,
  people: readonly string[],
  of: { nameOf: (id: string) => string | undefined; taughtIds: readonly string[] },
): Hidden | null {
  const { nameOf, taughtIds } = of;
  const open = recordsOpenTo(viewer, taughtIds);
  const other = open && people.find((id) => !open.includes(id));
  if (!other) return null;
  return { name: nameOf(other) ?? 'The other person', andOwn: people.includes(viewer.memberId) };
}

/** Whose record behind a finding is hidden from the viewer; null when nobody's is. */
export const hiddenBehind = (
  viewer: SignedIn,
  finding: Pick<Finding, 'reads'>,
  of: { sheet: FactSheet; crew: Crew },
): Hidden | null =>
  hiddenAmong(viewer, recordsBehind(finding, of), {
    nameOf: (id) => of.sheet.people[id]?.name,
    taughtIds: [of.sheet.flight.memberId],
  });

/** The decision as this person may read it. */
export function asSeenBy(viewer: SignedIn, sheet: FactSheet, decision: Decision): Decision {
  const open = new Set<string>();
  const covered = new Map<string, string>();
  const findings = decision.findings.map((finding) => {
    const hidden = hiddenBehind(viewer, finding, { sheet, crew: decision.crew });
    for (const condition of finding.conditions) {
      if (hidden === null) open.add(condition);
      else covered.set(condition, coveredCondition(hidden));
    }
    return hidden === null ? finding : covering(finding, hidden);
  });
  const conditions = decision.conditions.map((text) => (open.has(text) ? text : (covered.get(text) ?? text)));
  return { ...decision, findings, conditions: [...new Set(conditions)] };
}

/** Parameters go too: which medical's months were read tells its class and the age. */
function covering(finding: Finding, hidden: Hidden): Finding {
  const { status } = finding;
  return {
    ...finding,
    branch: status,
    says: COVERED[status](hidden),
    counted: [],
    conditions: finding.conditions.length > 0 ? [coveredCondition(hidden)] : [],
    remedies: [],
    parameters: [],
    until: null,
  };
}
