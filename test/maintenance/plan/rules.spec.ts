/** Each rule of a plan by itself: a plan that keeps it, one that breaks it, and the solver, which keeps it. */
import { evaluate } from '../../../src/maintenance/plan/evaluate.js';
import type { Plan, Problem } from '../../../src/maintenance/plan/problem.js';
import { solve } from '../../../src/maintenance/plan/solve.js';
import { need, quiet, wish } from './problems.js';

const plan = (needs: Plan['needs'], wishes: Plan['wishes'] = {}): Plan => ({ needs, wishes });
const broken = (problem: Problem, of: Plan): string[] =>
  evaluate(problem, of).violations.map(({ rule }) => rule);

const shop = (more: Partial<Problem['shop']>): Problem['shop'] => ({ ...quiet(4, 2).shop, ...more });
const two = [need('n0'), need('n1', { aircraftId: 'a1' })];

test.each<[string, Problem, Plan, Plan, string]>([
  ['nothing is overdue', quiet(6, 1, { needs: [need('n')] }), plan({ n: 3 }), plan({ n: 4 }), 'start'],
  ['nothing is left out', quiet(4, 1, { needs: [need('n')] }), plan({ n: 0 }), plan({}), 'due'],
  [
    'parts are there',
    quiet(4, 1, { needs: [need('n', { partsFrom: 2 })] }),
    plan({ n: 2 }),
    plan({ n: 1 }),
    'start',
  ],
  [
    'the shop is open to it',
    quiet(4, 1, { needs: [need('n')], shop: shop({ firstWeek: 1 }) }),
    plan({ n: 1 }),
    plan({ n: 0 }),
    'start',
  ],
  [
    'it is done within the span',
    quiet(4, 1, { needs: [need('n', { shopDays: 6 })] }),
    plan({ n: 2 }),
    plan({ n: 3 }),
    'start',
  ],
  [
    'so many days a week on one aircraft',
    quiet(4, 1, { needs: [need('n'), need('m')] }),
    plan({ n: 0, m: 1 }),
    plan({ n: 0, m: 0 }),
    'days',
  ],
  [
    'so many aircraft at once',
    quiet(4, 2, { needs: two, shop: shop({ bays: [1, 1, 1, 1] }) }),
    plan({ n0: 0, n1: 1 }),
    plan({ n0: 1, n1: 1 }),
    'bays',
  ],
  [
    'so many days of work a week',
    quiet(4, 2, { needs: two, shop: shop({ shopDays: [5, 5, 5, 5] }) }),
    plan({ n0: 0, n1: 1 }),
    plan({ n0: 1, n1: 1 }),
    'shop-days',
  ],
  [
    'closed weeks',
    quiet(4, 1, { needs: [need('n')], shop: shop({ bays: [0, 1, 1, 1] }) }),
    plan({ n: 1 }),
    plan({ n: 0 }),
    'bays',
  ],
  [
    'the group keeps flying',
    quiet(4, 2, {
      needs: two,
      groups: [{ id: 'g', title: 'trainers', aircraftIds: ['a0', 'a1'], mostDown: 1 }],
    }),
    plan({ n0: 0, n1: 1 }),
    plan({ n0: 1, n1: 1 }),
    'group',
  ],
  [
    'wishes ride along',
    quiet(4, 1, { needs: [need('n')], wishes: [wish('w')] }),
    plan({ n: 1 }, { w: 1 }),
    plan({ n: 1 }, { w: 3 }),
    'rides-along',
  ],
  [
    'with the work they may ride with',
    quiet(4, 1, {
      needs: [need('n'), need('m', { shopDays: 1 })],
      wishes: [wish('w', { ridesWith: ['m'] })],
    }),
    plan({ n: 0, m: 2 }, { w: 2 }),
    plan({ n: 0, m: 2 }, { w: 0 }),
    'rides-along',
  ],
  [
    'what falls due again is done in time',
    quiet(6, 1, {
      needs: [need('n'), need('m', { latest: null, follows: { needId: 'n', withinWeeks: 2 } })],
    }),
    plan({ n: 2, m: 4 }),
    plan({ n: 2, m: 5 }),
    'follows',
  ],
  [
    'and not before what it follows',
    quiet(6, 1, {
      needs: [
        need('n', { shopDays: 1 }),
        need('m', { shopDays: 1, latest: null, follows: { needId: 'n', withinWeeks: 9 } }),
      ],
    }),
    plan({ n: 2 }),
    plan({ n: 2, m: 2 }),
    'follows',
  ],
])('%s', async (_what, problem, good, bad, rule) => {
  expect(broken(problem, good)).toEqual([]);
  expect(broken(problem, bad)).toContain(rule);
  const found = await solve(problem);
  expect(found.status).toBe('optimal');
  if (found.status === 'optimal')
    expect(found.evaluation.cost.total).toBeLessThanOrEqual(evaluate(problem, good).cost.total + 1e-6);
});

test('a pinned week is kept free for the aircraft, before the shop’s first week too', async () => {
  const problem = quiet(4, 1, {
    needs: [need('n')],
    shop: shop({ firstWeek: 3 }),
    pins: [{ aircraftId: 'a0', week: 1 }],
  });
  const found = await solve(problem);
  expect(found).toMatchObject({ status: 'optimal', plan: { needs: { n: 1 } } });
});

test('costs are told term by term', () => {
  const problem = quiet(4, 1, {
    needs: [need('n', { shopDays: 6 }), need('o', { latest: null, worth: 2, shopDays: 1 })],
    wishes: [wish('w', { shopDays: 1, worth: 7 })],
    bookedHours: { a0: [0, 10, 20, 0] },
    expectedHours: { a0: [0, 5, 10, 0] },
  });
  // Five days of week 1 and three of week 2 of five each: 10 + 12 booked hours, 5 + 6 expected.
  const { cost, visits, weeksEarly } = evaluate(problem, plan({ n: 1, o: 2 }, { w: 2 }));
  expect(visits).toEqual([{ aircraftId: 'a0', from: 1, to: 2, needs: ['n', 'o'], wishes: ['w'], days: 8 }]);
  expect(weeksEarly).toEqual({ n: 2 });
  expect(cost).toEqual({
    booked: 22,
    expected: 5.5,
    life: 0.8,
    waiting: 0,
    visits: 3,
    wishes: -7,
    saved: -2,
    total: expect.closeTo(22.3, 9) as number,
  });
});

test('what is overdue waits at a cost, and is done within the span all the same', async () => {
  const problem = quiet(4, 1, {
    needs: [need('n', { latest: 1, overdue: true })],
    shop: shop({ firstWeek: 1, bays: [1, 0, 1, 1] }),
  });
  expect(evaluate(problem, plan({ n: 2 })).cost).toMatchObject({ life: 0, waiting: 4 });
  expect(await solve(problem)).toMatchObject({ status: 'optimal', plan: { needs: { n: 2 } } });
  const { violations } = evaluate(problem, plan({}));
  expect(violations).toEqual([{ rule: 'due', about: 'n', week: 1 }]);
});
