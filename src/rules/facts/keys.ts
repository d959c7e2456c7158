/**
 * The names of the facts that a rule can declare in `reads`, and how each is found and replaced in a sheet.
 *
 * `pic.*` is the pilot in command as decided by crew.ts, `member.*` the person who asks, `instructor.*` the instructor
 * named for the flight. Standing decisions are indexed by these names.
 */
import type { Crew } from '../engine/crew.js';
import type { AircraftFacts } from './aircraft.js';
import { unknownFact, type Fact, type Known } from './fact.js';
import type { PersonFacts } from './person.js';
import type { FactSheet } from './sheet.js';

type PersonSubject = Exclude<keyof PersonFacts, 'id' | 'name'>;
type AircraftSubject = Exclude<keyof AircraftFacts, 'id'>;
export type Role = 'pic' | 'member' | 'instructor';

/** A fact's name: `pic.log`, `aircraft.squawks`, ... */
export type FactKey = `${Role}.${PersonSubject}` | `aircraft.${AircraftSubject}`;

type Held<F> = Extract<F, { known: true }> extends Known<infer T> ? T : never;
/** The type of the value behind a fact's name. */
export type FactValue<K extends FactKey> = K extends `aircraft.${infer S extends AircraftSubject}`
  ? Held<AircraftFacts[S]>
  : K extends `${Role}.${infer S extends PersonSubject}`
    ? Held<PersonFacts[S]>
    : never;

const ROLE_WORDS: Record<Role, string> = {
  pic: 'the pilot in command',
  member: 'the member',
  instructor: 'the instructor',
};

/** The member id that fills a role on this flight, or null. */
export function personInRole(sheet: FactSheet, crew: Crew, role: Role): string | null {
  if (role === 'pic') return crew.picId;
  return role === 'member' ? sheet.flight.memberId : sheet.flight.instructorId;
}

/** A subject that sheets did not have yet when this one was stored. */
const NOT_KEPT = unknownFact('it was not yet kept when the facts were gathered');

const parts = new Map<FactKey, [string, string]>();

function split(key: FactKey): [string, string] {
  let found = parts.get(key);
  if (!found) parts.set(key, (found = key.split('.') as [string, string]));
  return found;
}

/** Finds a fact; a role nobody fills gives an unknown that says so. */
export function readFact<K extends FactKey>(sheet: FactSheet, crew: Crew, key: K): Fact<FactValue<K>> {
  const [role, subject] = split(key);
  if (role === 'aircraft')
    return (sheet.aircraft[subject as AircraftSubject] ?? NOT_KEPT) as Fact<FactValue<K>>;
  const id = personInRole(sheet, crew, role as Role);
  if (id === null) return unknownFact(`${ROLE_WORDS[role as Role]} is not named`);
  const person = sheet.people[id];
  if (!person) return unknownFact(`nothing is on record for ${ROLE_WORDS[role as Role]}`);
  return (person[subject as PersonSubject] ?? NOT_KEPT) as Fact<FactValue<K>>;
}

/** A copy of the sheet with one fact replaced; the rest is shared. Used for hypotheses only. */
export function replaceFact<K extends FactKey>(
  sheet: FactSheet,
  crew: Crew,
  key: K,
  fact: Fact<FactValue<K>>,
): FactSheet {
  const [role, subject] = split(key);
  if (role === 'aircraft') return { ...sheet, aircraft: { ...sheet.aircraft, [subject]: fact } };
  const id = personInRole(sheet, crew, role as Role);
  const person = id === null ? undefined : sheet.people[id];
  if (id === null || !person) return sheet;
  return { ...sheet, people: { ...sheet.people, [id]: { ...person, [subject]: fact } } };
}
