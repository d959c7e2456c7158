/**
 * A timeline is found from change points; here it is held against brute force: the same flight judged whole, departure by
 * departure, at random instants and at every edge and the seconds beside it.
 */
import fc from 'fast-check';
import {
  pullOf,
  rulesetFor,
  timelineOf,
  toInstant,
  toSeconds,
  weigh,
  type AnswerStep,
  type FactSheet,
  type Ruleset,
} from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { anySheet, SEED } from './engine-sheets.js';

const POLICY = startingPolicy();
const RULESETS = {
  US: rulesetFor('US', POLICY),
  EU: rulesetFor('EU', POLICY),
  CA: rulesetFor('CA', POLICY),
};
/** Departures held against brute force, all sheets together. */
const SAMPLES = 100_000;
const RANDOM_A_SHEET = 60;
const EDGES_A_SHEET = 40;
const DAY = 86_400;

/** Answer and rules in the way, every rule judged anew. */
function brute(sheet: FactSheet, ruleset: Ruleset, departs: number): { answer: string; inTheWay: string[] } {
  const { answer, judged, crew } = weigh(sheet, ruleset, departs);
  return {
    answer,
    inTheWay: judged
      .map(({ finding }) => finding)
      .filter((finding) => pullOf(finding, crew) !== 'none')
      .map((finding) => finding.rule),
  };
}

const stepAt = (steps: readonly AnswerStep[], at: number): AnswerStep =>
  steps.find((step) => step.from <= at && at < step.to)!;

describe(`timelines on arbitrary sheets (seed ${SEED})`, () => {
  test(`equal brute force at ${SAMPLES} departures, every edge and its neighbours among them`, () => {
    let samples = 0;
    let edges = 0;
    const answers = new Set<string>();
    const random = fc.sample(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), {
      seed: SEED,
      numRuns: 20_000,
    });
    for (let seed = SEED; samples < SAMPLES; seed += 1) {
      for (const sheet of fc.sample(anySheet, { seed, numRuns: 50 })) {
        if (samples >= SAMPLES) break;
        const ruleset = RULESETS[sheet.jurisdiction];
        const from = toSeconds(sheet.flight.departs);
        const to = from + [3, 40, 366][samples % 3]! * DAY;
        const { steps, cutAt } = timelineOf(sheet, ruleset, { from, to });
        if (cutAt !== null) throw new Error(`not followed to the end: cut at ${toInstant(cutAt)}`);
        expectWhole(steps, from, to);
        const inner = steps.slice(1).map((step) => step.from);
        edges += inner.length;
        const at = [
          ...spread(inner, EDGES_A_SHEET).flatMap((edge) => [edge - 1, edge, edge + 1]),
          ...Array.from({ length: RANDOM_A_SHEET }, (_, index) =>
            Math.floor(from + random[(samples + index) % random.length]! * (to - from)),
          ),
          from,
          to - 1,
        ].filter((departs) => departs >= from && departs < to);
        for (const departs of at) {
          const step = stepAt(steps, departs);
          const truth = brute(sheet, ruleset, departs);
          if (step.answer !== truth.answer || step.inTheWay.join() !== truth.inTheWay.join()) {
            throw new Error(
              `at ${toInstant(departs)} the timeline of ${sheet.jurisdiction} seed ${seed} says ${step.answer} (${step.inTheWay.join()}), ` +
                `judged it is ${truth.answer} (${truth.inTheWay.join()})`,
            );
          }
          answers.add(truth.answer);
        }
        samples += at.length;
      }
    }
    expect(samples).toBeGreaterThanOrEqual(SAMPLES);
    expect(edges).toBeGreaterThan(1000);
    expect([...answers].sort()).toEqual(['ask-officer', 'dual-only', 'no', 'yes', 'yes-with-conditions']);
  });
});

/** Steps cover the span without gap or overlap, and neighbours differ. */
function expectWhole(steps: readonly AnswerStep[], from: number, to: number): void {
  expect(steps[0]!.from).toBe(from);
  expect(steps.at(-1)!.to).toBe(to);
  for (let index = 1; index < steps.length; index += 1) {
    const [before, after] = [steps[index - 1]!, steps[index]!];
    expect(after.from).toBe(before.to);
    expect(after.from).toBeGreaterThan(before.from);
    expect(`${after.answer} ${after.inTheWay.join()}`).not.toBe(`${before.answer} ${before.inTheWay.join()}`);
    expect(after.changed.length).toBeGreaterThan(0);
  }
}

/** At most `most` of the values, evenly through them. */
function spread(values: readonly number[], most: number): number[] {
  if (values.length <= most) return [...values];
  return Array.from({ length: most }, (_, index) => values[Math.floor((index * values.length) / most)]!);
}
