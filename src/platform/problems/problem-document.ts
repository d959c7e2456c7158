import type { FieldError, ProblemException } from './problem-exception.js';

/** The body of an error answer: RFC 9457, media type application/problem+json. */
export interface ProblemDocument {
  /** `/problems/<code>`, relative to this service; the page explains the kind of problem. */
  type: string;
  title: string;
  status: number;
  /** What is wrong and what to do. */
  detail: string;
  /** Path of the request. */
  instance: string;
  code: string;
  /** Also in the X-Request-Id header and in the log. */
  requestId: string;
  errors?: FieldError[];
  [extension: string]: unknown;
}

/** The document for a problem that occurred while answering a request. */
export function problemDocument(
  problem: ProblemException,
  request: { path: string; requestId: string },
): ProblemDocument {
  return {
    // Extensions first, so that they cannot overwrite a standard member.
    ...problem.extensions,
    type: `/problems/${problem.code}`,
    title: problem.title,
    status: problem.getStatus(),
    detail: problem.detail,
    instance: request.path,
    code: problem.code,
    requestId: request.requestId,
    ...(problem.errors.length > 0 ? { errors: problem.errors } : {}),
  };
}
