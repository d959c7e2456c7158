/** Headings of a file matched with what a column can be. Pure. */
import { LOG_COLUMNS } from '../columns.js';
import { FIELD_NAMES, FIELDS, type ImportField } from './fields.js';

/** In small letters, without marks and what stands in brackets; 'Off blocks (UTC)' → 'off blocks'. */
const spaced = (heading: string): string =>
  heading
    .normalize('NFKC')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/\([^)]*\)|\[[^\]]*\]/g, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Words that say in what a figure or a time is given, or that it is a number, and nothing more. */
const EXTRA = /\b(?:h|hr|hrs|hours|min|mins|minutes|utc|zulu|z|local|lt|no|number of)\b/g;

const BY_WORDS = new Map<string, ImportField>(
  FIELD_NAMES.flatMap((name) => [...FIELDS[name].words, spaced(name)].map((words) => [words, name] as const)),
);
for (const { heading, field } of LOG_COLUMNS) BY_WORDS.set(spaced(heading), field);

/** The field a heading is known as; null: no such word. */
export function fieldOf(heading: string): ImportField | null {
  const words = spaced(heading);
  if (words === '') return null;
  const bare = words.replace(EXTRA, ' ').replace(/ +/g, ' ').trim();
  return BY_WORDS.get(words) ?? BY_WORDS.get(bare) ?? null;
}

/** How many of the cells are headings that are known. */
export const titlesKnown = (cells: readonly string[]): number =>
  new Set(cells.map(fieldOf).filter((field) => field !== null)).size;

/** Whether a heading says minutes. */
export const saysMinutes = (heading: string): boolean => /\b(?:min|mins|minutes)\b/i.test(heading);

/** Whose clock a heading says its times are by; null: it does not. */
export function clockSaid(heading: string): 'utc' | 'zone' | null {
  if (/\b(?:utc|zulu|gmt|z)\b/i.test(heading)) return 'utc';
  return /\b(?:local|lt)\b/i.test(heading) ? 'zone' : null;
}
