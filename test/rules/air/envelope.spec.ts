/**
 * Envelopes of the centre of gravity: which can be read, what lies inside, between which arms they lie at a weight. A convex one is
 * held against its half planes, which is another way to say what is inside (geometry, no source).
 */
import { fuelInTanks, balanceOf } from '../../../src/rules/air/balance.js';
import {
  armsAt,
  categoriesOf,
  envelopeFaults,
  isInside,
  type WeightAtArm,
} from '../../../src/rules/air/envelope.js';

const corner = (armIn: number, weightLb: number): WeightAtArm => ({ armIn, weightLb });
/** Forward limit 82 up to 1,950 lb, then in a line to 86 at 2,400; aft limit 93. */
const NORMAL = [corner(82, 1400), corner(82, 1950), corner(86, 2400), corner(93, 2400), corner(93, 1400)];
/** The same, narrower aft and lighter. */
const UTILITY = [
  corner(82, 1400),
  corner(82, 1950),
  corner(83, 2062.5),
  corner(88, 2062.5),
  corner(88, 1400),
];
/** Aft limit cut in at 2,000 lb, as where a flap setting or a tank makes it so: not convex. */
const NOTCHED = [
  corner(82, 1400),
  corner(82, 2400),
  corner(93, 2400),
  corner(88, 2000),
  corner(93, 1600),
  corner(93, 1400),
];
const turned = (points: readonly WeightAtArm[], by: number): WeightAtArm[] => [
  ...points.slice(by),
  ...points.slice(0, by),
];

describe('what can be read', () => {
  test.each([
    ['no corner', [], ['an envelope has at least three corners']],
    ['two corners', [corner(82, 1400), corner(93, 2400)], ['an envelope has at least three corners']],
    ['three corners', [corner(82, 1400), corner(86, 2400), corner(93, 1400)], []],
    [
      'a corner without an arm',
      [corner(Number.NaN, 1400), corner(86, 2400), corner(93, 1400)],
      ['every corner has an arm and a weight of more than 0'],
    ],
    [
      'a corner without weight',
      [corner(82, 0), corner(86, 2400), corner(93, 1400)],
      ['every corner has an arm and a weight of more than 0'],
    ],
    ['a corner of a pound', [corner(82, 1), corner(86, 2400), corner(93, 1400)], []],
    [
      'corners on one line',
      [corner(82, 1400), corner(84, 1600), corner(86, 1800)],
      ['the corners lie on one line'],
    ],
    ['five corners', NORMAL, []],
    ['five corners the other way round', [...NORMAL].reverse(), []],
    ['a notch', NOTCHED, []],
    [
      'corners out of order',
      [corner(82, 1400), corner(93, 2400), corner(82, 2300), corner(93, 1400)],
      ['its edges cross; give the corners in order round the envelope'],
    ],
    [
      'an edge over the next but one, five corners',
      [NORMAL[0]!, NORMAL[2]!, NORMAL[1]!, NORMAL[3]!, NORMAL[4]!],
      ['its edges cross; give the corners in order round the envelope'],
    ],
  ])('%s', (_, points, faults) => {
    expect(envelopeFaults(points)).toEqual(faults);
  });

  test('a notch cut through to the other side touches it and crosses nothing', () => {
    const through = [
      corner(82, 1400),
      corner(82, 2400),
      corner(93, 2400),
      corner(82, 2000),
      corner(93, 1600),
      corner(93, 1400),
    ];
    for (let by = 0; by < 6; by += 1) {
      expect(envelopeFaults(turned(through, by))).toEqual([]);
      expect(envelopeFaults(turned([...through].reverse(), by))).toEqual([]);
    }
  });

  test('wherever the corners begin', () => {
    const crossed = [
      corner(82, 1400),
      corner(82, 2400),
      corner(93, 1500),
      corner(93, 2400),
      corner(88, 1400),
    ];
    for (let by = 0; by < 5; by += 1) {
      expect(envelopeFaults(turned(NORMAL, by))).toEqual([]);
      expect(envelopeFaults(turned(crossed, by))).toHaveLength(1);
    }
  });
});

/** On which side of each edge, for corners in clockwise order; on an edge counts as inside. */
const insideConvex = (points: readonly WeightAtArm[], at: WeightAtArm): boolean =>
  points.every((from, index) => {
    const to = points[(index + 1) % points.length]!;
    const turn =
      (to.armIn - from.armIn) * (at.weightLb - from.weightLb) -
      (to.weightLb - from.weightLb) * (at.armIn - from.armIn);
    return turn <= 1e-9;
  });

test.each([
  ['normal', NORMAL],
  ['utility', UTILITY],
])(
  '%s: every quarter inch and 25 lb as its half planes say, whichever way round the corners',
  (_, points) => {
    let inside = 0;
    for (let armIn = 80; armIn <= 95; armIn += 0.25)
      for (let weightLb = 1350; weightLb <= 2450; weightLb += 25) {
        const expected = insideConvex(points, { armIn, weightLb });
        if (expected) inside += 1;
        for (const round of [points, [...points].reverse(), turned(points, 2)])
          expect({ armIn, weightLb, inside: isInside(round, { armIn, weightLb }) }).toEqual({
            armIn,
            weightLb,
            inside: expected,
          });
      }
    expect(inside).toBeGreaterThan(200);
  },
);

test('the edge and the corners are inside, a hundred thousandth beyond them is not', () => {
  for (const [index, from] of NORMAL.entries()) {
    const to = NORMAL[(index + 1) % NORMAL.length]!;
    const middle = corner((from.armIn + to.armIn) / 2, (from.weightLb + to.weightLb) / 2);
    expect([isInside(NORMAL, from), isInside(NORMAL, middle)]).toEqual([true, true]);
  }
  const beyond = 1e-5;
  expect([
    isInside(NORMAL, corner(82 - beyond, 1700)),
    isInside(NORMAL, corner(93 + beyond, 1700)),
    isInside(NORMAL, corner(90, 1400 - beyond)),
    isInside(NORMAL, corner(90, 2400 + beyond)),
    // In line with an edge, but past its end.
    isInside(NORMAL, corner(82, 1390)),
    isInside(NORMAL, corner(94, 2400)),
    isInside(NORMAL, corner(85, 2400)),
    isInside(NORMAL, corner(86 + 4 / 9, 2450)),
  ]).toEqual(Array(8).fill(false));
});

test('binary fractions of an inch or a pound tip no limit', () => {
  const tenths = 0.1 + 0.2 - 0.3;
  expect(isInside(NORMAL, corner(82 - tenths, 1700))).toBe(true);
  expect(isInside(NORMAL, corner(90, 2400 + 2400 * tenths))).toBe(true);
});

test('a millionth of an inch or pound off an edge is on it, half as much again is not', () => {
  // The slant edge of the utility envelope rises 112.5 lb an inch; its normal points up and forward.
  const length = Math.hypot(1, 112.5);
  const off = (by: number): WeightAtArm => corner(82.5 - (by * 112.5) / length, 2006.25 + by / length);
  expect([0.5e-6, 1.5e-6].map((by) => isInside(UTILITY, off(by)))).toEqual([true, false]);
  expect([0.5e-6, 1.5e-6].map((by) => isInside(NORMAL, corner(82 - by, 1700)))).toEqual([true, false]);
});

test('an envelope of an inch by a pound', () => {
  const small = [corner(82, 1400), corner(82, 1401), corner(83, 1401), corner(83, 1400)];
  const on = [corner(82, 1400.5), corner(82.5, 1401), corner(83, 1400.5), corner(82.5, 1400)];
  expect(on.map((at) => isInside(small, at))).toEqual(Array(4).fill(true));
});

test('a notch is outside, what lies beyond it is inside again', () => {
  expect(
    [
      [91.5, 2300],
      [92, 2000],
      [87, 2000],
      [88, 2000],
      [88.1, 2000],
      [90.4, 2200],
      [90.6, 2200],
      [92, 1650],
      [92, 1500],
    ].map(([armIn, weightLb]) => isInside(NOTCHED, corner(armIn!, weightLb!))),
  ).toEqual([true, false, true, true, false, true, false, true, true]);
});

test('a corner told twice changes nothing', () => {
  const twice = [NORMAL[0]!, NORMAL[0]!, ...NORMAL.slice(1)];
  expect([isInside(twice, corner(85, 1700)), isInside(twice, corner(81, 1400))]).toEqual([true, false]);
});

describe('the arms at a weight', () => {
  test.each([
    [1399, null],
    [1400, { forwardIn: 82, aftIn: 93 }],
    [1700, { forwardIn: 82, aftIn: 93 }],
    [1950, { forwardIn: 82, aftIn: 93 }],
    // 90 of the 450 lb from 1,950 to 2,400: a fifth of the four inches.
    [2040, { forwardIn: 82.8, aftIn: 93 }],
    [2175, { forwardIn: 84, aftIn: 93 }],
    [2400, { forwardIn: 86, aftIn: 93 }],
    [2401, null],
  ])('%d lb', (weightLb, arms) => {
    for (const round of [NORMAL, [...NORMAL].reverse(), turned(NORMAL, 3)]) {
      const found = armsAt(round, weightLb);
      if (arms === null) expect(found).toBeNull();
      else {
        expect(found!.forwardIn).toBeCloseTo(arms.forwardIn, 9);
        expect(found!.aftIn).toBeCloseTo(arms.aftIn, 9);
      }
    }
  });
});

test('the categories in which a loaded aircraft is', () => {
  const envelopes = [
    { category: 'normal' as const, points: NORMAL },
    { category: 'utility' as const, points: UTILITY },
  ];
  expect(categoriesOf(envelopes, corner(85, 1800))).toEqual(['normal', 'utility']);
  expect(categoriesOf(envelopes, corner(90, 1800))).toEqual(['normal']);
  expect(categoriesOf(envelopes, corner(95, 1800))).toEqual([]);
});

describe('fuel in tanks', () => {
  const tank = (name: string, usableUsGal: number) => ({ name, armIn: 95, usableUsGal });
  const two = [tank('Main', 40), tank('Auxiliary', 20)];
  test.each([
    [0, [0, 0]],
    [39.5, [39.5, 0]],
    [40, [40, 0]],
    [55, [40, 15]],
    [60, [40, 20]],
    // More than there is room for stays to be seen in the last.
    [65, [40, 25]],
  ])('%d US gal', (usGal, spread) => {
    expect(fuelInTanks(two, usGal)).toEqual(spread);
  });
  test('three in their order; one holds all; none holds nothing', () => {
    expect(fuelInTanks([...two, tank('Tip', 10)], 45)).toEqual([40, 5, 0]);
    expect(fuelInTanks([tank('Main', 40)], 50)).toEqual([50]);
    expect(fuelInTanks([], 0)).toEqual([]);
  });
});

test('without weight there is no centre of gravity', () => {
  const line = (weightLb: number) => ({ what: 'x', weightLb, armIn: 80 });
  expect(() => balanceOf([])).toThrow('a loading sheet without weight has no centre of gravity');
  expect(() => balanceOf([line(5), line(-5)])).toThrow(RangeError);
  expect(() => balanceOf([line(Number.NaN)])).toThrow(RangeError);
  expect(balanceOf([line(0.5)])).toEqual({ weightLb: 0.5, momentLbIn: 40, armIn: 80 });
});
