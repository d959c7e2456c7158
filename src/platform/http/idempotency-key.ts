import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { ApiHeader } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { ProblemException } from '../problems/problem-exception.js';
import { withMethodDecorators } from './method-decorators.js';

/**
 * Checks an Idempotency-Key header: 1 to 128 visible ASCII characters.
 * @throws ProblemException 400 naming the header.
 */
export function idempotencyKey(header: string | undefined): string {
  if (header !== undefined && /^[\x21-\x7e]{1,128}$/.test(header)) return header;
  throw new ProblemException('idempotency-key-missing', { field: 'Idempotency-Key' });
}

const readKey = createParamDecorator((_data: unknown, context: ExecutionContext) =>
  idempotencyKey(context.switchToHttp().getRequest<Request>().header('Idempotency-Key')),
);

/** Handler parameter: the request's idempotency key, required. Also describes the header in the API. */
export function IdempotencyKey(): ParameterDecorator {
  return withMethodDecorators(
    readKey(),
    ApiHeader({
      name: 'Idempotency-Key',
      required: true,
      description: 'New for each intended act; repeat it when repeating the request after a lost answer',
      schema: { type: 'string', minLength: 1, maxLength: 128 },
    }),
  );
}

/** Answers with what was stored under a key, its status too: the same whether it was done just now or before. */
export function tellStored<T>(answer: { status: number; body: string }, response: Response): T {
  response.status(answer.status);
  return JSON.parse(answer.body) as T;
}
