/** Ways to yes: what one question costs, and what the search spares against judging every set of acts. */
import { performance } from 'node:perf_hooks';
import { judgeAll, toSeconds } from '../../../dist/src/rules/index.js';
import { findWays } from '../../../dist/src/rules/ways/index.js';
import { median, quantile } from '../support/measure.mjs';
import { heading, notes, table } from '../support/print.mjs';
import { variedSheet } from './sheets.mjs';

const QUESTIONS = 200;

export function waysRows(policy, ruleset) {
  heading(`4. Ways to yes, all ${ruleset.rules.length} US and club rules`);
  const asked = Array.from({ length: QUESTIONS }, (_, index) => variedSheet(index))
    .map((sheet) => ({ sheet, acts: actsAgainst(sheet, ruleset) }))
    .filter(({ acts }) => acts > 0);
  for (const { sheet } of asked.slice(0, 40)) findWays({ sheet, policy, ruleset });
  const took = [];
  const looked = [];
  let plans = 0;
  let later = 0;
  let bound = 0;
  let disproved = 0;
  for (const { sheet } of asked) {
    const began = performance.now();
    const found = findWays({ sheet, policy, ruleset });
    took.push(performance.now() - began);
    looked.push(found.ways.looked);
    if (found.ways.plans.length > 0) plans += 1;
    else if (found.ways.later) later += 1;
    if (found.ways.bound) bound += 1;
    disproved += found.disproved;
  }
  const subsets = asked.map(({ acts }) => 2 ** acts);
  const told = (values, digits) =>
    `${median(values).toFixed(digits)} (${quantile(values, 0).toFixed(digits)} to ${quantile(values, 1).toFixed(digits)})`;
  table([
    ['what', 'median (least to most)'],
    ['ms a question, plans proven', told(took, 1)],
    ['states looked at', told(looked, 0)],
    ['sets of the acts offered at first: the limit of trying all, in one order each', told(subsets, 0)],
  ]);
  notes(
    `${asked.length} of ${QUESTIONS} varied sheets whose answer is no and against which a rule offers an act: ${plans} have a way before the flight, ${later} one on a later day; ${bound} met the bound of 4000 states; ${disproved} plans were not borne out by the fresh judgement.`,
  );
}

/** Different acts that the rules offer against what stands in the way. */
function actsAgainst(sheet, ruleset) {
  const { judged } = judgeAll(sheet, ruleset, toSeconds(sheet.flight.departs));
  const short = judged.filter(({ finding }) => finding.status === 'short' && finding.weight !== 'advice');
  return new Set(short.flatMap(({ finding }) => finding.remedies.map(({ act }) => act))).size;
}
