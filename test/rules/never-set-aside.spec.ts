/**
 * Which rules of the club no officer sets aside, and why. Source: the club handbook's sections named; for evidence of
 * citizenship 49 CFR part 1552 (from memory). Whatever the law says is set aside by nobody in any case (weight `law`).
 */
import { ALL_RULES } from '../../src/rules/index.js';
import { isOverridable } from '../../src/rules/engine/rule.js';

const NEVER: Record<string, string> = {
  'aircraft.in_service': 'an aircraft that is not there flies with nobody’s leave',
  'calendar.aircraft_free': 'two crews do not share an aircraft',
  'calendar.instructor_free': 'nor do two learners an instructor',
  'calendar.member_free': 'nor is a member in two places',
  'club.runway_length': 'leave makes no runway longer',
  'club.citizenship_evidence': 'leave is no evidence before the security authority, 49 CFR 1552',
  'club.insurance_minimums': 'leave makes nobody insured',
};

test('of the club’s rules exactly these are set aside by nobody', () => {
  const never = ALL_RULES.filter((rule) => rule.weight === 'club' && !isOverridable(rule)).map(
    ({ id }) => id,
  );
  expect(never.sort()).toEqual(Object.keys(NEVER).sort());
});

test('and none of the law’s', () => {
  const law = ALL_RULES.filter(({ weight }) => weight === 'law');
  expect(law.length).toBeGreaterThan(50);
  expect(law.filter(isOverridable)).toEqual([]);
});
