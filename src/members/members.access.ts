import { type SignedIn } from '../accounts/current-user.js';
import { hasAnyRole, type Role } from '../accounts/roles.js';
import { defineProblems } from '../platform/problems/problem-catalogue.js';
import { ProblemException } from '../platform/problems/problem-exception.js';

defineProblems(
  { code: 'not-yours', status: 403, title: 'Not yours', detail: 'This belongs to another member.' },
  {
    code: 'own-paper',
    status: 403,
    title: 'Your own paper',
    detail: 'Nobody verifies their own papers. Show the original to another officer.',
  },
  {
    code: 'verified-paper',
    status: 403,
    title: 'Paper is verified',
    detail: 'An officer has verified this paper, so only an officer deletes it. Ask one.',
  },
  {
    code: 'last-administrator',
    status: 409,
    title: 'Last administrator',
    detail: 'A club keeps at least one administrator. Give the role to somebody else first.',
  },
  {
    code: 'class-does-not-fit',
    status: 422,
    title: 'Class does not fit the category',
    detail: 'Choose a class of the category, as 14 CFR 61.5(b) lists them.',
  },
  {
    code: 'not-an-instructor',
    status: 422,
    title: 'Not an instructor of the club',
    detail: 'Name a member with the role instructor, or leave it out when somebody outside the club gave it.',
  },
);

/**
 * Roles that read about members. An instructor reads papers, log, practice and decisions of their students alone (students.ts), and
 * decisions on lessons with themselves as instructor (decisions/may-read.ts); checkouts, which any of them may be asked to sign, of everybody.
 */
export const READERS: Role[] = ['instructor', 'safety-officer', 'administrator'];
/** Roles that keep members' papers in order. */
export const OFFICERS: Role[] = ['safety-officer', 'administrator'];

/** Whether it is the person's own record. */
export const isOwn = (person: SignedIn, memberId: string): boolean => person.memberId === memberId;

/** Lets the member and the given roles through; asked before anything is looked up. @throws 403 `not-yours` */
export function assertOwnOr(person: SignedIn, memberId: string, roles: Role[]): void {
  if (isOwn(person, memberId) || hasAnyRole(person, ...roles)) return;
  throw new ProblemException('not-yours', {
    detail: `This belongs to another member. Besides the member, it is open to: ${roles.join(', ')}.`,
  });
}
