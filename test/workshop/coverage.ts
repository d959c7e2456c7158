/** `npm run rule:coverage`: what the case tables cover, a line a rule; with a rule's id, its branches and cases in full. */
import { ALL_RULES, rulesetFor, startingPolicy, type Rule } from '../../src/rules/index.js';
import type { Case } from '../../src/rules/workshop/case-table.js';
import { coverageOf, type RuleCoverage } from '../../src/rules/workshop/coverage.js';
import { FLIGHT } from '../../src/rules/workshop/base-sheet.js';
import { readTables, type TableFile } from './tables.js';

const RULES = new Map(
  // The engine's own rule comes with every pack.
  [...ALL_RULES, ...rulesetFor('US', startingPolicy()).rules].map((rule) => [rule.id, rule]),
);

export function main([wanted]: string[]): number {
  const tables = readTables().filter(({ table }) => wanted === undefined || table.rule === wanted);
  if (tables.length === 0) {
    console.error(`no rule ${wanted} has a case table`);
    return 1;
  }
  const covered = tables.map((of) => ({ of, coverage: coverageOf(ruleOf(of), of.table) }));
  console.log(
    wanted === undefined ? overview(covered.map(({ coverage }) => coverage)) : covered.map(inFull).join('\n'),
  );
  const unreached = covered.some(({ coverage }) => coverage.branches.some(({ cases }) => cases.length === 0));
  return unreached ? 1 : 0;
}

function ruleOf({ file, table }: TableFile): Rule {
  const rule = RULES.get(table.rule);
  if (!rule) throw new Error(`${file}:1: no pack has the rule ${table.rule}`);
  return rule;
}

function overview(all: readonly RuleCoverage[]): string {
  const rows = all.map(({ rule, cases, branches, edges, missing }) => {
    const reached = branches.filter((branch) => branch.cases.length > 0).length;
    const told = branches.reduce((sum, branch) => sum + branch.untilTold, 0);
    return [rule, `${reached}/${branches.length}`, cases, edges.length, told, missing.join(', ')];
  });
  const sum = (of: (one: RuleCoverage) => number): number => all.reduce((total, one) => total + of(one), 0);
  const total = [`${all.length} rules`, '', sum((one) => one.cases), sum((one) => one.edges.length), '', ''];
  return columns([['rule', 'branches', 'cases', 'edges', 'until', 'not shown by any case'], ...rows, total]);
}

function inFull({ of, coverage }: { of: TableFile; coverage: RuleCoverage }): string {
  const branches = coverage.branches.map(({ branch, status, cases, timed, untilTold }) => [
    branch,
    status,
    cases.length,
    timed,
    untilTold,
  ]);
  const edges = coverage.edges.map(
    ({ value, step, below, above }) => `  ${value}, ${step}: "${below}" | "${above}"`,
  );
  const cases = of.table.cases.map((one, index) => told(one, `${of.file}:${of.lines[index]}`));
  return [
    coverage.rule,
    columns([['branch', 'status', 'cases', 'time changes', 'until told'], ...branches]),
    `\nedges tried from both sides: ${edges.length === 0 ? 'none' : ''}`,
    ...edges,
    ...(coverage.missing.length > 0 ? [`\nnot shown by any case: ${coverage.missing.join(', ')}`] : []),
    '\ncases:',
    ...cases,
  ].join('\n');
}

/** A case as a pilot reads it: when, what differs from the base flight, what must come out, and who says so. */
function told({ name, source, given = {}, expect }: Case, place: string): string {
  const { asOf = FLIGHT.departs, ...facts } = given;
  const part = (label: string, value: unknown): string => `    ${label.padEnd(9)} ${String(value)}`;
  return [
    `  ${name} (${place})`,
    part('flight', asOf),
    ...Object.entries(facts).map(([key, value]) => part('given', `${key}: ${JSON.stringify(value)}`)),
    part(
      'expected',
      Object.entries(expect)
        .map(([key, value]) => `${key} ${JSON.stringify(value)}`)
        .join(', '),
    ),
    part('source', source),
  ].join('\n');
}

function columns(rows: readonly (readonly (string | number)[])[]): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => String(row[column]).length)));
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          typeof cell === 'number' ? String(cell).padStart(widths[column]!) : cell.padEnd(widths[column]!),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
