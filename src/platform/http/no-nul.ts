import { ValidateBy, type ValidationOptions } from 'class-validator';
import type { NextFunction, Request, Response } from 'express';
import { ProblemException, type FieldError } from '../problems/problem-exception.js';

const NUL = '\0';

/** A text without zero bytes, which PostgreSQL cannot store. Every request is checked anyway; this is for other inputs. */
export function NoNul(options?: ValidationOptions): PropertyDecorator {
  return ValidateBy(
    {
      name: 'noNul',
      validator: {
        validate: (value) => typeof value !== 'string' || !value.includes(NUL),
        defaultMessage: (args) => `${args?.property} must not hold a zero byte`,
      },
    },
    options,
  );
}

/** First place inside a value where a text or a name holds a zero byte, as path segments; null when there is none. */
export function findNul(value: unknown, path: string[] = []): string[] | null {
  if (typeof value === 'string') return value.includes(NUL) ? path : null;
  if (value === null || typeof value !== 'object') return null;
  for (const [name, inner] of Object.entries(value)) {
    const found = name.includes(NUL) ? path : findNul(inner, [...path, name]);
    if (found) return found;
  }
  return null;
}

/** Refuses requests with a zero byte anywhere in path, query or body, naming the place. Runs after the body parser. */
export function refuseNul(request: Request, _response: Response, next: NextFunction): void {
  const error = nulIn(request);
  if (!error) return next();
  next(
    new ProblemException('nul-byte', {
      detail: `${error.message} (${error.in}: ${error.field}).`,
      errors: [error],
    }),
  );
}

function nulIn(request: Request): FieldError | null {
  const message = 'Remove the zero byte';
  if (/%00/.test(request.path)) return { field: 'path', in: 'path', message };
  for (const place of ['query', 'body'] as const) {
    const path = findNul(request[place]);
    if (path) return { field: fieldName(path) || place, pointer: pointer(path), in: place, message };
  }
  return null;
}

const pointer = (path: string[]) =>
  path.map((part) => `/${part.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** ['legs', '0', 'from'] as 'legs[0].from'. */
export function fieldName(path: string[]): string {
  return path
    .map((part, index) => (/^\d+$/.test(part) ? `[${part}]` : index === 0 ? part : `.${part}`))
    .join('');
}
