/** Runs entries against the real rules and functions. */
import { differs, isTolerance } from './compare.js';
import type { Entry, Reading } from './entries.js';
import { NeutralFacts } from './facts.js';
import { MAPPINGS } from './maps/index.js';
import type { Mapping } from './mapping.js';

/** What came of one entry; `problems` is empty when it passed. */
export interface Outcome {
  name: string;
  rule: string | null;
  status: 'passed' | 'failed' | 'skipped';
  problems: string[];
}

/** The mapping of a rule name, if there is one. */
export function mappingFor(rule: string, mappings: readonly Mapping[] = MAPPINGS): Mapping | undefined {
  return mappings.find((one) => one.rules.includes(rule));
}

export function runAll(readings: readonly Reading[]): Outcome[] {
  return readings.map((reading) =>
    'malformed' in reading
      ? { name: reading.name, rule: null, status: 'failed', problems: [`malformed: ${reading.malformed}`] }
      : runEntry(reading.entry),
  );
}

/** Runs one entry. A fact or an expectation without a meaning fails it: nothing is passed over. */
export function runEntry(entry: Entry): Outcome {
  const mapping = mappingFor(entry.rule);
  const outcome = (status: Outcome['status'], problems: string[]): Outcome => ({
    name: entry.id,
    rule: entry.rule,
    status,
    problems,
  });
  if (!mapping) return outcome('skipped', [`no mapping for rule ${entry.rule}`]);
  const expected = Object.entries(entry.expect).filter(([key]) => !isTolerance(key));
  if (expected.length === 0) return outcome('failed', ['expects nothing']);
  const facts = new NeutralFacts(entry.facts);
  try {
    const found = mapping.map(facts, entry.rule);
    const unread = facts.unread();
    if (unread.length > 0) return outcome('failed', [`no meaning for ${unread.join(', ')}`]);
    const problems = expected.map(([key, value]) =>
      Object.hasOwn(found, key)
        ? differs(key, value, found[key]!(value), entry.expect)
        : `${key}: nothing in the rules gives it`,
    );
    const misses = problems.filter((problem) => problem !== null);
    return outcome(misses.length > 0 ? 'failed' : 'passed', misses);
  } catch (error) {
    return outcome('failed', [error instanceof Error ? error.message : String(error)]);
  }
}
