/**
 * Case tables: examples of a rule that a pilot can read, in YAML beside the rule. Each case names its source, changes
 * the base sheet by fact name, and expects a finding. Unknown keys are refused, so a typing error cannot test nothing.
 */
import { plusSeconds, toInstant, toSeconds } from '../calendar/instants.js';
import { decideCrew } from '../engine/crew.js';
import type { Status } from '../engine/rule.js';
import { known, unknownFact } from '../facts/fact.js';
import { readFact, replaceFact, type FactKey } from '../facts/keys.js';
import type { FactSheet, PolicyValue } from '../facts/sheet.js';
import { baseSheet } from './base-sheet.js';
import * as records from './records.js';

/** One case as written. */
export interface Case {
  name: string;
  source: string;
  /** Changes to the base sheet: see GIVEN_KEYS. */
  given?: Record<string, unknown>;
  expect: Expected;
}

/** What the finding must be; every key given is checked. */
export interface Expected {
  status: Status;
  branch?: string;
  /** Instant, or a date for its first second in the club's zone; null: time alone never changes the verdict. */
  until?: string | null;
  /** A part of the sentence. */
  says?: string;
  /** Ids of the counted records. */
  counted?: string[];
  /** Acts offered. */
  remedies?: string[];
  /** Parts of the conditions, in order. */
  conditions?: string[];
}

export interface CaseTable {
  rule: string;
  cases: Case[];
}

const CASE_KEYS = ['name', 'source', 'given', 'expect'];
const EXPECT_KEYS = ['status', 'branch', 'until', 'says', 'counted', 'remedies', 'conditions'];
const GIVEN_KEYS = ['asOf', 'durationMinutes', 'knownAt', 'jurisdiction', 'flight', 'policy'];

/** Complete records that list entries of a case are laid over, by subject. */
const RECORD: Record<string, object> = {
  certificates: records.CERTIFICATE,
  instructor: records.INSTRUCTOR,
  medicals: records.MEDICAL,
  basicMed: records.BASIC_MED,
  reviews: records.REVIEW,
  endorsements: records.ENDORSEMENT,
  log: records.LOG,
  checkouts: records.CHECKOUT,
  standing: records.STANDING,
  commitments: records.COMMITMENT,
  unverified: records.UNVERIFIED,
  type: records.AIRCRAFT_TYPE,
  use: { status: 'in-service', instructionForHire: false, carriesForHire: false },
  meters: records.METER,
  items: records.ITEM,
  registration: records.REGISTRATION,
  equipment: records.EQUIPMENT,
  squawks: records.SQUAWK,
  permits: records.PERMIT,
  reservations: records.RESERVATION,
  differences: records.DIFFERENCES,
};

/** Reads a parsed YAML document as a case table; throws naming the case and the key. */
export function readCaseTable(document: unknown): CaseTable {
  const table = document as CaseTable;
  if (typeof table?.rule !== 'string' || !Array.isArray(table.cases))
    throw new Error('a case table has `rule` and `cases`');
  for (const one of table.cases) {
    onlyKeys(one, CASE_KEYS, `case "${one.name}"`);
    if (!one.name || !one.source) throw new Error(`case "${one.name}" needs a name and a source`);
    onlyKeys(one.expect, EXPECT_KEYS, `case "${one.name}" expect`);
    if (!one.expect?.status) throw new Error(`case "${one.name}" expects no status`);
  }
  return table;
}

/** The sheet of a case, and the policy values it sets. */
export function sheetOf(one: Case): { sheet: FactSheet; policy: PolicyValue[] } {
  const given = one.given ?? {};
  let sheet = baseSheet();
  const departs = (given.asOf as string | undefined) ?? sheet.flight.departs;
  const minutes = (given.durationMinutes as number | undefined) ?? 60;
  const at = toInstant(toSeconds(departs));
  sheet.flight = {
    ...sheet.flight,
    departs: at,
    arrives: plusSeconds(at, minutes * 60),
    ...(given.flight as object),
  };
  // A weather without a time was observed at departure.
  const { weather } = sheet.flight;
  if (weather && weather.observedAt === undefined) sheet.flight.weather = { ...weather, observedAt: at };
  sheet.knownAt = (given.knownAt as string | undefined) ?? plusSeconds(at, -86_400);
  if (given.jurisdiction) sheet.jurisdiction = given.jurisdiction as FactSheet['jurisdiction'];
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  for (const [key, value] of Object.entries(given)) {
    if (GIVEN_KEYS.includes(key)) continue;
    const subject = key.split('.')[1] ?? '';
    if (!(subject in RECORD) && subject !== 'birthDate')
      throw new Error(`case "${one.name}": ${key} is no fact`);
    const before = readFact(sheet, crew, key as FactKey);
    const fact =
      value === 'unknown'
        ? unknownFact(`${key} is not on record`)
        : known(complete(subject, value, before.known ? before.value : undefined), sheet.knownAt);
    sheet = replaceFact(sheet, crew, key as FactKey, fact as never);
  }
  return { sheet, policy: (given.policy as PolicyValue[] | undefined) ?? [] };
}

/** Lays what the case states over a complete record; a single record is laid over the one in the base sheet. */
function complete(subject: string, value: unknown, before: unknown): unknown {
  const record = RECORD[subject];
  if (Array.isArray(value)) {
    return value.map((entry: Record<string, unknown>, index) => {
      onlyKeys(entry, Object.keys(record!), subject);
      const full: Record<string, unknown> = { ...record, id: `${subject}-${index + 1}`, ...entry };
      // A log entry dated by its day alone took place at noon there.
      if (subject === 'log' && entry.on !== undefined && entry.departedAt === undefined)
        full.departedAt = `${String(entry.on)}T19:00:00Z`;
      return full;
    });
  }
  if (typeof value === 'object' && value !== null) {
    onlyKeys(value, Object.keys(record!), subject);
    return { ...(before as object), ...value };
  }
  return value;
}

function onlyKeys(value: object | undefined, allowed: string[], where: string): void {
  for (const key of Object.keys(value ?? {})) {
    if (!allowed.includes(key)) throw new Error(`${where}: "${key}" is not one of ${allowed.join(', ')}`);
  }
}
