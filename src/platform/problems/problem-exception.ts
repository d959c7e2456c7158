import { HttpException } from '@nestjs/common';
import { knownProblem } from './problem-catalogue.js';

/** One field that was refused. */
export interface FieldError {
  /** Name as a person reads it: 'legs[0].from'. A header is named as it is: 'Idempotency-Key'. */
  field: string;
  /** JSON pointer (RFC 6901) into the body or query: '/legs/0/from'. Absent for headers. */
  pointer?: string;
  /** Part of the request it was in, where that is known. */
  in?: 'body' | 'query' | 'path' | 'header';
  /** What to change. */
  message: string;
  /** Where in a text that has lines, from 1. */
  line?: number;
  column?: number;
}

/** What a problem says. Fields left out come from the catalogue entry of the code. */
export interface ProblemOptions {
  /** HTTP status, 400 to 599. */
  status?: number;
  /** Short and always the same for the code. */
  title?: string;
  /** What is wrong this time and what to do about it. */
  detail?: string;
  /** The field at fault; short for one entry in `errors` with the detail as its message. */
  field?: string;
  errors?: FieldError[];
  /** Further members of the problem document, for programs (RFC 9457 section 3.2). */
  extensions?: Record<string, unknown>;
  /** Response headers that belong to the problem, such as Retry-After. */
  headers?: Record<string, string>;
  cause?: unknown;
}

/** An error meant for the client; becomes an `application/problem+json` answer (RFC 9457). */
export class ProblemException extends HttpException {
  readonly title: string;
  readonly detail: string;
  readonly errors: FieldError[];
  readonly extensions: Record<string, unknown>;
  readonly headers: Record<string, string>;

  /** @param code stable kebab-case name of the kind of problem; its page is `/problems/<code>`. */
  constructor(
    readonly code: string,
    options: ProblemOptions = {},
  ) {
    const known = knownProblem(code);
    const title = options.title ?? known?.title ?? 'Request refused';
    super(title, options.status ?? known?.status ?? 400, { cause: options.cause });
    this.title = title;
    this.detail = options.detail ?? known?.detail ?? title;
    const { field } = options;
    this.errors =
      options.errors ?? (field ? [{ field, pointer: pointerTo(field), message: this.detail }] : []);
    this.extensions = options.extensions ?? {};
    this.headers = options.headers ?? {};
  }
}

/** 'legs[0].from' as a JSON pointer: '/legs/0/from'. Undefined for header names, which have no pointer. */
export function pointerTo(field: string): string | undefined {
  if (/^[A-Z][A-Za-z]*(-[A-Z][A-Za-z]*)+$/.test(field)) return undefined;
  const parts = field.split(/[.[\]]+/).filter((part) => part !== '');
  return parts.map((part) => `/${part.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}
