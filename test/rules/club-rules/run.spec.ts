/** How values are read while a rule of the club is judged: each once, within bounds, and as CEL takes them. */
import { UnknownFact } from '../../../src/rules/engine/unknown.js';
import { DateValue } from '../../../src/rules/club-rules/dates.js';
import { CostExceeded, Meter, MOST_WHILE_JUDGING } from '../../../src/rules/club-rules/meter.js';
import { Run } from '../../../src/rules/club-rules/run.js';
import type { Entry, Reading } from '../../../src/rules/club-rules/schema/index.js';
import { tell } from '../../../src/rules/club-rules/unknowns.js';
import { Moment } from '../../../src/rules/engine/moment.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';

const { flight } = baseSheet();
const run = (): Run => {
  const moment = new Moment({ departs: 0, durationSeconds: 3600, knownAt: 0, zone: 'America/Denver' });
  return new Run({ flight, crew: {} } as never, moment);
};
const entry = (get: (reading: Reading, argument: never) => unknown, type: Entry['type'] = 'int'): Entry => ({
  ...{ name: 'made', type, says: 'Made up.' },
  get: get as Entry['get'],
});
const value = (raw: unknown, type: Entry['type']) =>
  run().read(
    'flight',
    entry(() => raw, type),
  );

describe('the meter', () => {
  test('bears two hundred thousand records and not one more', () => {
    const meter = new Meter();
    meter.spend(MOST_WHILE_JUDGING.work);
    expect(meter.over).toBeNull();
    expect(() => meter.spend(1)).toThrow(CostExceeded);
    expect(meter.over).toMatchObject({
      name: 'CostExceeded',
      message: 'the rule costs too much to judge: more than 200000 records looked at',
    });
  });
  test('bears a list of a hundred and not one more', () => {
    const meter = new Meter();
    meter.elements(MOST_WHILE_JUDGING.elements);
    expect(() => meter.elements(101)).toThrow(CostExceeded);
    expect(meter.over!.message).toContain('100');
  });
});

describe('a value', () => {
  test('is worked out once', () => {
    let times = 0;
    const once = entry(() => (times += 1));
    const on = run();
    expect([on.read('flight', once), on.read('flight', once), times]).toEqual([1n, 1n, 1]);
  });
  test('is another with another argument, of another owner', () => {
    const on = run();
    const asked: unknown[] = [];
    const of = entry((_reading, argument) => asked.push(argument));
    expect([1, 2, undefined, 1].map((argument) => on.read('flight', of, argument))).toEqual([1n, 2n, 3n, 1n]);
    expect(on.read('aircraft', of, 1)).toBe(4n);
    expect(asked).toEqual([1, 2, undefined, 1]);
  });
  test('costs one', () => {
    const on = run();
    on.meter.spend(MOST_WHILE_JUDGING.work - 1);
    expect(
      on.read(
        'flight',
        entry(() => 1),
      ),
    ).toBe(1n);
    expect(() =>
      on.read(
        'aircraft',
        entry(() => 1),
      ),
    ).toThrow(CostExceeded);
    // What costs too much is no value that went wrong.
    expect(on.failed).toBeNull();
    expect(on.unknown).toEqual([]);
  });

  test.each<[unknown, Entry['type'], unknown]>([
    [3, 'int', 3n],
    [2.5, 'double', 2.5],
    ['2027-03-01', 'Date', '2027-03-01'],
    [null, 'Date', 'never'],
    [DateValue.on('2027-03-02'), 'Date', '2027-03-02'],
    [true, 'bool', true],
    ['a'.repeat(101), 'string', 'a'.repeat(101)],
    [['a', 'b'], 'list<string>', ['a', 'b']],
  ])('%p as %s', (raw, type, is) => {
    const found = value(raw, type);
    expect(found instanceof DateValue ? found.toString() : found).toEqual(is);
  });
  test.each<[unknown, Entry['type'], string]>([
    [1.5, 'int', '1.5 is no whole number'],
    [2 ** 53, 'int', '9007199254740992 is no whole number'],
    [Number.NaN, 'double', 'NaN is no number'],
    [Number.POSITIVE_INFINITY, 'double', 'Infinity is no number'],
  ])('%p is none as %s', (raw, type, says) => {
    expect(() => value(raw, type)).toThrow(new Error(says));
  });
  test('a list is handed out as a copy', () => {
    const list = ['a'];
    expect(value(list, 'list<string>')).not.toBe(list);
  });
  test('a list of a hundred is read, a longer one is not', () => {
    const of = (count: number) => new Array<string>(count).fill('a');
    expect(value(of(100), 'list<string>')).toHaveLength(100);
    expect(() => value(of(101), 'list<string>')).toThrow(CostExceeded);
  });

  test('that fails is kept as failed, the first for good', () => {
    const on = run();
    const fails = (thrown: unknown): Entry =>
      entry(() => {
        throw thrown;
      });
    expect(() => on.read('flight', fails(new Error('first')))).toThrow('first');
    expect(() => on.read('aircraft', fails('a word'))).toThrow();
    expect(on.failed).toEqual(new Error('first'));
    const other = run();
    expect(() => other.read('flight', fails('a word'))).toThrow();
    expect(other.failed).toEqual(new Error('a word'));
  });
  test('that is not known is kept as such, in the order asked', () => {
    const on = run();
    const missing = (fact: string): Entry => entry(() => tell(undefined, fact, 'not told'));
    expect(() => on.read('flight', missing('one'))).toThrow(UnknownFact);
    expect(() => on.read('wind', missing('two'))).toThrow(UnknownFact);
    expect(on.unknown.map(({ fact }) => fact)).toEqual(['one', 'two']);
    expect(on.failed).toBeNull();
  });
});

test.each([[null], [undefined]])('%p is not told', (untold) => {
  expect(() => tell(untold, 'flight.weather', 'it is not told')).toThrow('it is not told');
  expect(tell(0, 'flight.weather', 'it is not told')).toBe(0);
});

describe('evidence', () => {
  const counting = (...records: [id: string, on: string | null, what?: string][]) => {
    const on = run();
    const all = records.map(([id, day, what = 'a flight']) => ({ id, on: day, what }));
    on.read(
      'flight',
      entry((reading) => {
        for (const one of all) reading.counted([one as never]);
        return 1;
      }),
    );
    return on.counted();
  };
  test.each([[['a', 'b', 'c', 'd']], [['d', 'c', 'b', 'a']], [['c', 'a', 'd', 'b']]])(
    'the newest first, of one day the last id first, without a day last: %j',
    (ids) => {
      const days: Record<string, string | null> = {
        a: '2027-01-01',
        b: '2027-02-01',
        c: '2027-02-01',
        d: null,
      };
      const found = counting(...ids.map((id): [string, string | null] => [id, days[id]!]));
      expect(found.map(({ id }) => id)).toEqual(['c', 'b', 'a', 'd']);
    },
  );
  test('a record counts once, as it was told first', () => {
    expect(counting(['a', '2027-01-01', 'first'], ['a', '2027-01-01', 'again'])).toEqual([
      { id: 'a', on: '2027-01-01', what: 'first' },
    ]);
  });
  test('sixty at most, the newest', () => {
    const id = (at: number): string => String(at).padStart(3, '0');
    const found = counting(
      ...Array.from({ length: 61 }, (_none, at): [string, string] => [id(at), '2027-01-01']),
    );
    expect(found).toHaveLength(60);
    expect([found[0]!.id, found[59]!.id]).toEqual(['060', '001']);
  });
});
