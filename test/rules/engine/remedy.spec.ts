/** The sheet as it would be after an act, and sentences with their slots filled. */
import { decideCrew } from '../../../src/rules/engine/crew.js';
import { applyRemedy, type Effect } from '../../../src/rules/engine/remedy.js';
import { fill, slotWithout } from '../../../src/rules/engine/sentence.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { LOG, SQUAWK, STANDING } from '../../../src/rules/workshop/records.js';

const sheet = baseSheet();
const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
const after = (...effects: Effect[]) =>
  applyRemedy(sheet, crew, { act: 'do', title: 'Do it.', by: 'member', effects });
const before = structuredClone(sheet);

test('nothing done changes nothing', () => {
  expect(after()).toBe(sheet);
});

test('a change of the request touches what it names', () => {
  const changed = after({ op: 'flight', fields: { personsOnBoard: 2, purpose: 'passengers' } });
  expect(changed).toEqual({
    ...sheet,
    flight: { ...sheet.flight, personsOnBoard: 2, purpose: 'passengers' },
  });
});

test('a record is added at the end, planned as of when the facts were gathered', () => {
  const landing = { ...LOG, id: 'planned' };
  const { log } = after({ op: 'append', fact: 'pic.log', value: landing }).people['member-1']!;
  expect(log).toMatchObject({ known: true, lastKnownAt: sheet.knownAt, status: 'planned' });
  expect(log.known && log.value.map(({ id }) => id)).toEqual(['log-1', 'planned']);
});

test('added to what was not known, it is all that is known', () => {
  const unknown = structuredClone(sheet);
  unknown.people['member-1']!.log = { known: false, because: 'nothing is on record' } as never;
  const { log } = applyRemedy(unknown, crew, {
    ...{ act: 'do', title: 'Do it.', by: 'member' },
    effects: [{ op: 'append', fact: 'pic.log', value: { ...LOG, id: 'planned' } }],
  }).people['member-1']!;
  expect(log.known && log.value.map(({ id }) => id)).toEqual(['planned']);
});

test('of the record named some fields are replaced, the others stay', () => {
  const two = structuredClone(sheet);
  const squawks = [SQUAWK, { ...SQUAWK, id: 'squawk-2' }];
  (two.aircraft.squawks as { value: unknown }).value = squawks;
  const done = applyRemedy(two, crew, {
    ...{ act: 'do', title: 'Do it.', by: 'mechanic' },
    effects: [{ op: 'amend', fact: 'aircraft.squawks', id: 'squawk-2', fields: { state: 'fixed' } }],
  });
  expect((done.aircraft.squawks as { value: unknown }).value).toEqual([
    SQUAWK,
    { ...SQUAWK, id: 'squawk-2', state: 'fixed' },
  ]);
});

test('a single record is replaced whole', () => {
  const value = { ...STANDING, state: 'suspended' };
  const { standing } = after({ op: 'set', fact: 'member.standing', value }).people['member-1']!;
  expect(standing).toMatchObject({ known: true, value, status: 'planned' });
});

test('several, one after the other', () => {
  const changed = after(
    { op: 'append', fact: 'pic.log', value: { ...LOG, id: 'x', landings: 1 } },
    { op: 'amend', fact: 'pic.log', id: 'x', fields: { landings: 3 } },
    { op: 'flight', fields: { personsOnBoard: 4 } },
  );
  const { log } = changed.people['member-1']!;
  expect(log.known && log.value.at(-1)).toMatchObject({ id: 'x', landings: 3 });
  expect(changed.flight.personsOnBoard).toBe(4);
  // What was there is left as it was.
  expect(sheet).toEqual(before);
});

describe('sentences', () => {
  test.each<[string, Record<string, string | number>, string]>([
    ['Nothing to fill.', {}, 'Nothing to fill.'],
    ['{first} at the start', { first: 'Here' }, 'Here at the start'],
    ['at the end {last2}', { last2: 7 }, 'at the end 7'],
    ['{a}{b} and {a} again', { a: 'x', b: 0 }, 'x0 and x again'],
    ['{not a slot} and { } stay', {}, '{not a slot} and { } stay'],
    ['an empty “{a}”', { a: '' }, 'an empty “”'],
  ])('%s', (template, values, filled) => {
    for (let times = 0; times < 2; times += 1) expect(fill(template, values)).toBe(filled);
    expect(slotWithout(template, values)).toBeNull();
  });
  test('the first slot without a value is told', () => {
    expect(slotWithout('{a} {b} {c}', { a: 1 })).toBe('b');
    expect(slotWithout('{a} {b} {c}', { a: 1, b: 2 })).toBe('c');
    expect(slotWithout('{a}', {})).toBe('a');
    expect(slotWithout('no slot', {})).toBeNull();
  });
});
