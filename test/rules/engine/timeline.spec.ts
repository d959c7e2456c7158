/** The answer over a span, from rules small enough to work out by hand: its edges, what moved there, and what was not followed. */
import type { Answer } from '../../../src/rules/engine/finding.js';
import type { FactSheet } from '../../../src/rules/facts/sheet.js';
import type { Rule } from '../../../src/rules/engine/rule.js';
import { byAnswer, firstSlot, timelineOf, type AnswerStep } from '../../../src/rules/engine/timeline.js';
import { instructionIsAWay, weigh, withUnnamedInstructor } from '../../../src/rules/engine/weigh.js';
import { toInstant, toSeconds } from '../../../src/rules/calendar/instants.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { daily, rulesetOf, since, through, toy } from './toy-rules.js';

const sheet = baseSheet();
const at = (date: string): number => toSeconds(`${date}T07:00:00Z`);
/** 1 March to 8 March, midnights of Denver. */
const SPAN = { from: at('2027-03-01'), to: at('2027-03-08') };
const maintenance: FactSheet = { ...sheet, flight: { ...sheet.flight, purpose: 'maintenance' } };
const over = (rules: Rule[], of = maintenance, span = SPAN) => timelineOf(of, rulesetOf(rules), span);
/** 'from answer in-the-way', the instants as dates of the club. */
const told = (steps: readonly AnswerStep[]): string[] =>
  steps.map(({ from, answer, inTheWay }) => [toInstant(from), answer, ...inTheWay].join(' '));

test('one step where nothing changes', () => {
  const { steps, cutAt } = over([toy('a', (_f, _m, _p, take) => take('good'))]);
  expect(steps).toEqual([{ ...SPAN, answer: 'yes', inTheWay: [], changed: [] }]);
  expect(cutAt).toBeNull();
});

test('a rule that ends and one that begins, with what moved at each edge', () => {
  const { steps } = over([through('a', '2027-03-04'), since('b', '2027-03-03')]);
  expect(steps).toEqual([
    { from: SPAN.from, to: at('2027-03-03'), answer: 'no', inTheWay: ['toy.b'], changed: [] },
    {
      from: at('2027-03-03'),
      // An hour's flight has to be over by the midnight that ends the fourth.
      to: at('2027-03-05') - 3600,
      answer: 'yes',
      inTheWay: [],
      changed: [{ rule: 'toy.b', was: 'short', is: 'met', withInstructor: false }],
    },
    {
      from: at('2027-03-05') - 3600,
      to: SPAN.to,
      answer: 'no',
      inTheWay: ['toy.a'],
      changed: [{ rule: 'toy.a', was: 'met', is: 'short', withInstructor: false }],
    },
  ]);
});

test('one answer and another rule in the way is another step; rules in the order of the set', () => {
  expect(told(over([through('a', '2027-03-03'), since('b', '2027-03-06')]).steps)).toEqual([
    '2027-03-01T07:00:00Z no toy.b',
    '2027-03-04T06:00:00Z no toy.a toy.b',
    '2027-03-06T07:00:00Z no toy.a',
  ]);
});

test('of two in the way one gone leaves the other', () => {
  expect(told(over([since('a', '2027-03-03'), since('b', '2027-03-05')]).steps)).toEqual([
    '2027-03-01T07:00:00Z no toy.a toy.b',
    '2027-03-03T07:00:00Z no toy.b',
    '2027-03-05T07:00:00Z yes',
  ]);
});

test('what comes into the way and goes again leaves nothing behind', () => {
  const between = toy('a', (_f, moment, _p, take) =>
    take(moment.startsOnOrAfter('2027-03-03') && !moment.startsOnOrAfter('2027-03-05') ? 'bad' : 'good'),
  );
  expect(told(over([between]).steps)).toEqual([
    '2027-03-01T07:00:00Z yes',
    '2027-03-03T07:00:00Z no toy.a',
    '2027-03-05T07:00:00Z yes',
  ]);
});

test('moves of one second are one edge', () => {
  const { steps } = over([since('a', '2027-03-03'), since('b', '2027-03-03')]);
  expect(steps.map(({ changed }) => changed.map(({ rule }) => rule))).toEqual([[], ['toy.a', 'toy.b']]);
});

test('club rules ask, advice only sets conditions, and a change of words alone is no step', () => {
  const rules = [
    since('club', '2027-03-03', { weight: 'club' }),
    since('advice', '2027-03-05', { weight: 'advice' }),
    daily('day'),
  ];
  expect(told(over(rules).steps)).toEqual([
    '2027-03-01T07:00:00Z ask-officer toy.club',
    '2027-03-03T07:00:00Z yes-with-conditions',
  ]);
});

test('conditions that come and go', () => {
  const late = toy('a', (_f, moment, _p, take) =>
    moment.startsOnOrAfter('2027-03-03')
      ? take('conditional', {}, { conditions: ['Mind it.'] })
      : take('good'),
  );
  expect(told(over([late]).steps)).toEqual([
    '2027-03-01T07:00:00Z yes',
    '2027-03-03T07:00:00Z yes-with-conditions',
  ]);
});

test('the span takes in its first second and leaves out its last', () => {
  const begins = since('a', '2027-03-08');
  expect(told(over([begins]).steps)).toEqual(['2027-03-01T07:00:00Z no toy.a']);
  const longer = { from: SPAN.from, to: SPAN.to + 1 };
  expect(told(over([begins], maintenance, longer).steps)).toEqual([
    '2027-03-01T07:00:00Z no toy.a',
    '2027-03-08T07:00:00Z yes',
  ]);
  expect(over([since('a', '2027-03-01')]).steps).toHaveLength(1);
});

describe('with an instructor', () => {
  /** Binds whoever flies without an instructor, until a date. */
  const alone = (date: string): Rule =>
    toy('alone', (f, moment, _p, take) =>
      take(f.crew.instruction || moment.startsOnOrAfter(date) ? 'good' : 'bad'),
    );
  const dualFrom = (date: string): Rule =>
    toy('dual', (f, moment, _p, take) =>
      take(!f.crew.instruction || moment.startsOnOrAfter(date) ? 'good' : 'bad'),
    );

  test('is told where that alone would be a yes', () => {
    const { steps } = over([alone('2027-03-05'), dualFrom('2027-03-03')], sheet);
    expect(told(steps)).toEqual([
      '2027-03-01T07:00:00Z no toy.alone',
      '2027-03-03T07:00:00Z dual-only toy.alone',
      '2027-03-05T07:00:00Z yes',
    ]);
    expect(steps[1]!.changed).toEqual([{ rule: 'toy.dual', was: 'short', is: 'met', withInstructor: true }]);
  });

  test('what moves on that flight alone is no step while the answer stays', () => {
    const { steps } = over([alone('2027-03-07'), dualFrom('2027-03-03'), since('law', '2027-03-05')], sheet);
    expect(told(steps)).toEqual([
      '2027-03-01T07:00:00Z no toy.alone toy.law',
      '2027-03-05T07:00:00Z dual-only toy.alone',
      '2027-03-07T07:00:00Z yes',
    ]);
  });

  test('is looked at for solo and passenger flights only, and only where the flight is refused', () => {
    const seen: string[] = [];
    const spy = toy('spy', (f, _m, _p, take) => (seen.push(f.flight.purpose), take('good')));
    over([spy], sheet);
    expect([...new Set(seen)]).toEqual(['solo']);
    seen.length = 0;
    over([spy, since('a', '2027-03-03')], sheet);
    expect([...new Set(seen)]).toEqual(['solo', 'dual']);
    seen.length = 0;
    over([spy, since('a', '2027-03-03')], maintenance);
    expect([...new Set(seen)]).toEqual(['maintenance']);
  });

  test.each<[Answer, string, boolean]>([
    ['no', 'solo', true],
    ['ask-officer', 'passengers', true],
    ['no', 'passengers', true],
    ['yes', 'solo', false],
    ['yes-with-conditions', 'solo', false],
    ['no', 'dual', false],
    ['no', 'maintenance', false],
  ])('%s to a flight of kind %s: worth trying %s', (asked, purpose, is) => {
    const of = { ...sheet, flight: { ...sheet.flight, purpose: purpose as 'solo' } };
    expect(instructionIsAWay(of, asked)).toBe(is);
  });

  test('takes one seat more and everybody else out of command', () => {
    const flight = {
      ...sheet.flight,
      personsOnBoard: 2,
      secondPilotId: 'member-2',
      actingPilotId: 'member-2',
    };
    expect(withUnnamedInstructor({ ...sheet, flight })).toEqual({
      ...sheet,
      flight: {
        ...flight,
        purpose: 'dual',
        instructorId: null,
        secondPilotId: null,
        actingPilotId: null,
        personsOnBoard: 3,
      },
    });
  });

  test('one departure weighed: what was found on both flights', () => {
    const ruleset = rulesetOf([alone('2027-03-05')]);
    const refused = weigh(sheet, ruleset, at('2027-03-02'));
    expect(refused.answer).toBe('dual-only');
    expect(refused.judged.map(({ finding }) => finding.status)).toEqual(['short']);
    expect(refused.withInstructor).toMatchObject({
      sheet: { flight: { purpose: 'dual', personsOnBoard: 2 } },
      crew: { instruction: true },
      judged: [{ finding: { status: 'met' } }],
    });
    const good = weigh(sheet, ruleset, at('2027-03-05'));
    expect([good.answer, good.withInstructor, good.crew.instruction]).toEqual(['yes', null, false]);
  });
});

describe('a rule that is not followed to the end', () => {
  const good = toy('a', (_f, _m, _p, take) => take('good'));
  const other = toy('b', (_f, _m, _p, take) => take('good'));
  const held = { status: 'met' as const, branch: 'good', conditions: [] };
  const cutting = (cuts: Record<string, string | null>, of = maintenance) =>
    timelineOf(of, rulesetOf([good, other]), SPAN, (rule) => {
      const date = cuts[rule.id] ?? null;
      return { steps: [{ from: SPAN.from, verdict: held }], cutAt: date === null ? null : at(date) };
    });

  test('counts as unknown from there, and the first of several is told', () => {
    const { steps, cutAt } = cutting({ 'toy.a': '2027-03-06', 'toy.b': '2027-03-04' });
    expect(told(steps)).toEqual([
      '2027-03-01T07:00:00Z yes',
      '2027-03-04T07:00:00Z no toy.b',
      '2027-03-06T07:00:00Z no toy.a toy.b',
    ]);
    expect(steps[1]!.changed).toEqual([{ rule: 'toy.b', was: 'met', is: 'unknown', withInstructor: false }]);
    expect(cutAt).toBe(at('2027-03-04'));
    expect(cutting({ 'toy.a': null, 'toy.b': '2027-03-06' }).cutAt).toBe(at('2027-03-06'));
  });

  test('nor on the flight with an instructor', () => {
    const ruleset = rulesetOf([good]);
    const { steps, cutAt } = timelineOf(sheet, ruleset, SPAN, (_rule, { flight }) =>
      flight.purpose === 'dual'
        ? { steps: [{ from: SPAN.from, verdict: held }], cutAt: at('2027-03-04') }
        : { steps: [{ from: SPAN.from, verdict: { ...held, status: 'short' } }], cutAt: at('2027-03-06') },
    );
    expect(told(steps)).toEqual(['2027-03-01T07:00:00Z dual-only toy.a', '2027-03-04T07:00:00Z no toy.a']);
    expect(cutAt).toBe(at('2027-03-04'));
  });

  test('four thousand steps are the most', () => {
    const long = { from: SPAN.from, to: SPAN.from + 4200 * 86_400 };
    const { steps, cutAt } = over([daily('a')], maintenance, long);
    expect(steps.map(({ answer }) => answer)).toEqual(['yes-with-conditions', 'no']);
    // One for the first day and one for each midnight after it.
    expect(cutAt).toBe(toSeconds('2038-02-11T07:00:00Z'));
  });
});

describe('runs of one answer', () => {
  const step = (from: number, to: number, answer: Answer): AnswerStep => ({
    ...{ from, to, answer, inTheWay: [], changed: [] },
  });
  const steps = [step(0, 10, 'no'), step(10, 20, 'no'), step(20, 30, 'yes'), step(30, 40, 'no')];

  test('are joined, and the steps themselves stay as they are', () => {
    expect(byAnswer(steps)).toEqual([step(0, 20, 'no'), step(20, 30, 'yes'), step(30, 40, 'no')]);
    expect(steps[0]!.to).toBe(10);
    expect(byAnswer([])).toEqual([]);
  });

  test('the first good departure', () => {
    expect([
      firstSlot(steps, ['yes'], 0),
      firstSlot(steps, ['yes'], 20),
      firstSlot(steps, ['yes'], 25),
      firstSlot(steps, ['yes'], 29),
      firstSlot(steps, ['yes'], 30),
      firstSlot(steps, ['yes', 'no'], 5),
      firstSlot(steps, ['dual-only'], 0),
    ]).toEqual([20, 20, 25, 29, null, 5, null]);
  });
});
