/** The command on files that are wrong in some way: each is reported with its place, and ends in status 1. */
import { join } from 'node:path';
import { checkValues } from '../../../src/cli/check-values/command.js';

const run = (name: string): { lines: string[]; exitCode: 0 | 1 } => checkValues([join(__dirname, name)]);

describe('npm run check-values', () => {
  test('a right file passes, with the count last', () => {
    const { lines, exitCode } = run('check-values.json');
    expect(lines).toEqual(['155 passed, 0 failed, 0 skipped']);
    expect(exitCode).toBe(0);
  });

  test('a miss names entry, expected and found', () => {
    const { lines, exitCode } = run('bad/miss.json');
    expect(lines).toEqual([
      'FAILED x-01 (inspection.annual): valid: expected true, found false',
      'FAILED x-01 (inspection.annual): valid_through: expected "2027-04-05", found "2027-03-31"',
      '1 passed, 1 failed, 0 skipped',
    ]);
    expect(exitCode).toBe(1);
  });

  test('a rule without a mapping is listed and is no pass', () => {
    const { lines, exitCode } = run('bad/unmapped-rule.json');
    expect(lines).toEqual([
      'SKIPPED no mapping for rule balloon.basket_height: x-01',
      '0 passed, 0 failed, 1 skipped',
    ]);
    expect(exitCode).toBe(1);
  });

  test('facts, values and expectations without a meaning fail with their place', () => {
    const { lines, exitCode } = run('bad/unknown-facts.json');
    expect(lines).toEqual([
      'FAILED x-01 (recency.passengers.day): no meaning for facts.takeoffs_landings[0].blindfolded',
      expect.stringContaining(
        'FAILED x-02 (check.vor_30_days): facts.method: by_ear is none of test_signal,',
      ),
      'FAILED x-03 (inspection.annual): facts.last_done: soon is not a date',
      'FAILED x-04 (inspection.annual): colour: nothing in the rules gives it',
      'FAILED x-04: malformed: entry 5 of the list uses an id that an earlier one has',
      'FAILED x-06 (wind.components): expects nothing',
      '0 passed, 6 failed, 0 skipped',
    ]);
    expect(exitCode).toBe(1);
  });

  test('entries that are none are reported by their place', () => {
    const { lines, exitCode } = run('bad/missing-keys.json');
    expect(lines).toEqual([
      'FAILED x-01: malformed: lacks expect',
      'FAILED entry 2 of the list: malformed: should be an object',
      '0 passed, 2 failed, 0 skipped',
    ]);
    expect(exitCode).toBe(1);
  });

  test.each([
    ['bad/not-json.json', /not JSON: .*(line 3|position)/],
    ['bad/not-a-list.json', /should be a list of entries/],
    ['bad/empty.json', /holds no entries/],
    ['bad/absent.json', /cannot be read/],
  ])('%s is no file of check values', (name, because) => {
    const { lines, exitCode } = run(name);
    expect(lines).toEqual([expect.stringMatching(because), '0 passed, 1 failed, 0 skipped']);
    expect(exitCode).toBe(1);
  });

  test('without a file it says how it is used', () => {
    expect(checkValues([])).toMatchObject({
      exitCode: 1,
      lines: [expect.stringContaining('Usage'), expect.anything()],
    });
  });
});
