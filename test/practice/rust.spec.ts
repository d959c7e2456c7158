/** Rust: the stated formula by hand, and what must hold whatever the numbers. There is no outside source for the model. */
import fc from 'fast-check';
import { meets, type Condition, type Flown } from '../../src/practice/rust/conditions.js';
import { DECAY_EXAMPLE, rustOf, type DecayModel } from '../../src/practice/rust/rust.js';
import { write } from '../../src/practice/rust/words.js';
import { addDays } from '../../src/rules/calendar/dates.js';

const ON = '2026-11-26';
const ANY: Condition = { kind: 'any' };
const MODEL: DecayModel = { ...DECAY_EXAMPLE, firstHalfLifeDays: 30, growth: 1.5, spacingDays: 5 };

let made = 0;
const flown = (daysAgo: number, over: Partial<Flown> = {}): Flown => ({
  id: `f${(made += 1)}`,
  manoeuvre: 'steep_turn',
  on: addDays(ON, -daysAgo),
  good: true,
  crosswindKt: 0,
  gustSpreadKt: 0,
  night: false,
  runwayFt: 4000,
  equipment: [],
  ...over,
});
const rust = (records: Flown[], condition: Condition = ANY, model = MODEL) =>
  rustOf('steep_turn', condition, records, model, ON);

test('halves in the halving time, which grows with spaced practice and no further than the longest', () => {
  expect(rust([flown(0)]).rust).toBe(0);
  expect(rust([flown(30)]).rust).toBeCloseTo(0.5, 12);
  expect(rust([flown(60)]).rust).toBeCloseTo(0.75, 12);
  // 12 and 5 days apart: three count, 30 x 1.5 x 1.5 = 67.5 days.
  expect(rust([flown(30), flown(35), flown(47)])).toMatchObject({ spaced: 3, halfLifeDays: 67.5 });
  expect(rust([flown(30), flown(34), flown(30)]).spaced).toBe(1);
  const often = Array.from({ length: 12 }, (_one, at) => flown(10 + 10 * at));
  expect(rust(often).halfLifeDays).toBe(180);
  expect(rust([flown(10), flown(740)], ANY, MODEL).spaced).toBe(1);
});

test('never done to standard is all rust, whatever is on record besides', () => {
  for (const records of [[], [flown(3, { good: false })], [flown(3, { good: null })]])
    expect(rust(records)).toMatchObject({ rust: 1, lastGoodOn: null, days: null });
  expect(rust([flown(3, { good: null })])).toMatchObject({ notJudged: 1 });
  expect(rust([flown(1, { manoeuvre: 'slow_flight' })]).rust).toBe(1);
});

test('what lies after the day is not yet known', () => {
  expect(rust([flown(30), flown(-1)])).toMatchObject({ days: 30, rust: 0.5 });
});

test('a performance outside the standard after the last good one counts, in every condition', () => {
  const night: Condition = { kind: 'night' };
  const records = [flown(30, { night: true }), flown(10, { good: false })];
  expect(rust(records)).toMatchObject({ outsideSince: 1, halfLifeDays: 15, rust: 0.75 });
  expect(rust(records, night)).toMatchObject({ outsideSince: 1, rust: 0.75 });
  expect(rust([...records, flown(2)])).toMatchObject({ outsideSince: 0 });
  // On one day nobody can tell which came last, so it counts.
  expect(rust([...records, flown(10)])).toMatchObject({ outsideSince: 1 });
});

test.each<[Condition, Partial<Flown>, Partial<Flown>, Partial<Flown>]>([
  [{ kind: 'crosswind', atLeastKt: 8 }, { crosswindKt: -8 }, { crosswindKt: 7.9 }, { crosswindKt: null }],
  [{ kind: 'gust', atLeastKt: 5 }, { gustSpreadKt: 5 }, { gustSpreadKt: 4 }, { gustSpreadKt: null }],
  [{ kind: 'night' }, { night: true }, { night: false }, { night: null }],
  [{ kind: 'short-field', atMostFt: 2000 }, { runwayFt: 2000 }, { runwayFt: 2001 }, { runwayFt: null }],
  [{ kind: 'equipment', group: 'gps' }, { equipment: ['gps'] }, { equipment: [] }, { equipment: null }],
])('in %j: met, not met, and not recorded, which does not count', (condition, yes, no, unknown) => {
  expect(meets(flown(1, yes), condition)).toBe(true);
  expect(meets(flown(1, no), condition)).toBe(false);
  expect(meets(flown(1, unknown), condition)).toBeNull();
  expect(rust([flown(30, yes)], condition).rust).toBeCloseTo(0.5, 12);
  expect(rust([flown(30, no)], condition).rust).toBe(1);
  expect(rust([flown(30, unknown)], condition)).toMatchObject({ rust: 1, conditionUnknown: 1 });
});

test('the sentences, from their data', () => {
  const condition: Condition = { kind: 'crosswind', atLeastKt: 8 };
  const written = (records: Flown[]): string[] => rust(records, condition).said.map(write);
  expect(written([flown(30, { crosswindKt: 10 }), flown(2, { good: false, crosswindKt: null })])).toEqual([
    'Steep turn with at least 8 kt across the runway was last done to standard on 2026-10-27; days since then: 30.',
    'Performances outside the standard since then: 1.',
    'On record without the conditions, so not counted here: 1.',
  ]);
  expect(written([])).toEqual([
    'Steep turn with at least 8 kt across the runway is not on record as done to standard.',
  ]);
});

test.each<Partial<DecayModel>>([
  { firstHalfLifeDays: 0 },
  { growth: 0.9 },
  { longestHalfLifeDays: 10 },
  { spacingDays: -1 },
  { outsideShare: 0 },
  { outsideShare: 1.1 },
  { firstHalfLifeDays: Number.NaN },
  { longestHalfLifeDays: Number.POSITIVE_INFINITY },
])('a model that makes no sense is refused: %j', (over) => {
  expect(() => rust([flown(3)], ANY, { ...MODEL, ...over })).toThrow(RangeError);
});

describe('whatever is on record', () => {
  const record = fc
    .record({
      ago: fc.integer({ min: 0, max: 900 }),
      good: fc.constantFrom(true, true, false, null),
      night: fc.constantFrom(true, false, null),
      crosswindKt: fc.constantFrom(0, 4, 9, 15, null),
    })
    .map(({ ago, ...over }) => flown(ago, over));
  const records = fc.array(record, { maxLength: 12 });
  const conditions = fc.constantFrom<Condition>(
    { kind: 'night' },
    { kind: 'crosswind', atLeastKt: 8 },
    { kind: 'crosswind', atLeastKt: 12 },
  );
  const options = { seed: 20261126, numRuns: 300 };

  test('rust lies between 0 and 1 and never falls while nothing is flown', () => {
    fc.assert(
      fc.property(records, fc.nat(400), (all, days) => {
        const [now, later] = [ON, addDays(ON, days)].map(
          (on) => rustOf('steep_turn', ANY, all, MODEL, on).rust,
        );
        expect(now).toBeGreaterThanOrEqual(0);
        expect(later).toBeLessThanOrEqual(1);
        // Old practice stops counting, which shortens the halving time; it never lengthens it.
        expect(later!).toBeGreaterThanOrEqual(now!);
      }),
      options,
    );
  });

  test('one more performance to standard never makes it rustier, one outside never less', () => {
    fc.assert(
      fc.property(records, fc.integer({ min: 0, max: 900 }), (all, ago) => {
        const before = rust(all).rust;
        expect(rust([...all, flown(ago)]).rust).toBeLessThanOrEqual(before + 1e-12);
        expect(rust([...all, flown(ago, { good: false })]).rust).toBeGreaterThanOrEqual(before - 1e-12);
      }),
      options,
    );
  });

  test('a harder condition is never less rusty than any, nor a stronger crosswind than a weaker', () => {
    fc.assert(
      fc.property(records, conditions, (all, condition) => {
        expect(rust(all, condition).rust).toBeGreaterThanOrEqual(rust(all).rust - 1e-12);
        expect(rust(all, { kind: 'crosswind', atLeastKt: 12 }).rust).toBeGreaterThanOrEqual(
          rust(all, { kind: 'crosswind', atLeastKt: 8 }).rust - 1e-12,
        );
      }),
      options,
    );
  });

  test('the order in which it is told does not matter', () => {
    fc.assert(
      fc.property(records, (all) => {
        expect(rust([...all].reverse()).rust).toBe(rust(all).rust);
      }),
      options,
    );
  });
});
