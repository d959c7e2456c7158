/** Every kind of problem the service can answer with: looked up by code, served at `/problems/<code>`. */

/** A kind of problem. */
export interface ProblemKind {
  /** Stable kebab-case name. */
  code: string;
  status: number;
  /** Short, always the same. */
  title: string;
  /** What to do, when the occurrence has nothing more particular to say. */
  detail: string;
}

const kinds = new Map<string, ProblemKind>();

/**
 * Adds kinds of problem; domain folders call it when they load. Defining a code again with the same content is
 * harmless.
 * @throws Error when a code is given a second meaning.
 */
export function defineProblems(...added: ProblemKind[]): void {
  for (const kind of added) {
    const known = kinds.get(kind.code);
    if (known && (known.status !== kind.status || known.title !== kind.title)) {
      throw new Error(`problem code "${kind.code}" is defined twice with different meanings`);
    }
    if (!known) kinds.set(kind.code, kind);
  }
}

/** The kind with this code, if it was defined. */
export function knownProblem(code: string): ProblemKind | undefined {
  return kinds.get(code);
}

/** All kinds, by code. */
export function allProblems(): ProblemKind[] {
  return [...kinds.values()].sort((a, b) => (a.code < b.code ? -1 : 1));
}

const kind = (code: string, status: number, title: string, detail: string): ProblemKind => ({
  code,
  status,
  title,
  detail,
});

defineProblems(
  kind(
    'malformed-json',
    400,
    'Body is not JSON',
    'Send one JSON document in UTF-8 and check its brackets and quotes.',
  ),
  kind(
    'malformed-request',
    400,
    'Request cannot be read',
    'Check the address, the headers and the body of the request.',
  ),
  kind('nul-byte', 400, 'Zero byte in text', 'Remove the zero byte (U+0000) from the field named.'),
  kind(
    'validation-failed',
    400,
    'Some fields were refused',
    'Change the fields listed under "errors" and send the request again.',
  ),
  kind(
    'identifier-malformed',
    400,
    'Not an identifier',
    'Identifiers are UUIDs, such as 0190a5c2-7d1e-7c3a-9b4f-2f6d1c0a9e11.',
  ),
  kind(
    'cursor-malformed',
    400,
    'Not a page cursor',
    'Send back a "nextCursor" exactly as it was received, or none to start at the first page.',
  ),
  kind(
    'idempotency-key-missing',
    400,
    'Idempotency key needed',
    'Send an Idempotency-Key header: 1 to 128 visible ASCII characters, new for each intended act.',
  ),
  kind('not-signed-in', 401, 'Not signed in', 'Sign in and send the access token.'),
  kind('not-allowed', 403, 'Not allowed', 'Ask an officer of the club for the right to do this.'),
  kind('not-found', 404, 'Not found', 'Check the address and the identifiers in it.'),
  kind('method-not-allowed', 405, 'Method not allowed', 'Use one of the methods in the Allow header.'),
  kind('not-acceptable', 406, 'Cannot answer in that form', 'Ask for application/json.'),
  kind('request-timeout', 408, 'Request took too long to arrive', 'Send it again.'),
  kind('conflict', 409, 'In conflict with what is stored', 'Read the present state, then decide again.'),
  kind(
    'already-exists',
    409,
    'Already there',
    'A record with the same key exists. Use that one or choose another key.',
  ),
  kind(
    'reference-not-kept',
    409,
    'Something this refers to is missing, or still needed',
    'A linked record is missing, or others still point at this one. Check the links first.',
  ),
  kind(
    'overlap',
    409,
    'Overlaps with another',
    'Another record covers some of that time. Choose another time.',
  ),
  kind('gone', 410, 'No longer there', 'It was removed.'),
  kind(
    'edit-conflict',
    412,
    'Somebody else changed it',
    'Read it again, look at the change, and repeat the edit with the new ETag in If-Match.',
  ),
  kind('body-too-large', 413, 'Body too large', 'Send less at once.'),
  kind('address-too-long', 414, 'Address too long', 'Use a shorter query.'),
  kind('unsupported-media-type', 415, 'Body is of the wrong type', 'Send application/json in UTF-8.'),
  kind('value-refused', 422, 'Value not possible', 'Change the value named and send the request again.'),
  kind(
    'if-match-missing',
    428,
    'If-Match needed',
    'Read the record, and send its ETag in an If-Match header with the edit.',
  ),
  kind('too-many-requests', 429, 'Too many requests', 'Wait as long as the Retry-After header says.'),
  kind('headers-too-large', 431, 'Headers too large', 'Send fewer or shorter headers.'),
  kind(
    'unexpected',
    500,
    'Something went wrong here',
    'Try again later. If it goes on, give the request id to whoever runs the service.',
  ),
  kind('not-available', 501, 'Not available', 'This installation does not offer it.'),
  kind('busy', 503, 'Busy', 'Others change the same records right now. Try again in a moment.'),
  kind(
    'database-unavailable',
    503,
    'Database out of reach',
    'Try again in a moment. After an edit, look first whether it went through, or repeat it with the same idempotency key.',
  ),
  kind(
    'database-too-slow',
    503,
    'Took too long',
    'Ask for less at once, or try again when it is quieter; nothing was changed.',
  ),
);
