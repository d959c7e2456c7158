/**
 * Places, misspelt names, messages and costs, each worked out by hand. Sources: places count as editors do, from line 1 and
 * column 1 (common practice, no source); distances of words are Levenshtein's (kitten to sitting is three, from memory).
 */
import { checkRule } from '../../../src/rules/club-rules/check.js';
import { nearest, placeIn, within } from '../../../src/rules/club-rules/fault.js';
import { expressionsIn, inWords, readMessage } from '../../../src/rules/club-rules/message.js';

describe('places', () => {
  test.each([
    ['ab\ncd', 3, 5, { offset: 3, length: 2, line: 2, column: 1 }],
    ['ab\ncd', 4, 5, { offset: 4, length: 1, line: 2, column: 2 }],
    ['ab\ncd', 1, 4, { offset: 1, length: 3, line: 1, column: 2 }],
    ['ab\n\ncd', 3, 3, { offset: 3, length: 1, line: 2, column: 1 }],
    ['ab', 5, 9, { offset: 2, length: 1, line: 1, column: 3 }],
    ['ab', -1, 1, { offset: 0, length: 1, line: 1, column: 1 }],
    ['', 0, 1, { offset: 0, length: 1, line: 1, column: 1 }],
  ])('%j from %i to %i', (text, start, end, place) => {
    expect(placeIn(text, start, end)).toEqual(place);
  });

  test('of a fault whose text is part of a longer one', () => {
    const fault = { code: 'x', message: 'X.', ...placeIn('b.ccc', 2, 5) };
    expect(within(fault, 'a\n{b.ccc}', 3)).toEqual({
      ...{ code: 'x', message: 'X.', offset: 5, length: 3, line: 2, column: 4 },
    });
  });
});

describe('a misspelt name', () => {
  test.each([
    ['totalHour', ['hours', 'totalHours', 'totalHoursNight'], 'totalHours'],
    ['PILOT', ['flight', 'pilot'], 'pilot'],
    // Two edits are alike enough for a short name, three are not.
    ['kitten', ['sittin'], 'sittin'],
    ['kitten', ['sitting'], null],
    // A third of the letters may differ.
    ['kittenish', ['sittingish'], 'sittingish'],
    ['kittenis', ['sittingis'], null],
    ['ab', ['xy'], 'xy'],
    ['ab', ['xyz'], null],
    // Letters left out, put in, and both orders of the two words.
    ['sitting', ['siting', 'sittting'], 'siting'],
    ['same', ['some', 'same'], 'same'],
    ['one', ['ones', 'onex'], 'ones'],
    ['abcdefghi', ['abcdef'], 'abcdef'],
    ['abcdefghi', ['abcde'], null],
    ['abcdef', ['abcdefgh'], 'abcdefgh'],
    ['abcdef', ['abcdefghi'], null],
    // Letters put in front.
    ['xyabcdef', ['abcdef'], 'abcdef'],
    ['xyzabcde', ['abcde'], null],
    ['', ['ab', 'a'], 'a'],
    ['any', [], null],
  ])('%s of %j: %s', (name, known, near) => {
    expect(nearest(name, known)).toBe(near);
  });
});

describe('messages', () => {
  const shape = (message: string) =>
    readMessage(message).parts?.map((part) => ('text' in part ? part.text : `<${part.expression.text}>`));
  test.each([
    ['Fly first.', ['Fly first.']],
    ['{flight.hours}', ['<flight.hours>']],
    ['You have {flight.passengers} of 3.', ['You have ', '<flight.passengers>', ' of 3.']],
    ['{flight.hours}{flight.purpose} x', ['<flight.hours>', '<flight.purpose>', ' x']],
    [`{"}" + flight.purpose}!`, ['<"}" + flight.purpose>', '!']],
    [`{'}' + flight.purpose}!`, [`<'}' + flight.purpose>`, '!']],
    [`{"'}" + flight.purpose}!`, [`<"'}" + flight.purpose>`, '!']],
    [`{"\\"}" + flight.purpose}!`, [`<"\\"}" + flight.purpose>`, '!']],
    [`{"\\\\" + flight.purpose}!`, ['<"\\\\" + flight.purpose>', '!']],
    ['{flight.daysSince(pilot.lastFlightOn)}', ['<flight.daysSince(pilot.lastFlightOn)>']],
    ['{flight.hours} '.repeat(8), Array<string[]>(8).fill(['<flight.hours>', ' ']).flat()],
    ['x'.repeat(500), ['x'.repeat(500)]],
  ])('%.40s is cut at its braces', (message, parts) => {
    expect(shape(message)).toEqual(parts);
    expect(readMessage(message).faults).toBeNull();
  });

  const wrong = (message: string) =>
    (readMessage(message).faults ?? []).map(({ code, message: says, offset, length }) => [
      code,
      says,
      offset,
      length,
    ]);
  const NOTHING_CLOSED = "This brace closes nothing. Write '{' before the expression.";
  const NOT_CLOSED = "This brace is not closed. Write '}' after the expression.";
  test.each([
    [' ', [['empty', 'Say what a member reads when the rule is not met.', 0, 1]]],
    ['x'.repeat(503), [['too-long', 'A message has at most 500 characters.', 500, 3]]],
    ['a } b', [['brace', NOTHING_CLOSED, 2, 1]]],
    ['{flight.hours} a } b', [['brace', NOTHING_CLOSED, 17, 1]]],
    ['ab {flight.hours', [['brace', NOT_CLOSED, 3, 1]]],
    [`ab {"x}`, [['brace', NOT_CLOSED, 3, 1]]],
    ['{flight.hours} {', [['brace', NOT_CLOSED, 15, 1]]],
    [
      '{flight.hours} '.repeat(9),
      [['too-many-expressions', 'A message holds at most 8 expressions.', 0, 135]],
    ],
  ])('%.30s is refused, and where', (message, faults) => {
    expect(wrong(message)).toEqual(faults);
    expect(readMessage(message).parts).toBeNull();
  });

  test('a fault of an expression is told at its place in the message, and no further ones with it', () => {
    const message = 'Of {flight.hours} and {flight.hour} and {pilot.nothing}';
    const [fault, ...others] = readMessage(message).faults!;
    expect(fault).toMatchObject({ code: 'unknown-value', line: 1, column: 24 });
    expect(message.slice(fault!.offset, fault!.offset + fault!.length)).toBe('flight.hour');
    expect(others).toEqual([]);
  });

  test('its expressions in order; numbers with two places at most', () => {
    const { parts } = readMessage('{flight.hours} of {flight.passengers}');
    expect(expressionsIn(parts!).map(({ text }) => text)).toEqual(['flight.hours', 'flight.passengers']);
    expect([inWords(1.23456), inWords(2), inWords(1.999), inWords(3n), inWords('1.23456')]).toEqual([
      '1.23',
      '2',
      '2',
      '3',
      '1.23456',
    ]);
  });
});

describe('cost, counted by hand: each part one step, what is inside a list once for each element', () => {
  const cost = (requirement: string) =>
    checkRule({ appliesWhen: 'true', message: 'No.', requirement }).rule?.cost;
  const IS_X = 'exists(a, a == "x")';
  // One part and one step are those of `true`, when the rule applies.
  test.each([
    ['true', 2, 2],
    ['flight.alone', 3, 3],
    ['!flight.alone', 4, 4],
    ['size(pilot.ratings) == 0', 6, 6],
    // 1 + the list's 2 + 100 elements at most, each 1 + 3.
    [`pilot.ratings.${IS_X}`, 7, 1 + 1 + 2 + 100 * 4],
    [`["a", "b"].${IS_X}`, 8, 1 + 1 + 3 + 2 * 4],
    [`(["a"] + ["b", "c"]).${IS_X}`, 11, 1 + 1 + 6 + 3 * 4],
    [`(flight.alone ? ["a"] : ["b", "c"]).${IS_X}`, 13, 1 + 1 + 8 + 2 * 4],
    [`(flight.alone ? ["a", "b"] : ["c"]).${IS_X}`, 13, 1 + 1 + 8 + 2 * 4],
    [`["a", "b"].filter(b, b != "a").${IS_X}`, 12, 1 + 1 + (1 + 3 + 2 * 4) + 2 * 4],
  ])('%s', (requirement, parts, steps) => {
    expect(cost(requirement)).toEqual({ parts, steps });
  });

  test('ten thousand steps are the most', () => {
    const each = (count: number): string =>
      Array<string>(count).fill('pilot.ratings.exists(a, a == "x")').join(' || ');
    expect(cost(each(24))).toMatchObject({ steps: 1 + 24 * 403 + 23 });
    const { faults } = checkRule({ appliesWhen: 'true', message: 'No.', requirement: each(25) });
    expect(faults).toMatchObject([
      {
        code: 'too-costly',
        message: 'Judging this could take 10099 steps; 10000 are allowed. Put fewer lists inside lists.',
      },
    ]);
  });
});
