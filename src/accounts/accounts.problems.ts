import { defineProblems } from '../platform/problems/problem-catalogue.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { Role } from './roles.js';

defineProblems(
  {
    code: 'role-needed',
    status: 403,
    title: 'Not your role',
    detail: 'An administrator of your club gives out roles.',
  },
  {
    code: 'sign-in-refused',
    status: 401,
    title: 'Sign-in refused',
    // One text for all reasons, so that nobody learns which clubs, addresses and locks exist.
    detail:
      'Club, e-mail address and password do not go together, or the account is locked for a while after five wrong ' +
      'passwords. Check them, wait a quarter of an hour, or ask an administrator for a new password.',
  },
  {
    code: 'refresh-refused',
    status: 401,
    title: 'Sign in again',
    detail: 'This refresh token no longer counts. Sign in with your password.',
  },
  {
    code: 'weak-password',
    status: 400,
    title: 'Password too easy to guess',
    detail: 'The password is the e-mail address. Choose another, such as four unrelated words.',
  },
  { code: 'own-account', status: 409, title: 'Your own account', detail: 'Ask another administrator.' },
);

/** 401: no access token, or one that no longer counts (RFC 6750 section 3). */
export const notSignedIn = (): ProblemException =>
  new ProblemException('not-signed-in', {
    detail:
      'Sign in, or trade your refresh token for a new access token, and send it as "Authorization: Bearer …".',
    headers: { 'WWW-Authenticate': 'Bearer' },
  });

/** 403: signed in, but the club has not given this person any of the roles. */
export const roleNeeded = (...roles: Role[]): ProblemException =>
  new ProblemException('role-needed', {
    detail: `This needs the role ${roles.join(' or ')}. An administrator of your club gives out roles.`,
  });

/** 401: unknown club, unknown address, wrong password or locked account. */
export const signInRefused = (): ProblemException => new ProblemException('sign-in-refused');

/** 401: a refresh token that is unknown, expired, revoked or already used. */
export const refreshRefused = (): ProblemException => new ProblemException('refresh-refused');

/**
 * Refuses a password that names the account; its length is the request's validation.
 * @throws 400 `weak-password` naming the field
 */
export function assertGoodPassword(password: string, email: string, field: string): void {
  const bare = password.trim().toLowerCase();
  if (bare === email || bare === email.split('@')[0]) throw new ProblemException('weak-password', { field });
}
