/**
 * Limits beyond the law against what is published: the kinds of limits and the advice of the FAA personal minimums worksheet
 * (in “Conducting an Effective Flight Review”, version 1.1 of 2006; seen in public copies), the student’s limits of 14 CFR
 * 61.89(a)(8) (seen), and a worked crosswind of the Pilot’s Handbook of Aeronautical Knowledge (from memory).
 */
import { SetLimitsDto } from '../../src/members/limits/limits.dto.js';
import { fieldsOf } from '../../src/platform/http/fields.js';
import {
  ALL_RULES,
  decide,
  known,
  rulesetFor,
  startingPolicy,
  type FactSheet,
} from '../../src/rules/index.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';
import { CERTIFICATE, LIMITS } from '../../src/rules/workshop/records.js';

/** The worksheet’s lines, each with the limit it is here. */
const WORKSHEET = {
  'Ceiling, day': 'ceilingDayFtAgl',
  'Ceiling, night': 'ceilingNightFtAgl',
  'Visibility, day': 'visibilityDaySm',
  'Visibility, night': 'visibilityNightSm',
  'Surface wind speed': 'windKt',
  'Surface wind gust': 'gustSpreadKt',
  'Crosswind component': 'crosswindKt',
  'Shortest runway': 'runwayFt',
} as const;
/** Its other lines: nothing about a flight that is asked for tells them, so no limit is kept that nothing could hold it to. */
const NOT_KEPT = ['Turbulence', 'Highest terrain', 'Highest density altitude'];

test.each(Object.entries(WORKSHEET))('the worksheet’s “%s” can be set and is judged', (_line, limit) => {
  expect([...fieldsOf(SetLimitsDto).keys()]).toContain(limit);
  expect(typeof LIMITS[limit]).toBe('number');
});

test('no other figure is kept, and the lines left out are known', () => {
  const figures = Object.entries(LIMITS).filter(([, value]) => typeof value === 'number');
  expect(figures.map(([name]) => name).sort()).toEqual(Object.values(WORKSHEET).sort());
  expect(NOT_KEPT).toHaveLength(3);
});

test('“do not lower personal minimums for a specific flight”: looser ones wait at least for the next day', () => {
  const starts = startingPolicy().values.find(({ id }) => id === 'club.limits.looser-after-days');
  expect(starts?.value).toBeGreaterThanOrEqual(1);
});

/** The base flight with limits, judged by one rule. */
function judged(rule: string, change: (sheet: FactSheet) => void) {
  const sheet = baseSheet();
  change(sheet);
  const policy = startingPolicy();
  const pack = rulesetFor('US', policy);
  const rules = pack.rules.filter(({ id }) => id === rule);
  expect(rules).toHaveLength(1);
  return decide(sheet, policy, { ...pack, rules });
}

// Runway 17, wind 140 degrees at 25 kt: 30 degrees off, about 13 kt across and 22 along (FAA-H-8083-25, from memory).
test.each([
  [13, 'met'],
  [12, 'short'],
])('the handbook’s 13 kt across against a limit of %i kt', (crosswindKt, status) => {
  const decision = judged('personal.wind', (sheet) => {
    const [field] = sheet.flight.route;
    const runway = { ...field!.runways[0]!, designator: '17', trueHeadingDeg: 170 };
    sheet.flight.route = [{ ...field!, runways: [runway] }];
    sheet.flight.weather = {
      ...{ observedAt: sheet.flight.departs, windFromDeg: 140, windKt: 25, gustKt: 25 },
      ...{ visibilitySm: 10, ceilingFtAgl: 5000, temperatureC: 10, altimeterInHg: 29.92 },
    };
    const limits = { ...LIMITS, windKt: null, gustSpreadKt: null, crosswindKt };
    sheet.people['member-1']!.limits = known([limits], sheet.knownAt);
  });
  expect(decision.findings[0]!.status).toBe(status);
});

// 14 CFR 61.89(a)(8): no student acts as pilot in command contrary to any limitations an instructor placed in the logbook.
test.each([
  ['student', 'short'],
  ['private', 'not-applicable'],
] as const)('an instructor’s limits and a %s pilot alone at night', (level, status) => {
  const decision = judged('club.student_limits.night', (sheet) => {
    sheet.flight.departs = '2027-03-02T02:00:00Z';
    sheet.flight.arrives = '2027-03-02T03:00:00Z';
    const person = sheet.people['member-1']!;
    person.certificates = known([{ ...CERTIFICATE, level }], sheet.knownAt);
    person.limits = known([{ ...LIMITS, setBy: 'instructor' }], sheet.knownAt);
  });
  expect(decision.findings[0]!.status).toBe(status);
});

test('one’s own never stand in the way, an instructor’s do, and an officer may be asked', () => {
  const weights = ALL_RULES.filter(({ id }) => /^(personal|club\.student_limits)\./.test(id)).map(
    ({ id, weight, neverOverridden }) => [id.split('.')[0], weight, neverOverridden ?? false],
  );
  expect(weights).toEqual([
    ...Array<unknown>(4).fill(['club', 'club', false]),
    ...Array<unknown>(4).fill(['personal', 'advice', false]),
  ]);
});
