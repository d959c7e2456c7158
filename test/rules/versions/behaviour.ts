/**
 * How a form of a rule behaves, as digests: of what it was given, of what it found. What it is given is every case of its
 * table, with the numbers of the law held fast; what it finds is the whole finding, sentences and all, at the case's own
 * departure and at eight others around it.
 */
import {
  bookFrom,
  canonicalJson,
  decide,
  decideCrew,
  digestOf,
  judgeAll,
  readFact,
  SECOND_PILOT_IS_PASSENGER,
  sha256,
  startingPolicy,
  toSeconds,
  type FactSheet,
  type LawBook,
  type Policy,
  type Rule,
} from '../../../src/rules/index.js';
import type { Case } from '../../../src/rules/workshop/case-table.js';
import { sheetOf } from '../../../src/rules/workshop/sheet-of.js';

/** Digests of findings by digests of what they were found on. */
export type Behaviour = Record<string, string>;

/** One form of one rule, and how it behaves. */
export interface Form {
  /** Its id; with the jurisdiction where that has a form of its own: 'ad.recurring (EU)'. */
  rule: string;
  /** Versions of its bodies: '1', '1+2'. */
  versions: string;
  /** What it reads and the numbers it declares: findings carry them. */
  header: string;
  behaviour: Behaviour;
  /** Names of the cases, by what they give. */
  names: Map<string, string>;
}

const DAY = 86_400;
/** Departures tried around that of the case, days; without the search for `until`. */
const AROUND = [-1, 1, -31, 31, -100, 100, -400, 400];

/** Enough of a digest to tell some thousand cases apart. */
export const short = (digest: string): string => digest.slice(0, 16);

export const versionsKey = (form: Rule): string => form.bodies.map((body) => body.version).join('+');

/** Runs a form over the cases of its rule's table. */
export function behaviourOf(form: Rule, cases: readonly Case[], law: LawBook, rule = form.id): Form {
  const result: Form = {
    ...{ rule, versions: versionsKey(form), behaviour: {}, names: new Map() },
    header: [...form.reads, ...form.parameters].join(' '),
  };
  for (const one of cases) {
    if (one.todo !== undefined) continue;
    const { sheet, policy: changes } = sheetOf(one);
    const policy = policyFor(form, changes);
    const key = short(given(form, sheet, policy, law));
    result.names.set(key, one.name);
    result.behaviour[key] = short(sha256(findings(form, sheet, policy, law).join('\n')));
  }
  return result;
}

function findings(form: Rule, sheet: FactSheet, policy: Policy, law: LawBook): string[] {
  const ruleset = { rules: [form], book: bookFrom(law, policy) };
  const departs = toSeconds(sheet.flight.departs);
  return [
    decide(sheet, policy, ruleset).findings[0],
    ...AROUND.map((days) => judgeAll(sheet, ruleset, departs + days * DAY).judged[0]!.finding),
  ].map(canonicalJson);
}

/** The starting policy with a case's own values, as far as the rule can see it. */
function policyFor(form: Rule, changes: Policy['values']): Policy {
  const ids = [...form.parameters, SECOND_PILOT_IS_PASSENGER];
  const kept = startingPolicy().values.filter((value) => !changes.some((change) => change.id === value.id));
  return { values: [...kept, ...changes].filter((value) => ids.includes(value.id)) };
}

/** Everything that the rule can see. What it cannot may change without the case becoming another. */
function given(form: Rule, sheet: FactSheet, policy: Policy, law: LawBook): string {
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  const { knownAt, zone, jurisdiction, flight } = sheet;
  return digestOf({
    ...{ knownAt, zone, jurisdiction, flight, crew, policy },
    facts: form.reads.map((key) => [key, readFact(sheet, crew, key)]),
    law: law.filter(({ id }) => form.parameters.includes(id)).map(({ id, values }) => [id, values]),
  });
}
