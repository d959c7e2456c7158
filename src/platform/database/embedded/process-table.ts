/** Questions about other processes, answered from /proc where there is one and from `ps` elsewhere. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

/** Is there a process with this id? One we may not signal still counts. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
  return !/^State:\s+Z/m.test(read(`/proc/${pid}/status`) ?? '');
}

/** A mark that differs when the same id is given to another process later: its start time. Empty when unknown. */
export function startMark(pid: number): string {
  const stat = read(`/proc/${pid}/stat`);
  // Field 22 is the start time; fields are counted after the command, which may itself hold blanks and brackets.
  if (stat !== null) return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  return ps(pid, 'lstart');
}

/** The command line of a process, words separated by blanks; empty when unknown. */
export function commandLine(pid: number): string {
  const raw = read(`/proc/${pid}/cmdline`);
  return raw !== null ? raw.replaceAll('\0', ' ').trim() : ps(pid, 'args');
}

/** Ids of processes whose working folder is `folder`. Empty where there is no /proc. */
export function processesIn(folder: string): number[] {
  try {
    return readdirSync('/proc')
      .filter((name) => /^\d+$/.test(name))
      .filter((pid) => workingFolder(pid) === folder)
      .map(Number);
  } catch {
    return [];
  }
}

/** Names the set of process ids that this process can see, so that ids from another container are not mistaken for ours. */
export function processWorld(): string {
  try {
    return `${hostname()} ${readlinkSync('/proc/self/ns/pid')} ${read('/proc/sys/kernel/random/boot_id')?.trim()}`;
  } catch {
    return hostname();
  }
}

function workingFolder(pid: string): string | null {
  try {
    return readlinkSync(`/proc/${pid}/cwd`);
  } catch {
    return null;
  }
}

function read(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

function ps(pid: number, column: string): string {
  try {
    return execFileSync('ps', ['-o', `${column}=`, '-p', String(pid)], { encoding: 'utf8' }).trim();
  } catch {
    return '';
  }
}
