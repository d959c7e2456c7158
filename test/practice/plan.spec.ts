/** The practice plan: what is in it and why, and the choice against every choice there is. */
import fc from 'fast-check';
import { fitTime, type Candidate } from '../../src/practice/rust/fit-time.js';
import { buildPlan } from '../../src/practice/rust/plan.js';
import { PLAN_EXAMPLE, type Drill, type Offer, type PlanInput } from '../../src/practice/rust/plan-types.js';
import { DECAY_EXAMPLE, rustOf } from '../../src/practice/rust/rust.js';
import { PHRASES, TASK_NAMES, write } from '../../src/practice/rust/words.js';
import type { Condition, Flown } from '../../src/practice/rust/conditions.js';
import type { Task } from '../../src/practice/tolerances/standards.js';
import { addDays } from '../../src/rules/calendar/dates.js';

const ON = '2026-11-26';
const ANY: Condition = { kind: 'any' };
const NIGHT: Condition = { kind: 'night' };
const CROSSWIND: Condition = { kind: 'crosswind', atLeastKt: 8 };

const drill = (manoeuvre: Task, over: Partial<Drill> = {}): Drill => ({
  manoeuvre,
  where: 'practice-area',
  order: 1,
  setUpMinutes: 2,
  minutesEach: 3,
  least: 1,
  most: 3,
  alwaysDual: false,
  ...over,
});
const DRILLS: Drill[] = [
  drill('steep_turn', { order: 2 }),
  drill('slow_flight', { order: 1, minutesEach: 5, most: 1 }),
  drill('power_off_stall_turning', { order: 3, alwaysDual: true }),
  drill('normal_landing', { where: 'pattern', order: 1, setUpMinutes: 0, minutesEach: 6, most: 5 }),
  drill('short_field_landing', { where: 'pattern', order: 2, setUpMinutes: 0, minutesEach: 7 }),
];
const OFFER: Offer = {
  on: ON,
  minutes: 90,
  transitMinutes: 20,
  instructor: true,
  crosswindKt: 3,
  gustSpreadKt: 0,
  night: false,
  runwayFt: 3600,
  equipment: [],
};
const flown = (manoeuvre: Task, daysAgo: number, over: Partial<Flown> = {}): Flown => ({
  id: `${manoeuvre}-${daysAgo}`,
  manoeuvre,
  on: addDays(ON, -daysAgo),
  good: true,
  crosswindKt: 0,
  gustSpreadKt: 0,
  night: false,
  runwayFt: 3600,
  equipment: [],
  ...over,
});
const HISTORY: Flown[] = [
  flown('steep_turn', 45),
  flown('slow_flight', 25),
  flown('power_off_stall_turning', 80),
  flown('normal_landing', 3),
  flown('short_field_landing', 60),
];

function input(over: Partial<PlanInput> & { history?: Flown[] } = {}): PlanInput {
  const { history = HISTORY, ...rest } = over;
  return {
    levels: ['private'],
    offer: OFFER,
    drills: DRILLS,
    watched: DRILLS.map(({ manoeuvre }) => ({ manoeuvre, condition: ANY })),
    bookings: [],
    checkouts: [],
    rustOf: (manoeuvre, condition) => rustOf(manoeuvre, condition, history, DECAY_EXAMPLE, ON),
    settings: PLAN_EXAMPLE,
    ...rest,
  };
}
const names = (plan: ReturnType<typeof buildPlan>): string[] => plan.items.map(({ manoeuvre }) => manoeuvre);
const keysOf = (why: readonly { key: string }[]): string[] => why.map(({ key }) => key);

test('what is rusty, in order: practice area first, easy before hard, pattern last; fresh things stay out', () => {
  const plan = buildPlan(input());
  expect(names(plan)).toEqual([
    'slow_flight',
    'steep_turn',
    'power_off_stall_turning',
    'short_field_landing',
  ]);
  expect(plan.leftOut).toEqual([]);
  expect(plan.minutes.total).toBe(plan.minutes.items + 20);
  expect(plan.totalTenths).toBe(Math.ceil(plan.minutes.total / 6));
  const [slow, steep, stall] = plan.items;
  expect(steep!.tolerance).toMatchObject({ document: 'FAA-S-ACS-6C', known: 'seen' });
  expect(steep!.tolerance!.limits.bankDeg).toEqual([40, 50]);
  expect([slow!.withInstructor, steep!.withInstructor, stall!.withInstructor]).toEqual([false, false, true]);
  expect(plan.dual).toBe(true);
  for (const item of plan.items) expect(keysOf(item.why)[0]).toBe('rust.since');
});

test('without an instructor, what needs one is left out and says so', () => {
  const plan = buildPlan(input({ offer: { ...OFFER, instructor: false } }));
  expect(plan.dual).toBe(false);
  expect(plan.leftOut).toMatchObject([{ manoeuvre: 'power_off_stall_turning', reason: 'no-instructor' }]);
  expect(keysOf(plan.leftOut[0]!.why)).toEqual(['rust.since', 'plan.dual.always', 'plan.out.no-instructor']);
});

test.each<[string, Flown[]]>([
  ['plan.dual.never', []],
  ['plan.dual.outside', [flown('steep_turn', 30), flown('steep_turn', 2, { good: false })]],
  ['plan.dual.rusty', [flown('steep_turn', 300)]],
])('an instructor because: %s', (key, history) => {
  const plan = buildPlan(input({ history, watched: [{ manoeuvre: 'steep_turn', condition: ANY }] }));
  expect(plan.items).toMatchObject([{ manoeuvre: 'steep_turn', withInstructor: true }]);
  expect(keysOf(plan.items[0]!.why)).toContain(key);
  expect(write({ key: key as 'plan.dual.never', values: {} })).toMatch(/^[A-Z].*\.$/);
});

test('a checkout’s lack comes before rust, so often as it lacks, with an instructor', () => {
  const plan = buildPlan(
    input({
      checkouts: [{ checkoutId: 'c1', manoeuvre: 'normal_landing', condition: ANY, times: 4 }],
      offer: { ...OFFER, minutes: 24 },
    }),
  );
  expect(plan.items).toMatchObject([{ manoeuvre: 'normal_landing', times: 4, withInstructor: true }]);
  expect(plan.leftOut.map(({ reason }) => reason)).toEqual(['no-time', 'no-time', 'no-time', 'no-time']);
});

test('a booking needs what it needs unless it is fresh; the nearer booking weighs more', () => {
  const booking = (days: number, manoeuvre: Task) => ({
    bookingId: `b${days}`,
    on: addDays(ON, days),
    manoeuvre,
    condition: ANY,
  });
  const watched: PlanInput['watched'] = [];
  const none = buildPlan(
    input({ watched, bookings: [booking(2, 'normal_landing'), booking(-1, 'steep_turn')] }),
  );
  expect(none.items).toEqual([]);
  const history = [flown('steep_turn', 60), flown('short_field_landing', 60)];
  const pick = (near: Task, far: Task): string[] =>
    names(
      buildPlan(
        input({
          watched,
          history,
          bookings: [booking(1, near), booking(40, far)],
          drills: [
            drill('steep_turn', { setUpMinutes: 0, minutesEach: 10, most: 1 }),
            drill('short_field_landing', { setUpMinutes: 0, minutesEach: 10, most: 1 }),
          ],
          offer: { ...OFFER, minutes: 10, transitMinutes: 0 },
        }),
      ),
    );
  expect(pick('steep_turn', 'short_field_landing')).toEqual(['steep_turn']);
  expect(pick('short_field_landing', 'steep_turn')).toEqual(['short_field_landing']);
  const one = buildPlan(input({ watched, history, bookings: [booking(5, 'steep_turn')] }));
  expect(one.items[0]!.why.map(write)).toContain('The booking on 2026-12-01 needs it.');
});

test('conditions: not offered is left out, not known is flown if offered, offered is one item with the plain one', () => {
  const watched = [
    { manoeuvre: 'short_field_landing' as const, condition: ANY },
    { manoeuvre: 'short_field_landing' as const, condition: CROSSWIND },
  ];
  const calm = buildPlan(input({ watched }));
  expect(calm.items).toMatchObject([{ condition: ANY, ifOffered: false }]);
  expect(calm.leftOut).toMatchObject([{ condition: CROSSWIND, reason: 'not-offered' }]);
  const open = buildPlan(input({ watched, offer: { ...OFFER, crosswindKt: null } }));
  expect(open.items.map(({ condition, ifOffered }) => [condition.kind, ifOffered])).toEqual([
    ['any', false],
    ['crosswind', true],
  ]);
  const windy = buildPlan(input({ watched, offer: { ...OFFER, crosswindKt: 11 } }));
  expect(windy.items).toMatchObject([{ condition: CROSSWIND, ifOffered: false }]);
  expect(keysOf(windy.items[0]!.why).filter((key) => key.startsWith('rust.'))).toEqual([
    'rust.never',
    'rust.since',
  ]);
  const dark = buildPlan(input({ watched: [{ manoeuvre: 'normal_landing', condition: NIGHT }] }));
  expect(dark.leftOut).toMatchObject([{ reason: 'not-offered' }]);
});

test('a manoeuvre without a drill is told, not dropped; one without a standard has no tolerance and a caution', () => {
  const plan = buildPlan(
    input({
      history: [],
      drills: [drill('chandelle')],
      watched: [
        { manoeuvre: 'chandelle', condition: ANY },
        { manoeuvre: 'holding', condition: ANY },
      ],
    }),
  );
  expect(plan.leftOut).toMatchObject([{ manoeuvre: 'holding', reason: 'no-drill' }]);
  expect(plan.items).toMatchObject([{ manoeuvre: 'chandelle', tolerance: null }]);
  expect(keysOf(plan.cautions)).toContain('plan.caution.no-standard');
  const both = buildPlan(
    input({
      history: [],
      levels: ['instrument', 'commercial'],
      drills: [drill('chandelle'), drill('holding')],
      watched: [
        { manoeuvre: 'chandelle', condition: ANY },
        { manoeuvre: 'holding', condition: ANY },
      ],
    }),
  );
  expect(both.items.map(({ tolerance }) => tolerance?.document)).toEqual(['FAA-S-ACS-7B', 'FAA-S-ACS-8C']);
});

test('every plan says that it permits nothing', () => {
  for (const plan of [buildPlan(input()), buildPlan(input({ watched: [] }))])
    expect(keysOf(plan.cautions).slice(0, 2)).toEqual(['plan.caution.no-decision', 'plan.caution.model']);
});

test.each<Partial<PlanInput>>([
  { offer: { ...OFFER, minutes: 60.5 } },
  { offer: { ...OFFER, minutes: -1 } },
  { offer: { ...OFFER, minutes: Number.NaN } },
  { drills: [drill('steep_turn', { minutesEach: 0 })] },
  { drills: [drill('steep_turn', { least: 3, most: 2 })] },
  { drills: [drill('steep_turn'), drill('steep_turn')] },
  { checkouts: [{ checkoutId: 'c', manoeuvre: 'steep_turn', condition: ANY, times: 0 }] },
  { settings: { ...PLAN_EXAMPLE, rustFrom: 2 } },
  { settings: { ...PLAN_EXAMPLE, repetitionShare: 1 } },
  { settings: { ...PLAN_EXAMPLE, weightRust: -1 } },
  { settings: { ...PLAN_EXAMPLE, bookingHalfDays: 0 } },
])('numbers no plan can be made from are refused %#', (over) => {
  expect(() => buildPlan(input(over))).toThrow(RangeError);
});

describe('the words', () => {
  test('every manoeuvre has a name and every sentence is whole', () => {
    for (const name of Object.values(TASK_NAMES)) expect(name.length).toBeGreaterThan(3);
    for (const [key, text] of Object.entries(PHRASES))
      if (!key.startsWith('condition.')) expect(text).toMatch(/[.]$/);
  });
  test('a sentence with a value missing is not written', () => {
    expect(() => write({ key: 'plan.booking', values: {} })).toThrow('plan.booking lacks on');
  });
});

describe('whatever is wanted', () => {
  const tasks = DRILLS.map(({ manoeuvre }) => manoeuvre);
  const condition = fc.constantFrom(ANY, NIGHT, CROSSWIND);
  const record = fc
    .record({
      manoeuvre: fc.constantFrom(...tasks),
      ago: fc.integer({ min: 0, max: 400 }),
      good: fc.constantFrom(true, true, false, null),
      night: fc.constantFrom(true, false, null),
    })
    .map(({ manoeuvre, ago, ...over }) => flown(manoeuvre, ago, over));
  const pair = fc.record({ manoeuvre: fc.constantFrom(...tasks), condition });
  const world = fc.record({
    history: fc.array(record, { maxLength: 10 }),
    watched: fc.array(pair, { maxLength: 8 }),
    bookings: fc.array(
      fc.tuple(pair, fc.integer({ min: -5, max: 60 })).map(([one, days]) => ({
        ...one,
        bookingId: 'b',
        on: addDays(ON, days),
      })),
      { maxLength: 4 },
    ),
    checkouts: fc.array(
      fc
        .tuple(pair, fc.integer({ min: 1, max: 6 }))
        .map(([one, times]) => ({ ...one, checkoutId: 'c', times })),
      { maxLength: 3 },
    ),
    offer: fc.record({
      minutes: fc.integer({ min: 0, max: 150 }),
      instructor: fc.boolean(),
      night: fc.constantFrom(true, false, null),
      crosswindKt: fc.constantFrom(0, 12, null),
    }),
  });

  test('the plan fits, is flown with an instructor where it must, and every item and everything left out says why', () => {
    let planned = 0;
    fc.assert(
      fc.property(world, ({ offer, ...rest }) => {
        const plan = buildPlan(input({ ...rest, offer: { ...OFFER, ...offer } }));
        expect(plan.minutes.total).toBeLessThanOrEqual(offer.minutes);
        expect(plan.dual && !offer.instructor).toBe(false);
        planned += plan.items.length;
        for (const { why } of [...plan.items, ...plan.leftOut]) {
          expect(why.length).toBeGreaterThan(0);
          for (const one of why) expect(write(one)).toMatch(/^[A-Z0-9].*\.$/);
        }
        for (const { manoeuvre, times, minutes } of plan.items) {
          const { least, most, setUpMinutes, minutesEach } = DRILLS.find(
            (one) => one.manoeuvre === manoeuvre,
          )!;
          expect(times).toBeGreaterThanOrEqual(least);
          expect(times).toBeLessThanOrEqual(most);
          expect(minutes).toBe(setUpMinutes + minutesEach * times);
        }
        const pairs = [...plan.items, ...plan.leftOut].map((one) =>
          JSON.stringify([one.manoeuvre, one.condition]),
        );
        expect(new Set(pairs).size).toBe(pairs.length);
      }),
      { seed: 20261126, numRuns: 300 },
    );
    expect(planned).toBeGreaterThan(100);
  });

  test('the order in which things are told does not matter', () => {
    fc.assert(
      fc.property(world, ({ offer, ...rest }) => {
        const told = input({ ...rest, offer: { ...OFFER, ...offer } });
        const turned = { ...told, watched: [...told.watched].reverse(), drills: [...told.drills].reverse() };
        expect(buildPlan(turned)).toEqual(buildPlan(told));
      }),
      { seed: 20261126, numRuns: 150 },
    );
  });

  test('the choice is worth as much as the best of all choices, and takes no minute more', () => {
    const candidate: fc.Arbitrary<Candidate> = fc.record({
      away: fc.boolean(),
      options: fc
        .array(
          fc.record({ minutes: fc.integer({ min: 1, max: 15 }), value: fc.integer({ min: 0, max: 8 }) }),
          {
            minLength: 1,
            maxLength: 3,
          },
        )
        .map((options) => options.map((one, at) => ({ ...one, value: one.value / 4, times: at + 1 }))),
    });
    fc.assert(
      fc.property(
        fc.array(candidate, { maxLength: 6 }),
        fc.integer({ min: 0, max: 50 }),
        fc.nat(20),
        (all, minutes, transit) => {
          const found = fitTime(all, minutes, transit);
          let best = { value: 0, minutes: 0 };
          const everyChoice = (at: number, value: number, used: number, away: boolean): void => {
            if (at === all.length) {
              const total = used + (away ? transit : 0);
              if (total > minutes) return;
              if (value > best.value + 1e-9 || (value > best.value - 1e-9 && total < best.minutes))
                best = { value, minutes: total };
              return;
            }
            everyChoice(at + 1, value, used, away);
            for (const option of all[at]!.options)
              everyChoice(at + 1, value + option.value, used + option.minutes, away || all[at]!.away);
          };
          everyChoice(0, 0, 0, false);
          expect(found.value).toBeCloseTo(best.value, 6);
          expect(found.minutes).toBe(best.minutes);
          const taken = found.taken.flatMap((option, at) =>
            option === null ? [] : [all[at]!.options[option]!],
          );
          expect(taken.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(found.value, 6);
        },
      ),
      { seed: 20261126, numRuns: 300 },
    );
  });
});
