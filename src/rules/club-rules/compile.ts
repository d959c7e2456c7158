/** Makes ordinary rules of the engine out of the rules a club wrote. */
import type { Moment } from '../engine/moment.js';
import {
  defineRule,
  type Body,
  type FactView,
  type Judgement,
  type Rule,
  type Take,
} from '../engine/rule.js';
import type { ClubRule } from '../facts/club-rule.js';
import type { FactKey } from '../facts/keys.js';
import { checkRule, type CheckedRule } from './check.js';
import { waysToKeep } from './remedies.js';
import { evidenceOf, hold, keeps, messageFor, notKnown, templateOf } from './verdict.js';

/** Rules of the club by code; versions of one code are the dated bodies of one rule. */
export function rulesOfClub(rules: readonly ClubRule[]): Rule[] {
  const byCode = new Map<string, ClubRule[]>();
  for (const one of rules) byCode.set(one.code, [...(byCode.get(one.code) ?? []), one]);
  return [...byCode].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, versions]) => compile(versions));
}

const compiled = new WeakMap<ClubRule, Rule>();

/** One version alone, in force on every day: what a dry run judges. */
export function compileUndated(rule: ClubRule): Rule {
  let made = compiled.get(rule);
  if (!made) compiled.set(rule, (made = compile([rule], () => ({ from: null, to: null }))));
  return made;
}

type Dates = (rule: ClubRule) => Pick<Body<FactKey, string>, 'from' | 'to'>;
const itsOwn: Dates = ({ from, to }) => ({ from, to });

/**
 * A version whose text no longer fits the schema gives a rule that is always in error: it closes, and says why. It is
 * never left out in silence.
 */
function compile(versions: readonly ClubRule[], dates: Dates = itsOwn): Rule {
  const ordered = [...versions].sort((a, b) =>
    a.from < b.from ? -1 : a.from > b.from ? 1 : a.version - b.version,
  );
  try {
    return make(ordered, dates);
  } catch (error) {
    return broken(ordered, (error as Error).message);
  }
}

const BRANCHES = {
  'asks-nothing': { status: 'not-applicable', says: 'This rule of the club asks nothing of this flight.' },
  kept: { status: 'met', says: 'What the club asks is met: {title}.' },
  'not-kept': { status: 'short', says: '{says}' },
} as const;
type Branch = keyof typeof BRANCHES;

function make(versions: readonly ClubRule[], dates: Dates): Rule {
  const checked = versions.map((version) => ({ version, check: checkRule(version) }));
  // A rule of one version has its message as its sentence; of several, each fills in its own.
  const only = checked.length === 1 ? checked[0]!.check.rule : null;
  const branches = only
    ? { ...BRANCHES, 'not-kept': { ...BRANCHES['not-kept'], says: templateOf(only) } }
    : BRANCHES;
  const reads = [...new Set(checked.flatMap(({ check }) => check.rule?.reads ?? []))].sort();
  return defineRule({
    ...headOf(versions),
    binds: bindsBy(reads),
    reads,
    parameters: [],
    branches,
    bodies: checked.map(({ version, check }) => ({
      ...bodyOf(version),
      ...dates(version),
      judge(f: FactView, moment: Moment, _p: unknown, take: Take<Branch>): Judgement {
        if (!check.rule) throw noLongerFits(check.faults.map((fault) => fault.message));
        return judge(check.rule, version, f, moment, take);
      },
    })),
  }) as unknown as Rule;
}

function judge(
  rule: CheckedRule,
  { title, condition }: ClubRule,
  f: FactView,
  moment: Moment,
  take: Take<Branch>,
): Judgement {
  const found = hold(rule, f, moment);
  if (found.asks === false) return take('asks-nothing');
  const more = { counted: evidenceOf(found) };
  if (keeps(found)) return take('kept', { title }, more);
  if (found.asks === 'unknown' || found.held === 'unknown') throw notKnown(rule, found, condition);
  return take('not-kept', messageFor(rule, found), { ...more, remedies: () => waysToKeep(rule, f, moment) });
}

/** Whom a rule binds: the first of those it reads of. */
function bindsBy(reads: readonly FactKey[]): Rule['binds'] {
  const of = (role: string): boolean => reads.some((key) => key.startsWith(`${role}.`));
  if (of('pic')) return 'pilot';
  if (of('instructor')) return 'instructor';
  if (of('member')) return 'member';
  return of('aircraft') ? 'aircraft' : 'flight';
}

function headOf(versions: readonly ClubRule[]): Pick<Rule, 'id' | 'title' | 'weight'> {
  const newest = versions.at(-1)!;
  return { id: newest.code, title: newest.title, weight: newest.weight };
}

const bodyOf = ({ version, document }: ClubRule) => ({
  version,
  citation: { text: document, status: 'club paper' as const },
});

const noLongerFits = (because: readonly string[]): Error =>
  new Error(`its text no longer fits what rules may say: ${because.join(' ')}`);

function broken(versions: readonly ClubRule[], because: string): Rule {
  const newest = versions.at(-1)!;
  return {
    ...headOf(versions),
    binds: 'flight',
    reads: [],
    parameters: [],
    branches: BRANCHES,
    bodies: [
      {
        ...bodyOf(newest),
        from: null,
        to: null,
        judge(): never {
          throw noLongerFits([because]);
        },
      },
    ],
  };
}
