/**
 * The list of changes that no test notices, each with why that is right: survivors.yaml. A change is named by what it was and what it
 * became, so the list outlives edits elsewhere in the file.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { parse, stringify } from 'yaml';
import { keyOf } from './catalogue.mjs';

const FILE = new URL('survivors.yaml', import.meta.url);
export const UNEXPLAINED = 'to be explained';
/** The reason of those that are known, and for which neither a case nor an argument is there yet: a debt to be paid off. */
export const OWED = 'no-case-yet';
const HEAD = `# Changes to the rules that no case and no spec notices, and why that is right or that a case is owed. Written by
# \`npm run mutation -- --list\`, which keeps what is explained; \`why\` is the author's, or the name of one of the reasons below.
`;

/** The list: `reasons` by name, and entries `{ file, mutator, was, now, nth, why }`. */
export function readSurvivors() {
  const { reasons = {}, files = {} } = parse(readFileSync(FILE, 'utf8')) ?? {};
  const entries = Object.entries(files).flatMap(([file, listed]) =>
    listed.map(({ change, nth = 1, why }) => {
      const [, mutator, was, now] = /^(\w+): (.*) ⇒ (.*)$/.exec(change) ?? [];
      return { file, mutator, was, now, nth, why };
    }),
  );
  return { reasons, entries };
}

/** Writes the list; entries of other files than those `seen` stay as they are. */
export async function writeSurvivors({ reasons, entries }, survivors, seen) {
  const before = new Map(entries.map((entry) => [keyOf(entry), entry.why]));
  const kept = entries.filter(({ file }) => !seen.has(file));
  const now = survivors.map((mutant) => ({ ...mutant, why: before.get(keyOf(mutant)) ?? UNEXPLAINED }));
  const files = {};
  for (const { file, mutator, was, now: became, nth, why } of [...kept, ...now].sort((a, b) =>
    a.file < b.file ? -1 : a.file > b.file ? 1 : 0,
  ))
    (files[file] ??= []).push({ change: `${mutator}: ${was} ⇒ ${became}`, ...(nth > 1 && { nth }), why });
  const path = fileURLToPath(FILE);
  const text = HEAD + stringify({ reasons, files }, { lineWidth: 0 });
  writeFileSync(FILE, await format(text, { ...(await resolveConfig(path)), filepath: path }));
}

/**
 * What is wrong with the list itself, given every mutant there is: stale entries and missing explanations. Where only a case is owed,
 * the code may change under the entry: the next run takes it off.
 */
export function wrongWithList({ reasons, entries }, mutants) {
  const there = new Set(mutants.map(keyOf));
  const used = new Set(entries.map(({ why }) => why));
  return [
    ...entries
      .filter((entry) => entry.why !== OWED && !there.has(keyOf(entry)))
      .map((entry) => `no such change any more: ${told(entry)}`),
    ...entries
      .filter(({ why }) => typeof why !== 'string' || why.trim() === '' || why === UNEXPLAINED)
      .map((entry) => `not explained: ${told(entry)}`),
    ...Object.keys(reasons)
      .filter((name) => !used.has(name))
      .map((name) => `no entry has the reason ${name}`),
  ];
}

export const told = ({ file, mutator, was, now, nth, line }) =>
  `${file}${line ? `:${line}` : ''} ${mutator}: ${was} => ${now}${nth > 1 ? ` (${nth})` : ''}`;
