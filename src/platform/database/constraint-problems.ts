/** Turns what the database refuses into problems a client can act on, without showing any SQL. */
import { QueryFailedError } from 'typeorm';
import { defineProblems } from '../problems/problem-catalogue.js';
import { ProblemException, type ProblemOptions } from '../problems/problem-exception.js';

/** What a violated constraint means to a client. */
export interface ConstraintProblem {
  /** Name of the constraint in the database. */
  constraint: string;
  /** Problem code; defined in the catalogue by the registration. */
  code: string;
  status: number;
  title: string;
  /** What to do. */
  detail: string;
  /** Field of the request at fault, as in 'legs[0].from'. */
  field?: string;
}

const registered = new Map<string, ConstraintProblem>();

/**
 * Says what constraints mean; domain folders call it when they load.
 * @throws Error when a constraint is registered twice with different codes.
 */
export function registerConstraint(...problems: ConstraintProblem[]): void {
  for (const problem of problems) {
    const known = registered.get(problem.constraint);
    if (known && known.code !== problem.code)
      throw new Error(`constraint ${problem.constraint} is registered twice`);
    registered.set(problem.constraint, problem);
    defineProblems({
      code: problem.code,
      status: problem.status,
      title: problem.title,
      detail: problem.detail,
    });
  }
}

/** A constraint's name, the field at fault, and what to do. */
export type ConstraintWords = [constraint: string, field: string | undefined, detail: string];

/** Registers constraints that mean the same kind of problem and differ in their words. */
export function registerWords(
  kind: Pick<ConstraintProblem, 'code' | 'status' | 'title'>,
  words: readonly ConstraintWords[],
): void {
  registerConstraint(...words.map(([constraint, field, detail]) => ({ constraint, ...kind, detail, field })));
}

/** Registered constraints by name, for the test that compares them with the live catalogue. */
export function registeredConstraints(): ConstraintProblem[] {
  return [...registered.values()];
}

interface PostgresError {
  code?: string;
  constraint?: string;
  column?: string;
  message?: string;
}

const RETRY_SOON = { headers: { 'Retry-After': '1' } };

/** SQLSTATE (PostgreSQL manual, appendix A) to problem, where no registered constraint says more. */
const bySqlState: Record<string, [string, ProblemOptions?]> = {
  '23505': ['already-exists'],
  '23503': ['reference-not-kept'],
  '23P01': ['overlap'],
  '23514': ['value-refused'],
  '23502': ['value-refused'],
  '22P02': [
    'value-refused',
    {
      detail:
        'A value does not have the form it should have (a number, a date, an identifier). Check the fields.',
    },
  ],
  '22001': ['value-refused', { detail: 'A text is too long. Shorten it.' }],
  '22003': ['value-refused', { detail: 'A number is too large or too small. Check the fields.' }],
  '22007': ['value-refused', { detail: 'A date or time cannot be read. Use RFC 3339.' }],
  '22008': [
    'value-refused',
    { detail: 'A date or time does not exist or lies too far away. Check the fields.' },
  ],
  '22021': ['nul-byte', { detail: 'A text holds a zero byte or broken UTF-8. Remove it.' }],
  '22P05': ['nul-byte', { detail: 'A text holds a zero byte. Remove it.' }],
  '40001': ['busy', RETRY_SOON],
  '40P01': ['busy', RETRY_SOON],
  '55P03': ['busy', RETRY_SOON],
  '57014': ['database-too-slow', { headers: { 'Retry-After': '5' } }],
  '25P03': ['database-too-slow', { headers: { 'Retry-After': '5' } }],
};

const UNAVAILABLE_CODES = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOTFOUND',
  'EPIPE',
  'ETIMEDOUT',
  '53300',
  '57P01',
  '57P02',
  '57P03',
]);
/** Texts of errors that `pg` throws without a code. */
const UNAVAILABLE_TEXTS =
  /^(timeout exceeded when trying to connect|Connection terminated|Client has encountered a connection error|Connection terminated unexpectedly)/;

/** SQLSTATEs after which the same transaction may succeed when run again. */
export const RETRYABLE_STATES: ReadonlySet<string> = new Set(['40001', '40P01']);

/** SQLSTATE of an exclusion constraint's refusal (PostgreSQL manual, appendix A). */
export const EXCLUSION_VIOLATION = '23P01';

/** SQLSTATE of an error thrown by a query, if it has one. */
export function sqlStateOf(error: unknown): string | undefined {
  const source = (error instanceof QueryFailedError ? error.driverError : error) as PostgresError | undefined;
  return typeof source?.code === 'string' ? source.code : undefined;
}

/** The problem for an error of the database, or null when it is something else (or a fault of ours, which stays a 500). */
export function databaseProblem(error: unknown): ProblemException | null {
  if (error instanceof ProblemException) return error;
  const code = sqlStateOf(error);
  const message = (error as Error | undefined)?.message ?? '';
  if ((code && (UNAVAILABLE_CODES.has(code) || code.startsWith('08'))) || UNAVAILABLE_TEXTS.test(message)) {
    return new ProblemException('database-unavailable', { headers: { 'Retry-After': '5' }, cause: error });
  }
  if (!(error instanceof QueryFailedError) || code === undefined) return null;
  const { constraint, column } = error.driverError as PostgresError;
  const meaning = constraint === undefined ? undefined : registered.get(constraint);
  if (meaning) return new ProblemException(meaning.code, { ...meaning, cause: error });
  if (code === '42501' && /row-level security/.test(message))
    return new ProblemException('not-allowed', { cause: error });
  const found = bySqlState[code];
  if (!found) return null;
  const field = code === '23502' && column ? camelCase(column) : undefined;
  const detail = field ? `The field ${field} may not be empty. Fill it in.` : undefined;
  return new ProblemException(found[0], { ...(detail ? { detail, field } : {}), ...found[1], cause: error });
}

const camelCase = (column: string) =>
  column.replace(/_([a-z0-9])/g, (_all, letter: string) => letter.toUpperCase());
