import fc from 'fast-check';
import {
  applyRemedy,
  blocks,
  judgeAll,
  rulesetFor,
  toSeconds,
  type FactSheet,
  type Finding,
} from '../../../index.js';
import { startingPolicy } from '../../club/starting-policy.js';
import { ADVERSITIES } from '../../../../../test/property/engine-adversity.js';
import { anySheet } from '../../../../../test/property/engine-sheets.js';
import { US_AIRCRAFT_RULES } from './index.js';
const policy = startingPolicy();
const { book } = rulesetFor('US', policy);
const rs = { rules: US_AIRCRAFT_RULES, book };
const now = (s: FactSheet) => judgeAll(s, rs, toSeconds(s.flight.departs));
const seeds = [1, 2, 3, 20261125];
const shuffle = <T>(l: readonly T[], salt: number): T[] =>
  [...l]
    .map((v, i) => [((i + 7) * 7919 + salt * 31) % 101, v] as const)
    .sort((a, b) => a[0] - b[0])
    .map((x) => x[1]);
function shuffled(s: FactSheet, salt: number): FactSheet {
  const aircraft = Object.fromEntries(
    Object.entries(s.aircraft).map(([k, v]) => [
      k,
      typeof v === 'object' && v.known && Array.isArray(v.value)
        ? { ...v, value: shuffle(v.value as unknown[], salt) }
        : v,
    ]),
  );
  return { ...s, aircraft: aircraft as never };
}
const collect = (n: number, run: (s: FactSheet, i: number) => string[]) => {
  const out = new Map<string, string>();
  for (const seed of seeds)
    fc.sample(anySheet, { seed, numRuns: n }).forEach((s, i) => {
      for (const m of run(s, i)) {
        const k = m.slice(0, 70);
        if (!out.has(k)) out.set(k, m);
      }
    });
  return [...out.values()];
};
test('remedies', () => {
  expect(
    collect(500, (s) => {
      const { crew, judged } = now(s);
      return judged.flatMap(({ finding }, i) =>
        finding.remedies.flatMap((r) => {
          const c = applyRemedy(s, crew, r);
          const a = judgeAll(c, { ...rs, rules: [rs.rules[i]!] }, toSeconds(c.flight.departs)).judged[0]!
            .finding;
          return a.status === 'met' || a.status === 'not-applicable'
            ? []
            : [`${finding.rule} ${r.act} -> ${a.status}: was ${finding.says} / now ${a.says}`];
        }),
      );
    }),
  ).toEqual([]);
});
test('errors', () => {
  expect(
    collect(500, (s) =>
      now(s)
        .judged.filter((j) => j.finding.status === 'error')
        .map((j) => `${j.finding.rule} ${j.finding.says}`),
    ),
  ).toEqual([]);
});
test('order', () => {
  expect(
    collect(400, (s, i) => {
      const b = now(shuffled(s, i)).judged;
      const strip = (f: Finding) => JSON.stringify({ ...f, remedies: f.remedies });
      return now(s).judged.flatMap(({ finding }, k) =>
        strip(finding) === strip(b[k]!.finding)
          ? []
          : [`${finding.rule}: ${strip(finding)}\n ${strip(b[k]!.finding)}`],
      );
    }),
  ).toEqual([]);
});
test('monotone', () => {
  expect(
    collect(500, (s, i) =>
      ADVERSITIES.flatMap((ad) => {
        const w = ad.apply(s, i);
        if (!w) return [];
        const b = now(w).judged;
        return now(s).judged.flatMap(({ finding: f }, k) => {
          const g = b[k]!.finding;
          return blocks(f) && !blocks(g)
            ? [`${f.rule} ${ad.name}: ${f.status} ${f.says} became ${g.status} ${g.says}`]
            : [];
        });
      }),
    ),
  ).toEqual([]);
});
