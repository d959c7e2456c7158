import type { Policy } from '../../rules/index.js';
import { deepFreeze } from './deep-freeze.js';

/** Policies read last, by their text. A club has one or two a day; each is some 10 kB. */
const read = new Map<string, Policy>();
const MOST = 200;

/**
 * The policy written in a text: the same object for the same text, so that the rules made for it, its canonical form and its
 * digest are made once and not for each question. It is frozen, since questions share it.
 */
export function samePolicy(text: string): Policy {
  const policy = read.get(text) ?? deepFreeze(JSON.parse(text) as Policy);
  // The last one asked for stands last, and the first goes.
  read.delete(text);
  read.set(text, policy);
  if (read.size > MOST) read.delete(read.keys().next().value!);
  return policy;
}
