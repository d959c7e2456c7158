import { hash, verify } from '@node-rs/argon2';
import { randomBytes } from 'node:crypto';

/** Shortest password accepted. NIST SP 800-63B asks for 15 where it is the only factor and 8 at least; a club gets 12. */
export const PASSWORD_MIN = 12;
/** Longest password read, so that nobody makes the service hash megabytes. */
export const PASSWORD_MAX = 256;

/** An argon2id hash (RFC 9106) with the library's parameters: 19 MiB, 2 passes, 1 lane. */
export function hashPassword(password: string): Promise<string> {
  return hash(password.normalize('NFC'));
}

let decoy: Promise<string> | undefined;

/**
 * Whether the password belongs to the hash. Without a hash (no such account) it answers no after the same work, so
 * that the time taken does not tell which accounts exist.
 */
export async function checkPassword(passwordHash: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword(randomBytes(24).toString('base64url'));
  const right = await verify(passwordHash ?? (await decoy), password.normalize('NFC'));
  return right && passwordHash !== null;
}
