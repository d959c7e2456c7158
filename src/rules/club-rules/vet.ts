/**
 * Holds a parsed expression against what rules may say. CEL has more: what is left out is either of no use here (maps,
 * bytes), or could not be bounded (regular expressions), or would depend on the machine (zones of the host), or would hide
 * types from the check (`dyn`), or could make a missing fact a yes (`has`).
 */
import { readDate } from './dates.js';
import { placeIn, type Fault } from './fault.js';
import { entryOf, isOwner, SCHEMA } from './schema/index.js';
import { ARITHMETIC, elementName, isComparison, literalOf, MACROS, partsOf, type Node } from './syntax.js';
import {
  ARGUMENT_WORDS,
  argumentFits,
  didYouMean,
  entryExample,
  exampleOf,
  unknownValue,
} from './vet-names.js';

/** Functions called by name, and methods of texts and lists. */
export const FUNCTIONS: readonly string[] = ['size', 'string', 'int', 'double', 'date'];
export const METHODS: readonly string[] = [
  'startsWith',
  'endsWith',
  'contains',
  'size',
  'plusDays',
  'plusMonths',
];

const OWNERS = SCHEMA.map(({ owner }) => owner);
/** Forms that are as they should be whatever they hold. */
const PLAIN = new Set(['list', '?:', '||', '&&', '!_', '-_', 'in', ...ARITHMETIC]);

/** What an expression may not say. Empty when it may be checked further. */
export function vet(ast: Node, text: string): Fault[] {
  const faults: Fault[] = [];
  const say: Say = (node, code, message) =>
    faults.push({ code, message, ...placeIn(text, node.start, node.end) });
  visit(ast, new Set(), say);
  return faults;
}

type Say = (node: Pick<Node, 'start' | 'end'>, code: string, message: string) => void;

function visit(node: Node, elements: ReadonlySet<string>, say: Say): void {
  const element = elementName(node);
  vetNode(node, elements, say);
  if (element === null) {
    for (const part of below(node)) visit(part, elements, say);
    return;
  }
  const [receiver, ...inside] = partsOf(node);
  visit(receiver!, elements, say);
  if (isOwner(element)) say(node, 'name-taken', `'${element}' is taken. Give the element another name.`);
  for (const part of inside) visit(part, new Set([...elements, element]), say);
}

/** Parts to look at: an owner before a dot has been looked at with the dot. */
const below = (node: Node): Node[] =>
  partsOf(node).filter((part, at) => !(at === 0 && isReceiver(node, part)));
const isReceiver = (node: Node, part: Node): boolean =>
  (node.op === '.' || node.op === 'rcall') && part.op === 'id' && isOwner(part.args);

function vetNode(node: Node, elements: ReadonlySet<string>, say: Say): void {
  switch (node.op) {
    case 'value':
      return vetValue(node, say);
    case 'id':
      if (elements.has(node.args)) return;
      if (isOwner(node.args))
        return say(
          node,
          'owner-alone',
          `Name one value of '${node.args}', as in '${node.args}.${entryExample(node.args)}'.`,
        );
      return say(node, 'unknown-name', `There is no '${node.args}' here.${didYouMean(node.args, OWNERS)}`);
    case '.':
      return vetField(node, say);
    case 'call':
      return vetCall(node, say);
    case 'rcall':
      return vetMethod(node, say);
    case '/':
    case '%': {
      const by = literalOf(node.args[1]);
      if (typeof by !== 'number' || by === 0)
        say(node.args[1], 'divisor', 'Divide by a number that is written out and not 0.');
      return;
    }
    default:
      if (!PLAIN.has(node.op) && !isComparison(node.op))
        say(
          node,
          'not-here',
          `This form of expression ('${SHOWN[node.op] ?? node.op}') is not used in rules.`,
        );
  }
}

const SHOWN: Record<string, string> = {
  map: '{...}',
  '[]': '[...] after a value',
};

function vetValue(node: Extract<Node, { op: 'value' }>, say: Say): void {
  const value: unknown = node.args;
  if (typeof value === 'bigint') {
    if (!Number.isSafeInteger(Number(value))) say(node, 'number-too-large', 'This number is too large.');
    return;
  }
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return;
  say(
    node,
    'not-here',
    value === null
      ? 'Nothing is null here: what is not on record is not known, and the rule then says so by itself.'
      : 'Write numbers, texts, true or false; other values are not used in rules.',
  );
}

function vetField(node: Extract<Node, { op: '.' }>, say: Say): void {
  const [left, name] = node.args;
  if (left.op !== 'id' || !isOwner(left.args)) {
    if (left.op === 'id' && !isOwner(left.args)) return; // Told as an unknown name.
    return say(node, 'not-here', `Only ${OWNERS.join(', ')} have values after a dot.`);
  }
  const entry = entryOf(left.args, name);
  if (!entry) return say(node, 'unknown-value', unknownValue(left.args, name));
  if (entry.takes)
    say(
      node,
      'argument-missing',
      `Write '${left.args}.${name}(${exampleOf(entry)})': it takes ${ARGUMENT_WORDS[entry.takes.kind]}.`,
    );
}

function vetCall(node: Extract<Node, { op: 'call' }>, say: Say): void {
  const [name, given] = node.args;
  if (!FUNCTIONS.includes(name))
    return say(
      node,
      'unknown-function',
      `There is no function '${name}' here.${didYouMean(name, FUNCTIONS)}`,
    );
  if (name !== 'date' || given.length !== 1) return;
  const day = literalOf(given[0]!);
  if (typeof day !== 'string' || readDate(day) === null)
    say(given[0]!, 'not-a-date', 'Write the date out, as in date("2026-03-31").');
}

function vetMethod(node: Extract<Node, { op: 'rcall' }>, say: Say): void {
  const [name, receiver, given] = node.args;
  if (receiver.op === 'id' && isOwner(receiver.args)) {
    const entry = entryOf(receiver.args, name);
    if (!entry) return say(node, 'unknown-value', unknownValue(receiver.args, name));
    if (!entry.takes)
      return say(
        node,
        'argument-not-taken',
        `'${receiver.args}.${name}' is a value: leave the brackets out.`,
      );
    if (given.length === 1 && !argumentFits(entry, given[0]!)) {
      const takes = ARGUMENT_WORDS[entry.takes.kind];
      say(given[0]!, 'argument-not-written-out', `'${name}' takes ${takes}, written out.`);
    }
    return;
  }
  if (MACROS.includes(name)) {
    if (receiver.op === 'list' && receiver.args.length === 0)
      return say(receiver, 'empty-list', 'An empty list holds nothing to look at.');
    if (elementName(node) === null)
      say(node, 'element-name', `Name the element first, as in '${name}(one, one == "x")'.`);
    return;
  }
  if (!METHODS.includes(name))
    return say(
      node,
      'unknown-function',
      `There is no method '${name}' here.${didYouMean(name, [...METHODS, ...MACROS])}`,
    );
  if (name !== 'plusDays' && name !== 'plusMonths') return;
  const by = given[0] && literalOf(given[0]);
  if (given.length === 1 && !(Number.isInteger(by) && Math.abs(by as number) <= 10_000))
    say(given[0]!, 'argument-not-written-out', 'Write the number out: a whole number from -10000 to 10000.');
}
