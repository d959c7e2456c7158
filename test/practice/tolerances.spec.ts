/**
 * Tolerances against the airman certification standards as retold in the project's check values (section 9 of the rules'
 * digest: steep turn and slow flight confirmed, the rest from memory) and, for holding and the approach before final, as
 * the standard's Task III.B and VI.B are republished by instrument training pages. Everything else: from memory.
 */
import fc from 'fast-check';
import {
  editionOn,
  judgeManoeuvre,
  type Measured,
  type Verdict,
} from '../../src/practice/tolerances/judge.js';
import { STANDARDS, type Level, type Measure, type Task } from '../../src/practice/tolerances/standards.js';
import { judgeAcs } from '../../src/rules/air/acs-judge.js';
import { ACS_EDITIONS, type AcsLevel, type AcsTask } from '../../src/rules/air/acs.js';

const ON = '2026-11-26';
const judged = (level: Level, task: Task, measured: Partial<Record<Measure, Measured | null>>, on = ON) => {
  const verdict = judgeManoeuvre(level, task, measured, on);
  if (verdict.status !== 'judged') throw new Error(verdict.status);
  return verdict;
};

/** Each as published: level, task, measure, least, most. */
const PUBLISHED: [Level, Task, Measure, number, number][] = [
  ['private', 'steep_turn', 'bankDeg', 40, 50],
  ['private', 'steep_turn', 'altitudeDevFt', -100, 100],
  ['private', 'steep_turn', 'airspeedDevKt', -10, 10],
  ['private', 'steep_turn', 'rolloutDevDeg', -10, 10],
  ['commercial', 'steep_turn', 'bankDeg', 45, 55],
  ['private', 'slow_flight', 'airspeedDevKt', 0, 10],
  ['commercial', 'slow_flight', 'altitudeDevFt', -50, 50],
  ['commercial', 'slow_flight', 'airspeedDevKt', 0, 5],
  ['private', 'normal_landing', 'touchdownBeyondPointFt', 0, 400],
  ['private', 'short_field_landing', 'touchdownBeyondPointFt', 0, 200],
  ['commercial', 'short_field_landing', 'touchdownBeyondPointFt', 0, 100],
  ['commercial', 'power_off_180_landing', 'touchdownBeyondPointFt', 0, 200],
  ['private', 'go_around', 'airspeedDevKt', -5, 10],
  ['commercial', 'go_around', 'airspeedDevKt', -5, 5],
  ['private', 'basic_instrument', 'altitudeDevFt', -200, 200],
  ['private', 'basic_instrument', 'headingDevDeg', -20, 20],
  ['commercial', 'lazy_eight', 'altitudeDevFt', -100, 100],
  ['instrument', 'holding', 'altitudeDevFt', -100, 100],
  ['instrument', 'holding', 'airspeedDevKt', -10, 10],
  ['instrument', 'holding', 'headingDevDeg', -10, 10],
  ['instrument', 'holding', 'needleShare', -0.75, 0.75],
  ['instrument', 'nonprecision_final', 'minimumDevFt', 0, 100],
  ['instrument', 'precision_final', 'needleShare', -0.75, 0.75],
  ['instrument', 'dme_arc', 'arcDevNm', -1, 1],
];

test.each(PUBLISHED)('%s %s: %s from %d to %d', (level, task, measure, least, most) => {
  const limits = editionOn(level, ON)!.tasks[task]!.limits[measure];
  expect(limits).toEqual([least, most]);
  // Inside, at and just outside each limit.
  for (const [value, within] of [
    [least, true],
    [most, true],
    [least - 0.01, false],
    [most + 0.01, false],
    [(least + most) / 2, true],
  ] as const) {
    const one = judged(level, task, { [measure]: value }).measures[0]!;
    expect(one.within).toBe(within);
    expect(one.used > 1).toBe(!within);
  }
});

test('editions by date: the day before is the edition before, and before the first there is none', () => {
  const document = (verdict: Verdict): string | null => verdict.document;
  const on = (date: string) => document(judgeManoeuvre('private', 'steep_turn', {}, date));
  expect(on('2024-05-31')).toBe('FAA-S-ACS-6C');
  expect(on('2024-05-30')).toBe('FAA-S-ACS-6B');
  expect(on('2018-06-11')).toBe('FAA-S-ACS-6B');
  expect(judgeManoeuvre('private', 'steep_turn', { bankDeg: 45 }, '2018-06-10')).toEqual({
    status: 'no-edition',
    level: 'private',
    task: 'steep_turn',
    document: null,
  });
});

test('a task the level does not ask for is not judged, let alone passed', () => {
  expect(judgeManoeuvre('private', 'chandelle', { rolloutDevDeg: 0 }, ON).status).toBe('task-not-asked');
  expect(judgeManoeuvre('instrument', 'steep_turn', { bankDeg: 45 }, ON).status).toBe('task-not-asked');
});

test('what was not measured is never a yes, and what is outside is a no whatever is missing', () => {
  const good = { bankDeg: 44, altitudeDevFt: -60, airspeedDevKt: 4, rolloutDevDeg: 8 };
  expect(judged('private', 'steep_turn', good)).toMatchObject({ within: true, missing: [], known: 'seen' });
  for (const measure of Object.keys(good) as (keyof typeof good)[])
    for (const nothing of [undefined, null, Number.NaN]) {
      const verdict = judged('private', 'steep_turn', { ...good, [measure]: nothing });
      expect(verdict).toMatchObject({ within: null, missing: [measure] });
    }
  expect(judged('private', 'steep_turn', {}).within).toBeNull();
  expect(judged('private', 'steep_turn', { bankDeg: 51 })).toMatchObject({ within: false });
});

test('a span is judged at both ends, and how far outside is told with its sign', () => {
  const verdict = judged('private', 'steep_turn', {
    bankDeg: { least: 38, most: 49 },
    altitudeDevFt: { least: -130, most: 150 },
    airspeedDevKt: { least: -3, most: 5 },
    rolloutDevDeg: 0,
    headingDevDeg: 1,
  });
  const by = Object.fromEntries(verdict.measures.map((one) => [one.measure, one]));
  expect(by.bankDeg).toMatchObject({ within: false, beyond: -2, used: 7 / 5 });
  expect(by.altitudeDevFt).toMatchObject({ within: false, beyond: 50, used: 1.5 });
  expect(by.airspeedDevKt).toMatchObject({ within: true, beyond: 0, used: 0.5 });
  expect(verdict.notAsked).toEqual(['headingDevDeg']);
});

test('optional measures count where they are given', () => {
  const straight = { altitudeDevFt: 0, airspeedDevKt: 3, headingDevDeg: 0 };
  expect(judged('private', 'slow_flight', straight).within).toBe(true);
  expect(judged('private', 'slow_flight', { ...straight, bankDevDeg: 11 }).within).toBe(false);
});

test('one source: the rules’ judge of the same standards says the same', () => {
  let compared = 0;
  for (const level of Object.keys(ACS_EDITIONS) as AcsLevel[])
    for (const task of Object.keys(ACS_EDITIONS[level].at(-1)!.tasks) as AcsTask[]) {
      const standard = editionOn(level, ON)!.tasks[task]!;
      fc.assert(
        fc.property(
          fc.record(
            Object.fromEntries(
              (Object.keys(standard.limits) as Measure[]).map((measure) => [
                measure,
                fc.integer({ min: -450, max: 450 }),
              ]),
            ),
            { requiredKeys: [] },
          ),
          (measured) => {
            compared += 1;
            expect(judged(level, task, measured).within).toBe(judgeAcs(level, task, measured, ON)!.within);
          },
        ),
        { numRuns: 60, seed: 20261126 },
      );
    }
  expect(compared).toBeGreaterThan(1000);
});

test('widening what was flown never turns a no into a yes', () => {
  const value = fc.integer({ min: -200, max: 200 });
  fc.assert(
    fc.property(value, value, fc.nat(50), fc.nat(50), (a, b, down, up) => {
      const span = { least: Math.min(a, b), most: Math.max(a, b) };
      const wide = { least: span.least - down, most: span.most + up };
      const at = (altitudeDevFt: Measured) =>
        judged('instrument', 'circling', { altitudeDevFt, minimumDevFt: altitudeDevFt }).measures[0]!;
      if (!at(span).within) expect(at(wide).within).toBe(false);
      expect(at(wide).used).toBeGreaterThanOrEqual(at(span).used);
    }),
    { seed: 20261126 },
  );
});

test('every standard is complete: dated, ordered, known or not, and each limit a span', () => {
  for (const editions of Object.values(STANDARDS)) {
    expect(editions.map(({ from }) => from)).toEqual([...editions.map(({ from }) => from)].sort());
    for (const { document, tasks } of editions) {
      expect(document).toMatch(/^FAA-S-ACS-[678][A-C]$/);
      for (const { limits, needed, known } of Object.values(tasks)) {
        expect(['seen', 'from memory']).toContain(known);
        for (const [least, most] of Object.values(limits)) expect(least).toBeLessThan(most);
        for (const measure of needed) expect(limits[measure]).toBeDefined();
        expect(needed.length).toBeGreaterThan(0);
      }
    }
  }
});
