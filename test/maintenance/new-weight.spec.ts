/**
 * Empty weight after a change of equipment. The method is that of FAA-H-8083-1 (Weight and Balance Handbook): list weights, arms and
 * moments of what goes and comes, add up, divide; from memory, as is the limit of one pound below which a change of a light
 * aircraft counts as negligible, which the mechanic finds and not the tool.
 */
import fc from 'fast-check';
import { newWeight, type Part } from '../../src/maintenance/equipment-changes/new-weight.js';

const BEFORE = { emptyWeightLb: 1450, emptyArmIn: 40 };
const part = (weightLb: number | null, armIn: number | null, negligible?: boolean): Part => ({
  ...{ weightLb, armIn },
  ...(negligible === undefined ? {} : { negligible }),
});

test.each([
  ['nothing changes nothing', [], [], { emptyWeightLb: 1450, emptyArmIn: 40 }],
  ['what goes takes its moment along', [part(50, 100)], [], { emptyWeightLb: 1400, emptyArmIn: 37.86 }],
  ['what comes brings it', [], [part(50, 100)], { emptyWeightLb: 1500, emptyArmIn: 42 }],
  [
    'forward of the datum the moment is negative',
    [],
    [part(50, -10)],
    { emptyWeightLb: 1500, emptyArmIn: 38.33 },
  ],
  [
    'a like piece at the same place changes nothing',
    [part(3, 15)],
    [part(3, 15)],
    { emptyWeightLb: 1450, emptyArmIn: 40 },
  ],
  [
    'what is negligible is left out',
    [part(null, null, true)],
    [part(0.4, 20, true)],
    { emptyWeightLb: 1450, emptyArmIn: 40 },
  ],
  [
    'without an arm the weight is known and its arm is not',
    [],
    [part(5, null)],
    { emptyWeightLb: 1455, emptyArmIn: null },
  ],
  ['no weight needs no arm', [], [part(0, null)], { emptyWeightLb: 1450, emptyArmIn: 40 }],
])('%s', (_what, removed, installed, weight) => {
  expect(newWeight(BEFORE, removed, installed)).toEqual({ known: true, weight });
});

test.each([
  ['no weight is on record', null, [], 'no empty weight is on record'],
  ['a part has no weight', BEFORE, [part(null, 20)], 'weight of a part'],
  ['more goes than there is', BEFORE, [part(1450, 40)], 'more weight would be removed'],
])('nothing is known when %s', (_what, before, removed, because) => {
  expect(newWeight(before, removed, [])).toEqual({
    known: false,
    because: expect.stringContaining(because) as string,
  });
});

test('an aircraft whose arm is not known stays so', () => {
  const before = { emptyWeightLb: 1450, emptyArmIn: null };
  expect(newWeight(before, [], [part(5, 20)])).toEqual({
    known: true,
    weight: { emptyWeightLb: 1455, emptyArmIn: null },
  });
});

test('putting in and taking out again comes back to where it began', () => {
  const parts = fc.array(
    fc.record({ weightLb: fc.integer({ min: 0, max: 60 }), armIn: fc.integer({ min: -20, max: 180 }) }),
    {
      maxLength: 6,
    },
  );
  fc.assert(
    fc.property(parts, (some) => {
      const there = newWeight(BEFORE, [], some);
      if (!there.known) throw new Error(there.because);
      const back = newWeight(there.weight, some, []);
      if (!back.known) throw new Error(back.because);
      expect(back.weight.emptyWeightLb).toBeCloseTo(1450, 6);
      // Arms are kept to a hundredth of an inch.
      expect(Math.abs(back.weight.emptyArmIn! - 40)).toBeLessThan(0.03);
    }),
    { seed: 20261126 },
  );
});
