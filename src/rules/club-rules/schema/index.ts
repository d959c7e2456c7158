/**
 * The published schema: all that an expression of a club's rule may read. The declarations of the type check, the page at
 * GET /club-rules/schema and the facts a rule declares to read all come from here.
 *
 * A name never changes its meaning: decisions are judged again years later with the rule's text. A better meaning gets
 * another name.
 */
import type { FactKey } from '../../facts/keys.js';
import { AIRCRAFT } from './aircraft.js';
import type { Entry, Owner, OwnerEntries } from './entry.js';
import { FLIGHT } from './flight.js';
import { PERSON } from './person.js';
import { LOADING, WEATHER, WIND } from './told.js';
import { WHEN } from './when.js';

export type { ArgumentKind, Entry, Owner, OwnerEntries, Reading, ValueType } from './entry.js';
export { OBSERVATION_HOURS } from './told.js';

/** Counts the changes of the schema: entries added. */
export const SCHEMA_VERSION = 1;

/** Everything, in the order in which people read it. */
export const SCHEMA: readonly OwnerEntries[] = [
  { owner: 'flight', role: null, says: 'The flight asked for.', entries: [...FLIGHT, ...WHEN] },
  {
    owner: 'pilot',
    role: 'pic',
    says: 'The pilot in command: the instructor while instruction is given, else the member or the acting pilot.',
    entries: PERSON,
  },
  { owner: 'member', role: 'member', says: 'The member who asks, and flies or is taught.', entries: PERSON },
  {
    owner: 'instructor',
    role: 'instructor',
    says: 'The instructor named for the flight; not known while none is: see `flight.instructorNamed`.',
    entries: PERSON,
  },
  { owner: 'aircraft', role: null, says: 'The aircraft asked for.', entries: AIRCRAFT },
  {
    owner: 'wind',
    role: null,
    says: 'The wind the member told, observed shortly before departure.',
    entries: WIND,
  },
  {
    owner: 'weather',
    role: null,
    says: 'Other weather the member told, observed shortly before departure.',
    entries: WEATHER,
  },
  { owner: 'loading', role: null, says: 'The loading the member told.', entries: LOADING },
];

const byOwner = new Map<string, OwnerEntries>(SCHEMA.map((of) => [of.owner, of]));
const byName = new Map<string, Map<string, Entry>>(
  SCHEMA.map(({ owner, entries }) => [owner, new Map(entries.map((entry) => [entry.name, entry]))]),
);

/** Whether an expression may name it before a dot. */
export const isOwner = (name: string): name is Owner => byOwner.has(name);
export const ownerOf = (name: Owner): OwnerEntries => byOwner.get(name)!;
export const entryOf = (owner: Owner, name: string): Entry | undefined => byName.get(owner)!.get(name);

/** The facts behind an entry, by the names rules declare them with. */
export function readsOf(owner: Owner, entry: Entry): FactKey[] {
  const { role } = ownerOf(owner);
  return [
    ...(entry.own ?? []).map((subject): FactKey => `${role!}.${subject}`),
    ...(entry.aircraft ?? []).map((subject): FactKey => `aircraft.${subject}`),
  ];
}
