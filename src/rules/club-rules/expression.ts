/** Reads one expression: syntax, what rules may say, types, cost; and evaluates it. No text is ever run as code. */
import type { FactKey } from '../facts/keys.js';
import { costOf, type Cost } from './cost.js';
import { contextOf, ENVIRONMENT, typeName } from './environment.js';
import { placeIn, type Fault } from './fault.js';
import { MOST } from './meter.js';
import type { Run } from './run.js';
import { entryOf, isOwner, readsOf, type Entry, type Owner } from './schema/index.js';
import { literalOf, walk, type Node } from './syntax.js';
import { vet } from './vet.js';

/** An entry that an expression reads, with the argument it is read with. */
export interface Use {
  owner: Owner;
  entry: Entry;
  argument: string | number | null;
}

/** An expression that may be evaluated. */
export interface Expression {
  text: string;
  ast: Node;
  /** Type of its value, as CEL names it. */
  type: string;
  cost: Cost;
  uses: readonly Use[];
  /** Facts behind what it reads, in order of name. */
  reads: readonly FactKey[];
  /** Some arithmetic in it can fail although every value is there. */
  mayFail: boolean;
  /** @throws UnknownFact, CostExceeded, or an error of the evaluation */
  evaluate(run: Run): unknown;
}

export type Read = { expression: Expression; faults: null } | { expression: null; faults: Fault[] };

const known = new Map<string, Read>();
const MOST_KNOWN = 2000;

/** Reads a text that gives one of some types ('bool', 'string', ...). Texts read before are remembered. */
export function readExpression(text: string, types: readonly string[]): Read {
  const key = `${types.join()} ${text}`;
  const before = known.get(key);
  if (before) return before;
  if (known.size >= MOST_KNOWN) known.clear();
  const read = readAnew(text, types);
  known.set(key, read);
  return read;
}

function readAnew(text: string, types: readonly string[]): Read {
  const refuse = (code: string, message: string, start = 0, end = text.length): Read => ({
    expression: null,
    faults: [{ code, message, ...placeIn(text, start, end) }],
  });
  if (text.length > MOST.characters)
    return refuse('too-long', `An expression has at most ${MOST.characters} characters.`, MOST.characters);
  if (text.trim() === '') return refuse('empty', 'Write an expression.');
  const parsed = parse(text);
  if ('faults' in parsed) return { expression: null, faults: parsed.faults };
  const faults = vet(parsed.program.ast, text);
  if (faults.length > 0) return { expression: null, faults };
  const { valid, type, error } = parsed.program.check();
  if (!valid) return { expression: null, faults: [faultOf(error as CelFault, text)] };
  const hidden = hiddenType(parsed.program.ast);
  if (hidden)
    return refuse(
      'type-hidden',
      'The type of this part cannot be told. Write it otherwise.',
      hidden.start,
      hidden.end,
    );
  if (!types.includes(type!)) return refuse('wrong-type', wrongType(types, type!));
  const cost = costOf(parsed.program.ast);
  if (cost.steps > MOST.steps) {
    return refuse(
      'too-costly',
      `Judging this could take ${cost.steps} steps; ${MOST.steps} are allowed. Put fewer lists inside lists.`,
    );
  }
  const uses = usesOf(parsed.program.ast);
  const reads = [...new Set(uses.flatMap(({ owner, entry }) => readsOf(owner, entry)))].sort();
  const { program } = parsed;
  return {
    faults: null,
    expression: {
      ...{ text, type: type!, cost, uses, reads },
      ast: program.ast,
      mayFail: mayFail(program.ast),
      evaluate: (run) => program(contextOf(run)),
    },
  };
}

type Program = ReturnType<typeof ENVIRONMENT.parse>;

function parse(text: string): { program: Program } | { faults: Fault[] } {
  try {
    return { program: ENVIRONMENT.parse(text) };
  } catch (error) {
    return { faults: [faultOf(error as CelFault, text)] };
  }
}

interface CelFault extends Error {
  code?: string;
  summary?: string;
  range?: { start: number; end: number };
}

/** What the library says, with a word on what to do where that is known. */
function faultOf(error: CelFault, text: string): Fault {
  const said = error.summary ?? error.message.split('\n')[0]!;
  const { start = 0, end = text.length } = error.range ?? {};
  const code = (error.code ?? 'syntax').replaceAll('_', '-');
  return { code, message: `${inWords(said)}${hint(said)}`, ...placeIn(text, start, end) };
}

const LIMITS: Record<string, string> = {
  maxAstNodes: `An expression has at most ${MOST.parts} parts: split the rule in two.`,
  maxDepth: `An expression nests at most ${MOST.depth} deep.`,
  maxListElements: `A list that is written out has at most ${MOST.listed} elements.`,
  maxMapEntries: 'Maps are not used in rules.',
  maxCallArguments: 'Too many arguments.',
};

function inWords(said: string): string {
  const limit = /^Exceeded (\w+)/.exec(said)?.[1];
  if (limit) return LIMITS[limit] ?? `${said}.`;
  const sentence = said.charAt(0).toUpperCase() + said.slice(1);
  return /[.!?]$/.test(sentence) ? sentence : `${sentence}.`;
}

function hint(said: string): string {
  if (/overload: (double (==|!=|[-+*/%]|in) |int ([-+*/%]|==|!=) double)/.test(said))
    return ' Whole numbers and numbers with a fraction do not mix here: write 2.0 instead of 2, or double(...) around a whole number.';
  if (/\bDays\b/.test(said))
    return ' Days since a date are compared with whole numbers; int(...) makes a number to reckon with.';
  if (/Date/.test(said)) return ' Dates are written date("2026-03-31") and compared with each other.';
  if (/Unexpected token: EOF|Expected \w+, got EOF/.test(said)) return ' The expression ends too early.';
  if (/Unexpected character: =/.test(said)) return ' Write == to compare.';
  return '';
}

const wrongType = (types: readonly string[], type: string): string =>
  types.length === 1 && types[0] === 'bool'
    ? `This gives ${typeWords(type)}; it must be true or false, as in 'flight.passengers == 0'.`
    : `This gives ${typeWords(type)}; a text or a number is wanted. Dates become a text with string(...).`;

const TYPE_WORDS: Record<string, string> = {
  ...{
    bool: 'true or false',
    int: 'a whole number',
    double: 'a number',
    string: 'a text',
    Date: 'a date',
    Days: 'a number of days',
  },
  list: 'a list',
};
const typeWords = (type: string): string =>
  TYPE_WORDS[type] ?? (type.startsWith('list') ? 'a list' : `a value of type ${type}`);

/** The first part whose type the check could not tell. */
function hiddenType(ast: Node): Node | null {
  let hidden: Node | null = null;
  walk(ast, (node) => {
    const checked = (node as { checkedType?: { hasDynType?: boolean } }).checkedType;
    if (checked?.hasDynType) hidden ??= node;
  });
  return hidden;
}

/** Whole numbers may run over when multiplied, and texts and large numbers may be no whole number. Sums cannot run over. */
function mayFail(ast: Node): boolean {
  let found = false;
  walk(ast, (node) => {
    const type = (of: Node): string | undefined =>
      (of as { checkedType?: { name: string } }).checkedType?.name;
    if (node.op === '*') found ||= type(node) === 'int';
    if (node.op === 'call')
      found ||=
        ['int', 'double'].includes(node.args[0]) && !['int', 'Days'].includes(type(node.args[1][0]!) ?? '');
  });
  return found;
}

function usesOf(ast: Node): Use[] {
  const uses = new Map<string, Use>();
  const note = (owner: string, name: string, argument: Use['argument']): void => {
    if (!isOwner(owner)) return;
    const entry = entryOf(owner, name);
    if (entry) uses.set(`${owner}.${name}(${argument ?? ''})`, { owner, entry, argument });
  };
  walk(ast, (node) => {
    if (node.op === '.' && node.args[0].op === 'id') note(node.args[0].args, node.args[1], null);
    if (node.op !== 'rcall' || node.args[1].op !== 'id') return;
    const argument = node.args[2][0] && literalOf(node.args[2][0]);
    note(node.args[1].args, node.args[0], typeof argument === 'boolean' ? null : (argument ?? null));
  });
  return [...uses.values()];
}

export { typeName };
