import { createHash } from 'node:crypto';
import { configure } from 'safe-stable-stringify';
import type { FactSheet } from '../facts/sheet.js';

/**
 * A general serialiser that sorts keys by UTF-16 code units and writes numbers and strings as ECMAScript does, which is
 * what RFC 8785 asks of JSON data; held against a reference writing of the RFC in test/outside.
 */
const stringify = configure({ bigint: false, circularValue: TypeError, strict: true });

/** Canonical JSON (RFC 8785): the same facts give the same bytes. Throws TypeError or Error for what is not JSON. */
export function canonicalJson(value: unknown): string {
  const text = stringify(value);
  if (text === undefined) throw new TypeError('only JSON values have a canonical form');
  return text;
}

/** Canonical forms of values that are asked for again and again: a club's policy is the same for every question. */
const written = new WeakMap<object, string>();

/** As `canonicalJson`, written out once for one and the same object. Only for values that are never changed in place. */
export function canonicalOnce(value: object): string {
  let text = written.get(value);
  if (text === undefined) written.set(value, (text = canonicalJson(value)));
  return text;
}

/**
 * As `canonicalJson`; of a frozen value written out once. Whoever freezes a value that is shared freezes all that is in it.
 */
export const canonicalShared = (value: object): string =>
  Object.isFrozen(value) ? canonicalOnce(value) : canonicalJson(value);

/** Canonical JSON of a fact sheet: what its people and its aircraft say is the same for many questions. */
export function canonicalSheet({ people, aircraft, ...head }: FactSheet): string {
  const shared = Object.entries(people).map(([id, person]) => [id, canonicalShared(person)]);
  const told = Object.entries(head).filter(([, value]) => value !== undefined);
  const own = told.map(([name, value]) => [name, canonicalJson(value)]);
  return canonicalOf({
    ...Object.fromEntries(own),
    people: canonicalOf(Object.fromEntries(shared)),
    aircraft: canonicalShared(aircraft),
  });
}

/** Canonical JSON of an object whose members are in their canonical form already. */
export function canonicalOf(members: Readonly<Record<string, string>>): string {
  const names = Object.keys(members).sort();
  return `{${names.map((name) => `${JSON.stringify(name)}:${members[name]}`).join(',')}}`;
}

/** SHA-256 of a text's UTF-8 bytes, lower-case hex. */
export function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** SHA-256 of the canonical JSON of `value`, lower-case hex. */
export function digestOf(value: unknown): string {
  return sha256(canonicalJson(value));
}
