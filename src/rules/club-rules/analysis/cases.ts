/**
 * Cases in which a yes-or-no expression is true, as far as its text tells: each case says for some terms which values they
 * have. Terms are texts; what two terms have to do with each other is not known, so a case that looks possible may not be,
 * but one that looks impossible is.
 */
import { serialize } from '@marcbachmann/cel-js';
import { daysBetween } from '../../calendar/dates.js';
import { entryOf, isOwner, type Entry } from '../schema/index.js';
import { isComparison, literalOf, type Comparison, type Node } from '../syntax.js';
import { between, both, isEmpty, numbers, truth, words, type Values } from './sets.js';

/** Values by term. */
export type Case = ReadonlyMap<string, Values>;
/** Cases joined by "or"; null: too many to look at. */
export type Cases = readonly Case[] | null;

/** Cases looked at before giving up. */
const MOST_CASES = 256;
const ALWAYS: Cases = [new Map()];
const NEVER: Cases = [];

/** When the expression is true (`is` false: when it is false). */
export function casesOf(node: Node, is = true): Cases {
  switch (node.op) {
    case '!_':
      return casesOf(node.args, !is);
    case '&&':
    case '||': {
      const [a, b] = [casesOf(node.args[0], is), casesOf(node.args[1], is)];
      return (node.op === '&&') === is ? and(a, b) : or(a, b);
    }
    case '?:': {
      const [condition, yes, no] = node.args;
      return or(and(casesOf(condition), casesOf(yes, is)), and(casesOf(condition, false), casesOf(no, is)));
    }
    case 'value':
      return (node.args as unknown) === is ? ALWAYS : NEVER;
    case 'in':
      return inList(node.args[0], node.args[1], is) ?? opaque(node, is);
    default:
      return (isComparison(node.op) ? compared(node as Compared, is) : null) ?? opaque(node, is);
  }
}

/** All of them at once. */
export const all = (...of: Cases[]): Cases => of.reduce(and, ALWAYS);

/** Is some case possible? Null: not told from the text. */
export const possible = (cases: Cases): boolean | null => (cases === null ? null : cases.length > 0);

function or(a: Cases, b: Cases): Cases {
  if (a === null || b === null || a.length + b.length > MOST_CASES) return null;
  return [...a, ...b];
}

function and(a: Cases, b: Cases): Cases {
  // What is impossible stays so, however much comes with it.
  if (a?.length === 0 || b?.length === 0) return NEVER;
  if (a === null || b === null || a.length * b.length > MOST_CASES * 4) return null;
  const found = a.flatMap((one) => b.flatMap((other) => merged(one, other) ?? []));
  return found.length > MOST_CASES ? null : found;
}

function merged(a: Case, b: Case): Case | null {
  const result = new Map(a);
  for (const [term, values] of b) {
    const before = result.get(term);
    const now = before ? both(before, values) : values;
    if (isEmpty(now)) return null;
    result.set(term, now);
  }
  return result;
}

function single(term: string, values: Values): Cases {
  return isEmpty(values) ? NEVER : [new Map([[term, values]])];
}

/** A yes-or-no term of which nothing else is known. */
const opaque = (node: Node, is: boolean): Cases => single(textOf(node), truth(is));

type Compared = Extract<Node, { op: Comparison }>;

const NOT: Record<Comparison, Comparison> = {
  '==': '!=',
  '!=': '==',
  '<': '>=',
  '>=': '<',
  '>': '<=',
  '<=': '>',
};
const TURNED: Record<Comparison, Comparison> = {
  '==': '==',
  '!=': '!=',
  '<': '>',
  '>': '<',
  '<=': '>=',
  '>=': '<=',
};

function compared(node: Compared, is: boolean): Cases {
  const [left, right] = node.args;
  const op = is ? node.op : NOT[node.op];
  const [a, b] = [fixedOf(left), fixedOf(right)];
  if (a !== null && b !== null) return fixedCompared(a, op, b) ? ALWAYS : NEVER;
  if (b !== null) return withFixed(left, op, b);
  if (a !== null) return withFixed(right, TURNED[op], a);
  return twoTerms(left, op, right);
}

/** A value written out; dates as days since 1900, so that they compare as numbers. */
interface Fixed {
  value: number | string | boolean;
}

function fixedOf(node: Node): Fixed | null {
  if (node.op === 'call' && node.args[0] === 'date') {
    const day = literalOf(node.args[1][0]!);
    return typeof day === 'string' ? { value: daysBetween('1900-01-01', day) } : null;
  }
  const value = literalOf(node);
  return value === undefined ? null : { value };
}

function fixedCompared({ value: a }: Fixed, op: Comparison, { value: b }: Fixed): boolean {
  const order = a < b ? -1 : a > b ? 1 : 0;
  return {
    '==': order === 0,
    '!=': order !== 0,
    '<': order < 0,
    '<=': order <= 0,
    '>': order > 0,
    '>=': order >= 0,
  }[op];
}

function withFixed(term: Node, op: Comparison, fixed: Fixed): Cases {
  const text = textOf(term);
  const of = domainOf(term);
  const held = (values: Values): Cases => single(text, of ? both(of, values) : values);
  if (typeof fixed.value === 'number') {
    const whole = ['int', 'Date', 'Days'].includes(typeOf(term) ?? '');
    return held(numbers(op, fixed.value, whole));
  }
  if (typeof fixed.value === 'boolean') {
    if (op !== '==' && op !== '!=') return null;
    return casesOf(term, fixed.value === (op === '=='));
  }
  return op === '==' || op === '!='
    ? held(words([fixed.value], op === '!='))
    : single(`${text} ${op} ${fixed.value}`, truth(true));
}

/** Two terms that are not fixed: only the same comparison again, or its opposite, is recognised. */
function twoTerms(left: Node, op: Comparison, right: Node): Cases {
  const [a, b] = [textOf(left), textOf(right)];
  if (op === '==' || op === '!=') return single([a, b].sort().join(' == '), truth(op === '=='));
  // a < b, a >= b (its opposite), a > b as b < a, a <= b as not b < a.
  if (op === '<' || op === '>=') return single(`${a} < ${b}`, truth(op === '<'));
  return single(`${b} < ${a}`, truth(op === '>'));
}

function inList(term: Node, list: Node, is: boolean): Cases {
  if (list.op !== 'list' || literalOf(term) !== undefined) return null;
  const values = list.args.map((one) => literalOf(one));
  if (!values.every((value) => typeof value === 'string')) return null;
  const of = domainOf(term);
  const these = words(values as string[], !is);
  return single(textOf(term), of ? both(of, these) : these);
}

/** What the schema says a term may be. */
function domainOf(node: Node): Values | null {
  const entry = entryNamed(node);
  if (!entry) return null;
  if (entry.range && ['int', 'double', 'Days'].includes(entry.type))
    return between(entry.range[0], entry.range[1], entry.type !== 'double');
  return entry.type === 'string' && entry.words ? words(entry.words) : null;
}

function entryNamed(node: Node): Entry | undefined {
  const [owner, name] =
    node.op === '.' ? [node.args[0], node.args[1]] : node.op === 'rcall' ? [node.args[1], node.args[0]] : [];
  return owner?.op === 'id' && isOwner(owner.args) ? entryOf(owner.args, name as string) : undefined;
}

const typeOf = (node: Node): string | undefined =>
  (node as { checkedType?: { name: string } }).checkedType?.name;

const textOf = (node: Node): string => serialize(node);
