/**
 * Case tables: examples of a rule that a pilot can read and write, in YAML beside the rule. Each case names its source,
 * changes the base sheet by fact name, and expects a finding. Whatever is not understood is refused with its place, so a
 * typing error cannot test nothing.
 */
import type { Status } from '../engine/rule.js';
import { conformingFact, conformingFlight, conformingPolicy, isFactName } from './case-facts.js';
import { conformingTime } from './case-times.js';
import { object, onlyKeys, type Place, type Refuse } from './refuse.js';

export type { Place, Refuse } from './refuse.js';

/** One case as written. */
export interface Case {
  name: string;
  source: string;
  /** Changes to the base sheet: the settings of the flight below, and facts by name ('pic.log'). */
  given?: Record<string, unknown>;
  expect: Expected;
  /** Not written yet: says what is to be filled in. The test run fails with it. */
  todo?: string;
}

/** What the finding must be; every key given is checked. */
export interface Expected {
  status: Status;
  branch?: string;
  /** Instant, or a date for its first second in the club's zone; null: time alone never changes the verdict. */
  until?: string | null;
  /** A part of the sentence, or several. */
  says?: string | string[];
  /** The counted records by id; where it matters, with a part of what they gave. */
  counted?: (string | ExpectedCounted)[];
  /** Acts offered; where it matters, with a part of the title and who acts. */
  remedies?: (string | ExpectedRemedy)[];
  /** Parts of the conditions, in order. */
  conditions?: string[];
}

/** A counted record as expected. */
export interface ExpectedCounted {
  id: string;
  on?: string | null;
  what?: string;
}

/** A remedy as expected. */
export interface ExpectedRemedy {
  act: string;
  title?: string;
  by?: string;
  /** Some of what it would change or record: { personsOnBoard: 1 }. */
  changes?: Record<string, unknown>;
}

export interface CaseTable {
  rule: string;
  cases: Case[];
}

const CASE_KEYS = ['name', 'source', 'given', 'expect', 'todo'];
const EXPECT_KEYS = ['status', 'branch', 'until', 'says', 'counted', 'remedies', 'conditions'];
const STATUSES: Status[] = ['met', 'short', 'unknown', 'not-applicable', 'error'];
const JURISDICTIONS = ['US', 'EU', 'CA'];

const refuseByThrowing: Refuse = (place, because) => {
  throw new Error(`${place.join('.')}: ${because}`);
};

/** Reads a parsed YAML document as a case table, its times turned into instants. */
export function readCaseTable(document: unknown, refuse: Refuse = refuseByThrowing): CaseTable {
  const table = object(document, [], refuse);
  onlyKeys(table, ['rule', 'cases'], [], refuse);
  const { rule, cases } = table;
  if (typeof rule !== 'string' || !Array.isArray(cases) || cases.length === 0)
    return refuse([], 'a case table has `rule` and a list of `cases`');
  const names = new Set<string>();
  return {
    rule,
    cases: cases.map((one: unknown, index) => {
      const read = readCase(one, ['cases', index], refuse);
      if (names.has(read.name)) refuse(['cases', index], `a second case is called "${read.name}"`);
      names.add(read.name);
      return read;
    }),
  };
}

function readCase(written: unknown, place: Place, refuse: Refuse): Case {
  const one = object(written, place, refuse);
  onlyKeys(one, CASE_KEYS, place, refuse);
  for (const key of ['name', 'source', 'todo']) {
    if (key === 'todo' && one.todo === undefined) continue;
    const text = one[key];
    if (typeof text !== 'string' || text.trim() === '')
      refuse(key in one ? [...place, key] : place, `a case needs a ${key} in words`);
  }
  const given = one.given === undefined ? {} : object(one.given, [...place, 'given'], refuse);
  return {
    ...(one as unknown as Case),
    given: Object.fromEntries(
      Object.entries(given).map(([key, value]) => [
        key,
        readGiven(key, value, [...place, 'given', key], refuse),
      ]),
    ),
    expect: readExpected(one.expect, [...place, 'expect'], refuse),
  };
}

/** One change to the base sheet. */
function readGiven(key: string, value: unknown, place: Place, refuse: Refuse): unknown {
  switch (key) {
    case 'asOf':
    case 'knownAt':
      return conformingTime(value, 'instant', place, refuse);
    case 'durationMinutes':
      return typeof value === 'number' && value >= 0 ? value : refuse(place, 'minutes, as a number');
    case 'jurisdiction':
      return JURISDICTIONS.includes(value as string)
        ? value
        : refuse(place, `one of ${JURISDICTIONS.join(', ')}`);
    case 'flight':
      return conformingFlight(value, place, refuse);
    case 'policy':
      return conformingPolicy(value, place, refuse);
    default:
      if (!isFactName(key)) return refuse(place, `${key} is no fact`);
      return value === 'unknown' ? value : conformingFact(key, value, place, refuse);
  }
}

function readExpected(written: unknown, place: Place, refuse: Refuse): Expected {
  const expected = object(written, place, refuse);
  onlyKeys(expected, EXPECT_KEYS, place, refuse);
  if (!STATUSES.includes(expected.status as Status))
    refuse([...place, 'status'], `expects a status: one of ${STATUSES.join(', ')}`);
  for (const key of ['branch', 'says']) {
    const texts = key === 'says' && Array.isArray(expected.says) ? expected.says : [expected[key]];
    if (key in expected && texts.some((text) => typeof text !== 'string' || text === ''))
      refuse([...place, key], `${key} is a text`);
  }
  readList(expected.counted, 'counted', ['id', 'on', 'what'], place, refuse);
  readList(expected.remedies, 'remedies', ['act', 'title', 'by', 'changes'], place, refuse);
  readList(expected.conditions, 'conditions', [], place, refuse);
  const { until } = expected;
  if (until === undefined || until === null) return expected as unknown as Expected;
  return {
    ...(expected as unknown as Expected),
    until: conformingTime(until, 'date or instant', [...place, 'until'], refuse),
  };
}

/** A list of texts, or (where `keys` are given) of records that hold the first of them. */
function readList(list: unknown, name: string, keys: readonly string[], place: Place, refuse: Refuse): void {
  if (list === undefined) return;
  if (!Array.isArray(list)) return refuse([...place, name], `${name} is a list`);
  list.forEach((entry: unknown, index) => {
    const at = [...place, name, index];
    if (typeof entry === 'string') return;
    if (keys.length === 0) refuse(at, `${name} is a list of texts`);
    onlyKeys(object(entry, at, refuse), keys, at, refuse);
    if (typeof (entry as Record<string, unknown>)[keys[0]!] !== 'string') refuse(at, `${keys[0]} is missing`);
  });
}
