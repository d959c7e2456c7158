/** `npm run rule:new` in a copy of the project: what it makes compiles, fails its test run and says why. */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const ROOT = resolve(__dirname, '../../..');
const COPIED = [
  'package.json',
  'tsconfig.json',
  'jest.config.cjs',
  'src/rules',
  'src/cli/rule-new',
  'test/support/run.mjs',
  'test/support/typescript-modules.mjs',
  'test/support/closing-line.cjs',
  'test/workshop',
  'test/rules/cases.spec.ts',
];

let copy: string;

function run(...command: string[]): { code: number | null; out: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: copy, encoding: 'utf8' });
  return { code: status, out: stdout + stderr };
}
const ruleNew = (...args: string[]) => run('test/support/run.mjs', 'src/cli/rule-new/main.ts', ...args);
const read = (file: string): string => readFileSync(join(copy, file), 'utf8');

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'rule-new-'));
  for (const path of COPIED) cpSync(join(ROOT, path), join(copy, path), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

test('makes a rule with its table and lists it; asks nothing', () => {
  const { code, out } = ruleNew('us', 'pilot/recency/tow-currency');
  expect(out).toContain('rule recency.tow_currency, exported as towCurrency');
  expect(out).toContain('listed in src/rules/packs/us/pilot/index.ts');
  expect(code).toBe(0);
  expect(read('src/rules/packs/us/pilot/index.ts')).toMatch(
    /from '.\/recency\/tow-currency.js';[^]*\n {2}towCurrency,\n\);/,
  );
  expect(read('src/rules/packs/us/pilot/recency/tow-currency.cases.yaml').match(/todo:/g)).toHaveLength(3);
});

test('a pack may have one list for all of its folders', () => {
  expect(ruleNew('eu', 'recency/tow-currency').out).toContain('rule recency.easa.tow_currency');
  expect(read('src/rules/packs/eu/index.ts')).toMatch(/ruleList\([^)]*\btowCurrency,?\s*\)/);
});

test.each([
  [['us', 'pilot/recency/tow-currency'], 'is there already'],
  [['us', 'pilot/recency/passenger-recency-day'], 'passenger-recency-day.ts is there already'],
  [['us', 'aircraft/inspection/annual'], 'already has the id inspection.annual'],
  [['us', 'pilot/other/flight-review'], 'already has a flightReview'],
  [['us', 'other/thing'], 'no index.ts above'],
  [['us', 'Recency/Tow'], 'not TOPIC/NAME'],
  [['us', 'tow'], 'not TOPIC/NAME'],
  [['mars', 'pilot/tow'], 'there is no pack mars'],
  [[], 'npm run rule:new -- PACK TOPIC/NAME'],
])('refuses %j', (args, because) => {
  const { code, out } = ruleNew(...args);
  expect(out).toContain(because);
  expect(code).toBe(1);
});

test('leaves nothing behind when it refuses', () => {
  expect(existsSync(join(copy, 'src/rules/packs/us/other'))).toBe(false);
  expect(existsSync(join(copy, 'src/rules/packs/us/pilot/other'))).toBe(false);
});

test('what it made compiles', () => {
  const check = `
    const ts = require('typescript');
    const options = { ...ts.parseJsonConfigFileContent(ts.readConfigFile('tsconfig.json', ts.sys.readFile).config, ts.sys, '.').options, noEmit: true, types: ['node'] };
    const files = ['src/rules/packs/us/pilot/recency/tow-currency.ts', 'src/rules/packs/us/pilot/index.ts', 'src/rules/packs/eu/index.ts'];
    const wrong = ts.getPreEmitDiagnostics(ts.createProgram(files, options)).map((one) => ts.flattenDiagnosticMessageText(one.messageText, ' '));
    console.log(wrong.length, wrong.join('; '));
  `;
  expect(run('-e', check).out.trim()).toBe('0');
}, 60_000);

test('the test run fails for each case and says what to fill in', () => {
  const jest = join(ROOT, 'node_modules/jest/bin/jest.js');
  const config = JSON.stringify({
    ...(JSON.parse(run('-p', 'JSON.stringify(require("./jest.config.cjs"))').out) as object),
    rootDir: copy,
    globalSetup: undefined,
    globalTeardown: undefined,
  });
  const { code, out } = run(jest, '--config', config, '-i', 'test/rules/cases', '-t', 'recency.tow_currency');
  expect(code).toBe(1);
  expect(out).toContain('to be filled in: facts for which the rule does not bind');
  expect(out).toContain('to be filled in: the least that is enough');
  expect(out).toContain('recency.tow_currency has a case table that reaches every branch');
  // The three branches, the branches not reached; the fact that is not on record is told apart already.
  expect(out).toMatch(/\n1 passed, 4 failed/);
}, 60_000);
