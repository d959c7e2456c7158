/**
 * What is not known, in three values.
 *
 * Source of the truth tables: the CEL specification's `ExprValue.unknown` (google/api/expr/v1beta1/eval.proto): unknowns go
 * through like errors, `(unknown || true) && unknown2` is unknown2, and only unknowns on the critical path count.
 */
import { known } from '../../../src/rules/index.js';
import { finding, flown, flying, KNOWN_AT, memberWith, NOTHING, status } from './scene.js';

/** A sheet on which the pilot's age is not on record; everything else is. */
const sheet = memberWith({ birthDate: NOTHING });
const T = 'flight.alone';
const F = 'flight.forHire';
const U = '(pilot.ageYears > 0)';

test('the operands are what the tables take them for', () => {
  expect([T, F, U].map((one) => status(one, sheet))).toEqual(['met', 'short', 'unknown']);
});

// Kleene's tables: met = true, short = false.
test.each([
  [`${T} || ${U}`, 'met'],
  [`${U} || ${T}`, 'met'],
  [`${F} || ${U}`, 'unknown'],
  [`${U} || ${F}`, 'unknown'],
  [`${U} || ${U}`, 'unknown'],
  [`${T} && ${U}`, 'unknown'],
  [`${U} && ${T}`, 'unknown'],
  [`${F} && ${U}`, 'short'],
  [`${U} && ${F}`, 'short'],
  [`${U} && ${U}`, 'unknown'],
  [`!${U}`, 'unknown'],
  [`${T} ? ${T} : ${U}`, 'met'],
  [`${T} ? ${U} : ${T}`, 'unknown'],
  [`${F} ? ${U} : ${T}`, 'met'],
  [`${F} ? ${T} : ${U}`, 'unknown'],
  // An unknown condition decides nothing, even where both ways are the same (CEL: the condition is evaluated first).
  [`${U} ? ${T} : ${T}`, 'unknown'],
  [`(${U} || ${T}) && ${F}`, 'short'],
  [`(${U} || ${T}) && ${U}`, 'unknown'],
  [`(${U} && ${F}) || ${T}`, 'met'],
  [`${U} == ${U}`, 'unknown'],
  [`${U} == true`, 'unknown'],
  // Over lists: `all` is a row of &&, `exists` a row of ||.
  [`["a", "b"].all(x, x == "a" && ${U})`, 'short'],
  [`["a", "b"].all(x, x != "c" || ${U})`, 'met'],
  [`["a", "b"].all(x, ${U})`, 'unknown'],
  [`["a", "b"].exists(x, x == "b" || ${U})`, 'met'],
  [`["a", "b"].exists(x, x == "c" && ${U})`, 'short'],
  [`["a", "b"].exists(x, x == "a" && ${U})`, 'unknown'],
  [`["a", "b"].exists_one(x, x == "a" || ${U})`, 'unknown'],
  [`["a"].filter(x, ${U}).size() == 0`, 'unknown'],
])('%s is %s', (requirement, expected) => {
  expect(status(requirement, sheet)).toBe(expected);
});

describe('what a rule is asked of may be unknown too', () => {
  test.each([
    [F, U, 'not-applicable'],
    [U, T, 'met'],
    [U, F, 'unknown'],
    [U, U, 'unknown'],
    [T, U, 'unknown'],
  ])('asked where %s: %s is %s', (appliesWhen, requirement, expected) => {
    expect(finding({ appliesWhen, requirement }, sheet).status).toBe(expected);
  });
});

test('it says what is missing', () => {
  expect(finding({ requirement: 'pilot.ageYears >= 18' }, sheet).says).toBe(
    'Cannot tell: it is not on record.',
  );
});

describe('facts that were not kept', () => {
  test('totals need the sums of earlier flying; a sheet stored without them does not know', () => {
    const old = memberWith({ log: known([flown('2027-02-01')], KNOWN_AT) });
    delete old.people['member-1']!.logBefore;
    expect(status('pilot.totalHours >= 0.5', old)).toBe('unknown');
    expect(status('pilot.hoursInDays(90) >= 0.5', old)).toBe('met');
    expect(status('pilot.totalHours >= 41.0', memberWith(flying([flown('2027-02-01')], 400)))).toBe('met');
    expect(status('pilot.totalHours >= 41.1', memberWith(flying([flown('2027-02-01')], 400)))).toBe('short');
  });

  test('a person who is not named is not known', () => {
    const dual = memberWith({}, { purpose: 'dual', personsOnBoard: 2 });
    expect(status('instructor.ageYears > 0', dual)).toBe('unknown');
    expect(status('pilot.ageYears > 0', dual)).toBe('unknown');
    expect(status('!flight.instructorNamed || instructor.ageYears > 0', dual)).toBe('met');
  });
});

describe('what is told late', () => {
  const asks = {
    requirement: 'wind.crosswindKt <= 10.0',
    condition: 'Go only with a crosswind of 10 kt or less.',
  };

  test('refuses without a condition, and becomes the condition where the rule has one', () => {
    expect(finding({ requirement: asks.requirement })).toMatchObject({ status: 'unknown', conditions: [] });
    expect(finding(asks)).toMatchObject({ status: 'unknown', conditions: [asks.condition] });
  });

  test('refuses all the same when something else is missing as well, on either side', () => {
    for (const requirement of [
      `wind.crosswindKt <= 10.0 && ${U}`,
      `${U} && wind.crosswindKt <= 10.0`,
      `wind.crosswindKt <= 10.0 || ${U}`,
      `${U} || wind.crosswindKt <= 10.0`,
    ])
      expect(finding({ ...asks, requirement }, sheet)).toMatchObject({ status: 'unknown', conditions: [] });
  });

  test('is a verdict once it is told', () => {
    const weather = {
      ...{ observedAt: '2027-03-01T17:30:00Z', windFromDeg: 188, windKt: 12, gustKt: null },
      ...{ visibilitySm: 10, ceilingFtAgl: null, temperatureC: 5, altimeterInHg: null },
    };
    // Runways 098 and 278: 188 blows wholly across.
    expect(finding(asks, memberWith({}, { weather })).status).toBe('short');
    expect(finding(asks, memberWith({}, { weather: { ...weather, windKt: 10 } })).status).toBe('met');
    // Observed too long before, it says nothing of the departure.
    const old = { ...weather, observedAt: '2027-03-01T15:59:59Z' };
    expect(finding(asks, memberWith({}, { weather: old }))).toMatchObject({ status: 'unknown' });
  });

  test('a runway that is not on record is not something the member tells', () => {
    const field = { ...memberWith({}).flight.route[0]!, runways: [] };
    const weather = {
      ...{ observedAt: '2027-03-01T17:30:00Z', windFromDeg: 188, windKt: 2, gustKt: null },
      ...{ visibilitySm: null, ceilingFtAgl: null, temperatureC: null, altimeterInHg: null },
    };
    expect(finding(asks, memberWith({}, { weather, route: [field, field] }))).toMatchObject({
      status: 'unknown',
      conditions: [],
    });
  });
});
