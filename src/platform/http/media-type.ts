import type { NextFunction, Request, Response } from 'express';
import { ProblemException } from '../problems/problem-exception.js';

/** application/json and everything based on it (RFC 6839), in UTF-8. */
export const isJsonType = (type: string): boolean => /^application\/([\w.+-]+\+)?json$/i.test(type);

type Forms = 'parts' | 'any';
const formPaths: { path: RegExp; forms: Forms }[] = [];

/**
 * Lets multipart/form-data through to addresses of a pattern; the route there reads it within its own limits. With `any`, what
 * a plain form sends as well.
 */
export function takesForms(path: RegExp, forms: Forms = 'parts'): void {
  formPaths.push({ path, forms });
}

const FORM_TYPES: Record<Forms, RegExp> = {
  parts: /^multipart\/form-data$/i,
  any: /^(multipart\/form-data|application\/x-www-form-urlencoded)$/i,
};

const isForm = (request: Request, type: string): boolean =>
  request.method === 'POST' &&
  formPaths.some(({ path, forms }) => FORM_TYPES[forms].test(type) && path.test(request.path));

/** Refuses bodies that are not JSON before anything tries to read them. A request without a body passes. */
export function requireJson(request: Request, _response: Response, next: NextFunction): void {
  const hasBody =
    request.headers['transfer-encoding'] !== undefined || Number(request.headers['content-length'] ?? 0) > 0;
  const type = (request.headers['content-type'] ?? '').split(';')[0]!.trim();
  if (!hasBody || isJsonType(type) || isForm(request, type)) return next();
  next(
    new ProblemException('unsupported-media-type', {
      detail: `The body is ${type === '' ? 'of no stated type' : `"${type.slice(0, 60)}"`}. Send application/json in UTF-8.`,
      headers: { Accept: 'application/json' },
    }),
  );
}
