import { acsEdition, judgeAcs } from '../../../src/rules/air/acs-judge.js';
import { ACS_EDITIONS, type AcsLevel, type AcsMeasure, type AcsTask } from '../../../src/rules/air/acs.js';

const ON = '2027-03-01';
const STEEP = { altitudeDevFt: -95, airspeedDevKt: 8, bankDeg: 49, rolloutDevDeg: 9 };

// FAA-S-ACS-6C and FAA-S-ACS-7B; check values ac-01 to ac-07 and their edges.
test.each<[AcsLevel, AcsTask, Partial<Record<AcsMeasure, number>>, boolean]>([
  ['private', 'steep_turn', STEEP, true],
  [
    'private',
    'steep_turn',
    { ...STEEP, altitudeDevFt: 100, airspeedDevKt: -10, bankDeg: 50, rolloutDevDeg: -10 },
    true,
  ],
  ['private', 'steep_turn', { ...STEEP, altitudeDevFt: 105 }, false],
  ['private', 'steep_turn', { ...STEEP, bankDeg: 51 }, false],
  ['private', 'steep_turn', { ...STEEP, bankDeg: 39 }, false],
  ['commercial', 'steep_turn', { ...STEEP, bankDeg: 55 }, true],
  ['commercial', 'steep_turn', { ...STEEP, bankDeg: 44 }, false],
  ['private', 'slow_flight', { airspeedDevKt: -1, altitudeDevFt: 0, headingDevDeg: 0 }, false],
  ['private', 'slow_flight', { airspeedDevKt: 0, altitudeDevFt: 0, headingDevDeg: 0 }, true],
  ['private', 'slow_flight', { airspeedDevKt: 10, altitudeDevFt: -100, headingDevDeg: 10 }, true],
  ['private', 'slow_flight', { airspeedDevKt: 5, altitudeDevFt: 0, headingDevDeg: 0, bankDevDeg: 11 }, false],
  ['commercial', 'slow_flight', { airspeedDevKt: 6, altitudeDevFt: 0, headingDevDeg: 0 }, false],
  ['commercial', 'slow_flight', { airspeedDevKt: 5, altitudeDevFt: 51, headingDevDeg: 0 }, false],
  ['private', 'short_field_landing', { touchdownBeyondPointFt: 190 }, true],
  ['private', 'short_field_landing', { touchdownBeyondPointFt: 201 }, false],
  ['commercial', 'short_field_landing', { touchdownBeyondPointFt: 101 }, false],
  ['private', 'normal_landing', { touchdownBeyondPointFt: -10 }, false],
  ['private', 'normal_landing', { touchdownBeyondPointFt: 400 }, true],
  ['commercial', 'normal_landing', { touchdownBeyondPointFt: 201 }, false],
  ['commercial', 'power_off_180_landing', { touchdownBeyondPointFt: 200 }, true],
  ['private', 'power_off_stall_turning', { bankDeg: 28 }, true],
  ['private', 'power_off_stall_turning', { bankDeg: 31 }, false],
  ['commercial', 'power_off_stall_turning', { bankDeg: 26 }, false],
  ['private', 'power_on_stall_straight', { headingDevDeg: -11 }, false],
  ['private', 'approach_speed', { airspeedDevKt: -6 }, false],
  ['private', 'approach_speed', { airspeedDevKt: 10 }, true],
  ['commercial', 'approach_speed', { airspeedDevKt: 6 }, false],
])('%s %s %o', (level, task, measured, within) => {
  expect(judgeAcs(level, task, measured, ON)?.within).toBe(within);
});

test('what was not measured never makes a manoeuvre good, and never hides what was bad', () => {
  expect(judgeAcs('private', 'steep_turn', { bankDeg: 45 }, ON)).toMatchObject({
    within: null,
    missing: ['altitudeDevFt', 'airspeedDevKt', 'rolloutDevDeg'],
  });
  expect(judgeAcs('private', 'steep_turn', { bankDeg: 60 }, ON)?.within).toBe(false);
  expect(judgeAcs('private', 'steep_turn', { ...STEEP, altitudeDevFt: Number.NaN }, ON)?.within).toBe(false);
});

test('it says what was outside, of what, by which document', () => {
  expect(judgeAcs('private', 'steep_turn', { ...STEEP, altitudeDevFt: 105 }, ON)).toMatchObject({
    outside: [{ measure: 'altitudeDevFt', value: 105, limits: [-100, 100] }],
    limits: { bankDeg: [40, 50] },
    document: 'FAA-S-ACS-6C',
    status: 'seen',
  });
});

test('a task the level does not ask for is not judged', () => {
  expect(judgeAcs('private', 'power_off_180_landing', { touchdownBeyondPointFt: 0 }, ON)).toBeNull();
});

test('editions are in order and every limit runs from less to more', () => {
  for (const level of ['private', 'commercial'] as const) {
    const editions = ACS_EDITIONS[level];
    expect(editions.map((edition) => edition.from)).toEqual(editions.map((edition) => edition.from).sort());
    expect(acsEdition(level, '2020-01-01')).toBe(editions[0]);
    for (const tolerance of editions.flatMap((edition) => Object.values(edition.tasks)))
      for (const [least, greatest] of Object.values(tolerance.limits)) expect(least).toBeLessThan(greatest);
  }
});

/** Limits as printed in FAA-S-ACS-6C and FAA-S-ACS-7B, measure by measure; all but the private steep turn and slow flight from memory. */
const PRINTED: [AcsLevel, AcsTask, Partial<Record<AcsMeasure, [number, number]>>, 'seen' | 'from memory'][] =
  [
    [
      'private',
      'steep_turn',
      { altitudeDevFt: [-100, 100], airspeedDevKt: [-10, 10], bankDeg: [40, 50], rolloutDevDeg: [-10, 10] },
      'seen',
    ],
    [
      'private',
      'slow_flight',
      { altitudeDevFt: [-100, 100], headingDevDeg: [-10, 10], airspeedDevKt: [0, 10], bankDevDeg: [-10, 10] },
      'seen',
    ],
    ['private', 'power_off_stall_straight', { headingDevDeg: [-10, 10] }, 'from memory'],
    ['private', 'power_off_stall_turning', { bankDeg: [10, 30] }, 'from memory'],
    ['private', 'power_on_stall_straight', { headingDevDeg: [-10, 10] }, 'from memory'],
    ['private', 'power_on_stall_turning', { bankDeg: [10, 30] }, 'from memory'],
    ['private', 'normal_landing', { touchdownBeyondPointFt: [0, 400] }, 'from memory'],
    ['private', 'short_field_landing', { touchdownBeyondPointFt: [0, 200] }, 'from memory'],
    ['private', 'approach_speed', { airspeedDevKt: [-5, 10] }, 'from memory'],
    ['private', 'traffic_pattern', { altitudeDevFt: [-100, 100], airspeedDevKt: [-10, 10] }, 'from memory'],
    ['private', 'ground_reference', { altitudeDevFt: [-100, 100], airspeedDevKt: [-10, 10] }, 'from memory'],
    [
      'commercial',
      'steep_turn',
      { altitudeDevFt: [-100, 100], airspeedDevKt: [-10, 10], bankDeg: [45, 55], rolloutDevDeg: [-10, 10] },
      'seen',
    ],
    [
      'commercial',
      'slow_flight',
      { altitudeDevFt: [-50, 50], headingDevDeg: [-10, 10], airspeedDevKt: [0, 5], bankDevDeg: [-5, 5] },
      'from memory',
    ],
    ['commercial', 'power_off_stall_straight', { headingDevDeg: [-10, 10] }, 'from memory'],
    ['commercial', 'power_off_stall_turning', { bankDeg: [15, 25] }, 'from memory'],
    ['commercial', 'power_on_stall_straight', { headingDevDeg: [-10, 10] }, 'from memory'],
    ['commercial', 'power_on_stall_turning', { bankDeg: [15, 25] }, 'from memory'],
    ['commercial', 'normal_landing', { touchdownBeyondPointFt: [0, 200] }, 'from memory'],
    ['commercial', 'short_field_landing', { touchdownBeyondPointFt: [0, 100] }, 'from memory'],
    ['commercial', 'power_off_180_landing', { touchdownBeyondPointFt: [0, 200] }, 'from memory'],
    ['commercial', 'approach_speed', { airspeedDevKt: [-5, 5] }, 'from memory'],
    [
      'commercial',
      'traffic_pattern',
      { altitudeDevFt: [-100, 100], airspeedDevKt: [-10, 10] },
      'from memory',
    ],
  ];

test.each(PRINTED)(
  '%s %s is judged by the printed limits, both ends included',
  (level, task, limits, status) => {
    const middle = Object.fromEntries(
      Object.entries(limits).map(([measure, [least, greatest]]) => [measure, (least + greatest) / 2]),
    );
    expect(judgeAcs(level, task, middle, ON)).toMatchObject({ within: true, status });
    for (const [measure, [least, greatest]] of Object.entries(limits)) {
      const at = (value: number) => judgeAcs(level, task, { ...middle, [measure]: value }, ON)!.within;
      expect([least - 1, least, greatest, greatest + 1].map(at)).toEqual([false, true, true, false]);
    }
  },
);

test('every task of every edition is among the printed ones, and only the bank of slow flight may be left out', () => {
  for (const level of ['private', 'commercial'] as const) {
    const [edition] = ACS_EDITIONS[level];
    expect(Object.keys(edition!.tasks).sort()).toEqual(
      PRINTED.flatMap(([of, task]) => (of === level ? [task] : [])).sort(),
    );
    expect([edition!.document, edition!.from]).toEqual([
      level === 'private' ? 'FAA-S-ACS-6C' : 'FAA-S-ACS-7B',
      '2024-05-31',
    ]);
    for (const [task, { limits, needed }] of Object.entries(edition!.tasks))
      expect(needed).toEqual(
        Object.keys(limits).filter((measure) => !(task === 'slow_flight' && measure === 'bankDevDeg')),
      );
  }
});

test('an edition holds from its first day', () => {
  expect(acsEdition('private', '2024-05-31').document).toBe('FAA-S-ACS-6C');
});
