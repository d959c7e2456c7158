/**
 * Double entry: every number of law and every starting value of a club's policy, written down a second time in numbers.yaml from the
 * paper that each parameter names. A figure changed on one side alone is a slip, or a change of law that somebody must read.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { rulesetFor, startingPolicy, type Parameter } from '../../src/rules/index.js';

const WRITTEN = parse(readFileSync(join(__dirname, 'numbers.yaml'), 'utf8')) as Record<string, string>;

const policy = startingPolicy();
const books = (['US', 'EU', 'CA'] as const).map((jurisdiction) => rulesetFor(jurisdiction, policy));
/** Every parameter that the rules of any pack declare, and the club's. */
const declared = new Map<string, Parameter>();
for (const { rules, book } of books)
  for (const id of [...rules.flatMap((rule) => rule.parameters), ...policy.values.map((value) => value.id)])
    declared.set(id, book.declaration(id)!);

/** 'lb: 2017-05-01 6000; 2024-11-18 12500'; '-' where a value has no first day. */
const told = ({ unit, values }: Parameter): string =>
  `${unit}: ${values.map(({ from, value }) => `${from ?? '-'} ${String(value)}`.trim()).join('; ')}`;

test('every number is as written down, and every number written down is there', () => {
  expect(Object.fromEntries([...declared.values()].map((one) => [one.id, told(one)]))).toEqual(WRITTEN);
});

const KNOWN_HOW = ['seen', 'from memory', 'common practice, no source', 'club paper'];

test('each says how it is known, when it was checked, and is looked at again within a year or, for a custom, two', () => {
  for (const one of declared.values()) {
    expect(KNOWN_HOW).toContain(one.status);
    expect(one.checkedOn).toMatch(/^20\d\d-[01]\d-[0-3]\d$/);
    const custom = one.status === 'common practice, no source' && /^us\.(night|weather)\./.test(one.id);
    expect([one.id, one.recheckAfterMonths]).toEqual([one.id, custom ? 24 : 12]);
    expect(one.title).not.toBe('');
    for (const { reference } of one.values)
      expect(reference).toMatch(one.status === 'club paper' ? /^Club handbook, section \d\.\d$/ : /./);
  }
});
