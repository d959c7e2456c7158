import { chmodSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder and its missing parents with exactly this mode, whatever the umask says; what exists is left alone.
 * The default lets other accounts through to what lies inside when we are root (PostgreSQL then runs under another
 * one) and nobody else otherwise.
 */
export function makeFolder(path: string, mode = process.getuid?.() === 0 ? 0o711 : 0o700): void {
  const first = mkdirSync(path, { recursive: true });
  if (first === undefined) return;
  for (let at = path; at.length >= first.length; at = dirname(at)) chmodSync(at, mode);
}
