import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { AccessTokens } from './access-tokens.js';
import type { SignedInRequest } from './current-user.js';
import { notSignedIn } from './accounts.problems.js';
import { PUBLIC_KEY } from './roles.js';

/** Every route needs a valid access token in `Authorization: Bearer …` (RFC 6750), unless it is `@Public()`. */
@Injectable()
export class JwtAuthGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly tokens: AccessTokens,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const open = this.reflector.getAllAndOverride<boolean>(PUBLIC_KEY, [
      context.getHandler(),
      context.getClass(),
    ]);
    if (open) return true;
    const request = context.switchToHttp().getRequest<SignedInRequest>();
    const bearer = /^Bearer ([\w.-]+)$/i.exec(request.headers.authorization ?? '');
    const person = bearer === null ? null : await this.tokens.read(bearer[1]!);
    if (person === null) throw notSignedIn();
    request.user = person;
    return true;
  }
}
