/** What is said about a whole answer, a fact, a finding on somebody else's record, and a page of the rule book. */
import {
  decide,
  known,
  rulesetFor,
  startingPolicy,
  unknownFact,
  type FactSheet,
  type Finding,
} from '../../../src/rules/index.js';
import {
  capital,
  catalogueOf,
  commandSays,
  derive,
  explainAnswer,
  explainBodies,
  explainFact,
  explainNumbers,
  explainSun,
  horizonSays,
  listed,
  listedRule,
  OTHERS_SHOWN,
  readable,
  RULE_SINCE_CHANGED,
  withheld,
  withInstructor,
} from '../../../src/rules/explain/index.js';
import { baseSheet, HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import { LOG, MEDICAL } from '../../../src/rules/workshop/records.js';

const POLICY = startingPolicy();
const US = rulesetFor('US', POLICY);
const member = (sheet: FactSheet) => sheet.people['member-1']!;

const asked = (change: (sheet: FactSheet) => void = () => {}) => {
  const sheet = baseSheet();
  change(sheet);
  const decision = decide(sheet, POLICY, US);
  return { sheet, decision, from: { sheet, ruleset: US, asOf: sheet.flight.departs } };
};
const findingOf = (findings: readonly Finding[], rule: string): Finding =>
  findings.find((one) => one.rule === rule)!;

describe('an answer', () => {
  test('that is a yes names the pilot in command and has nothing in the way', () => {
    const { decision, from } = asked();
    const explained = explainAnswer(decision, from);
    expect(explained).toMatchObject({
      inTheWay: [],
      withInstructor: null,
      flight: { departs: '2027-03-01T18:00:00Z', arrives: '2027-03-01T19:00:00Z', purposeWord: 'alone' },
      crew: { picId: 'member-1', pic: member(from.sheet).name, passengers: 0 },
    });
    expect(explained.crew.says).toBe(
      `${member(from.sheet).name} is pilot in command: the member flies without an instructor.`,
    );
    expect(explained.flight.says).toContain('no passengers');
    expect(explained.horizon).toMatchObject({ until: decision.horizon.until });
    expect(explained.horizon.says).toContain(decision.horizon.until!);
  });

  test('that is refused tells what stands in the way, then and with an instructor', () => {
    const { decision, from } = asked((sheet) => {
      member(sheet).reviews = known([], sheet.knownAt);
      sheet.aircraft.registration = known([], sheet.knownAt);
    });
    const explained = explainAnswer(decision, from);
    expect(explained.inTheWay).toEqual(['review.flight_24_months', 'registration.validity']);
    expect(explained.withInstructor).toEqual({
      answer: 'no',
      says: 'The same flight with an instructor: “no”.',
      inTheWay: [findingOf(decision.findings, 'registration.validity').title],
    });
  });

  test('on a lesson without an instructor says that nobody is in command', () => {
    const { decision, from } = asked((sheet) => {
      sheet.flight = { ...sheet.flight, purpose: 'dual', personsOnBoard: 2 };
    });
    expect(explainAnswer(decision, from).crew).toEqual({
      picId: null,
      pic: null,
      says: 'Nobody is pilot in command yet: instruction needs an instructor, who is not named yet.',
      passengers: 0,
    });
  });
});

describe('sentences', () => {
  const until = { until: '2027-05-30', becomes: 'no', searchedTo: '2028-04-04' } as const;

  test.each([
    [[], 'Holds for a departure before 2027-05-30; then “no”.'],
    [['A'], 'Holds for a departure before 2027-05-30; then “no” by the rule “A”.'],
    [['A', 'B'], 'Holds for a departure before 2027-05-30; then “no” by the rules “A” and “B”.'],
  ])('of a horizon by %j', (titles, says) => {
    expect(horizonSays(until, titles)).toBe(says);
  });

  test('of a horizon that nothing changes', () => {
    const still = 'Time alone does not change this answer before 2028-04-04.';
    expect(horizonSays({ ...until, until: null }, ['A'])).toBe(still);
    expect(horizonSays({ ...until, becomes: null }, ['A'])).toBe(still);
  });

  test('of command, of an instructor, of lists', () => {
    expect(commandSays('Ada', 'she asked')).toBe('Ada is pilot in command: she asked.');
    expect(commandSays(null, 'nobody asked')).toBe('Nobody is pilot in command yet: nobody asked.');
    expect(withInstructor('yes-with-conditions')).toBe('The same flight with an instructor: “yes, if”.');
    expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
    expect(capital('upper case')).toBe('Upper case');
  });
});

describe('a fact', () => {
  const of = (sheet: FactSheet, counted: Finding['counted'] = []) => ({
    ...{ sheet, counted, fields: new Set<string>() },
    crew: decide(sheet, POLICY, US).crew,
  });
  const logged = (count: number) => {
    const sheet = baseSheet();
    const entries = Array.from({ length: count }, (_, index) => ({ ...LOG, id: `log-${index}` }));
    member(sheet).log = known(entries, '2027-02-27T10:00:00Z');
    return sheet;
  };

  test('shows what was counted, then a few of the others, and how many more there are', () => {
    const sheet = logged(OTHERS_SHOWN + 4);
    const counted = [
      { id: 'log-3', on: LOG.on, what: '3 landings' },
      { id: 'log-3', on: LOG.on, what: '3 take-offs' },
    ];
    const read = explainFact('pic.log', of(sheet, counted));
    expect(read).toMatchObject({
      ...{ known: true, because: null, whose: member(sheet).name, nothing: null, more: 3 },
      ...{ firmness: 'recorded', lastKnownAt: '2027-02-27T10:00:00Z' },
    });
    expect(read.records).toHaveLength(OTHERS_SHOWN + 1);
    expect(read.records[0]).toMatchObject({ id: 'log-3', counted: '3 landings; 3 take-offs' });
    expect(read.records[1]).toMatchObject({ id: 'log-0', counted: null });
  });

  test('with few records has no more; with none says so', () => {
    expect(explainFact('pic.log', of(logged(2)))).toMatchObject({ more: 0, nothing: null });
    expect(explainFact('pic.log', of(logged(0)))).toMatchObject({
      ...{ records: [], more: 0, nothing: 'None on record.' },
    });
  });

  test('of the aircraft is nobody’s; one of a person who is not there has no name', () => {
    const sheet = logged(1);
    expect(explainFact('aircraft.items', of(sheet)).whose).toBeNull();
    expect(explainFact('instructor.log', of(sheet))).toMatchObject({ known: false, whose: null });
    const named = { ...sheet, flight: { ...sheet.flight, instructorId: 'somebody-else' } };
    expect(explainFact('instructor.log', of(named)).whose).toBeNull();
  });

  test('that is not on record tells what is missing', () => {
    const sheet = baseSheet();
    member(sheet).birthDate = unknownFact('the birth date is not on record');
    expect(explainFact('pic.birthDate', of(sheet))).toMatchObject({
      ...{ known: false, because: 'the birth date is not on record', firmness: null, firmnessWord: null },
      ...{ lastKnownAt: null, records: [], more: 0, nothing: null },
    });
  });

  test('says how firm it is', () => {
    const sheet = baseSheet();
    member(sheet).medicals = known([MEDICAL], sheet.knownAt, 'declared');
    expect(explainFact('pic.medicals', of(sheet)).firmness).toBe('declared');
    const { status: _none, ...unsaid } = known([MEDICAL], sheet.knownAt);
    member(sheet).medicals = unsaid;
    expect(explainFact('pic.medicals', of(sheet)).firmness).toBe('recorded');
  });
});

describe('a finding', () => {
  test('on somebody else’s record is not derived: no fact, no number, no branch taken', () => {
    const { decision, from } = asked();
    const finding = findingOf(decision.findings, 'medical.certificate');
    const hidden = { name: 'Ada', andOwn: false };
    const why = derive(finding, from, hidden);
    expect(why).toMatchObject({
      ...{ withheld: withheld(hidden), reproduced: true, note: null, change: null },
      ...{ facts: [], request: [], sun: [], numbers: [] },
    });
    expect(why.branches.map(({ taken }) => taken)).not.toContain(true);
    expect(why.branches.length).toBeGreaterThan(0);
    expect(why.unread.map(({ key }) => key)).toEqual(finding.reads);
  });

  test('of a rule that has changed since is told as kept, with what the rule declared to read', () => {
    const { decision, from } = asked();
    const kept = { ...findingOf(decision.findings, 'medical.certificate'), says: 'As it was said then.' };
    const why = derive(kept, from, null);
    expect(why).toMatchObject({ reproduced: false, note: RULE_SINCE_CHANGED, change: null, withheld: null });
    expect(why.facts.map(({ key }) => key)).toEqual(kept.reads);
    const type = why.facts.find(({ key }) => key === 'aircraft.type')!;
    expect(type.records[0]!.says).toMatch(/NX101B.*Harrow Lark 160|Harrow Lark 160.*NX101B/);
    expect(why.sun).toEqual([]);
    expect(derive({ ...kept, rule: 'gone.rule' }, from, null)).toMatchObject({
      ...{ reproduced: false, body: null, branches: [], change: null },
    });
  });

  test('whose next change is beyond what was searched says that it may change', () => {
    const { decision, from } = asked();
    // An hour on nothing has changed: the end of the search, not of the verdict.
    const finding = { ...findingOf(decision.findings, 'medical.certificate'), until: '2027-03-01T19:00:00Z' };
    expect(derive(finding, from, null).change).toEqual({
      at: '2027-03-01T19:00:00Z',
      says: 'Stays as it is for departures before 2027-03-01T19:00:00Z; after that it may change.',
      then: null,
    });
    expect(derive({ ...finding, until: null }, from, null).change).toEqual({
      ...{ at: null, says: 'Time alone does not change it.', then: null },
    });
  });
});

describe('the sun', () => {
  const at = (latitudeDeg: number, longitudeDeg: number, zone: string) => {
    const sheet = baseSheet();
    const field = { ...HOME_FIELD, code: 'XQNN', latitudeDeg, longitudeDeg, zone };
    const arrives = '2027-06-21T13:00:00Z';
    sheet.flight = { ...sheet.flight, departs: '2027-06-21T12:00:00Z', arrives, route: [field, field] };
    return explainSun(sheet, Date.parse(sheet.flight.departs) / 1000);
  };

  test('that does not set is said once, and a field of another zone goes by its own clock', () => {
    // At 78 N the sun stays up from about 20 April to 23 August (almanac, from memory).
    expect(at(78, 15, 'Arctic/Longyearbyen')).toEqual([
      { field: 'XQNN (by its own clock)', says: ['the sun neither rises nor sets'] },
    ]);
    expect(at(40, -105, 'America/Denver')[0]!.field).toBe('XQNN');
  });
});

describe('the rule book', () => {
  const dated = {
    bodies: [
      { version: 1, from: null, to: '2017-05-01' },
      { version: 2, from: '2017-05-01', to: null },
    ].map((body) => ({ ...body, citation: US.rules[0]!.bodies[0]!.citation })),
  } as never;

  test.each([
    ['2017-04-30', [true, false]],
    ['2017-05-01', [false, true]],
    ['2027-01-01', [false, true]],
  ])('on %s says which text is in force', (day, inForce) => {
    expect(explainBodies(dated, day).map((one) => one.inForce)).toEqual(inForce);
  });

  test('has every rule of the set, with its numbers and ways out', () => {
    const book = catalogueOf(US, '2027-03-01');
    expect(book.map(({ id }) => id)).toEqual(US.rules.map(({ id }) => id));
    const rule = book.find(({ id }) => id === 'recency.passengers.day')!;
    expect(rule).toMatchObject({ whenUnknown: null, weight: 'law', inForce: { inForce: true } });
    expect(rule.reads).toContainEqual({ key: 'pic.log', words: expect.stringMatching(/\w/) });
    expect(rule.cures.map(({ act }) => act)).toContain('fly-landings-day');
    expect(listedRule(rule)).toEqual({
      ...{ id: rule.id, title: rule.title, weight: 'law', weightWord: rule.weightWord },
      ...{ binds: 'pilot', bindsWord: rule.bindsWord, inForce: rule.inForce, branches: rule.branches },
      numbers: [
        { id: 'us.passenger-recency.days', title: expect.any(String), says: '90 days', ofClub: false },
        { id: 'us.passenger-recency.count', title: expect.any(String), says: '3', ofClub: false },
      ],
    });
    expect(book.find(({ whenUnknown }) => whenUnknown !== null)).toBeDefined();
    // The law before BasicMed: that rule has no text in force, and a number no value.
    const before = catalogueOf(US, '2010-01-01').find(({ id }) => id === 'medical.basicmed')!;
    expect(before.inForce).toBeNull();
    const { value: _value, ...numberless } = rule.parameters[0]!.inForce!;
    const none = { ...rule, parameters: [{ ...rule.parameters[0]!, inForce: null }] };
    expect(numberless.says).toBe('90 days');
    expect(listedRule(none).numbers[0]!.says).toBe('no value');
  });

  test('shows a gap where a flight fills in, and no full stop after one', () => {
    expect(readable('Class {class} of {examOn}{why}.')).toBe('Class … of …');
    expect(readable('{days} days.')).toBe('… days.');
    expect(readable('{a}{b} and more… or so.')).toBe('… and more… or so.');
  });

  test('tells of a number that was read until when it holds', () => {
    const id = 'us.registration.years';
    const [older, newer] = US.book.history(id);
    const read = (from: string | null) =>
      explainNumbers([{ id, value: 7, from, reference: 'r' }], US.book)[0]!;
    expect(read(older!.from)).toMatchObject({ to: newer?.from ?? null, says: '7 years', ofClub: false });
    expect(read(older!.from).checkedOn).toMatch(/^\d{4}-\d\d-\d\d$/);
  });
});
