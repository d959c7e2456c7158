/** The planner against every plan there is, on small problems drawn at random; PROPERTY_SEED draws others. */
import fc from 'fast-check';
import { smallestConflict } from '../../../src/maintenance/plan/conflict.js';
import { evaluate } from '../../../src/maintenance/plan/evaluate.js';
import { exampleSeason } from '../../../src/maintenance/plan/example-season.js';
import { explain } from '../../../src/maintenance/plan/explain.js';
import { greedyPlan } from '../../../src/maintenance/plan/greedy.js';
import { isMandatory, type Problem } from '../../../src/maintenance/plan/problem.js';
import { solve } from '../../../src/maintenance/plan/solve.js';
import { everyPlan, need, quiet, smallProblem } from './problems.js';

const SEED = Number(process.env.PROPERTY_SEED ?? 20261126);
const RUNS = 60;

/** The least cost of a plan that breaks nothing; null: there is none. */
function bruteForce(problem: Problem): number | null {
  let best: number | null = null;
  for (const plan of everyPlan(problem)) {
    const { violations, cost } = evaluate(problem, plan);
    if (violations.length === 0 && (best === null || cost.total < best)) best = cost.total;
  }
  return best;
}

/** The smallest number of needs that cannot be met together, over all sets of them. */
function smallestByBruteForce(problem: Problem): number {
  const must = problem.needs.filter(isMandatory);
  const may = problem.needs.filter((one) => !isMandatory(one));
  let smallest = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 2 ** must.length; set += 1) {
    const chosen = must.filter((_need, at) => (set >> at) & 1);
    if (chosen.length >= smallest) continue;
    if (bruteForce({ ...problem, needs: [...chosen, ...may], wishes: [] }) === null) smallest = chosen.length;
  }
  return smallest;
}

test('the plan found is as good as the best of all, and none is found where there is none', async () => {
  let [solved, none] = [0, 0];
  await fc.assert(
    fc.asyncProperty(smallProblem, async (problem) => {
      const best = bruteForce(problem);
      const found = await solve(problem);
      if (best === null) {
        none += 1;
        expect(found.status).toBe('infeasible');
        const conflict = await smallestConflict(problem);
        expect(conflict.length).toBe(smallestByBruteForce(problem));
        const just = problem.needs.filter((one) => conflict.includes(one.id) || !isMandatory(one));
        expect(bruteForce({ ...problem, needs: just, wishes: [] })).toBeNull();
        return;
      }
      solved += 1;
      if (found.status !== 'optimal')
        throw new Error(`there is a plan at ${best} and the search says ${found.status}`);
      expect(found.evaluation.violations).toEqual([]);
      expect(found.evaluation.cost.total).toBeCloseTo(best, 4);
      const greedy = evaluate(problem, greedyPlan(problem));
      if (greedy.violations.length === 0)
        expect(found.evaluation.cost.total).toBeLessThanOrEqual(greedy.cost.total + 1e-4);
      // No visit can be moved alone to a better week.
      for (const { alternatives } of explain(problem, found.plan, found.evaluation))
        for (const { more } of alternatives) if (more !== null) expect(more).toBeGreaterThanOrEqual(-1e-4);
    }),
    { seed: SEED, numRuns: RUNS },
  );
  // The draw has both kinds, or it says little.
  expect(solved).toBeGreaterThan(RUNS / 4);
  expect(none).toBeGreaterThan(RUNS / 10);
}, 300_000);

test.each([
  [3, 6],
  [4, 8],
  [5, 10],
])(
  'work that falls due again far beyond a short span costs nothing in it (%d aircraft, %d weeks)',
  async (aircraft, weeks) => {
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const problem = exampleSeason({ aircraft, weeks, seed });
      const found = await solve(problem);
      // The search holds what the plan costs against what the program said it would, and throws where they differ.
      if (found.status !== 'optimal') throw new Error(`draw ${seed}: ${found.status}`);
      const greedy = evaluate(problem, greedyPlan(problem));
      if (greedy.violations.length === 0)
        expect(found.evaluation.cost.total).toBeLessThanOrEqual(greedy.cost.total + 1e-4);
      for (const { alternatives } of explain(problem, found.plan, found.evaluation))
        for (const { more } of alternatives) if (more !== null) expect(more).toBeGreaterThanOrEqual(-1e-4);
    }
  },
  120_000,
);

test('a smallest set of needs in each other’s way is named, and the others are left out of it', async () => {
  const due = (id: string, aircraftId: string, latest: number) =>
    need(id, { aircraftId, latest, shopDays: 5 });
  const problem = quiet(6, 4, {
    needs: [
      due('annual of a0', 'a0', 1),
      due('annual of a1', 'a1', 1),
      due('annual of a2', 'a2', 1),
      due('annual of a3', 'a3', 5),
    ],
    shop: { ...quiet(6, 4).shop, bays: [1, 1, 1, 1, 1, 1] },
  });
  expect((await solve(problem)).status).toBe('infeasible');
  expect((await smallestConflict(problem)).sort()).toEqual(['annual of a0', 'annual of a1', 'annual of a2']);
});

test('where pins and shop contradict each other, no need is blamed', async () => {
  const problem = quiet(4, 1, {
    needs: [need('n')],
    pins: [{ aircraftId: 'a0', week: 0 }],
    shop: { ...quiet(4, 1).shop, bays: [0, 1, 1, 1] },
  });
  expect(await smallestConflict(problem)).toEqual([]);
});

test('a visit says what other weeks would cost and what keeps it from them', async () => {
  const problem = quiet(5, 2, {
    needs: [need('n', { latest: 2 })],
    bookedHours: { a0: [10, 10, 2, 0, 0], a1: [0, 0, 0, 0, 0] },
  });
  const found = await solve(problem);
  if (found.status !== 'optimal') throw new Error(found.status);
  const [visit] = explain(problem, found.plan, found.evaluation);
  expect(visit).toMatchObject({
    from: 2,
    bookedHours: expect.closeTo(1.2, 9) as number,
    binds: { earlier: [], later: ['start'] },
  });
  // A week earlier: 10 hours of which three fifths are lost, and a week of life.
  expect(visit!.alternatives.find(({ week }) => week === 1)!.more).toBeCloseTo(6 - 1.2 + 0.4, 9);
});
