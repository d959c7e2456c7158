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

/** How deep a body may nest; the deepest that any route takes is four. */
const DEEPEST = 32;

/** Names that class-transformer drops without a word, so that the check for unknown fields never sees them. */
const NAMES_OF_OBJECTS = new Set(['__proto__', 'constructor', 'prototype']);

/** What is wrong with a value as a whole, and where, as path segments. */
interface Unsound {
  why: 'nul' | 'deep' | 'name';
  path: string[];
}

/**
 * The first place inside a value that holds a zero byte, lies too deep, or has the name of a part of every object; null
 * when there is none. Stops at the depth, so a body of nothing but brackets cannot exhaust the stack.
 */
export function findUnsound(value: unknown, path: string[] = []): Unsound | null {
  if (typeof value === 'string') return value.includes(NUL) ? { why: 'nul', path } : null;
  if (value === null || typeof value !== 'object') return null;
  if (path.length >= DEEPEST) return { why: 'deep', path: path.slice(0, 1) };
  for (const [name, inner] of Object.entries(value)) {
    if (name.includes(NUL)) return { why: 'nul', path };
    if (NAMES_OF_OBJECTS.has(name)) return { why: 'name', path: [...path, name] };
    const found = findUnsound(inner, [...path, name]);
    if (found) return found;
  }
  return null;
}

const MESSAGES: Record<Unsound['why'], string> = {
  nul: 'Remove the zero byte',
  deep: `Nest at most ${DEEPEST} levels`,
  name: 'This field is not known here. Remove it',
};

/** Refuses requests with a zero byte anywhere in path, query or body, or a body no route could take, naming the place. Runs after the body parser. */
export function refuseNul(request: Request, _response: Response, next: NextFunction): void {
  if (/%00/.test(request.path)) return next(unsound('nul', 'path', []));
  for (const place of ['query', 'body'] as const) {
    const found = findUnsound(request[place]);
    if (found) return next(unsound(found.why, place, found.path));
  }
  next();
}

function unsound(why: Unsound['why'], place: 'path' | 'query' | 'body', path: string[]): ProblemException {
  const message = MESSAGES[why];
  const field = fieldName(path) || place;
  const error: FieldError = { field, in: place, message };
  if (place !== 'path') error.pointer = pointer(path);
  return new ProblemException(why === 'nul' ? 'nul-byte' : 'validation-failed', {
    detail: `${message} (${place}: ${field}).`,
    errors: [error],
  });
}

const pointer = (path: string[]) =>
  path.map((part) => `/${part.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** ['legs', '0', 'from'] as 'legs[0].from'. */
export function fieldName(path: string[]): string {
  return path
    .map((part, index) => (/^\d+$/.test(part) ? `[${part}]` : index === 0 ? part : `.${part}`))
    .join('');
}
