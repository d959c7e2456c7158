import { dayInWords, piecesOf } from '../../src/web/page/parts/dated-text.js';

/** Joined again, the pieces are the sentence. */
const joined = (sentence: string): string =>
  piecesOf(sentence)
    .map((piece) => {
      if (piece.kind === 'words') return piece.text;
      if (piece.kind === 'instant') return piece.instant;
      return piece.kind === 'clock' ? `${piece.date} ${piece.clock}` : piece.date;
    })
    .join('');

test.each([
  ['Good through 2027-03-20.', ['words', 'day', 'words']],
  ['2027-03-20', ['day']],
  ['Taken from 2027-03-01 11:59 until 2027-03-01 14:00.', ['words', 'clock', 'words', 'clock', 'words']],
  ['Holds before 2027-03-21T05:00:00Z; then “no”.', ['words', 'instant', 'words']],
  ['Grounded by "brake" (2027-02-20).', ['words', 'day', 'words']],
  ['No date, 14 CFR 91.205(b)(11), 10:30 and 2027-3-1.', ['words']],
  ['2027-03-01 10:300', ['day', 'words']],
  ['', []],
])('%s', (sentence, kinds) => {
  expect(piecesOf(sentence).map(({ kind }) => kind)).toEqual(kinds);
  expect(joined(sentence)).toBe(sentence);
});

test('a date is written in the reader’s English, and one that is none stays as it is', () => {
  expect(dayInWords('2026-11-23', 'en-GB')).toBe('23 Nov 2026');
  expect(dayInWords('2026-11-23', 'en-US')).toBe('Nov 23, 2026');
  expect(dayInWords('2024-02-29', 'en-GB')).toBe('29 Feb 2024');
  expect(dayInWords('2027-02-30', 'en-GB')).toBe('2027-02-30');
  expect(dayInWords('2027-13-01', 'en-GB')).toBe('2027-13-01');
});
