/** Canonical JSON against RFC 8785: its own samples, and its reference writing on arbitrary JSON. */
import canonicalize from 'canonicalize';
import fc from 'fast-check';
import { canonicalJson, sha256 } from '../../src/rules/index.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';

const reference = canonicalize as unknown as (value: unknown) => string;

describe('canonical JSON', () => {
  test('RFC 8785 section 3.2.2: numbers, strings and literals', () => {
    const sample = String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`;
    expect(canonicalJson(JSON.parse(sample))).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  test('RFC 8785 section 3.2.3: keys by UTF-16 code units', () => {
    const sample = String.raw`{
      "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
    }`;
    const values = Object.values(JSON.parse(canonicalJson(JSON.parse(sample))) as Record<string, string>);
    // The key "1" is an array index, which JavaScript puts first when it reads the text back.
    expect(values).toEqual([
      'One',
      'Carriage Return',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
    expect(canonicalJson(JSON.parse(sample))).toBe(reference(JSON.parse(sample)));
  });

  test('the package canonicalize, by an author of the RFC, writes the same bytes', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        expect(canonicalJson(value)).toBe(reference(value));
      }),
      { numRuns: 2000, seed: 20_261_125 },
    );
    expect(canonicalJson(baseSheet())).toBe(reference(baseSheet()));
  });

  test('what is not JSON has no canonical form', () => {
    const circle: Record<string, unknown> = {};
    circle.self = circle;
    for (const value of [undefined, () => 1, 10n, circle, { at: Number.NaN }, [Number.POSITIVE_INFINITY]])
      expect(() => canonicalJson(value)).toThrow();
  });

  test('SHA-256: the sample of FIPS 180-2 appendix B.1', () => {
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });
});
