/** The words that a club's own records bring into sentences: names, titles, makes. They are data, not ours to choose. */
import type { FactSheet } from '../../../src/rules/index.js';

const FIELDS = [
  ...['name', 'title', 'makeModel', 'holder', 'what', 'purpose', 'equipmentGroup', 'registration', 'code'],
  ...['typeDesignator', 'typeRating', 'reference', 'equipmentListItem', 'vorPlace'],
];

/** The records' words of a sheet, to be taken out of a sentence; the longest first, as some hold others. */
export function factsText(sheet: FactSheet): { outOf(says: string): string } {
  const words = new Set<string>();
  const collect = (value: unknown): void => {
    if (Array.isArray(value)) return value.forEach(collect);
    if (typeof value !== 'object' || value === null) return;
    for (const [field, inside] of Object.entries(value)) {
      if (FIELDS.includes(field) && typeof inside === 'string' && inside !== '') words.add(inside);
      collect(inside);
    }
  };
  collect([sheet.people, sheet.aircraft, sheet.flight]);
  const longestFirst = [...words].sort((a, b) => b.length - a.length);
  return { outOf: (says) => longestFirst.reduce((rest, word) => rest.replaceAll(word, '…'), says) };
}
