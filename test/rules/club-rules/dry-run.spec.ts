/** What one rule of the club would have changed in decisions that were made without it, or with its earlier version. */
import {
  answerWith,
  compileUndated,
  decide,
  known,
  rulesetFor,
  startingPolicy,
  tryRule,
  type ClubRule,
  type FactSheet,
  type Policy,
  type Rule,
  type Ruleset,
} from '../../../src/rules/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { memberWith, rule } from './scene.js';

const POLICY = startingPolicy();

/** Tries a rule on the decision that was made of a sheet, and says what came of it. */
function tried(
  of: Partial<ClubRule>,
  sheet: FactSheet,
  { policy = POLICY, earlier = [] }: { policy?: Policy; earlier?: ClubRule[] } = {},
) {
  const then = { ...policy, rules: earlier };
  const asThen = rulesetFor('US', then);
  const decision = decide(sheet, then, asThen);
  const own = compileUndated(rule(of)) as Rule;
  const one = {
    ...{ sheet, policy, asOf: sheet.flight.departs, answer: decision.answer },
    rules: Object.fromEntries(decision.findings.map(({ rule: id, version }) => [id, [version]])),
  };
  const found = tryRule(own, one);
  let judgedAgain = 0;
  const answer = answerWith(own, found, {
    ...{ ...one, decision },
    asThen: (): Ruleset => {
      judgedAgain += 1;
      return asThen;
    },
  });
  // The whole set with the rule says the same: what is left out in a dry run is work, never an answer.
  const whole = { ...asThen, rules: [...asThen.rules.filter(({ id }) => id !== own.id), own] };
  expect(answer).toBe(decide(sheet, then, whole).answer);
  if (!found.matters) expect(answer).toBe(decision.answer);
  return {
    before: decision.answer,
    answer,
    matters: found.matters,
    dual: found.dual,
    status: found.finding.status,
    judgedAgain,
  };
}

const stale = (): FactSheet => memberWith({ reviews: known([], baseSheet().knownAt) });

describe('on a flight that was allowed', () => {
  test('a rule that is kept, or asks nothing, or only advises, changes nothing and matters not', () => {
    const same = { before: 'yes-with-conditions', answer: 'yes-with-conditions', matters: false, dual: null };
    expect(tried({ requirement: 'flight.alone' }, baseSheet())).toMatchObject({ ...same, status: 'met' });
    expect(
      tried({ requirement: 'flight.forHire', appliesWhen: 'flight.forHire' }, baseSheet()),
    ).toMatchObject({
      ...{ ...same, status: 'not-applicable', judgedAgain: 0 },
    });
    expect(tried({ requirement: 'flight.forHire', weight: 'advice' }, baseSheet())).toMatchObject({
      ...{ ...same, status: 'short', judgedAgain: 0 },
    });
  });

  test('one that sets a condition matters, whatever it makes of the answer', () => {
    const condition = 'Go only with a wind of 20 kt or less.';
    expect(tried({ requirement: 'wind.speedKt <= 20.0', condition }, baseSheet())).toMatchObject({
      ...{ status: 'unknown', matters: true, answer: 'yes-with-conditions', judgedAgain: 0 },
    });
  });

  test('one that is not kept sends to an officer, or to an instructor where it would then be kept', () => {
    // Nobody looked at the flight with an instructor, so everything is judged again.
    expect(tried({ requirement: 'flight.forHire' }, baseSheet())).toMatchObject({
      ...{ matters: true, answer: 'ask-officer', dual: null, judgedAgain: 1 },
    });
    expect(tried({ requirement: 'flight.instruction' }, baseSheet())).toMatchObject({
      ...{ matters: true, answer: 'dual-only', dual: null, judgedAgain: 1 },
    });
  });

  test('on an errand of its own no instructor is a way', () => {
    const ferry = memberWith({}, { purpose: 'maintenance' });
    expect(tried({ requirement: 'flight.instruction' }, ferry)).toMatchObject({
      ...{ matters: true, answer: 'ask-officer', judgedAgain: 0 },
    });
  });
});

describe('on a flight that was allowed with an instructor only', () => {
  test('a rule that is kept both ways changes nothing', () => {
    const kept = tried({ requirement: 'flight.passengers == 0' }, stale());
    expect(kept).toMatchObject({ before: 'dual-only', answer: 'dual-only', matters: false, judgedAgain: 0 });
    expect(kept.dual!.finding.status).toBe('met');
    // The instructor is aboard, and not named yet.
    expect(kept.dual!.crew).toMatchObject({ instruction: true, picId: null, passengers: 0, alone: false });
  });

  test('one that is not kept with an instructor either takes the way', () => {
    expect(tried({ requirement: 'flight.forHire' }, stale())).toMatchObject({
      ...{ answer: 'no', matters: true, judgedAgain: 0, dual: { finding: { status: 'short' } } },
    });
  });

  test('one that is only in the instructor’s way takes it too', () => {
    expect(tried({ requirement: 'flight.purpose != "dual"' }, stale())).toMatchObject({
      ...{ status: 'met', answer: 'no', matters: true, judgedAgain: 0 },
      dual: { finding: { status: 'short' } },
    });
  });

  test('one that is only in the way of the flight alone leaves it', () => {
    expect(tried({ requirement: 'flight.instruction' }, stale())).toMatchObject({
      ...{ status: 'short', answer: 'dual-only', matters: true, judgedAgain: 0 },
    });
  });

  test('what binds the instructor waits for the name', () => {
    // Nobody is named, so the age cannot be told; that does not take the way.
    expect(tried({ requirement: 'pilot.ageYears > 0' }, stale())).toMatchObject({
      ...{ answer: 'dual-only', matters: false, dual: { finding: { status: 'unknown' } } },
    });
  });
});

test('a lesson without an instructor has no second way to look at', () => {
  const lesson = memberWith({}, { purpose: 'dual', personsOnBoard: 2 });
  expect(tried({ requirement: 'flight.forHire' }, lesson)).toMatchObject({
    ...{ before: 'dual-only', answer: 'ask-officer', dual: null, judgedAgain: 0 },
  });
});

test('a flight that was refused stays so without an instructor being looked at', () => {
  const grounded = baseSheet();
  grounded.aircraft.registration = known([], grounded.knownAt);
  expect(tried({ requirement: 'flight.alone' }, grounded)).toMatchObject({
    ...{ before: 'no', answer: 'no', matters: false, dual: null, judgedAgain: 0 },
  });
});

describe('in place of an earlier version', () => {
  const strict = rule({ requirement: 'flight.forHire' });

  test('a rule always matters, and the earlier one no longer counts', () => {
    expect(
      tried({ version: 2, requirement: 'flight.alone' }, baseSheet(), { earlier: [strict] }),
    ).toMatchObject({
      ...{ before: 'ask-officer', answer: 'yes-with-conditions', matters: true, judgedAgain: 0 },
    });
  });

  test('where an instructor may be the way, the others are judged again without the earlier one', () => {
    expect(
      tried({ version: 2, requirement: 'flight.instruction' }, baseSheet(), { earlier: [strict] }),
    ).toMatchObject({
      ...{ before: 'ask-officer', answer: 'dual-only', matters: true, judgedAgain: 1 },
    });
    expect(
      tried({ version: 2, requirement: 'flight.hours > 9.0' }, baseSheet(), { earlier: [strict] }),
    ).toMatchObject({
      ...{ before: 'ask-officer', answer: 'ask-officer', judgedAgain: 1 },
    });
  });

  test('and the others stand in an instructor’s way as before', () => {
    const other = rule({ code: 'club.own.other', requirement: 'flight.forHire' });
    expect(
      tried({ version: 2, requirement: 'flight.instruction' }, baseSheet(), { earlier: [strict, other] }),
    ).toMatchObject({
      ...{ before: 'ask-officer', answer: 'ask-officer', judgedAgain: 1 },
    });
  });

  test('another rule of the club stays in force beside it', () => {
    const other = rule({ code: 'club.own.other', requirement: 'flight.passengers > 0' });
    expect(tried({ requirement: 'flight.instruction' }, baseSheet(), { earlier: [other] })).toMatchObject({
      ...{ before: 'ask-officer', answer: 'ask-officer', judgedAgain: 0 },
    });
  });
});

test('who is a passenger goes by the club’s own policy', () => {
  const two = memberWith({}, { purpose: 'passengers', personsOnBoard: 2, secondPilotId: 'instructor-1' });
  const counting = (value: boolean): Policy => ({
    ...POLICY,
    values: [
      ...POLICY.values.filter(({ id }) => id !== 'club.crew.second-pilot-is-passenger'),
      { id: 'club.crew.second-pilot-is-passenger', from: null, value, reference: 'Minutes' } as never,
    ],
  });
  const requirement = 'flight.passengers == 0';
  expect(tried({ requirement }, two, { policy: counting(false) }).status).toBe('met');
  expect(tried({ requirement }, two, { policy: counting(true) }).status).toBe('short');
});
