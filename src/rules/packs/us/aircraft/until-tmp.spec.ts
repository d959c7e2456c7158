import fc from 'fast-check';
import { decide, judgeAll, rulesetFor, toInstant, toSeconds } from '../../../index.js';
import { startingPolicy } from '../../club/starting-policy.js';
import { anySheet } from '../../../../../test/property/engine-sheets.js';
import { US_AIRCRAFT_RULES } from './index.js';
const policy = startingPolicy();
const { book } = rulesetFor('US', policy);
test('until', () => {
  const out = new Map<string, string>();
  for (const seed of [1, 20261125])
    for (const s of fc.sample(anySheet, { seed, numRuns: 120 })) {
      const at = toSeconds(s.flight.departs);
      US_AIRCRAFT_RULES.forEach((rule) => {
        const rs = { rules: [rule], book };
        const d = decide(s, policy, rs, s.flight.departs, { days: 60, stepsPerRule: 200 });
        const f = d.findings[0]!;
        const v = (w: number) => {
          const g = judgeAll(s, rs, w).judged[0]!.finding;
          return `${g.status} ${g.conditions.join('|')}`;
        };
        const me = `${f.status} ${f.conditions.join('|')}`;
        const end =
          f.until === null
            ? d.horizon.until === null
              ? at + 60 * 86400
              : toSeconds(d.horizon.until)
            : toSeconds(f.until);
        for (const p of [0.1, 0.33, 0.5, 0.77, 0.95]) {
          const w = at + Math.floor(p * (end - at));
          if (w < end && v(w) !== me)
            out.set(rule.id, `${rule.id} ${me} until ${f.until} but at ${toInstant(w)} ${v(w)}`);
        }
        if (f.until !== null && v(end) === me)
          out.set(rule.id + 'x', `${rule.id} should change at ${f.until} ${me}`);
      });
    }
  expect([...out.values()]).toEqual([]);
});
