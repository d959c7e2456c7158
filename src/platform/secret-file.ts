import { randomBytes } from 'node:crypto';
import { linkSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { makeFolder } from './folders.js';
import { StartupError } from './startup-error.js';

/**
 * Reads a secret kept in a file, making it (32 random bytes, base64url, mode 0600) the first time. When two processes
 * make it at once, one wins and both return the winner's: the file appears whole, by a hard link.
 * @throws StartupError when the file can be neither read nor written.
 */
export function readOrCreateSecret(file: string): string {
  try {
    return readSecret(file) ?? createSecret(file);
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new StartupError(
      `cannot read or write ${file} (${reason}). Make its folder writable for this user, ` +
        'run as the user who owns it, or point BELLCRANK_DATA_DIR at another folder.',
      { cause: error },
    );
  }
}

/** The secret in a file, or null when there is no such file. An empty file counts as missing. */
export function readSecret(file: string): string | null {
  try {
    return readFileSync(file, 'utf8').trim() || null;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

function createSecret(file: string): string {
  makeFolder(dirname(file));
  const draft = `${file}.${process.pid}.${randomBytes(4).toString('hex')}`;
  writeFileSync(draft, `${randomBytes(32).toString('base64url')}\n`, { mode: 0o600, flag: 'wx' });
  try {
    linkSync(draft, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(draft, { force: true });
  }
  const secret = readSecret(file);
  if (secret === null) throw new Error(`${file} is empty`);
  return secret;
}
