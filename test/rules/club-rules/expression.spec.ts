/** What may be kept, and what is said of what may not: the field, the place, and what to write instead. */
import { checkRule, type FieldFault } from '../../../src/rules/club-rules/check.js';

const faults = (requirement: string, more: { appliesWhen?: string; message?: string } = {}): FieldFault[] =>
  checkRule({ appliesWhen: 'true', message: 'No.', requirement, ...more }).faults ?? [];
const first = (requirement: string): FieldFault => {
  const [fault] = faults(requirement);
  if (!fault) throw new Error(`${requirement} is taken`);
  return fault;
};

test.each([
  'flight.passengers == 0',
  'flight.hours <= 3.5 || flight.purpose == "dual"',
  'flight.purpose in ["dual", "checkout"]',
  'pilot.totalHours >= 100',
  'pilot.landingsInDays(90) >= 3 && pilot.hoursInModel >= 5.0',
  'flight.date >= date("2026-03-01") && flight.date < date("2026-11-01")',
  'flight.daysSince(pilot.lastFlightInModelOn) <= 60',
  'pilot.medicalExamOn.plusMonths(24) >= flight.arrivalDate',
  'pilot.ratings.exists(one, one.startsWith("instrument"))',
  '["tailwheel", "complex"].all(kind, kind in pilot.endorsements)',
  'size(pilot.endorsements.filter(kind, kind == "solo")) == 0',
  'wind.crosswindKt <= (pilot.totalHours < 100.0 ? 8.0 : 15.0)',
  '!flight.departsBefore("08:00") // not in the morning',
  'flight.weekday != "sunday" || !flight.airfields.exists(code, code == "XQHB")',
  'double(flight.passengers) * 170.0 <= loading.occupantsLb',
  'string(flight.date).startsWith("2026")',
  'loading.fuelHours - flight.hours >= 1.0',
  'flight.hours / 2.0 <= 4.0',
])('%s is taken', (requirement) => {
  expect(faults(requirement)).toEqual([]);
});

test.each([
  // Types.
  ['flight.passengers', 'wrong-type', 'whole number'],
  ['flight.purpose', 'wrong-type', 'a text'],
  ['flight.date', 'wrong-type', 'a date'],
  ['flight.hours == 2', 'no-such-overload', '2.0'],
  ['flight.passengers == "0"', 'no-such-overload', 'overload'],
  ['flight.passengers + "x" == "x"', 'no-such-overload', 'overload'],
  ['pilot.hoursInModel && true', 'invalid-logical-operand', 'bool'],
  ['flight.date >= "2026-03-01"', 'no-such-overload', 'date("2026-03-31")'],
  ['flight.alone ? 1 : 2.0', 'incompatible-ternary-branches', 'same type'],
  ['pilot.landingsInDays("90") >= 3', 'argument-not-written-out', 'days'],
  // Names.
  ['pilots.totalHours >= 100', 'unknown-name', "Did you mean 'pilot'?"],
  ['pilot.totalHour >= 100', 'unknown-value', "Did you mean 'pilot.totalHours'?"],
  ['wind.banana > 1.0', 'unknown-value', 'It has speedKt'],
  ['pilot == member', 'owner-alone', 'pilot.'],
  ['totalHours > 1.0', 'unknown-name', 'flight'],
  ['pilot.landingsInDays >= 3', 'argument-missing', 'landingsInDays(90)'],
  ['pilot.totalHours(3) >= 3.0', 'argument-not-taken', 'brackets'],
  ['pilot.ratings.exists(pilot, pilot == "x")', 'name-taken', 'another name'],
  // Arguments are written out, within bounds.
  ['pilot.landingsInDays(731) >= 3', 'argument-not-written-out', '730'],
  ['pilot.landingsInDays(-1) >= 3', 'argument-not-written-out', '730'],
  ['pilot.landingsInDays(flight.passengers) >= 3', 'argument-not-written-out', 'written out'],
  ['flight.departsBefore("8:00")', 'argument-not-written-out', '"23:59"'],
  ['flight.departsBefore("24:00")', 'argument-not-written-out', '"23:59"'],
  ['flight.date == date("2026-02-30")', 'not-a-date', 'date("2026-03-31")'],
  ['flight.date == date("2026-3-1")', 'not-a-date', 'date('],
  ['flight.date == date(flight.purpose)', 'not-a-date', 'date('],
  ['flight.date == flight.date.plusDays(99999)', 'argument-not-written-out', '10000'],
  // What could not be bounded, hides types, depends on the machine, or makes a missing fact a yes.
  ['flight.purpose.matches("(a+)+b")', 'unknown-function', 'matches'],
  ['dyn(flight.purpose) == 1', 'unknown-function', 'dyn'],
  ['has(pilot.totalHours)', 'unknown-function', 'has'],
  ['timestamp("2026-01-01T00:00:00Z").getHours("Europe/Berlin") == 1', 'unknown-function', 'getHours'],
  ['duration("1h").getHours() == 1', 'unknown-function', 'getHours'],
  ['timestamp("2026-01-01T00:00:00Z") < timestamp("2026-01-02T00:00:00Z")', 'unknown-function', 'timestamp'],
  ['cel.bind(x, flight.hours, x > 1.0)', 'unknown-function', 'bind'],
  ['type(flight.hours) == double', 'unknown-function', 'type'],
  ['bytes(flight.purpose).size() == 3', 'unknown-function', 'bytes'],
  ['flight.airfields[0] == "XQHB"', 'not-here', 'not used'],
  ['{"a": 1}.a == 1', 'limit-exceeded', 'Maps'],
  ['pilot.run == 1', 'unknown-value', "'pilot' has no 'run'"],
  ['flight.constructor == 1', 'unknown-value', "'flight' has no 'constructor'"],
  ['flight.__proto__ == 1', 'unknown-value', "'flight' has no '__proto__'"],
  ['flight.purpose == null', 'not-here', 'not known'],
  ['1u < 2u', 'not-here', 'Write numbers'],
  ['b"x" == b"x"', 'not-here', 'Write numbers'],
  ['flight.passengers / flight.landings > 1', 'divisor', 'written out'],
  ['flight.passengers % 0 == 1', 'divisor', 'not 0'],
  ['flight.passengers < 9223372036854775807', 'number-too-large', 'too large'],
  // Syntax.
  ['flight.alone &&', 'unexpected-token', 'ends too early'],
  ['flight.passengers = 0', 'unexpected-character', '=='],
  ['(flight.alone', 'expected-token', 'ends too early'],
  ['', 'empty', 'Write'],
  ['   ', 'empty', 'Write'],
  ['"open', 'unterminated-string', 'Unterminated'],
])('%s is refused: %s', (requirement, code, says) => {
  const fault = first(requirement);
  expect(fault).toMatchObject({ field: 'requirement', code });
  expect(fault.message).toContain(says);
});

test('the place is told by line and column, and covers what is wrong', () => {
  const text = 'flight.alone\n  && pilot.totalHour >= 100';
  const [fault] = faults(text);
  expect(fault).toMatchObject({ line: 2, column: 6, offset: 18 });
  expect(text.slice(fault!.offset, fault!.offset + fault!.length)).toBe('pilot.totalHour');
});

test('all faults of all fields are told at once', () => {
  const found = faults('flight.foo && pilots.bar', {
    appliesWhen: 'flight.hours',
    message: 'Only {flight.hour} of {pilot.totalHours} h.',
  });
  expect(found.map(({ field, code, line, column }) => [field, code, line, column])).toEqual([
    ['appliesWhen', 'wrong-type', 1, 1],
    ['requirement', 'unknown-value', 1, 1],
    ['requirement', 'unknown-name', 1, 15],
    ['message', 'unknown-value', 1, 7],
  ]);
});

describe('messages', () => {
  const ofMessage = (message: string) => faults('true', { message });
  test.each([
    'Fly first.',
    'You have {pilot.landingsInDays(90)} of 3 landings.',
    'Flown last on {string(pilot.lastFlightOn)}; {flight.hours * 2.0} h.',
    'A brace in a text: {"}" + flight.purpose}.',
  ])('%s is taken', (message) => expect(ofMessage(message)).toEqual([]));

  test.each([
    ['', 'empty', 1],
    ['You have {pilot.landingsInDays(90) of 3.', 'brace', 10],
    ['You have } of 3.', 'brace', 10],
    ['On {flight.date}.', 'wrong-type', 5],
    ['Is {flight.alone}.', 'wrong-type', 5],
    ['Is {}.', 'empty', 5],
    [`${'{flight.hours} '.repeat(9)}`, 'too-many-expressions', 1],
    ['x'.repeat(501), 'too-long', 501],
  ])('%.30s... is refused', (message, code, column) => {
    expect(ofMessage(message)[0]).toMatchObject({ field: 'message', code, column });
  });
});

describe('cost', () => {
  test('is bounded by length, parts, depth and elements', () => {
    expect(first(`true ${' '.repeat(2000)}`).code).toBe('too-long');
    expect(first(Array(110).fill('flight.alone').join(' || ')).message).toContain('200 parts');
    expect(first(`${'('.repeat(30)}true${')'.repeat(30)}`).message).toContain('24 deep');
    expect(first(`flight.landings in [${Array(51).fill('1').join(', ')}]`).message).toContain('50 elements');
  });

  test('counts what is inside a list once for each element', () => {
    const once = 'pilot.ratings.exists(a, a == "x")';
    const twice = 'pilot.ratings.exists(a, pilot.endorsements.exists(b, a == b))';
    const thrice =
      'pilot.ratings.exists(a, pilot.endorsements.exists(b, aircraft.equipment.exists(c, a + b == c)))';
    expect(faults(once)).toEqual([]);
    expect(first(twice)).toMatchObject({ code: 'too-costly' });
    expect(first(thrice)).toMatchObject({ code: 'too-costly' });
    expect(faults('["a", "b"].exists(a, ["c", "d"].exists(b, pilot.ratings.exists(c, a + b == c)))')).toEqual(
      [],
    );
    expect(
      checkRule({ appliesWhen: 'true', requirement: once, message: 'No.' }).rule!.cost.steps,
    ).toBeGreaterThan(400);
  });
});

test('reads only what it reads', () => {
  const reads = (requirement: string, appliesWhen = 'true', message = 'No.') =>
    checkRule({ appliesWhen, requirement, message }).rule!.reads;
  expect(reads('flight.passengers == 0')).toEqual([]);
  expect(reads('pilot.landingsInDays(90) >= 3')).toEqual(['pic.log']);
  expect(reads('pilot.landingsInModelInDays(90) >= 3')).toEqual(['aircraft.type', 'pic.log']);
  expect(reads('member.standing == "good"', 'aircraft.tailwheel', 'Aged {instructor.ageYears}.')).toEqual([
    'aircraft.type',
    'instructor.birthDate',
    'member.standing',
  ]);
});
