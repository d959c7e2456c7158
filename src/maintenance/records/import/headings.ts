/** Headings of a file matched with fields: names tolerant of case, punctuation and units. Pure. */
import { FIELDS, UNITS, type Dimension, type Field, type Section } from './fields.js';

/** A heading taken for a field. */
export interface Matched {
  field: Field;
  /** Factor to what is kept, and the unit it was given in; null where there is none. */
  factor: number;
  unit: string | null;
  /** The heading names no unit although the field has one. */
  assumed: boolean;
}

/** What a heading is in each section; a section without it ignores the column. */
export type Match = Partial<Record<Section, Matched>>;

const spaced = (heading: string): string =>
  heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** @param sections those that may occur. */
export function matchHeading(heading: string, sections: readonly Section[]): Match {
  const words = spaced(heading);
  return Object.fromEntries(
    sections.flatMap((section) => {
      const found = inFields(words, FIELDS[section]);
      return found ? [[section, found]] : [];
    }),
  );
}

function inFields(words: string, fields: readonly Field[]): Matched | null {
  const exact = fields.find(({ name }) => spaced(name) === words);
  if (exact) return matched(exact, lastWord(words));
  // With its unit taken off, '(kg)' or 'hours' behind it; only then as it stands: 'total time' ends in no unit.
  const unit = lastWord(words);
  const base = words.slice(0, words.lastIndexOf(' ')).trim();
  const withUnit = fields.find(
    (field) => field.dimension && unitOf(field.dimension, unit) !== null && names(field).includes(base),
  );
  if (withUnit) return matched(withUnit, unit);
  const bare = fields.find((field) => names(field).includes(words) && !field.needsUnit?.includes(words));
  return bare ? matched(bare, null) : null;
}

/** Its own name without the unit counts as another name. */
const names = ({ name, also = [], dimension }: Field): string[] => {
  const own = spaced(name);
  const bare =
    dimension && unitOf(dimension, lastWord(own)) !== null ? own.slice(0, own.lastIndexOf(' ')) : own;
  return [own, bare, ...also];
};

const lastWord = (words: string): string => words.slice(words.lastIndexOf(' ') + 1);

const unitOf = (dimension: Dimension, unit: string): number | null => {
  const units: Record<string, number> = UNITS[dimension];
  return Object.hasOwn(units, unit) ? units[unit]! : null;
};

function matched(field: Field, unit: string | null): Matched {
  if (!field.dimension) return { field, factor: 1, unit: null, assumed: false };
  const factor = unit === null ? null : unitOf(field.dimension, unit);
  if (factor !== null) return { field, factor, unit, assumed: false };
  return { field, factor: 1, unit: Object.keys(UNITS[field.dimension])[0]!, assumed: true };
}
