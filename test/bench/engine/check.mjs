/** Before anything is timed: do the three writings of the ten rules say the same of every sheet? */
import { judgeAll, toSeconds } from '../../../dist/src/rules/index.js';

/** The engine's findings, cut down to what the other two writings give. */
export function engineVerdicts(ruleset) {
  return (sheet, departs) =>
    judgeAll(sheet, ruleset, departs).judged.map(({ finding }) => ({
      rule: finding.rule,
      status: finding.status,
      says: finding.says,
      conditions: finding.conditions,
    }));
}

/**
 * Compares status, sentence and number of conditions rule by rule.
 * @returns how many verdicts were compared, which branches were reached, and the first differences in words.
 */
export async function compare(sheets, ruleset, others) {
  const engine = engineVerdicts(ruleset);
  const reached = new Set();
  const differences = [];
  let compared = 0;
  for (const [index, sheet] of sheets.entries()) {
    const departs = toSeconds(sheet.flight.departs);
    for (const { finding } of judgeAll(sheet, ruleset, departs).judged)
      reached.add(`${finding.rule} ${finding.branch}`);
    const ours = engine(sheet, departs);
    for (const { name, judge } of others) {
      const theirs = new Map((await judge(sheet, departs)).map((verdict) => [verdict.rule, verdict]));
      for (const verdict of ours) {
        compared += 1;
        const other = theirs.get(verdict.rule);
        if (same(verdict, other)) continue;
        differences.push(
          `sheet ${index}, ${name}, ${verdict.rule}: "${told(verdict)}" against "${told(other)}"`,
        );
      }
      if (theirs.size !== ours.length) differences.push(`sheet ${index}, ${name}: ${theirs.size} verdicts`);
    }
  }
  return { compared, reached, differences };
}

const same = (a, b) =>
  b !== undefined &&
  a.status === b.status &&
  a.says === b.says &&
  a.conditions.length === b.conditions.length;

const told = (verdict) =>
  verdict ? `${verdict.status}: ${verdict.says} (${verdict.conditions.length} conditions)` : 'nothing';
