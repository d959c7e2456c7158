import { ALIKE_FROM, dice, likeness, trigrams } from '../../src/fleet/squawks/duplicates/similar.js';

const of = (title: string, equipmentId: string | null = null, detail = '') => ({
  title,
  detail,
  equipmentId,
});

it('makes trigrams as PostgreSQL documents them for pg_trgm', () => {
  // PostgreSQL documentation, F.35 pg_trgm: the set of trigrams of "cat" is "  c", " ca", "cat", "at ".
  expect([...trigrams('cat')].sort()).toEqual(['  c', ' ca', 'at ', 'cat']);
});

it('counts what both have over what each has (Sørensen–Dice)', () => {
  // Worked by hand: {a,b,c} and {b,c,d} share two of three each, 2·2/6.
  expect(dice(new Set(['a', 'b', 'c']), new Set(['b', 'c', 'd']))).toBeCloseTo(2 / 3);
  expect(dice(new Set(), new Set())).toBe(0);
});

it.each([
  ['Landing light out', 'landing light is out again'],
  ['Radio breaks up on transmit', 'COM radio breaking up when transmitting'],
  ['Nosewheel shimmies on landing', 'Nose wheel shimmy'],
  ['Left brake feels soft', 'Left brake soft'],
])('offers "%s" for "%s"', (a, b) => {
  expect(likeness(of(a), of(b))).toBeGreaterThanOrEqual(ALIKE_FROM);
  expect(likeness(of(a), of(b))).toBe(likeness(of(b), of(a)));
});

it.each([
  ['Landing light out', 'Tyre worn to the second groove'],
  ['Seat does not lock in the third hole', 'Heading gyro drifts'],
  ['', ''],
])('does not offer "%s" for "%s"', (a, b) => {
  expect(likeness(of(a), of(b))).toBeLessThan(ALIKE_FROM);
});

it('offers a squawk of the same equipment whatever its words, at most as one', () => {
  expect(likeness(of('Dark', 'x'), of('Bulb broken', 'x'))).toBeGreaterThanOrEqual(ALIKE_FROM);
  expect(likeness(of('Dark', 'x'), of('Bulb broken', 'y'))).toBeLessThan(ALIKE_FROM);
  expect(likeness(of('Dark', 'x'), of('Dark', 'x'))).toBe(1);
});
