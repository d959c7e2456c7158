/** What the text alone tells of a rule's expressions: what can never be true, what always is, and what it leaves open. */
import { all, casesOf, possible, type Cases } from '../../../src/rules/club-rules/analysis/cases.js';
import { both, numbers, truth, words } from '../../../src/rules/club-rules/analysis/sets.js';
import { readExpression } from '../../../src/rules/club-rules/expression.js';
import type { Node } from '../../../src/rules/club-rules/syntax.js';

const nodeOf = (text: string): Node => {
  const { expression, faults } = readExpression(text, ['bool']);
  if (!expression) throw new Error(faults.map(({ message }) => message).join(' '));
  return expression.ast;
};
const isPossible = (text: string): boolean | null => possible(casesOf(nodeOf(text)));

describe('values written out are compared', () => {
  test.each([
    ['1 < 2', true],
    ['2 < 2', false],
    ['3 < 2', false],
    ['1 <= 2', true],
    ['2 <= 2', true],
    ['3 <= 2', false],
    ['1 > 2', false],
    ['2 > 2', false],
    ['3 > 2', true],
    ['1 >= 2', false],
    ['2 >= 2', true],
    ['3 >= 2', true],
    ['1 == 2', false],
    ['2 == 2', true],
    ['3 == 2', false],
    ['1 != 2', true],
    ['2 != 2', false],
    ['3 != 2', true],
    ['"a" == "b"', false],
    ['"b" != "a"', true],
    ['true == true', true],
    ['date("2027-01-01") < date("2027-01-02")', true],
    ['date("2027-01-02") < date("2027-01-02")', false],
    ['date("2027-03-01") > date("2027-02-28")', true],
  ])('%s: %s', (text, is) => {
    expect([possible(casesOf(nodeOf(text))), possible(casesOf(nodeOf(text), false))]).toEqual([is, !is]);
    expect(isPossible(`!(${text})`)).toBe(!is);
  });
});

describe('terms are held against values', () => {
  test.each([
    // Nothing lies between two whole numbers, or two days; between two others something does.
    ['flight.passengers > 2 && flight.passengers < 3', false],
    ['flight.passengers > 2 && flight.passengers < 4', true],
    ['pilot.landingsInDays(30) > 2 && pilot.landingsInDays(30) < 3', false],
    ['flight.date > date("2027-01-01") && flight.date < date("2027-01-02")', false],
    ['flight.date > date("2027-01-01") && flight.date < date("2027-01-03")', true],
    ['size(pilot.endorsements) > 2 && size(pilot.endorsements) < 3', false],
    ['flight.hours > 2.0 && flight.hours < 3.0', true],
    ['aircraft.powerPerEngineHp > 2.0 && aircraft.powerPerEngineHp < 3.0', true],
    ['flight.daysSince(date("2027-01-01")) > 2 && flight.daysSince(date("2027-01-01")) < 3', false],
    ['flight.daysSince(date("2027-01-01")) > 2 && flight.daysSince(date("2027-01-02")) < 3', true],
    ['flight.daysSince(date("2027-01-01")) < -1000000', false],
    // What the schema says a term may be.
    ['flight.passengers < 0', false],
    ['flight.passengers < 1', true],
    ['0 > flight.passengers', false],
    ['flight.passengers > 1000', false],
    ['flight.passengers > 999', true],
    ['aircraft.powerPerEngineHp < 0.0', false],
    ['aircraft.powerPerEngineHp <= 0.0', true],
    ['pilot.landingsInDays(30) < 0', false],
    ['flight.purpose == "leisure"', false],
    ['flight.purpose != "leisure"', true],
    ['flight.purpose in ["leisure", "pleasure"]', false],
    ['flight.purpose in ["leisure", "solo"]', true],
    // Ends that are open and closed, in either order.
    ['flight.hours >= 2.0 && flight.hours <= 2.0', true],
    ['flight.hours > 2.0 && flight.hours <= 2.0', false],
    ['flight.hours >= 2.0 && flight.hours > 2.0 && flight.hours <= 2.0', false],
    ['flight.hours > 2.0 && flight.hours >= 2.0 && flight.hours <= 2.0', false],
    ['flight.hours <= 2.0 && flight.hours < 2.0 && flight.hours >= 2.0', false],
    ['flight.hours < 2.0 && flight.hours <= 2.0 && flight.hours >= 2.0', false],
    ['flight.hours > 2.0 && flight.hours > 3.0 && flight.hours <= 3.0', false],
    ['flight.hours > 3.0 && flight.hours > 2.0 && flight.hours <= 3.0', false],
    ['flight.hours < 3.0 && flight.hours < 2.0 && flight.hours >= 2.0', false],
    ['flight.hours < 2.0 && flight.hours < 3.0 && flight.hours >= 2.0', false],
    ['flight.hours != 2.0 && flight.hours >= 2.0 && flight.hours <= 2.0', false],
    ['flight.hours != 2.0 && flight.hours >= 2.0 && flight.hours <= 2.5', true],
    // Words of which the schema names none.
    ['aircraft.registration != "A" && aircraft.registration == "A"', false],
    ['aircraft.registration == "A" && aircraft.registration != "A"', false],
    ['aircraft.registration != "A" && aircraft.registration != "B" && aircraft.registration == "A"', false],
    ['aircraft.registration != "A" && aircraft.registration != "B" && aircraft.registration == "B"', false],
    ['aircraft.registration != "A" && aircraft.registration != "B"', true],
    ['aircraft.registration != "A" && aircraft.registration == "B"', true],
    ['aircraft.registration == "A" && aircraft.registration == "B"', false],
    ['aircraft.registration in ["A", "B"] && aircraft.registration in ["C"]', false],
    ['aircraft.registration in ["A", "B"] && aircraft.registration == "B"', true],
    // Yes and no.
    ['flight.alone == true && flight.alone', true],
    ['flight.alone == true && !flight.alone', false],
    ['flight.alone != true && flight.alone', false],
    ['false == flight.alone && flight.alone', false],
    ['flight.alone && flight.forHire', true],
  ])('%s: %s', (text, is) => {
    expect(isPossible(text)).toBe(is);
  });
});

describe('two terms are held against each other by their texts', () => {
  const [a, b] = ['pilot.totalHours', 'member.totalHours'];
  test.each([
    [`${a} == ${b} && ${a} != ${b}`, false],
    [`${a} == ${b} && ${b} != ${a}`, false],
    [`${a} == ${b} && ${b} == ${a}`, true],
    [`${a} < ${b} && ${a} >= ${b}`, false],
    [`${a} < ${b} && ${b} <= ${a}`, false],
    [`${a} > ${b} && ${a} <= ${b}`, false],
    [`${a} > ${b} && ${b} >= ${a}`, false],
    [`${a} > ${b} && ${b} < ${a}`, true],
    [`${a} == ${b} && ${a} != instructor.totalHours`, true],
    [`${a} < ${b} && ${a} >= instructor.totalHours`, true],
    // What two comparisons have to do with each other is not told.
    [`${a} < ${b} && ${a} > ${b}`, true],
  ])('%s: %s', (text, is) => {
    expect(isPossible(text)).toBe(is);
  });
});

describe('what the text leaves open is not called impossible', () => {
  test.each([
    ['flight.passengers in [1, 2] && flight.passengers == 3'],
    ['flight.passengers in [1] && flight.passengers in [2]'],
    ['"solo" in ["dual"]'],
    ['"solo" in ["dual"] && "solo" in ["solo"]'],
    ['size("abc") == 3'],
    ['"tailwheel" in pilot.endorsements && "tailwheel" in member.endorsements'],
    ['pilot.landingsInDays(30) >= 3 && pilot.landingsInDays(90) < 3'],
    ['aircraft.registration < "B" && aircraft.registration > "C"'],
    ['int(wind.speedKt) < 0'],
  ])('%s', (text) => {
    expect(isPossible(text)).toBe(true);
  });
});

describe('too many cases', () => {
  const seat = (at: number): Node => nodeOf(`pilot.landingsInDays(${at}) >= 3`);
  const anyOf = (count: number, from = 1): Node => {
    const nodes = Array.from({ length: count }, (_none, at) => seat(from + at));
    return nodes.reduce((left, right) => ({ op: '||', args: [left, right] }) as unknown as Node);
  };
  const cases = (of: Cases): number | null => of && of.length;

  test('256 are looked at, one more is not', () => {
    expect(cases(casesOf(anyOf(256)))).toBe(256);
    expect(cases(casesOf(anyOf(257)))).toBeNull();
    const not = { op: '||', args: [anyOf(257), nodeOf('flight.alone')] } as unknown as Node;
    expect(cases(casesOf(not))).toBeNull();
    expect(
      cases(casesOf({ op: '||', args: [nodeOf('flight.alone'), anyOf(257)] } as unknown as Node)),
    ).toBeNull();
  });
  test('of two that come together, as many as there are pairs', () => {
    expect(cases(all(casesOf(anyOf(16)), casesOf(anyOf(16, 100))))).toBe(256);
    expect(cases(all(casesOf(anyOf(16)), casesOf(anyOf(17, 100))))).toBeNull();
    expect(cases(all(casesOf(anyOf(257)), casesOf(nodeOf('flight.alone'))))).toBeNull();
    expect(cases(all(casesOf(nodeOf('flight.alone')), casesOf(anyOf(257))))).toBeNull();
    // Pairs most of which are impossible: 1,024 are tried, and what is left counts.
    const purposes = nodeOf('flight.purpose == "solo" || flight.purpose == "dual"');
    const one = casesOf(purposes)!;
    const many: Cases = Array.from({ length: 512 }, () => one[0]!);
    expect(cases(all(many, one))).toBeNull();
    expect(cases(all(many.slice(0, 256), one))).toBe(256);
    const others = (count: number): Cases =>
      ['solo', 'dual', 'checkout', 'passengers', 'ferry']
        .slice(0, count)
        .map((purpose) => new Map([['flight.purpose', words([purpose])]]));
    expect(cases(all(many.slice(0, 256), others(4)))).toBe(256);
    expect(cases(all(many.slice(0, 255), others(5)))).toBeNull();
  });
  test('the impossible stays impossible, however much comes with it', () => {
    const never = casesOf(nodeOf('flight.passengers < 0'));
    expect(cases(all(casesOf(anyOf(257)), never))).toBe(0);
    expect(cases(all(never, casesOf(anyOf(257))))).toBe(0);
  });
});

test('sets of different kinds rule nothing out', () => {
  const kinds = [numbers('==', 1, true), words(['a']), truth(true)];
  for (const one of kinds)
    for (const other of kinds) if (one.kind !== other.kind) expect(both(one, other)).toBe(one);
});

test('of a whole number and one that is not, whole numbers are left', () => {
  const [half, whole] = [numbers('>', 2, false), numbers('<', 3, true)];
  for (const met of [both(half, whole), both(whole, half)])
    expect(met).toEqual({ kind: 'numbers', whole: true, intervals: [] });
});
