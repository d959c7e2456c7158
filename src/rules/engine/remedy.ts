/**
 * Remedies as data: an act that would change the facts, and how. `applyRemedy` makes the hypothetical sheet, so that a
 * remedy can be proven by judging again.
 */
import { known, type Fact } from '../facts/fact.js';
import type { FlightFacts } from '../facts/flight.js';
import { readFact, replaceFact, type FactKey } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import type { Crew } from './crew.js';

/** Who can perform an act. */
export type Actor =
  | 'member'
  | 'instructor'
  | 'examiner'
  | 'medical-examiner'
  | 'maintenance-coordinator'
  | 'mechanic'
  | 'officer'
  | 'administrator';

/** One change of the facts. */
export type Effect =
  /** Adds a record to a list fact (a landing flown, an exam passed, an inspection signed). */
  | { op: 'append'; fact: FactKey; value: object }
  /** Replaces fields of the record with `id` in a list fact. */
  | { op: 'amend'; fact: FactKey; id: string; fields: object }
  /** Replaces a fact that is one record. */
  | { op: 'set'; fact: FactKey; value: unknown }
  /** Changes the request itself. */
  | { op: 'flight'; fields: Partial<FlightFacts> };

/** An act that would cure a finding. */
export interface Remedy {
  /** Stable name of the act, shared by the rules it can serve: 'fly-landings', 'pass-medical-exam', ... */
  act: string;
  /** Imperative sentence for the member. */
  title: string;
  by: Actor;
  effects: Effect[];
}

/** The sheet as it would be after the act. List effects on an unknown fact make it known. */
export function applyRemedy(sheet: FactSheet, crew: Crew, remedy: Remedy): FactSheet {
  let result = sheet;
  for (const effect of remedy.effects) result = applyEffect(result, crew, effect);
  return result;
}

function applyEffect(sheet: FactSheet, crew: Crew, effect: Effect): FactSheet {
  if (effect.op === 'flight') return { ...sheet, flight: { ...sheet.flight, ...effect.fields } };
  const fact = readFact(sheet, crew, effect.fact) as Fact<unknown>;
  if (effect.op === 'set')
    return replaceFact(sheet, crew, effect.fact, planned(effect.value, sheet) as never);
  const list = fact.known ? (fact.value as { id: string }[]) : [];
  const changed =
    effect.op === 'append'
      ? [...list, effect.value]
      : list.map((record) => (record.id === effect.id ? { ...record, ...effect.fields } : record));
  return replaceFact(sheet, crew, effect.fact, planned(changed, sheet) as never);
}

const planned = (value: unknown, sheet: FactSheet) => known(value, sheet.knownAt, 'planned');
