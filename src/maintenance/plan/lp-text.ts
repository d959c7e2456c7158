/** A program in the LP file format (as CPLEX, GLPK and HiGHS read it). */
import type { Model, Terms } from './model.js';

/** Writes the program, to be made as small as can be. */
export function lpText({ objective, rows, binaries, reals }: Model): string {
  const lines = ['Minimize', ` cost: ${linear(objective)}`, 'Subject To'];
  for (const [at, { terms, sense, bound }] of rows.entries())
    lines.push(` r${at}: ${linear(terms)} ${sense} ${figure(bound)}`);
  lines.push('Bounds', ...reals.map((name) => ` ${name} >= 0`));
  if (binaries.length > 0) lines.push('Binary', ...wrapped(binaries));
  return `${lines.join('\n')}\nEnd\n`;
}

function linear(terms: Terms): string {
  const parts = [...terms].map(
    ([name, factor]) => `${factor < 0 ? '-' : '+'} ${figure(Math.abs(factor))} ${name}`,
  );
  return wrapped(parts.length === 0 ? ['0 y_0_0'] : parts).join('\n');
}

/** Lines stay short: some readers cut them. */
function wrapped(words: readonly string[]): string[] {
  const lines: string[] = [];
  for (let at = 0; at < words.length; at += 12) lines.push(` ${words.slice(at, at + 12).join(' ')}`);
  return lines;
}

/** Never with an exponent. */
const figure = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(9));
