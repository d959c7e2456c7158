/** The facts a judgement rests on, with the records behind them: what was counted, how firm it is, since when known. */
import type { Instant } from '../calendar/instants.js';
import type { Crew } from '../engine/crew.js';
import type { Counted } from '../engine/rule.js';
import type { Known } from '../facts/fact.js';
import { personInRole, readFact, type FactKey, type Role } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import { factWords, subjectWords } from './fact-words.js';
import { showFact, type RecordShown } from './shown/index.js';
import { NONE_ON_RECORD, NOTHING_OF_IT } from './sentences.js';
import { FIRMNESS_WORD } from './words.js';

/** Records shown of a long list, besides those that were counted. */
export const OTHERS_SHOWN = 5;

/** One record behind a fact. */
export interface RecordRead {
  id: string | null;
  /** What it is: 'log entry'. */
  kind: string;
  says: string;
  /** What it gave towards the verdict; null when it was looked at and not counted. */
  counted: string | null;
}

/** A fact that was read. */
export interface FactRead {
  key: FactKey;
  words: string;
  /** Whose it is; null for the aircraft's. */
  whose: string | null;
  known: boolean;
  /** What is missing, of a fact that is not on record. */
  because: string | null;
  firmness: NonNullable<Known<unknown>['status']> | null;
  firmnessWord: string | null;
  lastKnownAt: Instant | null;
  /** Those counted, then the newest of the others. */
  records: RecordRead[];
  /** How many more there are. */
  more: number;
  /** What to say where no record is shown; null where some are. */
  nothing: string | null;
}

/** Explains one fact; `fields` are those read of a single record. */
export function explainFact(
  key: FactKey,
  of: { sheet: FactSheet; crew: Crew; counted: readonly Counted[]; fields: ReadonlySet<string> },
): FactRead {
  const { sheet, crew } = of;
  const fact = readFact(sheet, crew, key);
  const head = { key, words: factWords(key), whose: whoseIs(key, sheet, crew) };
  if (!fact.known) {
    const { because } = fact;
    return {
      ...head,
      ...{
        known: false,
        because,
        firmness: null,
        firmnessWord: null,
        lastKnownAt: null,
        records: [],
        more: 0,
        nothing: null,
      },
    };
  }
  const firmness = fact.status ?? 'recorded';
  const records = showFact(key, fact.value, { fields: of.fields, zone: sheet.zone }).map((record) => ({
    id: record.id,
    kind: subjectWords(key).record,
    says: record.says,
    counted: whatItGave(record, of.counted),
  }));
  const given = records.filter((record) => record.counted !== null);
  const others = records.filter((record) => record.counted === null);
  return {
    ...head,
    ...{ known: true, because: null, firmness, firmnessWord: FIRMNESS_WORD[firmness] },
    lastKnownAt: fact.lastKnownAt,
    records: [...given, ...others.slice(0, OTHERS_SHOWN)],
    more: Math.max(0, others.length - OTHERS_SHOWN),
    nothing: records.length > 0 ? null : Array.isArray(fact.value) ? NONE_ON_RECORD : NOTHING_OF_IT,
  };
}

function whatItGave(record: RecordShown, counted: readonly Counted[]): string | null {
  const ids = [record.id, ...(record.alsoIds ?? [])];
  const given = counted.filter(({ id }) => ids.includes(id)).map(({ what }) => what);
  return given.length === 0 ? null : given.join('; ');
}

function whoseIs(key: FactKey, sheet: FactSheet, crew: Crew): string | null {
  const [owner] = key.split('.') as [Role | 'aircraft'];
  if (owner === 'aircraft') return null;
  const id = personInRole(sheet, crew, owner);
  return id === null ? null : (sheet.people[id]?.name ?? null);
}
