/** The parts of the search: prices, times for practice, what is chosen from what was found. */
import fc from 'fast-check';
import { ParameterBook, toInstant, toSeconds, type Policy } from '../../../src/rules/index.js';
import { CLUB_COSTS } from '../../../src/rules/parameters/club/costs.js';
import { isNight } from '../../../src/rules/sky/nights.js';
import { choose, type Candidate } from '../../../src/rules/ways/choose.js';
import { costOf } from '../../../src/rules/ways/cost.js';
import { Prices } from '../../../src/rules/ways/prices.js';
import { Queue } from '../../../src/rules/ways/queue.js';
import { firstSlot } from '../../../src/rules/ways/slots.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';

describe('prices', () => {
  const EXAM = 'club.cost.medical-exam';
  const on = (day: string, values: Policy['values']): Prices =>
    new Prices(new ParameterBook(CLUB_COSTS, { values }), day);
  const value = (from: string, amount: number | string | null) => ({
    id: EXAM,
    from,
    value: amount,
    reference: 'spec',
  });

  test('are those of the day; a club that set none, ended one or wrote a word has what a new club starts with', () => {
    expect(on('2027-03-01', []).number(EXAM)).toBe(140);
    const dated = [value('2027-01-01', 100), value('2027-03-01', 120)];
    expect(on('2026-12-31', dated).number(EXAM)).toBe(140);
    expect(on('2027-02-28', dated).number(EXAM)).toBe(100);
    expect(on('2027-03-01', dated).number(EXAM)).toBe(120);
    expect(on('2027-03-01', [value('2027-01-01', null)]).number(EXAM)).toBe(140);
    expect(on('2027-03-01', [value('2027-01-01', 'much')]).number(EXAM)).toBe(140);
    expect(on('2027-03-01', [value('2027-01-01', 0)]).number(EXAM)).toBe(0);
    expect(() => on('2027-03-01', []).number('club.cost.no-such')).toThrow('no price club.cost.no-such');
    expect(on('2027-03-01', []).text('club.cost.currency')).toBe('dollars');
    expect(() => on('2027-03-01', []).number('club.cost.currency')).toThrow(
      'club.cost.currency is not a number',
    );
  });

  test('value hours, days and points in money', () => {
    const bill = { hours: 2, money: 100, clubMoney: 30, points: 10 };
    // 100 + 30 + 2 x 25 + 4 x 5 + 10 x 1
    expect(costOf(bill, 4, on('2027-03-01', []))).toEqual({ ...bill, days: 4, total: 210 });
  });
});

describe('times for practice', () => {
  const HOUR = 3600;
  const at = (text: string): number => toSeconds(text);
  const slot = (of: Partial<Parameters<typeof firstSlot>[0]>): string | null => {
    const found = firstSlot({
      from: at('2027-03-03T18:01:00Z'),
      seconds: HOUR,
      light: 'day',
      field: HOME_FIELD,
      taken: [],
      ...of,
    });
    return found === null ? null : toInstant(found);
  };

  test('by day on the next five minutes; after dusk not before dawn', () => {
    expect(slot({})).toBe('2027-03-03T18:05:00Z');
    const late = slot({ from: at('2027-03-04T01:00:00Z') })!;
    // Civil dawn in the middle of the continent at the beginning of March: about 06:00 there, 13:00 UTC.
    expect(late.slice(0, 13)).toBe('2027-03-04T13');
    expect(isNight('civil', HOME_FIELD, at(late))).toBe(false);
  });

  test('by night wholly within the hours in which landings count', () => {
    const night = at(slot({ light: 'night' })!);
    for (const second of [night, night + HOUR]) expect(isNight('passenger', HOME_FIELD, second)).toBe(true);
    // A night is not thirteen hours long there and then.
    expect(slot({ light: 'night', seconds: 13 * HOUR })).toBeNull();
  });

  test('never while aircraft or person are taken, back to back being free', () => {
    const taken = [
      { from: at('2027-03-03T17:00:00Z'), to: at('2027-03-03T19:00:00Z') },
      { from: at('2027-03-03T19:30:00Z'), to: at('2027-03-03T21:02:00Z') },
    ];
    expect(slot({ taken })).toBe('2027-03-03T21:05:00Z');
    expect(slot({ taken, seconds: HOUR / 2 })).toBe('2027-03-03T19:00:00Z');
    expect(slot({ taken: [{ from: 0, to: at('2028-01-01T00:00:00Z') }] })).toBeNull();
  });

  test('wherever the sun does not set there is no night to practise in, and where it does not rise no day', () => {
    const polar = { ...HOME_FIELD, latitudeDeg: 78, longitudeDeg: 15 };
    const june = at('2027-06-20T12:00:00Z');
    expect(slot({ field: polar, from: june, light: 'night' })).toBeNull();
    expect(slot({ field: polar, from: june })).toBe('2027-06-20T12:00:00Z');
    expect(slot({ field: polar, from: at('2027-12-20T12:00:00Z') })).toBeNull();
  });
});

describe('choosing', () => {
  const way = (total: number, acts: string, kinds: string, plain = true): Candidate => ({
    acts: new Set(acts.split(' ')),
    kinds,
    plain,
    total,
  });
  const totals = (of: Candidate[]): number[] => choose(of).map(({ total }) => total);

  test('takes the cheapest, then other kinds, at most three, and shows them by cost', () => {
    expect(
      totals([
        way(10, 'a', 'paper'),
        way(20, 'b', 'paper'),
        way(30, 'c', 'paper'),
        way(40, 'd', 'flight'),
        way(50, 'e', 'change'),
      ]),
    ).toEqual([10, 40, 50]);
    expect(totals([way(10, 'a', 'paper'), way(20, 'b', 'paper')])).toEqual([10, 20]);
    // Of a kind that is there already, beside one that is of another.
    expect(
      totals([way(10, 'a', 'paper'), way(20, 'b', 'flight'), way(30, 'c', 'paper'), way(40, 'd', 'change')]),
    ).toEqual([10, 20, 40]);
  });

  test('never one that does all another does and more, nor the same again', () => {
    expect(
      totals([way(10, 'a b', 'x'), way(20, 'b a c', 'y'), way(30, 'b a', 'z'), way(40, 'b d', 'w')]),
    ).toEqual([10, 40]);
  });

  test('keeps the cheapest that hangs on nobody, though cheaper ones that do come first', () => {
    expect(
      totals([
        way(10, 'a', 'x', false),
        way(20, 'b', 'y', false),
        way(30, 'c', 'z', false),
        way(90, 'd', 'x'),
      ]),
    ).toEqual([20, 30, 90]);
  });
});

test('the queue gives the least first, whatever the order in which things came', () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { maxLength: 100, size: 'max' }), (numbers) => {
      const queue = new Queue<number>((a, b) => a < b);
      numbers.forEach((one) => queue.push(one));
      expect(queue.size).toBe(numbers.length);
      expect(numbers.map(() => queue.pop())).toEqual([...numbers].sort((a, b) => a - b));
      expect(queue.pop()).toBeUndefined();
    }),
    { seed: 20_261_125 },
  );
});

describe('times without end', () => {
  const HOUR = 3600;
  const START = toSeconds('2027-06-10T14:00:00Z');
  const minutes = (from: number, to: number) => ({ from: START + from * 60, to: START + to * 60 });
  /** Five minutes are taken every half hour, so that no hour is free among them. */
  const taken = (count: number) =>
    Array.from({ length: count }, (_, index) => minutes(index * 30, index * 30 + 5));
  const slot = (of: Partial<Parameters<typeof firstSlot>[0]>): number | null => {
    const found = firstSlot({ from: START, seconds: HOUR, light: 'day', field: undefined, taken: [], ...of });
    return found === null ? null : (found - START) / 60;
  };

  test('are not looked through for ever', () => {
    expect(slot({ taken: taken(2) })).toBe(35);
    expect(slot({ taken: taken(2 * 199) })).toBe(198 * 60 + 35);
    expect(slot({ taken: taken(2 * 200) })).toBeNull();
  });

  test('nor more than a fortnight ahead', () => {
    const fortnight = 14 * 24 * 60;
    expect(slot({ taken: [minutes(0, fortnight)] })).toBe(fortnight);
    expect(slot({ taken: [minutes(0, fortnight + 5)] })).toBeNull();
  });

  test('an airfield without a place has no light; one with a place has', () => {
    const nowhere = { ...HOME_FIELD, latitudeDeg: Number.NaN };
    // Five hours before dawn.
    const from = toSeconds('2027-06-10T06:00:00Z');
    expect(firstSlot({ from, seconds: HOUR, light: 'day', field: nowhere, taken: [] })).toBe(from);
    expect(firstSlot({ from, seconds: HOUR, light: 'day', field: undefined, taken: [] })).toBe(from);
    expect(firstSlot({ from, seconds: HOUR, light: 'day', field: HOME_FIELD, taken: [] })).toBeGreaterThan(
      from + 3 * HOUR,
    );
  });

  test('of two that clash the later end counts', () => {
    expect(slot({ taken: [minutes(0, 90), minutes(10, 20)] })).toBe(90);
    expect(slot({ taken: [minutes(10, 20), minutes(0, 90)] })).toBe(90);
    expect(slot({ taken: [minutes(60, 90)] })).toBe(0);
    expect(slot({ taken: [minutes(-30, 0)] })).toBe(0);
  });
});
