import { type ExecutionContext, Injectable } from '@nestjs/common';
import { ThrottlerGuard, type ThrottlerModuleOptions } from '@nestjs/throttler';
import { ProblemException } from '../platform/problems/problem-exception.js';

/** Requests an address may make to one route in a minute: plenty for a club house behind one address. Counted per replica. */
export const LIMITS: ThrottlerModuleOptions = [{ name: 'default', ttl: 60_000, limit: 1200 }];

/** For routes where passwords and refresh tokens could be tried. */
export const PASSWORD_LIMIT = { default: { ttl: 60_000, limit: 20 } };

/** Counts requests by address and answers with a problem document. */
@Injectable()
export class RequestLimitGuard extends ThrottlerGuard {
  protected override throwThrottlingException(
    _context: ExecutionContext,
    { timeToBlockExpire }: { timeToBlockExpire: number },
  ): Promise<void> {
    throw new ProblemException('too-many-requests', {
      detail: `Too many requests from your address. Try again in ${timeToBlockExpire} s.`,
      headers: { 'Retry-After': String(timeToBlockExpire) },
    });
  }
}
