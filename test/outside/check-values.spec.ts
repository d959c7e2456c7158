/**
 * Every check value against the real rules: one test an entry, with the source that the entry names. The values come from
 * 14 CFR, Part-FCL, the CARs, FAA handbooks and physics; `source_status` says which were seen and which recalled.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isTolerance } from '../../src/cli/check-values/compare.js';
import { readEntries, type Entry } from '../../src/cli/check-values/entries.js';
import { MAPPINGS } from '../../src/cli/check-values/maps/index.js';
import { runEntry } from '../../src/cli/check-values/run.js';

/** The values of the rules reference, and our own beside them: days before and after each edge, from memory. */
const FILES = ['check-values.json', 'boundary-values.json'];

const entries: Entry[] = FILES.flatMap((file) =>
  readEntries(readFileSync(join(__dirname, 'check-values', file), 'utf8')).map((reading) => {
    if ('malformed' in reading) throw new Error(`${reading.name}: ${reading.malformed}`);
    return reading.entry;
  }),
);

/** Another value of the same kind, which no right answer gives. */
function another(value: unknown): unknown {
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'number') return value + 1000;
  if (value === null) return '2001-01-01T00:00Z';
  if (typeof value === 'string')
    return value.startsWith('2') ? value.replace(/^\d{4}/, '2001') : `not ${value}`;
  if (Array.isArray(value)) return [...(value as unknown[]), 'something else'];
  return Object.fromEntries(Object.entries(value as object).map(([key, one]) => [key, another(one)]));
}

const expectations = entries.flatMap((entry) =>
  Object.keys(entry.expect)
    .filter((key) => !isTolerance(key))
    .map((key) => [`${entry.id} ${key}`, entry, key] as const),
);

describe('check values', () => {
  test.each(
    entries.map(
      (entry) =>
        [`${entry.id} ${entry.rule}: ${entry.why} [${entry.source}; ${entry.source_status}]`, entry] as const,
    ),
  )('%s', (_name, entry) => {
    expect(runEntry(entry)).toEqual({ name: entry.id, rule: entry.rule, status: 'passed', problems: [] });
  });

  test('there are entries for every rule that has a mapping, save those with names of their own', () => {
    const named = new Set(entries.map((entry) => entry.rule));
    const unused = MAPPINGS.filter((mapping) => !mapping.rules.some((rule) => named.has(rule)));
    expect(unused.flatMap((mapping) => mapping.rules)).toEqual([]);
    expect(named.size).toBe(37);
  });

  // A check that cannot fail checks nothing: each expectation, changed, must be missed.
  test.each(expectations)('%s can fail', (_name, entry, key) => {
    const expect_ = { ...entry.expect, [key]: another(entry.expect[key]) };
    const outcome = runEntry({ ...entry, expect: expect_ });
    expect(outcome.status).toBe('failed');
    expect(outcome.problems).toEqual(expect.arrayContaining([expect.stringContaining(key)]));
  });

  // And each fact must be looked at: one with a name that nothing knows is never passed over.
  test.each(entries.map((entry) => [entry.id, entry] as const))(
    '%s refuses a fact it does not know',
    (_id, entry) => {
      const outcome = runEntry({ ...entry, facts: { ...entry.facts, phase_of_the_moon: 'full' } });
      expect(outcome).toMatchObject({
        status: 'failed',
        problems: [expect.stringContaining('facts.phase_of_the_moon')],
      });
    },
  );
});
