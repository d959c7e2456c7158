/** What became of each change when it was last tried, so that only what may have changed is tried again. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { keyOf } from './catalogue.mjs';

const fileIn = (folder) => join(folder, 'state.json');

/** Status by key; empty when nothing was run here yet. */
export function readState(folder) {
  try {
    return new Map(Object.entries(JSON.parse(readFileSync(fileIn(folder), 'utf8'))));
  } catch (error) {
    if (error.code === 'ENOENT') return new Map();
    throw error;
  }
}

export function writeState(folder, state) {
  writeFileSync(fileIn(folder), JSON.stringify(Object.fromEntries(state)));
}

/** The changes that were not noticed last time, or not tried. */
export function openIn(state, mutants) {
  return mutants.filter((mutant) => !['Killed', 'Locked', 'Timeout'].includes(state.get(keyOf(mutant))));
}

/** The lines of a diary; none when no run was broken off. */
export function readDiary(file) {
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line));
}
