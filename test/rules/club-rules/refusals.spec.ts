/**
 * What is said of an expression that is refused, word for word, and which characters it points at: a member of the committee
 * has nothing else to go by. Source: our own grammar (DEVELOPERS.md, rules of the club); the syntax is that of CEL.
 */
import { checkRule } from '../../../src/rules/club-rules/check.js';
import { readExpression } from '../../../src/rules/club-rules/expression.js';
import { ENVIRONMENT } from '../../../src/rules/club-rules/environment.js';
import { literalOf } from '../../../src/rules/club-rules/syntax.js';

/** The one value that takes hours. */
const HOURS = 'flight.departsWithinHours';
const told = (requirement: string): string[] =>
  (checkRule({ appliesWhen: 'true', message: 'No.', requirement }).faults ?? []).map(
    ({ message, offset, length }) => `${requirement.slice(offset, offset + length)}: ${message}`,
  );
const NOT_USED = (form: string): string => `This form of expression ('${form}') is not used in rules.`;

test.each<[string, string[]]>([
  // Names.
  ['flight', ["flight: Name one value of 'flight', as in 'flight.purpose'."]],
  ['pilots.hours', ["pilots: There is no 'pilots' here. Did you mean 'pilot'?"]],
  ['zzzzzzzz == 1', ["zzzzzzzz: There is no 'zzzzzzzz' here. There are OWNERS."]],
  ['wind.gust', ["wind.gust: 'wind' has no 'gust'. Did you mean 'wind.gustKt'?"]],
  ['pilot.totalHour', ["pilot.totalHour: 'pilot' has no 'totalHour'. Did you mean 'pilot.totalHours'?"]],
  ['flight.purpose.size', ['flight.purpose.size: Only OWNERS have values after a dot.']],
  // Arguments.
  [
    'pilot.landingsInDays >= 3',
    ["pilot.landingsInDays: Write 'pilot.landingsInDays(90)': it takes a number of days from 0 to 730."],
  ],
  [
    'flight.departsBefore',
    [
      `flight.departsBefore: Write 'flight.departsBefore("18:00")': it takes a clock reading from "00:00" to "23:59".`,
    ],
  ],
  ['flight.daysSince', ["flight.daysSince: Write 'flight.daysSince(pilot.lastFlightOn)': it takes a date."]],
  ['pilot.totalHours(3)', ["pilot.totalHours(3): 'pilot.totalHours' is a value: leave the brackets out."]],
  [
    'pilot.landingInDays(3)',
    ["pilot.landingInDays(3): 'pilot' has no 'landingInDays'. Did you mean 'pilot.landingsInDays'?"],
  ],
  [
    'pilot.landingsInDays(731) >= 1',
    ["731: 'landingsInDays' takes a number of days from 0 to 730, written out."],
  ],
  [
    'pilot.landingsInDays(1.5) >= 1',
    ["1.5: 'landingsInDays' takes a number of days from 0 to 730, written out."],
  ],
  ['flight.date == date("x")', ['"x": Write the date out, as in date("2026-03-31").']],
  [
    'flight.date.plusDays(10001) == flight.date',
    ['10001: Write the number out: a whole number from -10000 to 10000.'],
  ],
  [
    'flight.date.plusMonths(flight.passengers) == flight.date',
    ['flight.passengers: Write the number out: a whole number from -10000 to 10000.'],
  ],
  [
    'flight.date.plusDays(1.5) == flight.date',
    ['1.5: Write the number out: a whole number from -10000 to 10000.'],
  ],
  // Functions and methods.
  ['sizes("x") == 1', [`sizes("x"): There is no function 'sizes' here. Did you mean 'size'?`]],
  [
    'timestamp("x") == 1',
    [`timestamp("x"): There is no function 'timestamp' here. There are size, string, int, double, date.`],
  ],
  [
    'flight.purpose.startWith("d")',
    [`flight.purpose.startWith("d"): There is no method 'startWith' here. Did you mean 'startsWith'?`],
  ],
  [
    'flight.airfields.exist("x")',
    [`flight.airfields.exist("x"): There is no method 'exist' here. Did you mean 'exists'?`],
  ],
  // Lists.
  ['[].exists(a, a == 1)', ['[]: An empty list holds nothing to look at.']],
  [
    'flight.airfields.exists("a")',
    [`flight.airfields.exists("a"): Name the element first, as in 'exists(one, one == "x")'.`],
  ],
  [
    'flight.airfields.exists(wind, wind == "x")',
    [`flight.airfields.exists(wind, wind == "x"): 'wind' is taken. Give the element another name.`],
  ],
  // An element is known inside its list and nowhere else.
  [
    'flight.airfields.exists(one, one == "x") && one == "x"',
    ["one: There is no 'one' here. There are OWNERS."],
  ],
  ['flight.airfields.exists(one, size(two) == 1)', ["two: There is no 'two' here. There are OWNERS."]],
  // Values and forms.
  [
    'flight.purpose == null',
    ['null: Nothing is null here: what is not on record is not known, and the rule then says so by itself.'],
  ],
  [
    'b"x" == b"x"',
    Array<string>(2).fill('b"x": Write numbers, texts, true or false; other values are not used in rules.'),
  ],
  ['flight.airfields[0] == "x"', [`flight.airfields[0]: ${NOT_USED('[...] after a value')}`]],
  ['{} == 1', [`{}: ${NOT_USED('{...}')}`]],
  ['flight.passengers < 9007199254740992', ['9007199254740992: This number is too large.']],
  ['flight.passengers < 9007199254740991', []],
  ['flight.passengers / 0 == 1', ['0: Divide by a number that is written out and not 0.']],
  [
    'flight.passengers % flight.landings == 1',
    ['flight.landings: Divide by a number that is written out and not 0.'],
  ],
  ['flight.passengers / -2 == 1', []],
  // Types.
  [
    'flight.passengers',
    [
      "flight.passengers: This gives a whole number; it must be true or false, as in 'flight.passengers == 0'.",
    ],
  ],
  [
    'flight.hours',
    ["flight.hours: This gives a number; it must be true or false, as in 'flight.passengers == 0'."],
  ],
  [
    'flight.purpose',
    ["flight.purpose: This gives a text; it must be true or false, as in 'flight.passengers == 0'."],
  ],
  [
    'flight.date',
    ["flight.date: This gives a date; it must be true or false, as in 'flight.passengers == 0'."],
  ],
  [
    'flight.daysSince(pilot.lastFlightOn)',
    [
      "flight.daysSince(pilot.lastFlightOn): This gives a number of days; it must be true or false, as in 'flight.passengers == 0'.",
    ],
  ],
  [
    'pilot.ratings',
    ["pilot.ratings: This gives a list; it must be true or false, as in 'flight.passengers == 0'."],
  ],
  // Syntax.
  [
    'flight.airfields.exists()',
    [`flight.airfields.exists(): Name the element first, as in 'exists(one, one == "x")'.`],
  ],
  ['(flight).purpose == "x"', []],
  ['true &&', [': Unexpected token: EOF. The expression ends too early.']],
  ['flight.passengers = 1', ['=: Unexpected character: =. Write == to compare.']],
  ['flight.hours > 1', []],
  [
    'flight.daysSince(pilot.lastFlightOn) > 1.5',
    [
      'flight.daysSince(pilot.lastFlightOn) > 1.5: No such overload: Days > double. Days since a date are compared with whole numbers; int(...) makes a number to reckon with.',
    ],
  ],
  [
    'flight.date > 1',
    [
      'flight.date > 1: No such overload: Date > int. Dates are written date("2026-03-31") and compared with each other.',
    ],
  ],
  ['flight.purpose > 1', ['flight.purpose > 1: No such overload: string > int.']],
  [
    'flight.hours + 1 == 2.0',
    [
      'flight.hours + 1: No such overload: double + int. Whole numbers and numbers with a fraction do not mix here: write 2.0 instead of 2, or double(...) around a whole number.',
    ],
  ],
  [
    '1 == flight.hours',
    [
      '1 == flight.hours: No such overload: int == double. Whole numbers and numbers with a fraction do not mix here: write 2.0 instead of 2, or double(...) around a whole number.',
    ],
  ],
  ['size(1, 2, 3, 4) == 1', ['4: Too many arguments.']],
  ['{"a": 1} == 1', ['": Maps are not used in rules.']],
])('%s', (requirement, messages) => {
  const owners = 'flight, pilot, member, instructor, aircraft, wind, weather, loading';
  expect(told(requirement)).toEqual(messages.map((message) => message.replace('OWNERS', owners)));
});

test.each([
  'pilot.landingsInDays(0) >= 0 && pilot.landingsInDays(730) >= 0',
  'HOURS(0) || HOURS(9600)',
  'flight.date.plusDays(10000) != flight.date.plusDays(-10000)',
  'flight.purpose.endsWith("x") || flight.purpose.contains("y")',
  'flight.airfields.exists_one(one, one == "x")',
  'size(flight.airfields.map(one, one + "x")) == 1',
  '"pilot".startsWith("p")',
])('%s is taken', (requirement) => {
  expect(told(requirement.replaceAll('HOURS', HOURS))).toEqual([]);
});

test.each<[string, string, string]>([
  ['HOURS(9601)', 'argument-not-written-out', 'takes a number of hours from 0 to 9600, written out.'],
  ['flight.daysSince(pilot) > 1', 'owner-alone', "as in 'pilot.certificateLevel'."],
  ['"flight".purpose == "x"', 'not-here', 'have values after a dot.'],
  ['flight.purpose.size', 'not-here', 'have values after a dot.'],
  ['flight.none(1)', 'unknown-value', "'flight' has no 'none'."],
  ['[].exists(a, a == 1)', 'empty-list', 'An empty list holds nothing'],
  ['"".exists(a, a == "x")', 'invalid-comprehension-range', "'string' cannot be range"],
  ['flight.airfields.exists()', 'element-name', 'Name the element first'],
  ['date() == flight.date', 'no-matching-overload', "overload for 'date()'."],
  ['pilot.landingsInDays() >= 1', 'no-matching-overload', "overload for 'Pilot.landingsInDays()'."],
  ['flight.date.plusDays() == flight.date', 'no-matching-overload', "overload for 'Date.plusDays()'."],
  ['flight.departsBefore(1)', 'argument-not-written-out', 'takes a clock reading from'],
])('%s is refused as %s', (requirement, code, says) => {
  const text = requirement.replaceAll('HOURS', HOURS);
  const [fault] = checkRule({ appliesWhen: 'true', message: 'No.', requirement: text }).faults!;
  expect(fault!.code).toBe(code);
  expect(fault!.message).toContain(says);
});

test('a value written out is one, whatever its kind; nothing else is', () => {
  const literal = (text: string) => literalOf(ENVIRONMENT.parse(text).ast);
  expect(['7', '-7', '1.5', '-1.5', '"x"', 'true', 'false'].map(literal)).toEqual([
    ...[7, -7, 1.5, -1.5, 'x', true, false],
  ]);
  expect(['flight', '-flight', 'null', 'b"x"', '1 + 1', '[1]'].map(literal)).toEqual(
    Array(6).fill(undefined),
  );
});

test('what a rule reads is told once for each value and argument, and whether its arithmetic may fail', () => {
  const checked = (requirement: string, appliesWhen = 'true') =>
    checkRule({ appliesWhen, message: 'No.', requirement }).rule!;
  const uses = checked(
    'pilot.landingsInDays(30) + pilot.landingsInDays(90) + pilot.landingsInDays(30) > 1',
    'flight.alone',
  );
  expect(uses.uses.map(({ owner, entry, argument }) => [owner, entry.name, argument])).toEqual([
    ['flight', 'alone', null],
    ['pilot', 'landingsInDays', 30],
    ['pilot', 'landingsInDays', 90],
  ]);
  // By name, whatever is read first.
  expect(
    readExpression('pilot.landingsInDays(30) >= 3 && aircraft.tailwheel', ['bool']).expression!.reads,
  ).toEqual([...['aircraft.type', 'pic.log']]);
});

test.each([
  // Whole numbers run over; a text is no number, and a large one no whole number.
  ['flight.passengers * flight.landings > 4', true],
  ['int(flight.purpose) == 1', true],
  ['double(flight.purpose) > 1.0', true],
  ['int(flight.hours) > 1', true],
  ['flight.hours * 2.0 > 1.0', false],
  ['int(flight.daysSince(pilot.lastFlightOn)) > 1', false],
  ['double(flight.passengers) > 1.0', false],
  ['string(flight.hours) == "1"', false],
  ['size(pilot.ratings) > 1', false],
  ['flight.passengers + flight.landings > 1', false],
  ['flight.date > date("2026-03-31")', false],
  ['flight.alone', false],
])('%s may fail although every value is there: %s', (text, may) => {
  const checked = (requirement: string, appliesWhen = 'true') =>
    checkRule({ appliesWhen, message: 'No.', requirement }).rule!.mayFail;
  expect([checked(text), checked('true', text), checked('true')]).toEqual([may, may, false]);
});

test('two thousand characters are the most, and what a message cannot hold is said', () => {
  expect(told(`true${' '.repeat(1996)}`)).toEqual([]);
  expect(told(`true${' '.repeat(1997)}`)).toEqual([' : An expression has at most 2000 characters.']);
  const { faults } = checkRule({ appliesWhen: 'true', message: 'On {flight.date}.', requirement: 'true' });
  expect(faults!.map(({ message }) => message)).toEqual([
    'This gives a date; a text or a number is wanted. Dates become a text with string(...).',
  ]);
  expect(told('1 + flight.hours == 2.0')[0]).toContain('write 2.0 instead of 2');
});
