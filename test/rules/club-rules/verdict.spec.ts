/** What is told of a rule of the club where a value fails, is missing or gives no yes or no; and the rules made of several versions. */
import { rulesOfClub, type ClubRule } from '../../../src/rules/index.js';
import { checkRule } from '../../../src/rules/club-rules/check.js';
import { CostExceeded } from '../../../src/rules/club-rules/meter.js';
import { NotYetTold } from '../../../src/rules/club-rules/unknowns.js';
import { ask, messageFor, notKnown, templateOf, type Held } from '../../../src/rules/club-rules/verdict.js';
import { UnknownFact } from '../../../src/rules/engine/unknown.js';
import { finding, memberWith, NOTHING, rule } from './scene.js';

type Run = Held['run'];
const run = (of: object = {}): Run => ({ meter: { over: null }, failed: null, unknown: [], ...of }) as never;
const gives = (value: unknown) => ({ evaluate: () => value }) as never;
const fails = (thrown: unknown) =>
  ({
    evaluate: () => {
      throw thrown;
    },
  }) as never;

describe('a yes or no', () => {
  const over = new CostExceeded('a test');
  test('is taken as it is', () => {
    expect([ask(gives(true), run()), ask(gives(false), run())]).toEqual([true, false]);
  });
  test('that is none is an error', () => {
    expect(() => ask(gives(1n), run())).toThrow(new Error('gives bigint instead of true or false'));
  });
  test('beyond the cost is none, whatever came out', () => {
    for (const expression of [gives(true), fails(new Error('other')), fails(new UnknownFact('a', 'b'))])
      expect(() => ask(expression, run({ meter: { over } }))).toThrow(over);
  });
  test('not known is told, unless something failed as well', () => {
    const missing = fails(new UnknownFact('a', 'b'));
    expect(ask(missing, run())).toBe('unknown');
    expect(() => ask(missing, run({ failed: new Error('failed') }))).toThrow(new Error('failed'));
  });
  test.each<[string, unknown, string]>([
    ['by its summary', Object.assign(new Error('long\nand longer'), { summary: 'short' }), 'short'],
    ['by its first line', new Error('first\nsecond'), 'first'],
    ['as it is', 'a word', 'a word'],
    ['as it is, be it a number', 7, '7'],
  ])('that failed is told %s', (_, thrown, says) => {
    expect(() => ask(fails(thrown), run())).toThrow(new Error(says));
  });
  test('the first that failed is told, not what the library makes of it', () => {
    expect(() => ask(fails(new Error('other')), run({ failed: new Error('failed') }))).toThrow('failed');
  });
});

describe('what is not known', () => {
  const late = new NotYetTold('flight.weather', 'it is not told');
  const missing = new UnknownFact('pic.log', 'it is not on record');
  const of = (unknown: UnknownFact[], condition: string | null, mayFail = false) => {
    const {
      fact,
      because,
      condition: waits,
    } = notKnown({ mayFail }, { run: run({ unknown }) } as Held, condition);
    return { fact, because, waits };
  };
  const told = { fact: 'flight.weather', because: 'it is not told' };
  test('waits where it is told late, the rule has a condition and nothing can fail', () => {
    expect(of([late], 'Look.')).toEqual({ ...told, waits: 'Look.' });
    expect(of([late], null)).toEqual({ ...told, waits: undefined });
    expect(of([late], 'Look.', true)).toEqual({ ...told, waits: undefined });
    expect(of([late, missing], 'Look.')).toEqual({
      ...{ fact: 'flight.weather', because: 'it is not told; it is not on record', waits: undefined },
    });
    expect(of([missing], 'Look.').waits).toBeUndefined();
  });
  test('is told once', () => {
    expect(of([late, late], null).because).toBe('it is not told');
  });
  test('has a name even where nothing says what it is', () => {
    expect(of([], null)).toMatchObject({ fact: 'a value', because: '' });
  });
});

test('a message has a slot for each expression, filled in turn', () => {
  const { message } = checkRule({
    ...{ appliesWhen: 'true', requirement: 'true' },
    message: 'One {1 + 1} and {"two"}, then {3}.',
  }).rule!;
  expect(templateOf({ message })).toBe('One {value1} and {value2}, then {value3}.');
  expect(messageFor({ message }, { run: run() } as Held)).toEqual({
    says: 'One 2 and two, then 3.',
    ...{ value1: '2', value2: 'two', value3: '3' },
  });
  const parts = [{ text: 'It is ' }, { expression: fails(new Error('other')) }];
  expect(messageFor({ message: parts }, { run: run() } as Held).says).toBe('It is (cannot be worked out)');
});

test('each fault is in its field', () => {
  const { faults } = checkRule({ appliesWhen: 'flight.a', requirement: 'flight.b', message: '{flight.c}' });
  expect(faults!.map(({ field }) => field)).toEqual(['appliesWhen', 'requirement', 'message']);
});

test('what a rule reads is told in order of name, its cost summed', () => {
  const { reads, cost } = checkRule({
    ...{ appliesWhen: 'pilot.ageYears > 0', message: '{pilot.lastFlightOn == date("2027-01-01") ? 1 : 2}' },
    requirement: 'member.standing == "good" && aircraft.tailwheel',
  }).rule!;
  expect(reads).toEqual([...reads].sort());
  expect(new Set(reads).size).toBe(reads.length);
  expect(reads).toEqual(
    expect.arrayContaining(['aircraft.type', 'member.standing', 'pic.birthDate', 'pic.log']),
  );
  expect(cost.parts).toBeGreaterThan(10);
});

describe('rules made of versions', () => {
  const made = (...versions: Partial<ClubRule>[]) => rulesOfClub(versions.map(rule));

  test.each([[['a', 'b', 'c']], [['c', 'b', 'a']], [['b', 'c', 'a']]])('in order of code: %j', (codes) => {
    expect(made(...codes.map((code) => ({ code: `club.own.${code}` }))).map(({ id }) => id)).toEqual([
      ...['club.own.a', 'club.own.b', 'club.own.c'],
    ]);
  });

  const [old, newer] = [
    {
      ...{ version: 1, from: '2020-01-01', to: '2025-01-01', title: 'Old', document: 'Old' },
      ...{ requirement: 'member.standing == "good"', message: 'Old: {pilot.ageYears}.' },
    },
    {
      ...{
        version: 2,
        from: '2025-01-01',
        to: null,
        title: 'New',
        document: 'New',
        weight: 'advice' as const,
      },
      ...{ requirement: 'aircraft.tailwheel', message: 'New.' },
    },
  ];
  test.each([[[old, newer]], [[newer, old]]])(
    'the head is that of the newest, whichever comes first %#',
    (all) => {
      const [one] = made(...all);
      expect(one).toMatchObject({ title: 'New', weight: 'advice', binds: 'pilot', parameters: [] });
      expect(one!.reads).toEqual(['aircraft.type', 'member.standing', 'pic.birthDate']);
      expect(one!.bodies.map(({ version, from, to }) => [version, from, to])).toEqual([
        [1, '2020-01-01', '2025-01-01'],
        [2, '2025-01-01', null],
      ]);
      expect(one!.branches['not-kept']!.says).toBe('{says}');
    },
  );
  test('a rule of one version has its message for its sentence', () => {
    expect(made(old)[0]!.branches['not-kept']!.says).toBe('Old: {value1}.');
  });
  test('of several, each fills in its own', () => {
    const sheet = memberWith({ birthDate: NOTHING });
    const all = [
      rule({ ...old, to: '2027-03-01', requirement: 'false' }),
      rule({ ...newer, from: '2027-03-01', weight: 'club', requirement: 'false', message: 'Now {1 + 2}.' }),
    ];
    expect(finding(all, sheet)).toMatchObject({ status: 'short', says: 'Now 3.' });
  });
  test('one whose text no longer fits reads nothing, and leaves what the others read', () => {
    const [one] = made({ ...old, requirement: 'flight.noSuchThing' }, newer);
    expect(one!.reads).toEqual(['aircraft.type']);
  });

  test.each([[[1, 2]], [[2, 1]]])('of two from one day the higher version names the rule: %j', (versions) => {
    const [one] = made(...versions.map((version) => ({ version, title: `Version ${version}` })));
    expect(one).toMatchObject({
      ...{ id: 'club.own.test', title: 'Version 2', binds: 'flight', reads: [], parameters: [] },
      bodies: [{ version: 2, from: null, to: null }],
    });
  });
  test.each([[[0, 1]], [[1, 0]]])('and of two that overlap the later: %j', (order) => {
    const all = [
      { version: 3, title: 'Old' },
      { version: 2, title: 'Late', from: '2024-01-01' },
    ];
    const [one] = made(...order.map((at) => all[at]!));
    expect(one).toMatchObject({ title: 'Late', bodies: [{ version: 2 }] });
  });
});
