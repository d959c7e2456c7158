/** Comparisons of dates and of days in expressions, each on both sides of its limit. The base flight is on 2027-03-01 in Denver. */
import { flown, flying, memberWith, status } from './scene.js';

const verdict = (requirement: string, sheet = memberWith({})): boolean => {
  const found = status(requirement, sheet);
  if (found !== 'met' && found !== 'short') throw new Error(`${requirement} is ${found}`);
  return found === 'met';
};

describe('dates', () => {
  const [before, on, after] = ['2027-02-28', '2027-03-01', '2027-03-02'];
  /** What each comparison of a date with 2027-03-01 gives the day before, on it and the day after. */
  const SIGNS: [string, boolean[]][] = [
    ['<', [true, false, false]],
    ['<=', [true, true, false]],
    ['>', [false, false, true]],
    ['>=', [false, true, true]],
    ['==', [false, true, false]],
    ['!=', [true, false, true]],
  ];
  test.each(SIGNS)('written out, and of the flight: %s', (sign, is) => {
    for (const fixed of [`date("${on}")`, 'flight.date', 'flight.arrivalDate'])
      expect([fixed, [before, on, after].map((day) => verdict(`date("${day}") ${sign} ${fixed}`))]).toEqual([
        fixed,
        is,
      ]);
  });
  test.each([
    ['date("2027-02-27").plusDays(2)', '2027-03-01'],
    ['date("2027-03-02").plusDays(-1)', '2027-03-01'],
    ['date("2027-01-31").plusMonths(1)', '2027-02-28'],
    ['date("2027-03-31").plusMonths(-1)', '2027-02-28'],
    ['flight.date.plusDays(30)', '2027-03-31'],
    ['flight.arrivalDate.plusMonths(2)', '2027-05-01'],
    ['flight.date', '2027-03-01'],
  ])('%s is %s', (expression, day) => {
    expect(verdict(`${expression} == date("${day}")`)).toBe(true);
    expect(verdict(`string(${expression}) == "${day}"`)).toBe(true);
  });
  test('a day beyond those that may be written is after every flight', () => {
    const far = 'date("2199-12-31").plusDays(400)';
    for (const [requirement, is] of [
      [`flight.date < ${far}`, true],
      [`flight.arrivalDate < ${far}`, true],
      [`${far} < flight.date`, false],
      [`${far} < flight.arrivalDate`, false],
      [`${far} == flight.date`, false],
    ] as const)
      expect([requirement, verdict(requirement)]).toEqual([requirement, is]);
  });
  test('a day that never was is before all others, and stays so', () => {
    const sheet = memberWith(flying([]));
    const never = 'pilot.lastFlightOn';
    for (const requirement of [
      `${never} < date("1900-01-01")`,
      `${never} < flight.date`,
      `${never}.plusDays(9) == ${never}`,
      `${never}.plusMonths(9) == ${never}`,
      `string(${never}) == "never"`,
      `string(flight.daysSince(${never})) == "never"`,
      `flight.daysSince(${never}) > 100000`,
      `int(flight.daysSince(${never})) == 999999`,
    ])
      expect([requirement, verdict(requirement, sheet)]).toEqual([requirement, true]);
  });
});

describe('days since a date', () => {
  const TEN = 'flight.daysSince(date("2027-02-19"))';
  // What each comparison gives with nine, ten and eleven.
  test.each<[string, boolean[]]>([
    ['<', [false, false, true]],
    ['<=', [false, true, true]],
    ['>', [true, false, false]],
    ['>=', [true, true, false]],
    ['==', [false, true, false]],
    ['!=', [true, false, true]],
  ])('ten days %s a number, and other days', (sign, is) => {
    expect([9, 10, 11].map((number) => verdict(`${TEN} ${sign} ${number}`))).toEqual(is);
    const days = [9, 10, 11].map((number) => `flight.daysSince(date("2027-03-01").plusDays(-${number}))`);
    expect(days.map((other) => verdict(`${TEN} ${sign} ${other}`))).toEqual(is);
  });
  test.each<[string, boolean[]]>([
    ['<', [true, false, false]],
    ['<=', [true, true, false]],
    ['>', [false, false, true]],
    ['>=', [false, true, true]],
  ])('a number %s ten days', (sign, is) => {
    expect([9, 10, 11].map((number) => verdict(`${number} ${sign} ${TEN}`))).toEqual(is);
  });
  test('as a number and as a text', () => {
    expect(verdict(`int(${TEN}) + 1 == 11`)).toBe(true);
    expect(verdict(`string(${TEN}) == "10"`)).toBe(true);
    expect(verdict('int(flight.daysSince(date("2027-03-03"))) == -2')).toBe(true);
  });
});

test('an argument is taken as it is written: days and hours as numbers, a clock as a reading', () => {
  const sheet = memberWith(flying([flown('2027-02-20'), flown('2027-02-10')]));
  expect(verdict('pilot.flightsInDays(9) == 1 && pilot.flightsInDays(30) == 2', sheet)).toBe(true);
  // Known on 2027-02-28 at 18:00; the flight leaves a day later, at 11:00 by the club's clock.
  expect(verdict('flight.departsWithinHours(24)')).toBe(true);
  expect(verdict('flight.departsWithinHours(23)')).toBe(false);
  expect(verdict('flight.departsBefore("11:01")')).toBe(true);
  expect(verdict('flight.departsBefore("11:00")')).toBe(false);
});
