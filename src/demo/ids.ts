import { createHash } from 'node:crypto';

/** Seed of the club that the demo command makes. */
export const DEMO_SEED = 'bellcrank-demo-1';
/** Slug of the demo club; it is part of signing in. */
export const DEMO_SLUG = 'quill-mesa-demo';

/**
 * A UUID made from a name: version 8 (RFC 9562: own construction), its bits the start of a SHA-256. The same name always
 * gives the same id.
 */
export function demoId(...name: (string | number)[]): string {
  const bytes = createHash('sha256').update(name.join('/')).digest().subarray(0, 16);
  bytes[6] = (bytes[6]! & 0x0f) | 0x80;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

/** Id of the demo club, whatever its seed and date: a club with another id is never the demo's to touch. */
export const DEMO_CLUB_ID = demoId('bellcrank', 'demo', 'club');
