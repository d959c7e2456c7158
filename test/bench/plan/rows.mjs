/** The season planner: the proven optimum of twenty aircraft over half a year, against a plan drawn up by due date. */
import { performance } from 'node:perf_hooks';
import { evaluate } from '../../../dist/src/maintenance/plan/evaluate.js';
import { exampleSeason } from '../../../dist/src/maintenance/plan/example-season.js';
import { explain } from '../../../dist/src/maintenance/plan/explain.js';
import { greedyPlan } from '../../../dist/src/maintenance/plan/greedy.js';
import { modelOf } from '../../../dist/src/maintenance/plan/model.js';
import { solve } from '../../../dist/src/maintenance/plan/solve.js';
import { heading, notes, table } from '../support/print.mjs';

const DRAWS = [1, 2, 3];
const MOST_SECONDS = 120;

export async function planRows() {
  heading('Season plan, 20 aircraft x 26 weeks');
  const rows = [
    ['draw', 'ended', 'gap', 'seconds', 'to explain', 'binaries', 'rows', 'cost', 'by due date', 'visits'],
  ];
  for (const seed of DRAWS) rows.push(await row(seed));
  table(rows);
  notes(
    `Invented seasons. HiGHS in WebAssembly, one thread, asked for a gap of 0 within ${MOST_SECONDS} s: optimal means proven, gap 0.`,
    'By due date: each as late as it goes, beside what is in the shop anyway; in brackets where it breaks a rule.',
  );
}

async function row(seed) {
  const problem = exampleSeason({ aircraft: 20, weeks: 26, seed });
  const model = modelOf(problem);
  const began = performance.now();
  const found = await solve(problem, MOST_SECONDS);
  const seconds = (performance.now() - began) / 1000;
  const greedy = evaluate(problem, greedyPlan(problem));
  const byDue =
    greedy.violations.length > 0 ? `(${greedy.cost.total.toFixed(1)})` : greedy.cost.total.toFixed(1);
  const size = [model.binaries.length, model.rows.length];
  if (!found.plan) return [seed, found.status, '-', seconds.toFixed(1), '-', ...size, '-', byDue, '-'];
  const told = performance.now();
  const visits = explain(problem, found.plan, found.evaluation);
  const explained = ((performance.now() - told) / 1000).toFixed(1);
  const cost = found.evaluation.cost.total.toFixed(1);
  const { total } = found.evaluation.cost;
  const gap = found.status === 'optimal' ? 0 : (total - found.bound) / total;
  return [
    seed,
    found.status,
    `${(gap * 100).toFixed(1)} %`,
    seconds.toFixed(1),
    explained,
    ...size,
    cost,
    byDue,
    visits.length,
  ];
}
