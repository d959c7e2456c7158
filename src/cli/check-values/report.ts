import type { Outcome } from './run.js';

/** The lines to print, the last one the count, and the exit status: 0 only when every entry was run and passed. */
export function report(outcomes: readonly Outcome[]): { lines: string[]; exitCode: 0 | 1 } {
  const lines: string[] = [];
  for (const one of outcomes) {
    if (one.status !== 'failed') continue;
    for (const problem of one.problems)
      lines.push(`FAILED ${one.name}${one.rule ? ` (${one.rule})` : ''}: ${problem}`);
  }
  const unmapped = new Map<string, string[]>();
  for (const one of outcomes) {
    if (one.status !== 'skipped' || one.rule === null) continue;
    unmapped.set(one.rule, [...(unmapped.get(one.rule) ?? []), one.name]);
  }
  for (const [rule, names] of unmapped)
    lines.push(`SKIPPED no mapping for rule ${rule}: ${names.join(', ')}`);
  const count = (status: Outcome['status']): number => outcomes.filter((one) => one.status === status).length;
  lines.push(`${count('passed')} passed, ${count('failed')} failed, ${count('skipped')} skipped`);
  const clean = outcomes.length > 0 && outcomes.every((one) => one.status === 'passed');
  return { lines, exitCode: clean ? 0 : 1 };
}
