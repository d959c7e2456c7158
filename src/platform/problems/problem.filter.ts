import { ArgumentsHost, Catch, ExceptionFilter, HttpException, Logger } from '@nestjs/common';
import type { Request, Response } from 'express';
import { databaseProblem } from '../database/constraint-problems.js';
import { allowedMethods } from '../http/allowed-methods.js';
import { httpProblem } from './http-problems.js';
import { problemDocument } from './problem-document.js';
import { ProblemException } from './problem-exception.js';

/** Answers every error with a problem document. Whatever is not understood becomes a 500 that tells only the request id. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly logger = new Logger(ProblemFilter.name);

  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<Request & { id?: string }>();
    const response = http.getResponse<Response>();
    const requestId = String(request.id ?? '');
    const problem = this.understand(error, request);
    if (problem.getStatus() >= 500)
      this.logger.error({ err: problem.cause ?? error, requestId, code: problem.code }, problem.title);
    if (response.headersSent) {
      // Too late for an answer: cut the connection so that the client does not take half a body for a whole one.
      response.destroy();
      return;
    }
    for (const [name, value] of Object.entries(problem.headers)) {
      if (!response.hasHeader(name)) response.setHeader(name, value);
    }
    response
      .status(problem.getStatus())
      .type('application/problem+json')
      .setHeader('Cache-Control', 'no-store')
      .send(JSON.stringify(problemDocument(problem, { path: pathOf(request), requestId })));
  }

  private understand(error: unknown, request: Request): ProblemException {
    if (error instanceof ProblemException) return error;
    if (isUnknownRoute(error)) return unknownRoute(request);
    return (
      databaseProblem(error) ?? httpProblem(error) ?? new ProblemException('unexpected', { cause: error })
    );
  }
}

/** Nest's own 404 for an address no controller has; a ProblemException is never one. */
function isUnknownRoute(error: unknown): boolean {
  return error instanceof HttpException && error.getStatus() === 404 && /^Cannot [A-Z]+ /.test(error.message);
}

function unknownRoute(request: Request): ProblemException {
  const methods = allowedMethods(request);
  if (methods.length === 0) {
    return new ProblemException('not-found', {
      detail: 'There is nothing at this address. The addresses are listed in /api/v1/openapi.json.',
    });
  }
  return new ProblemException('method-not-allowed', {
    detail: `${request.method} does not work here; use ${methods.join(', ')}.`,
    headers: { Allow: methods.join(', ') },
  });
}

const pathOf = (request: Request) => (request.originalUrl ?? request.url).split('?')[0]!;
