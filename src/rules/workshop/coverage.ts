/** How far a case table covers its rule: branches reached, edges tried on both sides, times told. */
import type { Rule } from '../engine/rule.js';
import type { Case, CaseTable } from './case-table.js';
import { edgesIn, type Edge } from './edges.js';
import { runCase } from './run-case.js';

/** One branch of a rule, or `unknown`, and the cases that come out by it. */
export interface BranchCoverage {
  branch: string;
  status: string;
  cases: string[];
  /** Cases whose verdict time changes. */
  timed: number;
  /** Cases that say when their verdict changes, or that it never does. */
  untilTold: number;
}

export interface RuleCoverage {
  rule: string;
  cases: number;
  branches: BranchCoverage[];
  edges: Edge[];
  /** What a reader of the table would look for in vain, in words. */
  missing: string[];
}

/** Runs every case of the table and sorts them by the branch they take. */
export function coverageOf(rule: Rule, table: CaseTable): RuleCoverage {
  const branches = new Map<string, BranchCoverage>();
  const of = (branch: string, status: string): BranchCoverage => {
    const known = branches.get(branch) ?? { branch, status, cases: [], timed: 0, untilTold: 0 };
    branches.set(branch, known);
    return known;
  };
  for (const [branch, { status }] of Object.entries(rule.branches)) of(branch, status);
  const came = table.cases.map((one) => {
    const { finding } = runCase(table.rule, one);
    const branch = of(finding.branch, finding.status);
    branch.cases.push(one.name);
    if (finding.until !== null) branch.timed += 1;
    if (one.expect.until !== undefined) branch.untilTold += 1;
    return { one, came: `${finding.branch}/${finding.conditions.length}` };
  });
  const edges = edgesIn(came);
  return {
    rule: rule.id,
    cases: table.cases.length,
    branches: [...branches.values()],
    edges,
    missing: missing(rule, [...branches.values()], table.cases, edges),
  };
}

function missing(
  rule: Rule,
  branches: readonly BranchCoverage[],
  cases: readonly Case[],
  edges: readonly Edge[],
): string[] {
  const told: string[] = [];
  for (const { branch, cases: reached, timed, untilTold } of branches) {
    if (reached.length === 0) told.push(`no case takes ${branch}`);
    else if (timed > 0 && untilTold === 0) told.push(`until of ${branch}`);
  }
  if (rule.reads.length > 0 && !cases.some((one) => one.expect.status === 'unknown'))
    told.push('a fact unknown');
  if (edges.length === 0 && branches.some((branch) => branch.timed > 0)) told.push('an edge from both sides');
  return told;
}
