/** The parsed expression as the checks and the analysis walk it: the library's tree, narrowed to what rules may hold. */
import type { ASTNode } from '@marcbachmann/cel-js';

export type Node = ASTNode;
/** Comparisons and arithmetic. */
export const COMPARISONS = ['==', '!=', '<', '<=', '>', '>='] as const;
export type Comparison = (typeof COMPARISONS)[number];
export const isComparison = (op: string): op is Comparison => (COMPARISONS as readonly string[]).includes(op);
export const ARITHMETIC: readonly string[] = ['+', '-', '*', '/', '%'];
/** Macros over lists; the first argument names the element. */
export const MACROS: readonly string[] = ['all', 'exists', 'exists_one', 'filter', 'map'];

/** Parts directly below a node, in reading order; the name of a macro's element is not one. */
export function partsOf(node: Node): Node[] {
  switch (node.op) {
    case 'value':
    case 'id':
      return [];
    case '.':
      return [node.args[0]];
    case 'call':
      return node.args[1];
    case 'rcall': {
      const [name, receiver, given] = node.args;
      return [receiver, ...(MACROS.includes(name) ? given.slice(1) : given)];
    }
    case '!_':
    case '-_':
      return [node.args];
    default:
      return node.args as Node[];
  }
}

/** The name a macro gives to each element; null for any other node. */
export function elementName(node: Node): string | null {
  if (node.op !== 'rcall' || !MACROS.includes(node.args[0])) return null;
  const named = node.args[2][0];
  return named?.op === 'id' ? named.args : null;
}

/** Calls `visit` for a node and all below it. */
export function walk(node: Node, visit: (node: Node) => void): void {
  visit(node);
  for (const part of partsOf(node)) walk(part, visit);
}

/** A value written out, a sign before a number included; undefined for anything else. */
export function literalOf(node: Node): string | number | boolean | undefined {
  if (node.op === '-_') {
    const value = literalOf(node.args);
    return typeof value === 'number' ? -value : undefined;
  }
  if (node.op !== 'value') return undefined;
  const value: unknown = node.args;
  if (typeof value === 'bigint') return Number(value);
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? value
    : undefined;
}
