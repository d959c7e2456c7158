/** Turns errors that other libraries throw (Nest, Express, the body parser, the throttler) into problems. */
import { HttpException } from '@nestjs/common';
import { ProblemException, type ProblemOptions } from './problem-exception.js';

/** Largest body taken, in bytes. */
export const BODY_LIMIT_BYTES = 256 * 1024;

/** Errors of the body parser carry a `type`; see the "Errors" section of the body-parser package's readme. */
interface ParserError {
  type?: string;
  limit?: number;
  charset?: string;
  message?: string;
}

const parserProblems: Record<string, (error: ParserError) => [string, ProblemOptions]> = {
  'entity.too.large': (error) => [
    'body-too-large',
    {
      detail: `The body may hold at most ${Math.floor((error.limit ?? BODY_LIMIT_BYTES) / 1024)} kB. Send less at once.`,
      extensions: { limitBytes: error.limit ?? BODY_LIMIT_BYTES },
    },
  ],
  'entity.parse.failed': () => ['malformed-json', {}],
  'charset.unsupported': (error) => [
    'unsupported-media-type',
    {
      detail: `The character set ${String(error.charset).slice(0, 40)} is not read here. Send the body in UTF-8.`,
    },
  ],
  'encoding.unsupported': () => [
    'unsupported-media-type',
    { detail: 'Send the body as it is, or compressed with gzip, deflate or br.' },
  ],
  'request.size.invalid': () => [
    'malformed-request',
    { detail: 'The body is not as long as its Content-Length says. Send it again.' },
  ],
  'request.aborted': () => ['malformed-request', { detail: 'The body ended early. Send it again.' }],
  'parameters.too.many': () => ['malformed-request', { detail: 'Too many parameters. Send fewer.' }],
};

const codeByStatus: Record<number, string> = {
  ...{
    400: 'malformed-request',
    401: 'not-signed-in',
    403: 'not-allowed',
    404: 'not-found',
    405: 'method-not-allowed',
  },
  ...{ 406: 'not-acceptable', 408: 'request-timeout', 409: 'conflict', 410: 'gone', 412: 'edit-conflict' },
  ...{ 413: 'body-too-large', 414: 'address-too-long', 415: 'unsupported-media-type', 422: 'value-refused' },
  ...{
    428: 'if-match-missing',
    429: 'too-many-requests',
    431: 'headers-too-large',
    501: 'not-available',
    503: 'busy',
  },
};

/** A problem for an error of the HTTP layer, or null when it is something else. */
export function httpProblem(error: unknown): ProblemException | null {
  const parser = parserError(error);
  if (parser) {
    const [code, options] = parserProblems[parser.type!]!(parser);
    return new ProblemException(code, { ...options, cause: error });
  }
  const status = statusOf(error);
  if (status === null || status < 400 || status > 599) return null;
  const code = codeByStatus[status];
  if (code === undefined)
    return status < 500 ? new ProblemException('malformed-request', { status, cause: error }) : null;
  return new ProblemException(code, { cause: error, ...particulars(error, status) });
}

/** Nest wraps the parser's error into one of its own and keeps the original as `cause`. */
function parserError(error: unknown): ParserError | null {
  for (const candidate of [error, (error as { cause?: unknown } | null)?.cause]) {
    const type = (candidate as ParserError | null | undefined)?.type;
    if (typeof type === 'string' && Object.hasOwn(parserProblems, type)) return candidate as ParserError;
  }
  return null;
}

function statusOf(error: unknown): number | null {
  if (error instanceof HttpException) return error.getStatus();
  const { status, statusCode, expose } = (error ?? {}) as {
    status?: unknown;
    statusCode?: unknown;
    expose?: unknown;
  };
  // http-errors of Express and its middlewares; `expose` is how they say "the client's fault".
  return expose === true && typeof (status ?? statusCode) === 'number' ? Number(status ?? statusCode) : null;
}

function particulars(error: unknown, status: number): ProblemOptions {
  if (status === 429) return { headers: { 'Retry-After': '60' } };
  if (error instanceof URIError || (error as { cause?: unknown }).cause instanceof URIError) {
    return {
      detail:
        'The address holds a "%" that is not followed by two hexadecimal digits of UTF-8. Encode it again.',
    };
  }
  // Text of HttpExceptions thrown by our own code is meant for the client; Nest's router texts are replaced.
  if (!(error instanceof HttpException) || status === 404 || status >= 500) return {};
  const body = error.getResponse();
  const message = typeof body === 'string' ? body : (body as { message?: unknown }).message;
  return typeof message === 'string' && message !== '' && !/^[A-Z][a-z]+( [A-Z][a-z]+)*$/.test(message)
    ? { detail: message }
    : {};
}
