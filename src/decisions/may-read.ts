/** Whose decisions somebody asks for and reads: one's own, officers everybody's, an instructor those of whom they teach. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import { isOwn, OFFICERS, READERS } from '../members/members.access.js';
import { teaches } from '../members/students.js';
import { ProblemException } from '../platform/problems/index.js';
import type { Instant } from '../rules/index.js';

/** Whose flight it is, and who is to instruct on it. */
export interface Whose {
  memberId: string;
  instructorId?: string | null;
}

/** Whether by role and name alone there is a way to it: asked before anything is looked up. */
export const mightRead = (user: SignedIn, memberId: string): boolean =>
  isOwn(user, memberId) || hasAnyRole(user, ...READERS);

/**
 * Whether the decision is this person's to read. The instructor named for a flight reads it before there is any bond: a first
 * lesson begins with the question whether it may be flown.
 */
export async function mayRead(em: EntityManager, user: SignedIn, of: Whose, now: Instant): Promise<boolean> {
  if (isOwn(user, of.memberId) || hasAnyRole(user, ...OFFICERS)) return true;
  if (!hasAnyRole(user, 'instructor')) return false;
  return of.instructorId === user.memberId || teaches(em, user, of.memberId, now);
}

/** Refuses the question of who may not ask it. @throws ProblemException 403 `forbidden` naming `memberId` */
export async function assertMayAsk(
  em: EntityManager,
  user: SignedIn,
  of: Whose,
  now: Instant,
): Promise<void> {
  if (!(await mayRead(em, user, of, now))) throw notToAsk(user);
}

/** @returns the refusal; what would open the question is in it. */
export const notToAsk = (user: SignedIn): ProblemException =>
  new ProblemException('forbidden', {
    status: 403,
    title: 'Not yours to ask',
    detail: hasAnyRole(user, 'instructor')
      ? 'Ask for yourself, for somebody you teach, or for a flight with yourself as its instructor. A member is your student with a flight booked with you, or with something you signed within a year.'
      : 'Ask for yourself. Instructors may ask for their students, safety officers and administrators for anybody.',
    field: 'memberId',
  });
