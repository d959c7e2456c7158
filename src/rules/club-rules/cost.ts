/** The most an expression can cost, told from its text alone. */
import { MOST_WHILE_JUDGING } from './meter.js';
import { elementName, partsOf, walk, type Node } from './syntax.js';

/** What an expression costs at worst. */
export interface Cost {
  /** Values, names, operators and calls in it. */
  parts: number;
  /** Steps to evaluate it: a part inside `all`, `exists` and the like counts once for each element of its list. */
  steps: number;
}

/** Counts parts, and steps with each list as long as it may be. */
export function costOf(ast: Node): Cost {
  let parts = 0;
  walk(ast, () => {
    parts += 1;
  });
  return { parts, steps: stepsOf(ast, new Map()) };
}

function stepsOf(node: Node, elements: ReadonlyMap<string, number>): number {
  const element = elementName(node);
  const [first, ...rest] = partsOf(node);
  if (element === null)
    return [first, ...rest].reduce((sum, part) => sum + (part ? stepsOf(part, elements) : 0), 1);
  const length = lengthOf(first!);
  const inside = rest.reduce((sum, part) => sum + stepsOf(part, elements), 1);
  return 1 + stepsOf(first!, elements) + length * inside;
}

/** The most elements a list can have. */
function lengthOf(node: Node): number {
  switch (node.op) {
    case 'list':
      return node.args.length;
    case '+':
      return lengthOf(node.args[0]) + lengthOf(node.args[1]);
    case '?:':
      return Math.max(lengthOf(node.args[1]), lengthOf(node.args[2]));
    case 'rcall':
      return elementName(node) === null ? MOST_WHILE_JUDGING.elements : lengthOf(node.args[1]);
    default:
      return MOST_WHILE_JUDGING.elements;
  }
}
