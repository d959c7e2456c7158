/** Which marks (fact_marks, as note_fact_change() writes them) say that remembered facts no longer stand. */

/** What is remembered: of the club, the fleet's ids in order, a person, an aircraft. */
export type Remembered =
  { kind: 'club' } | { kind: 'fleet' } | { kind: 'person'; id: string } | { kind: 'aircraft'; id: string };

/** A type is told by its registration and model, which others' facts name too. */
const A_TYPE = /^aircraft:[^:]+:type$/;
/** A member's row: those who book are named among an aircraft's reservations. */
const A_MEMBER = /^person:[^:]+:standing$/;

/**
 * Whether a change of `subject` may have changed what is remembered. Rather once too often: what is gathered anew is never wrong.
 * Held against gathering anew, whatever happens, in test/standing/remembered.spec.ts.
 */
export function touches(subject: string, what: Remembered): boolean {
  // Of the club itself: its zone, rules of its own, checkouts, airfields, changes of equipment.
  if (subject.startsWith('club:')) return true;
  switch (what.kind) {
    case 'club':
      return subject.startsWith('policy:') || subject.startsWith('airfield:');
    case 'fleet':
      return A_TYPE.test(subject);
    case 'person':
      return subject.startsWith(`person:${what.id}:`) || A_TYPE.test(subject);
    case 'aircraft':
      return subject.startsWith(`aircraft:${what.id}:`) || A_TYPE.test(subject) || A_MEMBER.test(subject);
  }
}
