import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** Canonical JSON (RFC 8785): the same facts give the same bytes. */
export function canonicalJson(value: unknown): string {
  const text = (canonicalize as unknown as (input: unknown) => string | undefined)(value);
  if (text === undefined) throw new TypeError('only JSON values have a canonical form');
  return text;
}

/** SHA-256 of a text's UTF-8 bytes, lower-case hex. */
export function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** SHA-256 of the canonical JSON of `value`, lower-case hex. */
export function digestOf(value: unknown): string {
  return sha256(canonicalJson(value));
}
