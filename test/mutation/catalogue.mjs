/** Every mutant there is, without running any: what the list of survivors is held against, and what samples are drawn from. */
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { createInjector } from 'typed-inject';
import { EXCLUDED } from './mutators.mjs';

/**
 * What is mutated: the rules, without the examples they are tested by, and without forms of rules that are kept for replay alone,
 * which the lock of released rules holds to the byte.
 */
const SCOPE = 'src/rules';
const NOT = /^src\/rules\/(workshop|versions\/past)\/|\.v\d+\.ts$/;

/** The files in scope, of all or of some parts (files or folders). */
export function filesOf(parts) {
  const all = (parts.length === 0 ? [SCOPE] : parts).flatMap((part) =>
    statSync(part).isDirectory()
      ? readdirSync(part, { recursive: true, encoding: 'utf8' }).map((name) => join(part, name))
      : [part],
  );
  return all.filter((file) => file.startsWith(SCOPE) && file.endsWith('.ts') && !NOT.test(file)).sort();
}

/**
 * The mutants of some files: `{ file, line, mutator, was, now, nth, place }`. `was` and `now` are source on one line; `nth` tells apart
 * the same change at several places of a file; `place` is where, exactly.
 */
export async function mutantsOf(files) {
  const quiet = Object.fromEntries(
    ['trace', 'debug', 'info', 'warn', 'error', 'fatal'].map((level) => [level, () => {}]),
  );
  const levels = ['Trace', 'Debug', 'Info', 'Warn', 'Error', 'Fatal'].map((level) => [
    `is${level}Enabled`,
    () => false,
  ]);
  const logger = { ...quiet, ...Object.fromEntries(levels) };
  const instrumenter = createInjector()
    .provideValue('logger', logger)
    .provideValue('getLogger', () => logger)
    .injectFunction(createInstrumenter);
  const sources = new Map(files.map((file) => [file, sourceOf(file)]));
  const { mutants } = await instrumenter.instrument(
    [...sources].map(([name, { text }]) => ({ name, content: text, mutate: true })),
    { ignorers: [], excludedMutations: EXCLUDED, plugins: null },
  );
  const times = new Map();
  return mutants
    .filter(({ status }) => status !== 'Ignored')
    .map((mutant) => described(mutant, sources.get(mutant.fileName)))
    .sort((a, b) => (a.file === b.file ? a.from - b.from || a.to - b.to : a.file < b.file ? -1 : 1))
    .map((mutant) => {
      const same = keyOf({ ...mutant, nth: 0 });
      const nth = (times.get(same) ?? 0) + 1;
      times.set(same, nth);
      return { ...mutant, nth };
    });
}

/** A file's text and where its lines start. */
function sourceOf(file) {
  const text = readFileSync(file, 'utf8');
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return { text, starts };
}

function described({ fileName, location: { start, end }, mutatorName, replacement }, source) {
  // The instrumenter counts lines from 0.
  const [from, to] = [start, end].map(({ line, column }) => source.starts[line] + column);
  return {
    file: fileName,
    line: start.line + 1,
    lines: end.line - start.line + 1,
    from,
    to,
    mutator: mutatorName,
    was: short(source.text.slice(from, to)),
    now: short(replacement),
    replacement,
    place: placeOf({ file: fileName, location: { start, end }, mutatorName, replacement }, 0),
  };
}

/** Identifies a mutant in one version of the sources. Stryker's results count lines and columns from 1. */
export function placeOf({ file, location: { start, end }, mutatorName, replacement }, first) {
  const at = [start, end].map(({ line, column }) => `${line - first}:${column - first}`);
  return [file, ...at, mutatorName, short(replacement)].join(' ');
}

/** Identifies a mutant across versions of the sources, as long as the change stays the same. */
export const keyOf = ({ file, mutator, was, now, nth }) => JSON.stringify([file, mutator, was, now, nth]);

const short = (text) => {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > 120 ? `${line.slice(0, 80)} … ${line.slice(-36)}` : line;
};
