/** The words of an explanation, as people read them where they are used: one table for each thing that is said. */
import {
  decide,
  defineRule,
  known,
  rulesetFor,
  startingPolicy,
  type Answer,
  type Finding,
  type Rule,
  type Status,
} from '../../../src/rules/index.js';
import * as E from '../../../src/rules/explain/index.js';
import { MISSING, UNVERIFIED, A_BOOKING_OF } from '../../../src/rules/explain/record-words.js';
import { valueSays } from '../../../src/rules/explain/parameter-words.js';
import type { FactKey } from '../../../src/rules/facts/keys.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';

const POLICY = startingPolicy();
const US = rulesetFor('US', POLICY);

/** A rule that exists for its header alone. */
const ruleOf = (header: Partial<Rule>): Rule =>
  defineRule({
    ...{ id: 'x.y', title: 'X', weight: 'law', binds: 'pilot', reads: [], parameters: [] },
    branches: { held: { status: 'met', says: 'Held.' }, missed: { status: 'short', says: 'Missed.' } },
    bodies: [
      {
        ...{ version: 1, from: null, to: null, citation: { text: 'X 1', status: 'seen' } },
        judge: (_f, _m, _p, take) => take('held'),
      },
    ],
    ...header,
  } as Rule) as unknown as Rule;
const inBook = (header: Partial<Rule>) => E.explainRule(ruleOf(header), US, '2027-03-01');
const derived = (fields: Partial<Finding>, rule = ruleOf({})) => {
  const sheet = baseSheet();
  const ruleset = { ...US, rules: [rule] };
  const [finding] = decide(sheet, POLICY, ruleset).findings;
  return E.derive({ ...finding!, ...fields }, { sheet, ruleset, asOf: sheet.flight.departs }, null);
};

describe('a rule of the book', () => {
  test.each<[Rule['weight'], boolean, string, string]>([
    ['law', false, 'law', 'The law: nobody in the club may set it aside.'],
    [
      'club',
      false,
      'club rule',
      'A club rule: an officer may set it aside, with a reason, where the club’s policy allows it.',
    ],
    ['club', true, 'club rule', 'A club rule that not even an officer sets aside.'],
    ['advice', false, 'advice', 'Advice: it never stands in the way of a flight.'],
  ])('of weight %s, never set aside: %s', (weight, never, word, says) => {
    const rule = { weight, ...(never && { neverOverridden: true as const }) };
    expect(inBook(rule)).toMatchObject({ weightWord: word, weightSays: says });
    // A finding says of itself what the book says of its rule.
    expect(derived({}, ruleOf(rule))).toMatchObject({ weightWord: word, weightSays: says });
  });

  test.each<[Rule['binds'], string]>([
    ['pilot', 'the pilot in command'],
    ['member', 'the member who books'],
    ['instructor', 'the instructor'],
    ['aircraft', 'the aircraft'],
    ['flight', 'the flight'],
    ['club', 'the club'],
  ])('that binds the %s', (binds, word) => {
    expect(inBook({ binds }).bindsWord).toBe(word);
    expect(derived({}, ruleOf({ binds })).bindsWord).toBe(word);
  });

  test.each<[Rule['bodies'][number]['citation']['status'], string]>([
    ['seen', 'held against a public copy of the text'],
    ['from memory', 'from memory, not yet held against the text'],
    ['common practice, no source', 'common practice, without a source'],
    ['club paper', 'a paper of the club'],
  ])('whose source is known as “%s”', (status, word) => {
    const [body] = ruleOf({}).bodies;
    expect(inBook({ bodies: [{ ...body!, citation: { text: 'X 1', status } }] }).inForce!.sourceWord).toBe(
      word,
    );
  });

  test('tells how it can come out, in its own order', () => {
    const branches = {
      done: { status: 'met', says: 'Done on {on}.' },
      due: { status: 'short', says: 'Due.' },
      none: { status: 'not-applicable', says: 'None.' },
    } as const;
    expect(E.explainBranches(ruleOf({ branches }))).toEqual([
      { name: 'done', status: 'met', statusWord: 'met', says: 'Done on …' },
      { name: 'due', status: 'short', statusWord: 'not met', says: 'Due.' },
      { name: 'none', status: 'not-applicable', statusWord: 'does not apply', says: 'None.' },
    ]);
  });

  test('tells its condition where it has one, and offers no cure that no case has shown', () => {
    expect(inBook({ settledAt: 'departure', whenUnknown: 'Look at the sky.' })).toMatchObject({
      ...{ whenUnknown: 'Look at the sky.', title: 'X', id: 'x.y', binds: 'pilot', weight: 'law' },
      cures: [],
    });
    expect(inBook({}).whenUnknown).toBeNull();
  });
});

test.each<[Status, string]>([
  ['met', 'met'],
  ['short', 'not met'],
  ['unknown', 'cannot tell'],
  ['not-applicable', 'does not apply'],
  ['error', 'could not be judged'],
])('a finding that is %s', (status, word) => {
  expect(derived({ status }).statusWord).toBe(word);
});

test.each<[Answer, string, string]>([
  ['yes', 'Yes', 'yes'],
  ['yes-with-conditions', 'Yes, if', 'yes, if'],
  ['dual-only', 'With an instructor', 'with an instructor'],
  ['ask-officer', 'Ask an officer', 'ask an officer'],
  ['no', 'No', 'no'],
])('the answer %s, alone and in a sentence', (answer, word, within) => {
  expect(E.ANSWER_WORD[answer]).toBe(word);
  const sheet = baseSheet();
  const decision = { ...decide(sheet, POLICY, US), answer };
  expect(E.explainAnswer(decision, { sheet, ruleset: US, asOf: decision.asOf }).answerWord).toBe(word);
  expect(E.withInstructor(answer)).toBe(`The same flight with an instructor: “${within}”.`);
});

test.each<[NonNullable<ReturnType<typeof known>['status']>, string]>([
  ['recorded', 'on record'],
  ['declared', 'as told by the member'],
  ['planned', 'planned'],
  ['projected', 'projected, not yet on record'],
])('a fact that is %s', (firmness, word) => {
  const sheet = baseSheet();
  sheet.people['member-1']!.birthDate = known('1990-06-01', sheet.knownAt, firmness);
  const { crew } = decide(sheet, POLICY, US);
  expect(E.explainFact('pic.birthDate', { sheet, crew, counted: [], fields: new Set() })).toMatchObject({
    ...{ firmness, firmnessWord: word },
  });
});

test.each<[string, string]>([
  ['member', 'you'],
  ['instructor', 'you and an instructor'],
  ['examiner', 'you and an examiner'],
  ['medical-examiner', 'you and a medical examiner'],
  ['maintenance-coordinator', 'the maintenance coordinator'],
  ['mechanic', 'a mechanic'],
  ['officer', 'an officer'],
  ['administrator', 'the administrator'],
])('what the %s can do', (actor, word) => {
  expect(E.ACTOR_WORD[actor as keyof typeof E.ACTOR_WORD]).toBe(word);
});

test.each<[FactKey, string, string]>([
  ['pic.birthDate', 'the pilot’s date of birth', 'date of birth'],
  ['pic.certificates', 'the pilot’s certificates and ratings', 'pilot certificate'],
  ['instructor.instructor', 'the instructor’s instructor certificates', 'instructor certificate'],
  ['pic.medicals', 'the pilot’s medical certificates', 'medical certificate'],
  ['pic.basicMed', 'the pilot’s BasicMed papers', 'BasicMed papers'],
  ['pic.reviews', 'the pilot’s flight reviews and checks', 'review or check'],
  ['pic.endorsements', 'the pilot’s endorsements', 'endorsement'],
  ['pic.ratings', 'the pilot’s ratings with an end', 'rating'],
  ['pic.log', 'the pilot’s log', 'log entry'],
  ['pic.logBefore', 'the pilot’s earlier flying', 'sum of earlier flying'],
  ['pic.checkouts', 'the pilot’s club sign-offs', 'club sign-off'],
  ['member.standing', 'the member’s standing with the club', 'membership record'],
  ['instructor.commitments', 'the instructor’s calendar', 'booking'],
  ['pic.unverified', 'the pilot’s papers that no officer has verified yet', 'unverified paper'],
  ['aircraft.type', 'the aircraft’s type and data', 'aircraft record'],
  ['aircraft.use', 'the aircraft’s use by the club', 'aircraft record'],
  ['aircraft.meters', 'the aircraft’s meter readings', 'meter reading'],
  ['aircraft.items', 'the aircraft’s inspections and maintenance items', 'maintenance item'],
  ['aircraft.registration', 'the aircraft’s registration', 'registration certificate'],
  ['aircraft.equipment', 'the aircraft’s equipment', 'piece of equipment'],
  ['aircraft.squawks', 'the aircraft’s open squawks', 'squawk'],
  ['aircraft.permits', 'the aircraft’s special flight permits', 'special flight permit'],
  ['aircraft.reservations', 'the aircraft’s bookings', 'booking'],
  ['aircraft.differences', 'the aircraft’s changes of equipment', 'change of equipment'],
  ['aircraft.work', 'the aircraft’s work in hand', 'piece of work'],
])('the fact %s', (key, name, record) => {
  expect(E.factWords(key)).toBe(name);
  expect(E.subjectWords(key).record).toBe(record);
});

test('each record of a fact says what kind of record it is', () => {
  const sheet = baseSheet();
  const { crew } = decide(sheet, POLICY, US);
  const of = { sheet, crew, counted: [], fields: new Set<string>(['seats']) };
  expect(E.explainFact('pic.medicals', of).records[0]!.kind).toBe('medical certificate');
  expect(E.explainFact('aircraft.meters', of).records[0]!.kind).toBe('meter reading');
});

describe('on somebody else’s record', () => {
  const [ada, both] = [
    { name: 'Ada', andOwn: false },
    { name: 'Ada', andOwn: true },
  ];

  test.each<[Status, string, string]>([
    ['met', 'Ada meets this rule.', 'You and Ada meet this rule.'],
    [
      'short',
      'Ada does not meet this rule. Ask them, or an officer.',
      'You or Ada do not meet this rule. Ask them, or an officer.',
    ],
    [
      'unknown',
      'It cannot be told whether Ada meets this rule. Ask them, or an officer.',
      'It cannot be told whether you and Ada meet this rule. Ask them, or an officer.',
    ],
    ['not-applicable', 'This rule does not apply.', 'This rule does not apply.'],
    [
      'error',
      'This rule could not be judged for Ada. Ask an officer.',
      'This rule could not be judged for you and Ada. Ask an officer.',
    ],
  ])('%s is all that is told', (status, says, saysOfBoth) => {
    expect(E.COVERED[status](ada)).toBe(says);
    expect(E.COVERED[status](both)).toBe(saysOfBoth);
  });

  test('a condition and the facts are named as theirs', () => {
    expect(E.coveredCondition(both)).toBe('Ada settles a condition on their own record; ask them.');
    expect(E.withheld(ada)).toBe(
      'What was read is on the record of Ada, and is shown to them, to instructors and to officers.',
    );
  });
});

test('what the engine adds to a rule is said in full', () => {
  expect(E.cannotTell('the log is being copied')).toBe('Cannot tell: the log is being copied.');
  expect(E.notJudged('a slip')).toBe('This rule could not be judged (a slip).');
  expect(E.changesFrom('2027-03-10T07:00:00Z')).toBe('Changes for a departure from 2027-03-10T07:00:00Z.');
});

test('a timeline that could not be followed says from where nothing is promised', () => {
  expect(E.notFollowedBeyond('2028-01-01T00:00:00Z')).toBe(
    'Not every rule could be followed beyond 2028-01-01T00:00:00Z; from there on it counts as one that cannot be told.',
  );
});

describe('small words', () => {
  test('yes and no', () => {
    expect([true, false].map(E.yesNo)).toEqual(['yes', 'no']);
  });

  test.each([
    [0, 'landing', undefined, '0 landings'],
    [1, 'landing', undefined, '1 landing'],
    [2, 'landing', undefined, '2 landings'],
    [1, 'approach', 'approaches', '1 approach'],
    [3, 'approach', 'approaches', '3 approaches'],
  ])('%d %s', (count, single, many, says) => {
    expect(E.counted(count, single, many)).toBe(says);
  });

  test('lists, thousands, a capital', () => {
    expect(E.listed(['a', 'b'])).toBe('a and b');
    expect(E.listed(['a', 'b', 'c', 'd'])).toBe('a, b, c and d');
    expect([999, 10_000].map(E.grouped)).toEqual(['999', '10,000']);
    expect([E.capital('it holds'), E.capital('')]).toEqual(['It holds', '']);
  });

  test('of records as they are gathered', () => {
    expect(`Cannot tell: ${MISSING.birthDate}.`).toBe('Cannot tell: the birth date is not on record.');
    expect([`private${UNVERIFIED.certificate}`, UNVERIFIED.instructor, `${UNVERIFIED.medical}3`]).toEqual([
      'private certificate',
      'instructor certificate',
      'medical certificate of class 3',
    ]);
    expect([UNVERIFIED.basicMed, `solo${UNVERIFIED.endorsement}`, `night${UNVERIFIED.rating}`]).toEqual([
      'BasicMed papers',
      'solo endorsement',
      'night rating',
    ]);
    expect(`${A_BOOKING_OF}NX101B`).toBe('a booking of NX101B');
  });
});

describe('a number', () => {
  test.each<[Parameters<typeof valueSays>[0], Parameters<typeof valueSays>[1], string]>([
    [1, 'days', '1 day'],
    [90, 'days', '90 days'],
    [0, 'days', '0 days'],
    [1, 'calendar-months', '1 calendar month'],
    [24, 'calendar-months', '24 calendar months'],
    [6, 'months', '6 months'],
    [7, 'years', '7 years'],
    [1, 'hours', '1 hour'],
    [100, 'hours', '100 hours'],
    [3, 'count', '3'],
    [45, 'minutes', '45 minutes'],
    [18_000, 'ft', '18,000 ft'],
    [1, 'kt', '1 kt'],
    [250, 'kt', '250 kt'],
    [12_500, 'lb', '12,500 lb'],
    [50, 'nm', '50 NM'],
    [1, 'nm', '1 NM'],
    [3, 'sm', '3 SM'],
    [1, 'sm', '1 SM'],
    [200, 'hp', '200 hp'],
    [1, 'hp', '1 hp'],
    ['2006-07-14', 'date', '2006-07-14'],
    [true, 'flag', 'yes'],
    [false, 'flag', 'no'],
    ['strict', 'choice', 'strict'],
    ['ask the desk', 'text', 'ask the desk'],
    [6, 'degrees', '6 degrees'],
    [95.5, 'money', '95.5'],
    [1, 'points', '1 point'],
    [12, 'points', '12 points'],
    ['none above', 'ft', 'none above ft'],
    // Of a number that nobody declared, the bare value.
    [1500, null, '1500'],
    [null, 'days', 'no value'],
    ['', 'text', 'no value'],
    ['  ', 'text', 'no value'],
    [false, null, 'false'],
  ])('%j in %s is “%s”', (value, unit, says) => {
    expect(valueSays(value, unit)).toBe(says);
  });
});

describe('a number of the book', () => {
  const ID = 'us.registration.years';
  const NUMBER = {
    ...{ id: ID, title: 'Years a registration lasts', unit: 'years', status: 'seen' },
    ...{ checkedOn: '2026-11-01', recheckAfterMonths: 12 },
  };
  const bookOf = (values: object[], of: object = {}) =>
    new (US.book.constructor as new (...args: unknown[]) => typeof US.book)([{ ...NUMBER, ...of, values }], {
      values: values.map((one) => ({ id: 'club.made.up', ...one })),
    });
  const three = [
    { from: null, value: 3, reference: 'as it was' },
    { from: '2023-01-23', value: 7, reference: 'as amended' },
    { from: '2030-01-01', value: null, reference: 'repealed' },
  ];

  test.each([
    ['2023-01-22', { from: null, to: '2023-01-23', value: 3, says: '3 years', reference: 'as it was' }],
    [
      '2023-01-23',
      { from: '2023-01-23', to: '2030-01-01', value: 7, says: '7 years', reference: 'as amended' },
    ],
    [
      '2029-12-31',
      { from: '2023-01-23', to: '2030-01-01', value: 7, says: '7 years', reference: 'as amended' },
    ],
    // A number that has ended is not in force, rather than in force with no value.
    ['2030-01-01', null],
  ])('on %s', (day, inForce) => {
    expect(E.explainParameter(bookOf(three), ID, day)).toMatchObject({
      ...{ id: ID, title: NUMBER.title, unit: 'years', ofClub: false, inForce },
      ...{ checkedOn: '2026-11-01', status: 'seen' },
      history: [
        { from: null, to: '2023-01-23', says: '3 years' },
        { from: '2023-01-23', to: '2030-01-01', says: '7 years' },
        { from: '2030-01-01', to: null, value: null, says: 'no value' },
      ],
    });
  });

  test('has no value before its first', () => {
    expect(E.explainParameter(bookOf(three.slice(1)), ID, '2020-01-01').inForce).toBeNull();
  });

  test('of the club is nobody’s to hold against a source', () => {
    const book = bookOf([{ from: null, value: 60, reference: 'Minutes of 3 May' }], { id: 'club.made.up' });
    expect(E.explainParameter(book, 'club.made.up', '2027-03-01')).toMatchObject({
      ...{ ofClub: true, checkedOn: null, status: null, unit: 'years' },
      inForce: { value: 60, says: '60 years', reference: 'Minutes of 3 May' },
    });
  });

  test('that nobody declared goes by its id, and its values stand bare', () => {
    expect(E.explainParameter(bookOf(three), 'club.made.up', '2020-01-01')).toMatchObject({
      ...{ title: 'club.made.up', unit: null, inForce: { says: '3' } },
    });
    expect(E.explainParameter(bookOf([]), 'us.no.such', '2020-01-01')).toEqual({
      ...{ id: 'us.no.such', title: 'us.no.such', unit: null, ofClub: false, checkedOn: null, status: null },
      ...{ inForce: null, history: [] },
    });
  });

  test('as it was read tells until when it holds, whatever is in force today', () => {
    const read = (from: string | null, value: number) =>
      E.explainNumbers([{ id: ID, value, from, reference: 'as read' }], bookOf(three))[0];
    expect(read(null, 3)).toEqual({
      ...{ id: ID, value: 3, from: null, reference: 'as read', title: NUMBER.title, says: '3 years' },
      ...{ ofClub: false, to: '2023-01-23', checkedOn: '2026-11-01' },
    });
    expect(read('2023-01-23', 7)).toMatchObject({ to: '2030-01-01', says: '7 years' });
    // The book no longer holds what was read then.
    expect(read('2011-01-01', 5)).toMatchObject({ to: null, says: '5 years' });
  });
});
