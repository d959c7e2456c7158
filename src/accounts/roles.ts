import { SetMetadata } from '@nestjs/common';

/** What people may be in a club; one person may be several. */
export const ROLES = [
  'member',
  'instructor',
  'safety-officer',
  'maintenance-coordinator',
  'administrator',
] as const;

/** One of the club's roles, as stored in `member_roles`. */
export type Role = (typeof ROLES)[number];

/** Metadata keys that the guards read. */
export const ROLES_KEY = 'bellcrank:roles';
export const PUBLIC_KEY = 'bellcrank:public';

/** Lets only people with any of these roles in. Without it, every signed-in person of the club may call the route. */
export const Roles = (...roles: [Role, ...Role[]]) => SetMetadata(ROLES_KEY, roles);

/** Lets anyone in, signed in or not. */
export const Public = () => SetMetadata(PUBLIC_KEY, true);

/** Whether the person has any of the roles. */
export const hasAnyRole = (person: { roles: readonly Role[] }, ...roles: Role[]): boolean =>
  roles.some((role) => person.roles.includes(role));
