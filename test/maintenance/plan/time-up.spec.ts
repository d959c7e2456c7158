/** What is told when time is up: the best plan so far, and the least any plan can cost. */
import { evaluate } from '../../../src/maintenance/plan/evaluate.js';
import { exampleSeason } from '../../../src/maintenance/plan/example-season.js';
import { modelOf } from '../../../src/maintenance/plan/model.js';
import { planSeason, type Season } from '../../../src/maintenance/plan/run.js';
import { runHighs, solve } from '../../../src/maintenance/plan/solve.js';
import { seasonView } from '../../../src/maintenance/season/season.views.js';
import { whyVisit } from '../../../src/maintenance/season/words.js';
import { need, quiet } from './problems.js';

/** As `npm run bench -- plan` proves it, to the tenth it prints. */
const PROVEN = 170.2;
const large = exampleSeason({ aircraft: 20, weeks: 26, seed: 2 });

test('a search cut short tells a sound plan and a bound on either side of the proven optimum', async () => {
  // As short as finds any: how much that is depends on the machine.
  let seconds = 2;
  let found = await solve(large, seconds);
  while (found.status === 'stopped' && seconds < 100) found = await solve(large, (seconds *= 2));
  if (found.status !== 'found') throw new Error(`cut short after ${seconds} s it says ${found.status}`);
  expect(evaluate(large, found.plan).violations).toEqual([]);
  expect(Number.isFinite(found.bound)).toBe(true);
  expect(found.bound).toBeLessThan(PROVEN + 0.05);
  expect(found.evaluation.cost.total).toBeGreaterThan(PROVEN - 0.05);
}, 300_000);

test('with no time there is no plan, and none is made up', async () => {
  expect(await solve(large, 0)).toEqual({ status: 'stopped' });
});

test('the bound of a proven plan is its cost', async () => {
  const { status, objective, bound } = await runHighs(
    modelOf(exampleSeason({ aircraft: 4, weeks: 8, seed: 3 })),
  );
  expect(status).toBe('optimal');
  expect(bound).toBeCloseTo(objective, 4);
});

describe('a plan that is not proven', () => {
  const problem = quiet(4, 2, { needs: [need('n', { latest: 3 })] });

  const cutShort = async (): Promise<Season & { status: 'found' }> => {
    const season = await planSeason({ problem, booked: null });
    if (season.status !== 'optimal') throw new Error(season.status);
    return { ...season, status: 'found', bound: season.evaluation.cost.total - 5 };
  };

  it('is told with the least that is possible', async () => {
    const season = await cutShort();
    const view = seasonView(problem, season, { tooSoon: [], booked: [] });
    expect(view).toMatchObject({ status: 'found', because: null });
    expect(view.visits).toHaveLength(1);
    expect(view.leastPossible).toBeCloseTo(season.evaluation.cost.total - 5, 2);
  });

  it('says so where a visit alone would be better in another week', async () => {
    const { visits } = await cutShort();
    const [visit] = visits;
    const alternatives = [{ week: 1, more: -2.25, because: [] }];
    expect(whyVisit({ ...visit!, alternatives }, problem.weeks).join(' ')).toContain(
      `The week of ${problem.weeks[1]!} would cost 2.3 less: time was up before the search came to it.`,
    );
  });
});
