// The folder of one jest run and the PostgreSQL server that a spec may have started in it (src/platform/database/test-cluster.ts).
// Plain JavaScript, because jest loads globalSetup without the project's module mapping.
import fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

const PREFIX = 'bellcrank-test-';
const VARIABLE = 'BELLCRANK_TEST_RUN';

const read = (file) => {
  try {
    return fs.readFileSync(file, 'utf8');
  } catch {
    return '';
  }
};

/** A process that runs; a zombie does not. */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    return error.code === 'EPERM';
  }
  return !/^State:\s+Z/m.test(read(`/proc/${pid}/status`));
}

/** The id of the server started in a run's folder, if it still runs there; never that of another program. */
function serverOf(folder) {
  const cluster = join(folder, 'data', 'postgres');
  const pid = Number(read(join(cluster, 'postmaster.pid')).split('\n')[0]);
  if (!(pid > 0) || !isAlive(pid)) return null;
  const command = read(`/proc/${pid}/cmdline`).replaceAll('\0', ' ');
  // Without /proc (macOS) the pid file in a folder of our own has to do.
  return command === '' || command.includes(`-D ${cluster} `) ? pid : null;
}

/** Asks the server to stop at once (its data is thrown away) and deletes the folder; false while it still writes. */
function removeRun(folder) {
  const pid = serverOf(folder);
  if (pid !== null) process.kill(pid, 'SIGQUIT');
  try {
    fs.rmSync(folder, { recursive: true, force: true });
  } catch {
    return false;
  }
  return pid === null || !isAlive(pid);
}

function sweepDeadRuns(base) {
  for (const name of fs.readdirSync(base).filter((entry) => entry.startsWith(PREFIX))) {
    const owner = Number(read(join(base, name, 'run.pid')));
    if (owner > 0 && !isAlive(owner)) removeRun(join(base, name));
  }
}

/** Makes the run's folder and clears away what killed runs left. */
export function startRun() {
  const base = fs.realpathSync(tmpdir());
  sweepDeadRuns(base);
  const folder = fs.mkdtempSync(join(base, PREFIX));
  // The account that PostgreSQL runs under must get through to its data.
  fs.chmodSync(folder, 0o711);
  fs.writeFileSync(join(folder, 'run.pid'), String(process.pid));
  process.env[VARIABLE] = folder;
  // A run that is cut short (Ctrl-C) never reaches its teardown.
  process.once('exit', () => removeRun(folder));
}

/** Stops the run's server, if a spec started one, and deletes the folder. */
export async function endRun() {
  const folder = process.env[VARIABLE];
  if (!folder) return;
  const server = serverOf(folder);
  for (let waited = 0; waited < 10_000; waited += 20) {
    if (removeRun(folder) && (server === null || !isAlive(server))) return;
    await pause(20);
  }
  throw new Error(`the test database server in ${folder} does not stop`);
}
