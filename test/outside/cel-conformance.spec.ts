/**
 * The language of the club's rules against the specification of CEL, by the specification's own conformance cases.
 *
 * Source: github.com/google/cel-spec, tests/simple/testdata/{logic,macros,integer_math,string,comparisons,lists,
 * conversions}.textproto (Apache-2.0): those of its cases that are about what rules may say. Cases with `disable_check`
 * are left out, as nothing runs here unchecked, and so are maps, bytes, uint and regular expressions, which rules do not
 * have. `ERROR` stands for `eval_error`.
 *
 * Unknowns: `ExprValue.unknown` of google/api/expr/v1beta1/eval.proto (the conformance suite has no cases for them yet);
 * their tables are in test/rules/club-rules/unknown.spec.ts.
 */
import { ENVIRONMENT } from '../../src/rules/club-rules/environment.js';
import { checkRule } from '../../src/rules/index.js';
import { finding, memberWith, NOTHING } from '../rules/club-rules/scene.js';

const ERROR = Symbol('error');

function valueOf(expression: string): unknown {
  const { valid, error } = ENVIRONMENT.check(expression);
  if (!valid) throw new Error(`not taken: ${error!.message}`);
  try {
    const value: unknown = ENVIRONMENT.evaluate(expression);
    return typeof value === 'bigint' ? Number(value) : Array.isArray(value) ? value.map(Number) : value;
  } catch {
    return ERROR;
  }
}

describe('logic.textproto', () => {
  test.each([
    ['true ? 1 : 2', 1],
    ["false ? 'foo' : 'bar'", 'bar'],
    ["2 / 0 > 4 ? 'baz' : 'quux'", ERROR],
    ['true && true', true],
    ['false && false', false],
    ['false && true', false],
    ['true && false', false],
    ['false && (2 / 0 > 3 ? false : true)', false],
    ['(2 / 0 > 3 ? false : true) && false', false],
    ['true && 1/0 != 0', ERROR],
    ['1/0 != 0 && true', ERROR],
    ['true || true', true],
    ['false || false', false],
    ['false || true', true],
    ['true || false', true],
    ['true || (2 / 0 > 3 ? false : true)', true],
    ['(2 / 0 > 3 ? false : true) || true', true],
    ['false || 1/0 != 0', ERROR],
    ['1/0 != 0 || false', ERROR],
    ['!true', false],
    ['!false', true],
  ])('%s', (expression, value) => expect(valueOf(expression)).toBe(value));
});

describe('macros.textproto', () => {
  test.each([
    ['[1, 2, 3].exists(e, e > 0)', true],
    ['[1, 2, 3].exists(e, e == 2)', true],
    ['[1, 2, 3].exists(e, e > 3)', false],
    ['[1, 2, 3].exists(e, e / 0 == 17)', ERROR],
    ['[1, 2, 3].all(e, e > 0)', true],
    ['[1, 2, 3].all(e, e == 2)', false],
    ['[1, 2, 3].all(e, e == 17)', false],
    ['[1, 2, 3].all(e, 6 / (2 - e) == 6)', false],
    ['[1, 2, 3].all(e, e / 0 != 17)', ERROR],
    ['[7].exists_one(a, a == 7)', true],
    ['[8].exists_one(a, a == 7)', false],
    ['[1, 2, 3].exists_one(x, x > 20)', false],
    ['[6, 7, 8].exists_one(foo, foo % 5 == 2)', true],
    ['[0, 1, 2, 3, 4].exists_one(n, n % 2 == 1)', false],
    ["['foal', 'foo', 'four'].exists_one(n, n.startsWith('fo'))", false],
    ['[3, 2, 1, 0].exists_one(n, 12 / n > 1)', ERROR],
    ['[3].map(n, n * n)', [9]],
    ['[2, 4, 6].map(n, n / 2)', [1, 2, 3]],
    ['[2, 1, 0].map(n, 4 / n)', ERROR],
    ['[2].filter(n, n == 2)', [2]],
    ['[1].filter(n, n > 3)', []],
    ['[1, 2, 3].filter(e, e > 3)', []],
    ['[0, 1, 2, 3, 4].filter(x, x % 2 == 1)', [1, 3]],
    ['[3, 2, 1, 0].filter(n, 12 / n > 4)', ERROR],
  ])('%s', (expression, value) => expect(valueOf(expression)).toEqual(value));
});

describe('integer_math.textproto', () => {
  test.each([
    ['42 + (-2)', 40],
    ['-42 - (-2)', -40],
    ['-42 * (-2)', 84],
    ['-42 / 2', -21],
    ['-42 / (-2)', 21],
    ['42 % 5', 2],
    ['42 % (-5)', 2],
    ['-42 % (-5)', -2],
    ['42 % 0', ERROR],
    ['-(-42)', 42],
    ['15 / 0', ERROR],
    ['15 * 0', 0],
  ])('%s', (expression, value) => expect(valueOf(expression)).toBe(value));
});

describe('string.textproto', () => {
  test.each([
    ["size('')", 0],
    ["size('ÿ')", 1],
    ["size('πέντε')", 5],
    ["'foobar'.startsWith('foo')", true],
    ["''.startsWith('foo')", false],
    ["'foobar'.startsWith('')", true],
    ["'завтра'.startsWith('за')", true],
    ["'foobar'.endsWith('foo')", false],
    ["'forté'.endsWith('té')", true],
    ["'hello' + ' ' == 'hello'", false],
    ["'¢' + 'ÿ' + 'Ȁ'", '¢ÿȀ'],
    ["'hello'.contains('ol')", false],
    ["'abababc'.contains('ababc')", true],
    ["'Straße'.contains('aß')", true],
  ])('%s', (expression, value) => expect(valueOf(expression)).toBe(value));
});

describe('comparisons.textproto, lists.textproto, conversions.textproto', () => {
  test.each([
    ['-1 == 1', false],
    ['1.0 == 1.0e+0', true],
    ['\'\' == ""', true],
    ["'abc' == r'abc'", true],
    ["'abc' == 'ABC'", false],
    ['false == true', false],
    ['[] == []', true],
    ['[1, 2, 3] == [1, 3, 2]', false],
    ['9.0e+3 != 9001.0', true],
    ['[true, false, true] != [true, true, false]', true],
    ['1.0 < 1.0000001', true],
    ['-0.0 < 0.0', false],
    ["'Abc' < 'aBC'", true],
    ["'abc' < 'abcd'", true],
    ["'a' < 'á'", true],
    ["'a' < 'AB'", false],
    ['false < true', true],
    ['true > true', false],
    ['[0, 1, 2]+[3, 4, 5]==[0, 1, 2, 3, 4, 5]', true],
    ['[0, 1, 2]+[3, 4, 5]==[3, 4, 5, 0, 1, 2]', false],
    ['double(-1000000000000000)', -1e15],
    ["double('-987.654')", -987.654],
    ['int(-123.456)', -123],
    ['int(1.9)', 1],
    ['int(-3.5)', -3],
    ["int('987')", 987],
    ['string(-456)', '-456'],
    ['string(123.456)', '123.456'],
    ['string(-4.5e-3)', '-0.0045'],
  ])('%s', (expression, value) => expect(valueOf(expression)).toBe(value));
});

describe('where the library parts from the specification, and what keeps rules clear of it', () => {
  test('int(1e99) is out of range: the library lets it pass, and a rule is in error all the same when it counts on', () => {
    expect(valueOf('int(1e99) > 0')).toBe(true);
    expect(finding({ requirement: 'int(1e99) + 1 > 0' }).status).toBe('error');
  });

  test('integers written out are within 64 bits: the library takes longer ones, rules do not', () => {
    expect(valueOf('9223372036854775808 > 0')).toBe(true);
    expect(finding({ requirement: '9223372036854775808 > 0' }).status).toBe('error');
  });

  test('an empty list that is written out has elements of no type: looking into it is refused when a rule is kept', () => {
    for (const requirement of ['[].all(e, e > 0)', '[].exists(e, e == 2)', '[].exists_one(a, a == 7)']) {
      expect(ENVIRONMENT.check(requirement).valid).toBe(false);
      const { faults } = checkRule({ appliesWhen: 'true', requirement, message: 'No.' });
      expect(faults).toMatchObject([{ code: 'empty-list' }]);
    }
  });

  test('error || unknown is unknown by eval.proto; the library tells the right one of the two. Both close, and no such rule waits', () => {
    const sheet = memberWith({ birthDate: NOTHING });
    const fails = '9007199254740991 * 9007199254740991 > 0';
    for (const missing of ['pilot.ageYears > 0', 'wind.speedKt < 9.0'])
      for (const requirement of [
        `${fails} || ${missing}`,
        `${missing} || ${fails}`,
        `${fails} && ${missing}`,
      ]) {
        const { status, conditions } = finding({ requirement, condition: 'Wait.' }, sheet);
        expect([['error', 'unknown'].includes(status), conditions]).toEqual([true, []]);
      }
  });
});
