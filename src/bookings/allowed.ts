/** Whether a decision allows a booking, and what setting a club rule aside leaves behind. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import type { Decided } from '../decisions/decision-store.js';
import { flagOn } from '../decisions/policy-flag.js';
import { newId } from '../platform/ids.js';
import { ProblemException } from '../platform/problems/index.js';
import { blocks, type Policy } from '../rules/index.js';
import { notBookable } from './bookings.problems.js';

/** Whether the answer is a yes, with or without conditions. */
export const isYes = ({ decision }: Decided): boolean =>
  decision.answer === 'yes' || decision.answer === 'yes-with-conditions';

/** The problem that refuses the booking, or null when it may be made. */
export function refusal(
  decided: Decided,
  policy: Policy,
  user: SignedIn,
  wantsOverride: boolean,
): ProblemException | null {
  const { decision, sheet } = decided;
  if (isYes(decided)) return null;
  // An answer that waits for an instructor's name leaves the law's findings open: no override makes up for the name.
  const officerCan =
    decision.answer === 'ask-officer' &&
    decision.findings.filter(blocks).every((finding) => finding.overridable);
  if (!officerCan || !wantsOverride) return notBookable(decided, officerCan, user);
  if (!hasAnyRole(user, 'safety-officer')) {
    return forbidden('Only a safety officer may set a club rule aside. Ask one to book it for you.');
  }
  const { memberId, instructorId, secondPilotId } = sheet.flight;
  if ([memberId, instructorId, secondPilotId].includes(user.memberId))
    return forbidden('Nobody sets a club rule aside for a flight of their own. Ask another safety officer.');
  if (!flagOn(policy, 'club.override.allowed', sheet))
    return forbidden("The club's policy does not allow overrides.");
  return null;
}

/** Keeps which rules an officer set aside for a booking, of which decision and why. Nothing where the answer was a yes. */
export async function keepOverride(
  em: EntityManager,
  officer: SignedIn,
  of: { bookingId: string; decided: Decided; reason: string | undefined },
): Promise<void> {
  const { bookingId, decided, reason } = of;
  if (reason === undefined || decided.decision.answer !== 'ask-officer') return;
  const rules = decided.decision.findings.filter(blocks).map((finding) => finding.rule);
  await em.query(
    `INSERT INTO overrides (club_id, id, booking_id, decision_id, rule_id, weight, officer_id, reason)
     SELECT bellcrank_club(), o.id, $3, $4, o.rule_id, 'club', $5, $6 FROM unnest($1::uuid[], $2::text[]) AS o (id, rule_id)`,
    [rules.map(() => newId()), rules, bookingId, decided.id, officer.memberId, reason],
  );
  await em.query(
    `INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after)
     VALUES (bellcrank_club(), $1, 'override', 'bookings', $2, $3)`,
    [officer.memberId, bookingId, JSON.stringify({ rules, reason, decisionId: decided.id })],
  );
}

const forbidden = (detail: string): ProblemException =>
  new ProblemException('forbidden', { status: 403, title: 'Override refused', detail, field: 'override' });
