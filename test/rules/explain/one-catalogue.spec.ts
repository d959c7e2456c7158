/**
 * One catalogue of messages: what a decision is explained with comes from the rules' branches and from src/rules/explain.
 * This reads the sources of everything else that handles decisions and looks for sentences.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';

const SRC = join(__dirname, '../../../src');
/** Where decisions are gathered, stored, served, booked and shown. */
const FOLDERS = ['decisions', 'bookings', 'web/page/answer', 'web/page/calendar'];
/**
 * Told in words of their own, for they are about a record, a rule or what happens to a booking, and not about why a flight is
 * answered as it is: replays, the chain and dry runs; refusals; series, dispatch, return and who is told of them; the forms of
 * one's flights.
 */
const APART = new RegExp(
  [
    /^decisions\/(replay|audit|dry-run)\//,
    /\.(constraints|problems)\.ts$/,
    /^bookings\/(series|overdue|return|dispatch|due-back)\//,
    /^bookings\/(changes\/tell-offered|displacements\/tell-displaced|standby\/(pass-on|standby\.worker))\.ts$/,
    /^web\/page\/calendar\/(change-form|hand-over-form|hold-form|history|flight-item|see-to-page)\.tsx$/,
  ]
    .map(({ source }) => source)
    .join('|'),
);
/** What is thrown refuses a request, decorators describe the API; these make problem documents. */
const NOT_EXPLAINING = /^(ProblemException|defineProblems|registerConstraints?|refuse|forbidden)$/;

/** A sentence: a capital or something filled in, then three words or more to a full stop. */
const SENTENCE = /(?:^|[.?!] )[A-Z“…][^.]*\s\S+\s\S+\.(?: |$)/;

function textOf(node: ts.Node): string | null {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isTemplateExpression(node))
    return node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join('');
  if (ts.isJsxText(node)) return node.text.replace(/\s+/g, ' ').trim();
  return null;
}

function isExplaining(node: ts.Node): boolean {
  for (let at: ts.Node | undefined = node; at; at = at.parent) {
    if (ts.isThrowStatement(at) || ts.isDecorator(at)) return false;
    if (ts.isCallExpression(at) || ts.isNewExpression(at)) {
      const callee = at.expression;
      const name = ts.isPropertyAccessExpression(callee) ? callee.name.text : callee.getText();
      if (NOT_EXPLAINING.test(name)) return false;
    }
  }
  return true;
}

/** Sentences in a source, each with its line. */
export function sentencesIn(file: string, source: string): string[] {
  const tree = ts.createSourceFile(
    file,
    source,
    ts.ScriptTarget.ES2022,
    true,
    file.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const text = textOf(node);
    if (text !== null && SENTENCE.test(text) && isExplaining(node)) {
      const { line } = tree.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${file}:${line + 1} ${text}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

const files = FOLDERS.flatMap((folder) =>
  readdirSync(join(SRC, folder), { recursive: true, encoding: 'utf8' }).map((name) =>
    join(SRC, folder, name),
  ),
)
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => relative(SRC, file))
  .filter((file) => !APART.test(file))
  .sort();

test('no sentence about a decision is made outside the rules and the catalogue', () => {
  expect(files.length).toBeGreaterThan(40);
  expect(files.flatMap((file) => sentencesIn(file, readFileSync(join(SRC, file), 'utf8')))).toEqual([]);
});

test.each([
  ['a literal', `const says = 'No landings are on record for this pilot.';`],
  ['a template', 'const says = `${name} does not meet this rule. Ask them, or an officer.`;'],
  ['words in a page', 'const a = <p>Changes for a departure from tomorrow on.</p>;'],
])('%s would be found', (_name, source) => {
  expect(sentencesIn('x.tsx', source)).toHaveLength(1);
});

test.each([
  ['a problem', `throw new ProblemException('x', { detail: 'There is no decision that you may see.' });`],
  ['a label', `const a = <button>Try again</button>;`],
])('%s is none', (_name, source) => {
  expect(sentencesIn('x.tsx', source)).toEqual([]);
});
