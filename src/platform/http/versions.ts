/** Optimistic locking over HTTP (RFC 9110, section 13.1.1): a row's version is its strong ETag, `"7"`. */
import {
  createParamDecorator,
  Injectable,
  type CallHandler,
  type ExecutionContext,
  type NestInterceptor,
} from '@nestjs/common';
import { ApiHeader } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { map, type Observable } from 'rxjs';
import { ProblemException } from '../problems/problem-exception.js';
import { withMethodDecorators } from './method-decorators.js';

/** The ETag of a row version. */
export const etagOf = (rowVersion: number): string => `"${rowVersion}"`;

/**
 * The row version an If-Match header names.
 * @throws ProblemException 428 when it is missing or `*`, 412 when it is no ETag of ours (weak ones never match).
 */
export function parseIfMatch(header: string | undefined): number {
  const value = header?.trim();
  if (!value || value === '*') throw new ProblemException('if-match-missing', { field: 'If-Match' });
  const version = /^"(\d{1,9})"$/.exec(value)?.[1];
  if (version === undefined) throw new ProblemException('edit-conflict', { field: 'If-Match' });
  return Number(version);
}

/**
 * Refuses an edit that was made on an older state.
 * @throws ProblemException 412 with the present version as `currentVersion`.
 */
export function requireVersion(current: number, expected: number): void {
  if (current === expected) return;
  throw new ProblemException('edit-conflict', {
    extensions: { currentVersion: current },
    headers: { ETag: etagOf(current) },
  });
}

/** `parseIfMatch` and `requireVersion` in one. */
export function requireMatch(header: string | undefined, current: number): void {
  requireVersion(current, parseIfMatch(header));
}

const readIfMatch = createParamDecorator((_data: unknown, context: ExecutionContext) =>
  parseIfMatch(context.switchToHttp().getRequest<Request>().headers['if-match']),
);

/** Handler parameter: the row version the client edited, out of If-Match. Also describes the header in the API. */
export function IfMatch(): ParameterDecorator {
  return withMethodDecorators(
    readIfMatch(),
    ApiHeader({
      name: 'If-Match',
      required: true,
      description: 'ETag of the state that was edited, such as "7"',
      schema: { type: 'string' },
    }),
  );
}

/** Sets the ETag of every answer that is one record with a `rowVersion`. Express then answers If-None-Match with 304. */
@Injectable()
export class EtagInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    if (context.getType() !== 'http') return next.handle();
    const response = context.switchToHttp().getResponse<Response>();
    return next.handle().pipe(
      map((body: unknown) => {
        const version = (body as { rowVersion?: unknown } | null | undefined)?.rowVersion;
        if (Number.isInteger(version) && !response.headersSent && !response.hasHeader('ETag')) {
          response.setHeader('ETag', etagOf(version as number));
        }
        return body;
      }),
    );
  }
}
