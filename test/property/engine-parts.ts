/** Building blocks of arbitrary fact sheets. Dates lie within some years of the flight, so that every interval is crossed. */
import fc from 'fast-check';
import {
  addDays,
  known,
  plusSeconds,
  unknownFact,
  type Fact,
  type LocalDate,
} from '../../src/rules/index.js';
import * as records from '../../src/rules/workshop/records.js';

export const TODAY = '2027-02-28';
export const KNOWN_AT = '2027-02-28T18:00:00Z';

export const day = (least: number, most: number): fc.Arbitrary<LocalDate> =>
  fc.integer({ min: least, max: most }).map((days) => addDays(TODAY, days));
export const maybe = <T>(arb: fc.Arbitrary<T>): fc.Arbitrary<T | null> =>
  fc.option(arb, { nil: null, freq: 3 });
export const flag = fc.boolean();

/** A fact that is nearly always on record. */
export const fact = <T>(arb: fc.Arbitrary<T>): fc.Arbitrary<Fact<T>> =>
  fc.oneof(
    { weight: 30, arbitrary: arb.map((value) => known(value, KNOWN_AT) as Fact<T>) },
    { weight: 1, arbitrary: fc.constant(unknownFact('it is not on record') as Fact<T>) },
  );

/**
 * The base with some of the fields replaced, by a chance that differs from sheet to sheet: where all is wrong little can
 * get worse, and where nearly all is right few faults meet.
 */
export function mostly<T extends object>(base: T, fields: Partial<T>): fc.Arbitrary<T> {
  const keys = Object.keys(fields) as (keyof T)[];
  const draw = fc.integer({ min: 0, max: 9 });
  return fc
    .record({
      chance: fc.constantFrom(1, 2, 2, 5, 10),
      draws: fc.array(draw, { minLength: keys.length, maxLength: keys.length }),
    })
    .map(({ chance, draws }) => ({
      ...base,
      ...Object.fromEntries(keys.filter((_, at) => draws[at]! < chance).map((key) => [key, fields[key]])),
    }));
}

/** A list of records with ids of their own. */
export const several = <T extends { id: string }>(
  arb: fc.Arbitrary<T>,
  most: number,
  name: string,
  least = 0,
): fc.Arbitrary<T[]> =>
  fc
    .array(arb, { minLength: least, maxLength: most })
    .map((list) => list.map((one, index) => ({ ...one, id: `${name}-${index + 1}` })));

export const span = fc
  .record({ hours: fc.integer({ min: 0, max: 1700 }), length: fc.integer({ min: 1, max: 30 }) })
  .map(({ hours, length }) => {
    const from = plusSeconds(KNOWN_AT, hours * 3600);
    return { from, to: plusSeconds(from, length * 3600) };
  });
export const commitment = span.map((fields) => ({ ...records.COMMITMENT, ...fields }));
