/** The list of survivors is about the rules as they are: what is stale or unexplained in it is told. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const ROOT = resolve(__dirname, '../..');
const LIST = 'test/mutation/survivors.yaml';
let copy: string;

const check = (folder: string): { code: number | null; out: string } => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['test/mutation/check.mjs'], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { code: status, out: stdout + stderr };
};
const checkWith = (list: string) => {
  writeFileSync(join(copy, LIST), list);
  return check(copy);
};

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'mutation-list-'));
  for (const path of ['package.json', 'src/rules/air/turn.ts', 'test/mutation'])
    cpSync(join(ROOT, path), join(copy, path), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

test('the list is about the rules as they are, and explains each', () => {
  const { code, out } = check(ROOT);
  expect(out).toContain('listed survivors, ');
  expect(code).toBe(0);
}, 60_000);

const entry = (change: string, why: string): string =>
  `files:\n  src/rules/air/turn.ts:\n    - change: "${change}"\n      why: ${why}\n`;
const THERE = 'Number: 1852 ⇒ 1853';

test.each([
  [
    'there and explained',
    entry(THERE, 'a knot more or less'),
    0,
    '1 listed survivors, all there and explained',
  ],
  [
    'there and owed',
    entry(THERE, 'no-case-yet'),
    0,
    '1 listed survivors, known; 1 of them still want a case or an argument',
  ],
  [
    'owed, and gone',
    entry('Number: 1851 ⇒ 1852', 'no-case-yet'),
    0,
    '1 listed survivors, known; 1 of them still want a case or an argument',
  ],
  [
    'gone',
    entry('Number: 1851 ⇒ 1852', 'x'),
    1,
    'no such change any more: src/rules/air/turn.ts Number: 1851 => 1852',
  ],
  [
    'not explained',
    entry(THERE, 'to be explained'),
    1,
    'not explained: src/rules/air/turn.ts Number: 1852 => 1853',
  ],
  [
    'a reason nobody uses',
    `reasons: { idle: nobody }\n${entry(THERE, 'x')}`,
    1,
    'no entry has the reason idle',
  ],
])(
  'an entry that is %s',
  (_, list, code, told) => {
    const found = checkWith(list);
    expect(found.out).toContain(told);
    expect(found.code).toBe(code);
  },
  60_000,
);

test('the list is written as the tool writes it', () => {
  expect(readFileSync(join(ROOT, LIST), 'utf8')).toMatch(
    /^# Changes to the rules that no case and no spec notices/,
  );
});
