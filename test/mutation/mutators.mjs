/**
 * Two mutators of our own beside Stryker's. Numbers are what the law is made of, and Stryker leaves them alone: each is tried one
 * more and one less. Strings are mutated when they are a word of the code (a fact's name, a kind, a unit); prose for people is
 * not, for its loss is seen by reading and not by a test.
 *
 * Stryker takes no mutators from outside, so they are put into the instrumenter's own list; the version is pinned for that.
 */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);
const inside = new URL(
  './mutators/mutate.js',
  pathToFileURL(require.resolve('@stryker-mutator/instrumenter')),
);
const { allMutators } = await import(inside.href);

const isKey = (path) => path.parent.type.endsWith('Property') && path.key === 'key';
const isType = (path) =>
  path.parent.type.startsWith('TS') &&
  path.parent.type !== 'TSAsExpression' &&
  path.parent.type !== 'TSSatisfiesExpression';

const numbers = {
  name: 'Number',
  *mutate(path) {
    if (!path.isNumericLiteral() || isKey(path) || isType(path) || isVersion(path)) return;
    const { value } = path.node;
    // Of what a comparator gives, only the sign counts.
    if (!(value === 1 && inComparator(path))) yield number(path, value + 1);
    if (value > 0) yield number(path, value - 1);
  },
};

const number = (path, value) => ({
  ...path.node,
  value,
  extra: undefined,
  start: undefined,
  end: undefined,
  loc: undefined,
});

/** The version of a rule's body is a label; nothing is worked out from it. */
const isVersion = ({ parent }) => parent.type === 'ObjectProperty' && parent.key.name === 'version';

const inComparator = (path) => {
  const made = path.findParent((parent) => parent.isArrowFunctionExpression());
  const call = made?.parent;
  return call?.type === 'CallExpression' && call.callee.property?.name === 'sort';
};

/** Property names whose string is for people. */
const PROSE = /^(says|title|reading|reference|text|what|because|means|source|whenUnknown|unit|label)$/;
/** A word of the code: no blank, and not the end of a sentence. */
const WORD = /^[A-Za-z0-9][A-Za-z0-9_.:/-]*$/;

const words = {
  name: 'Word',
  *mutate(path) {
    if (!path.isStringLiteral() || isKey(path) || isType(path)) return;
    const { parent, node } = path;
    if (/^(Import|Export)/.test(parent.type) || parent.type === 'ExpressionStatement') return;
    if (parent.type === 'ObjectProperty' && PROSE.test(parent.key.name ?? parent.key.value)) return;
    if (WORD.test(node.value)) yield { type: 'StringLiteral', value: '' };
  },
};

for (const mutator of [numbers, words])
  if (!allMutators.some(({ name }) => name === mutator.name)) allMutators.push(mutator);

/** Stryker's own mutator of strings, which does not tell prose from words. */
export const EXCLUDED = ['StringLiteral'];
