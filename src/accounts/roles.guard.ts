import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { roleNeeded } from './accounts.problems.js';
import type { SignedInRequest } from './current-user.js';
import { hasAnyRole, type Role, ROLES_KEY } from './roles.js';

/** Holds routes marked `@Roles(…)` against the roles in the access token. Runs after `JwtAuthGuard`. */
@Injectable()
export class RolesGuard implements CanActivate {
  constructor(private readonly reflector: Reflector) {}

  canActivate(context: ExecutionContext): boolean {
    const wanted = this.reflector.getAllAndOverride<Role[] | undefined>(ROLES_KEY, [
      context.getHandler(),
      context.getClass(),
    ]);
    if (wanted === undefined) return true;
    const { user } = context.switchToHttp().getRequest<SignedInRequest>();
    if (user === undefined || !hasAnyRole(user, ...wanted)) throw roleNeeded(...wanted);
    return true;
  }
}
