/**
 * Remedies as data: who acts is told, and what would be recorded is a whole record of its kind, marked as planned, dated no earlier
 * than the day on which the facts were gathered.
 */
import { localDateOf, toSeconds } from '../calendar/instants.js';
import type { Actor, Effect, Remedy } from '../engine/remedy.js';
import { conformingFact, conformingFlight, isFactName, recordOf } from './case-facts.js';
import type { Refuse } from './refuse.js';
import type { Outcome } from './run-case.js';

const ACTORS: Actor[] = [
  'member',
  'instructor',
  'examiner',
  'medical-examiner',
  'maintenance-coordinator',
  'mechanic',
  'officer',
  'administrator',
];

class NotInForm extends Error {}
const refuse: Refuse = (place, because) => {
  throw new NotInForm(`${place.join('.')}: ${because}`);
};

/** What is wrong with the form of the remedies offered. */
export function remediesInForm({ finding, sheet }: Outcome): string[] {
  const today = localDateOf(toSeconds(sheet.knownAt), sheet.zone);
  return finding.remedies.flatMap((remedy) =>
    wrongWith(remedy, today).map((wrong) => `${remedy.act}: ${wrong}`),
  );
}

function wrongWith(remedy: Remedy, today: string): string[] {
  const wrong: string[] = [];
  if (!/^[a-z]+(-[a-z0-9]+)*$/.test(remedy.act)) wrong.push('an act is named in lower case with hyphens');
  if (!/^[A-Z].*[^.]\.$/s.test(remedy.title)) wrong.push(`no whole sentence: "${remedy.title}"`);
  if (!ACTORS.includes(remedy.by)) wrong.push(`nobody is called "${remedy.by}"`);
  if (remedy.effects.length === 0) wrong.push('it changes nothing');
  for (const effect of remedy.effects) {
    try {
      checkEffect(effect, today);
    } catch (error) {
      if (!(error instanceof NotInForm)) throw error;
      wrong.push(error.message);
    }
  }
  return wrong;
}

const OPERATIONS: Effect['op'][] = ['append', 'amend', 'set', 'flight'];

/** Is there an empty text anywhere in it? */
function empty(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return value === '';
  return Object.values(value).some(empty);
}

function checkEffect(effect: Effect, today: string): void {
  if (!OPERATIONS.includes(effect.op)) refuse([effect.op], 'is no effect');
  if (empty(effect)) refuse(['effects'], 'a text is empty');
  if (effect.op === 'flight') {
    // Its times may move, and are instants.
    const { departs: _departs, arrives: _arrives, ...fields } = effect.fields;
    conformingFlight(fields, ['flight'], refuse);
    if (Object.keys(effect.fields).length === 0) refuse(['flight'], 'nothing changes');
    if ((fields.personsOnBoard ?? 1) < 1) refuse(['flight', 'personsOnBoard'], 'nobody would be aboard');
    return;
  }
  const { fact } = effect;
  if (!isFactName(fact)) refuse([fact], 'is no fact');
  if (effect.op === 'amend') {
    conformingFact(fact, [effect.fields], [fact], refuse);
    if (Object.keys(effect.fields).length === 0) refuse([fact], 'nothing changes');
    return;
  }
  if (effect.op === 'set') {
    conformingFact(fact, effect.value, [fact], refuse);
    return;
  }
  conformingFact(fact, [effect.value], [fact], refuse);
  const record = effect.value as { id?: unknown; on?: unknown };
  const lacking = Object.keys(recordOf(fact)).filter((key) => !(key in record));
  if (lacking.length > 0) refuse([fact], `the record lacks ${lacking.join(', ')}`);
  if (typeof record.id !== 'string' || !/^planned:[a-z]/.test(record.id))
    refuse([fact], `${String(record.id)} is not marked as planned`);
  if (typeof record.on === 'string' && record.on < today) refuse([fact, 'on'], `${record.on} is past`);
}
