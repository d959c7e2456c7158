/** PostgreSQL refuses to run as root, so when we are root its programs run under another account. */
import { execFileSync } from 'node:child_process';
import { chownSync, lchownSync, lstatSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { StartupError } from '../../startup-error.js';

/** Under whom PostgreSQL runs. Both absent: as ourselves. */
export interface Account {
  uid?: number;
  gid?: number;
}

/** The account "nobody" has on practically every system; used where no user `postgres` exists. */
const NOBODY = 65_534;

const isRoot = () => process.getuid?.() === 0;

function systemPostgresAccount(): Account | null {
  try {
    const id = (flag: string) =>
      Number(execFileSync('id', [flag, 'postgres'], { stdio: ['ignore', 'pipe', 'ignore'] }));
    const account = { uid: id('-u'), gid: id('-g') };
    return account.uid > 0 ? account : null;
  } catch {
    return null;
  }
}

/** The account for a cluster folder: its present owner, else the system's `postgres`, else nobody. No user is created. */
export function accountFor(clusterDir: string): Account {
  const owner = statSync(clusterDir, { throwIfNoEntry: false });
  if (!isRoot()) {
    const self = process.getuid?.();
    if (owner && self !== undefined && owner.uid !== self) {
      throw new StartupError(
        `the database folder ${clusterDir} belongs to user id ${owner.uid}, and this process runs as ${self}. ` +
          'Start as that user or as root, or point BELLCRANK_DATA_DIR at another folder.',
      );
    }
    return {};
  }
  if (owner && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  return systemPostgresAccount() ?? { uid: NOBODY, gid: NOBODY };
}

/** Gives a folder and all in it to the account; does nothing when PostgreSQL runs as ourselves. */
export function handOver(folder: string, account: Account): void {
  if (account.uid === undefined || account.gid === undefined) return;
  chownSync(folder, account.uid, account.gid);
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (lstatSync(path).isDirectory()) handOver(path, account);
    else lchownSync(path, account.uid, account.gid);
  }
}
