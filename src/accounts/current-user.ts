import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import type { Role } from './roles.js';

/** Who is asking: what the access token says, after it has been verified. */
export interface SignedIn {
  clubId: string;
  memberId: string;
  accountId: string;
  roles: Role[];
}

/** An express request once `JwtAuthGuard` has let it through. */
export type SignedInRequest = Request & { user?: SignedIn };

/** The signed-in person as a handler's parameter. Use it only on routes that are not `@Public()`. */
export const CurrentUser = createParamDecorator((_data: unknown, context: ExecutionContext): SignedIn => {
  const { user } = context.switchToHttp().getRequest<SignedInRequest>();
  if (user === undefined) throw new Error('@CurrentUser() on a public route: nobody is signed in');
  return user;
});
