/** Texts in CSV files: none is a formula to a spreadsheet, and each comes back as it was. */
import fc from 'fast-check';
import { guarded, unguarded } from '../../../src/platform/csv/spreadsheet-cell.js';

/** OWASP, CSV Injection: what a cell may not begin with; the full-width forms are named there, too. */
const DANGEROUS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
const text = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc
    .array(fc.constantFrom(...DANGEROUS, "'", ' ', 'a', '\u00a0', '\ufeff'), { maxLength: 6 })
    .map((all) => all.join('')),
);

it('begins nothing like a formula, blanks before it or not', () => {
  fc.assert(
    fc.property(text, (value) => {
      const cell = guarded(value);
      expect(DANGEROUS).not.toContain(cell.charAt(0));
      expect(DANGEROUS).not.toContain(cell.trimStart().charAt(0));
    }),
    { numRuns: 2000 },
  );
});

it('comes back as it was', () => {
  fc.assert(
    fc.property(text, (value) => expect(unguarded(guarded(value))).toBe(value)),
    { numRuns: 2000 },
  );
});

it('leaves alone what needs no guard, in files of others too', () => {
  for (const plain of ['Annual', 'AD 2000-01-01', "O'Ring", "'tis", '1040.5', '']) {
    expect(guarded(plain)).toBe(plain);
    expect(unguarded(plain)).toBe(plain);
  }
});
