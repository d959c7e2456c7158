/**
 * The planner's solver (HiGHS) against another one: the GNU Linear Programming Kit, through the package glpk.js. The same programs,
 * independent code; the least cost has to be the same.
 */
import GLPK from 'glpk.js/node';
import fc from 'fast-check';
import { exampleSeason } from '../../src/maintenance/plan/example-season.js';
import { modelOf, type Model } from '../../src/maintenance/plan/model.js';
import { runHighs } from '../../src/maintenance/plan/solve.js';
import { smallProblem } from '../maintenance/plan/problems.js';

type Kit = Awaited<ReturnType<typeof GLPK>>;
let kit: Kit;
beforeAll(async () => {
  kit = await GLPK();
});

/** The least cost by GLPK; null: infeasible. */
async function byGlpk(model: Model): Promise<number | null> {
  const linear = (terms: ReadonlyMap<string, number>) => [...terms].map(([name, coef]) => ({ name, coef }));
  const bounds = {
    '<=': (bound: number) => ({ type: kit.GLP_UP, ub: bound, lb: 0 }),
    '>=': (bound: number) => ({ type: kit.GLP_LO, ub: 0, lb: bound }),
    '=': (bound: number) => ({ type: kit.GLP_FX, ub: bound, lb: bound }),
  };
  const { result } = await kit.solve(
    {
      name: 'season',
      objective: { direction: kit.GLP_MIN, name: 'cost', vars: linear(model.objective) },
      subjectTo: model.rows.map(({ terms, sense, bound }, at) => ({
        name: `r${at}`,
        vars: linear(terms),
        bnds: bounds[sense](bound),
      })),
      bounds: model.reals.map((name) => ({ name, type: kit.GLP_LO, ub: 0, lb: 0 })),
      binaries: model.binaries,
    },
    { msglev: kit.GLP_MSG_OFF, presol: true, mipgap: 0, tmlim: 60 },
  );
  return result.status === kit.GLP_OPT ? result.z + model.constant : null;
}

test('on small problems both find the same least cost, or none', async () => {
  let feasible = 0;
  await fc.assert(
    fc.asyncProperty(smallProblem, async (problem) => {
      const model = modelOf(problem);
      const here = await runHighs(model);
      const there = await byGlpk(model);
      expect(here.status).toBe(there === null ? 'infeasible' : 'optimal');
      if (there === null) return;
      feasible += 1;
      expect(here.objective).toBeCloseTo(there, 4);
    }),
    { seed: 7, numRuns: 60 },
  );
  expect(feasible).toBeGreaterThan(20);
}, 120_000);

test.each([1, 2, 3])(
  'on a season of five aircraft and ten weeks too (draw %d)',
  async (seed) => {
    const model = modelOf(exampleSeason({ aircraft: 5, weeks: 10, seed }));
    const here = await runHighs(model);
    expect(here.status).toBe('optimal');
    expect(here.objective).toBeCloseTo((await byGlpk(model))!, 4);
  },
  120_000,
);
