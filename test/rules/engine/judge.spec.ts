/** One rule on one flight: headers that contradict themselves, facts and numbers not declared, dated bodies, errors. */
import { judgeAll, judgeRule, crewAt, durationOf } from '../../../src/rules/engine/judge.js';
import { defineParameter } from '../../../src/rules/parameters/parameter.js';
import { defineRule, formsOf, type Rule } from '../../../src/rules/engine/rule.js';
import { verdictDiffers } from '../../../src/rules/engine/run.js';
import { UnknownFact, need } from '../../../src/rules/engine/unknown.js';
import { toSeconds } from '../../../src/rules/calendar/instants.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { rulesetOf, through, toy } from './toy-rules.js';

const sheet = baseSheet();
const departs = toSeconds(sheet.flight.departs);
const found = (rule: Rule, parameters = [] as never[], policy = [] as never[]) =>
  judgeAll(sheet, rulesetOf([rule], parameters, policy), departs).judged[0]!;

describe('a header that contradicts itself is refused', () => {
  const header = through('x', '2030-01-01');
  const [body] = header.bodies;
  test.each([
    [{ id: 'toy' }, 'is not dotted lower case'],
    [{ id: 'Toy.x' }, 'is not dotted lower case'],
    [{ id: 'toy.x ' }, 'is not dotted lower case'],
    [{ id: 'toy..x' }, 'is not dotted lower case'],
    [{ bodies: [] }, 'has no body'],
    [{ bodies: [body!, body!] }, 'bodies overlap'],
    [
      {
        bodies: [
          { ...body!, to: '2020-01-01' },
          { ...body!, from: '2019-12-31' },
        ],
      },
      'bodies overlap at 2019-12-31',
    ],
    [
      {
        bodies: [
          { ...body!, to: '2020-01-01' },
          { ...body!, from: null },
        ],
      },
      'bodies overlap',
    ],
    [{ settledAt: 'departure' as const }, 'must say its condition'],
    [{ superseded: [header] }, 'must say what changed'],
    [{ superseded: [header], changed: ' ' }, 'must say what changed'],
  ])('%j', (change, because) => {
    expect(() => defineRule({ ...header, ...change })).toThrow(because);
  });
  test.each([
    [{ id: 'toy.x_1-2.y' }],
    [
      {
        bodies: [
          { ...body!, to: '2020-01-01' },
          { ...body!, from: '2020-01-01' },
        ],
      },
    ],
    [{ settledAt: 'departure' as const, whenUnknown: 'Work it out.' }],
    [{ settledAt: 'booking' as const }],
  ])('%j is fine', (change) => {
    expect(defineRule({ ...header, ...change })).toMatchObject(change);
  });
  test('forms are told newest first', () => {
    expect(formsOf(header)).toEqual([header]);
    const newer = (of: Rule, version: number) =>
      defineRule({ ...of, bodies: [{ ...body!, version }], superseded: [of], changed: 'It says otherwise.' });
    const [second, third] = [newer(header, 2), newer(newer(header, 2), 3)];
    expect(formsOf(second).map((form) => form.bodies[0]!.version)).toEqual([2, 1]);
    expect(formsOf(third).map((form) => form.bodies[0]!.version)).toEqual([3, 2, 1]);
    expect(() => newer(header, 1)).toThrow("two forms have the versions 1; raise the newer one's");
    expect(() => newer(second, 1)).toThrow("two forms have the versions 1; raise the newer one's");
    expect(() => newer({ ...header, id: 'toy.other' }, 2)).not.toThrow();
    const other = { ...header, id: 'toy.other' };
    expect(() => defineRule({ ...header, superseded: [other], changed: 'x' })).toThrow(
      'cannot supersede toy.other',
    );
  });
});

describe('what a rule may not do is an error of its own, never a pass', () => {
  test.each([
    [
      'read a fact it does not declare',
      toy('x', (f, _m, _p, take) => (f.get('pic.log'), take('good'))),
      'reads pic.log without declaring it',
    ],
    [
      'read a number it does not declare',
      toy('x', (_f, _m, p, take) => (p.number('us.x'), take('good'))),
      'reads parameter us.x without declaring it',
    ],
    [
      'take a branch it does not declare',
      toy('x', (_f, _m, _p, take) => take('other' as never)),
      'takes branch other, which it does not declare',
    ],
    [
      'leave a slot empty',
      toy('x', (_f, _m, _p, take) => take('good'), {
        branches: { good: { status: 'met', says: 'At {place}.' } },
      }),
      'gives no value for {place}',
    ],
    [
      'compare with a date that is none',
      toy(
        'x',
        (_f, m, _p, take) => (m.endsOnOrBefore('2027-02-30x'), m.startsOnOrAfter('2099-99-98'), take('good')),
      ),
      '',
    ],
    [
      'throw',
      toy('x', () => {
        throw new Error('broken');
      }),
      'broken',
    ],
    [
      'throw what is no error',
      toy('x', () => {
        throw 'words';
      }),
      'words',
    ],
    [
      'fail while making remedies',
      toy('x', (_f, _m, _p, take) =>
        take(
          'bad',
          {},
          {
            remedies: () => {
              throw new Error('no remedy');
            },
          },
        ),
      ),
      'no remedy',
    ],
  ])('%s', (_, rule, because) => {
    const { finding } = found(rule);
    expect(finding).toMatchObject({
      status: 'error',
      branch: 'error',
      counted: [],
      remedies: [],
      conditions: [],
    });
    expect(finding.says).toContain(because);
  });
});

describe('what is not known', () => {
  const asks = (change: Partial<Rule> = {}) =>
    toy('x', () => need<never>(null, 'pic.log', 'the log is not on record'), change);
  test('is told, and refuses', () => {
    expect(found(asks()).finding).toMatchObject({
      status: 'unknown',
      branch: 'unknown',
      says: 'Cannot tell: the log is not on record.',
      conditions: [],
      remedies: [],
    });
  });
  test('becomes a condition where it is settled before departure', () => {
    const rule = asks({ settledAt: 'departure', whenUnknown: 'Work it out.' });
    expect(found(rule).finding).toMatchObject({ status: 'unknown', conditions: ['Work it out.'] });
    expect(found(asks({ settledAt: 'booking', whenUnknown: 'Work it out.' })).finding.conditions).toEqual([]);
  });
  test('may bring a condition of its own', () => {
    const rule = toy('x', () => {
      throw new UnknownFact('pic.log', 'the log is not on record', 'Look it up.');
    });
    expect(found(rule).finding.conditions).toEqual(['Look it up.']);
  });
  test('an unknown fact that is declared tells why', () => {
    const rule = toy('x', (f, _m, _p, take) => (f.get('pic.log'), take('good')), { reads: ['pic.log'] });
    const without = { ...sheet, people: {} };
    const { finding } = judgeAll(without, rulesetOf([rule]), departs).judged[0]!;
    expect(finding).toMatchObject({
      status: 'unknown',
      says: 'Cannot tell: nothing is on record for the pilot in command.',
    });
  });
  test('values are given back as they are', () => {
    expect([need(0, 'x', 'y'), need('', 'x', 'y'), need(false, 'x', 'y')]).toEqual([0, '', false]);
    expect(() => need(undefined, 'x', 'why')).toThrow(new UnknownFact('x', 'why'));
    expect(new UnknownFact('x', 'why').fact).toBe('x');
  });
});

describe('dated bodies', () => {
  const [body] = toy('x', (_f, _m, _p, take) => take('good')).bodies;
  const dated = (...spans: [string | null, string | null][]) =>
    toy('x', (_f, _m, _p, take) => take('good'), {
      bodies: spans.map(([from, to], index) => ({ ...body!, version: index + 1, from, to })),
    });
  test.each([
    [dated([null, '2027-03-02'], ['2027-03-02', null]), 1, 'met'],
    [dated([null, '2027-03-01'], ['2027-03-01', null]), 2, 'met'],
    [dated(['2027-03-02', null]), 0, 'not-applicable'],
    [dated([null, '2027-03-01']), 0, 'not-applicable'],
    [dated(['2027-03-01', '2027-03-02']), 1, 'met'],
  ])('%#: version %i, %s', (rule, version, status) => {
    const { finding } = found(rule);
    expect(finding).toMatchObject({ version, status });
    if (version === 0)
      expect(finding).toMatchObject({
        branch: 'not-in-force',
        says: 'This rule is not in force on the day of the flight.',
        citation: body!.citation,
      });
  });
  test('the change of the body is a change of the verdict', () => {
    expect(found(dated(['2027-03-05', null])).nextChange).toBe(toSeconds('2027-03-05T07:00:00Z'));
  });
});

describe('numbers', () => {
  const number = defineParameter({
    id: 'us.toy.days',
    title: 'Days',
    unit: 'days',
    values: [
      { from: null, value: 30, reference: 'old' },
      { from: '2027-03-01', value: 60, reference: 'new' },
      { from: '2027-03-02', value: 90, reference: 'newer' },
    ],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  } as never);
  const reads = (id: string, kind: 'number' | 'flag' | 'text' = 'number') =>
    toy('x', (_f, _m, p, take) => take('good', { n: String(p[kind](id)), again: String(p[kind](id)) }), {
      parameters: [id],
      branches: { good: { status: 'met', says: '{n}.' } },
    });
  const policy = (...values: [string, unknown][]) =>
    values.map(([from, value]) => ({ id: 'club.toy', from, value, reference: `paper of ${from}` })) as never;

  test('of the law: the value of the day, read once, with its reference', () => {
    const { finding, nextChange } = found(reads('us.toy.days'), [number] as never);
    expect(finding.says).toBe('60.');
    expect(finding.parameters).toEqual([
      { id: 'us.toy.days', value: 60, from: '2027-03-01', reference: 'new' },
    ]);
    expect(nextChange).toBe(toSeconds('2027-03-02T07:00:00Z'));
  });
  test('of the club: its own rows alone, in order of their dates', () => {
    const rows = policy(['2027-03-02', 9], ['2027-01-01', 7], ['2026-01-01', 5]);
    expect(found(reads('club.toy'), [], rows).finding).toMatchObject({
      says: '7.',
      parameters: [{ reference: 'paper of 2027-01-01' }],
    });
  });
  test.each([
    ['none declared', reads('us.other'), [], 'the number “us.other” has no value'],
    [
      'a law value that the club sets does not count',
      reads('us.toy.days'),
      [{ id: 'us.toy.days', from: '2020-01-01', value: 1, reference: 'x' }],
      'has no value on the day of the flight',
    ],
    [
      'none in force yet',
      reads('club.toy'),
      policy(['2027-03-02', 9]),
      'has no value on the day of the flight',
    ],
    [
      'ended',
      reads('club.toy'),
      policy(['2027-01-01', 9], ['2027-03-01', null]),
      'has no value on the day of the flight',
    ],
    ['of another kind', reads('club.toy'), policy(['2027-01-01', 'nine']), 'club.toy should be a number'],
    [
      'a number for a flag',
      reads('club.toy', 'flag'),
      policy(['2027-01-01', 1]),
      'club.toy should be a boolean',
    ],
    [
      'a number for a text',
      reads('club.toy', 'text'),
      policy(['2027-01-01', 1]),
      'club.toy should be a string',
    ],
  ])('%s: unknown', (_, rule, rows, because) => {
    const { finding } = found(rule, [], rows as never);
    expect(finding.status).toBe('unknown');
    expect(finding.says).toContain(because);
  });
  test('flags and texts', () => {
    expect(found(reads('club.toy', 'flag'), [], policy(['2027-01-01', true])).finding.says).toBe('true.');
    expect(found(reads('club.toy', 'text'), [], policy(['2027-01-01', 'north'])).finding.says).toBe('north.');
  });
  test('what was read as one kind is not another kind the second time', () => {
    const rule = toy('x', (_f, _m, p, take) => (p.number('club.toy'), p.text('club.toy'), take('good')), {
      parameters: ['club.toy'],
    });
    const { finding } = found(rule, [], policy(['2027-01-01', 9]));
    expect([finding.status, finding.says]).toEqual([
      'unknown',
      expect.stringContaining('club.toy should be a string'),
    ]);
  });
  test('several are told by id, not as read', () => {
    const rule = toy('x', (_f, _m, p, take) => (p.number('club.b'), p.number('club.a'), take('good')), {
      parameters: ['club.a', 'club.b'],
    });
    const rows = ['club.b', 'club.a'].map((id) => ({ id, from: '2020-01-01', value: 1, reference: 'x' }));
    expect(found(rule, [], rows as never).finding.parameters.map(({ id }) => id)).toEqual([
      'club.a',
      'club.b',
    ]);
    const inOrder = toy('x', (_f, _m, p, take) => (p.number('club.a'), p.number('club.b'), take('good')), {
      parameters: ['club.a', 'club.b'],
    });
    expect(found(inOrder, [], rows as never).finding.parameters.map(({ id }) => id)).toEqual([
      'club.a',
      'club.b',
    ]);
  });
  test('of what nobody set or declared there is no value, and of what is set each is there once', () => {
    const { book } = rulesetOf([], [], policy(['2020-01-01', 1]));
    expect(['club.toy', 'club.other', 'us.other'].map((id) => book.history(id))).toEqual([
      [{ from: '2020-01-01', value: 1, reference: 'paper of 2020-01-01' }],
      [],
      [],
    ]);
  });
});

describe('a finding', () => {
  test('carries what the rule gave, remedies made when asked for', () => {
    const remedy = { act: 'wait', title: 'Wait.', by: 'member', effects: [] };
    const counted = [{ id: 'x', on: null, what: 'x' }];
    const rule = toy(
      'x',
      (_f, _m, _p, take) =>
        take('bad', {}, { counted, conditions: ['C.'], remedies: () => [remedy] as never }),
      { weight: 'club' },
    );
    expect(found(rule).finding).toMatchObject({
      rule: 'toy.x',
      version: 1,
      title: 'x',
      weight: 'club',
      overridable: true,
      binds: 'flight',
      counted,
      conditions: ['C.'],
      remedies: [remedy],
      until: null,
    });
    const given = toy('x', (_f, _m, _p, take) => take('bad', {}, { remedies: [remedy] as never }));
    expect(found(given).finding).toMatchObject({ overridable: false, remedies: [remedy] });
  });
  test('has no remedies where the rule gave none', () => {
    expect(found(toy('x', (_f, _m, _p, take) => take('bad'))).finding.remedies).toEqual([]);
  });
  test('remedies that cannot be told for want of a fact are left out', () => {
    const rule = toy('x', (_f, _m, _p, take) =>
      take('bad', {}, { remedies: () => need<never>(null, 'x', 'y') }),
    );
    expect(found(rule).finding).toMatchObject({ status: 'short', remedies: [] });
  });
  test('what cannot be is set aside by nobody', () => {
    expect(
      found(toy('x', (_f, _m, _p, take) => take('bad'), { weight: 'club', neverOverridden: true })).finding
        .overridable,
    ).toBe(false);
  });
  test('making remedies leaves no trace in time', () => {
    const rule = toy('x', (_f, moment, _p, take) =>
      take('bad', {}, { remedies: () => (moment.startsOnOrAfter('2027-03-05'), []) }),
    );
    expect(found(rule).nextChange).toBeNull();
  });
});

describe('the crew at a departure', () => {
  const set = (...values: [string, unknown][]) =>
    rulesetOf(
      [],
      [],
      values.map(([from, value]) => ({
        id: 'club.crew.second-pilot-is-passenger',
        from,
        value,
        reference: 'x',
      })) as never,
    );
  const two = { ...sheet, flight: { ...sheet.flight, secondPilotId: 'member-2', personsOnBoard: 2 } };
  test('a club that never said gets the strict reading', () => {
    expect(crewAt(two, set(), departs)).toMatchObject({ crew: { passengers: 1 }, nextChange: null });
  });
  test('its policy counts from its day, and the change is a change of every verdict', () => {
    const ruleset = set(['2020-01-01', false], ['2027-03-05', true]);
    expect(crewAt(two, ruleset, departs)).toMatchObject({
      crew: { passengers: 0 },
      nextChange: toSeconds('2027-03-05T07:00:00Z'),
    });
    const rule = toy('x', (_f, _m, _p, take) => take('good'));
    const { judged } = judgeAll(two, { ...ruleset, rules: [rule, through('y', '2027-03-02')] }, departs);
    expect(judged.map(({ nextChange }) => nextChange)).toEqual([
      toSeconds('2027-03-05T07:00:00Z'),
      toSeconds('2027-03-03T06:00:00Z'),
    ]);
  });
  test('what fails otherwise than for want of a value is no reading', () => {
    const history = () => {
      throw new Error('broken');
    };
    expect(() => crewAt(two, { rules: [], book: { history } as never }, departs)).toThrow('broken');
  });
  test('judging one rule alone does not mind the crew’s change', () => {
    const ruleset = set(['2020-01-01', false], ['2027-03-05', true]);
    const { crew } = crewAt(two, ruleset, departs);
    expect(judgeRule(through('y', '2027-03-02'), two, ruleset, crew, departs).nextChange).toBe(
      toSeconds('2027-03-03T06:00:00Z'),
    );
  });
});

test('a flight that ends as it begins takes no time, and one that ends before takes none either', () => {
  const lasts = (arrives: string): number => durationOf({ ...sheet, flight: { ...sheet.flight, arrives } });
  expect([lasts(sheet.flight.departs), lasts('2020-01-01T00:00:00Z'), durationOf(sheet)]).toEqual([
    0, 0, 3600,
  ]);
});

test('a verdict differs by its status and its conditions, and by nothing else', () => {
  const met = (...conditions: string[]) => ({ status: 'met' as const, conditions });
  const one = met('A.', 'B.');
  expect([
    verdictDiffers(one, one),
    verdictDiffers(one, met('A.', 'B.')),
    verdictDiffers(met(), met()),
    verdictDiffers(one, { ...one, status: 'short' }),
    verdictDiffers(one, met('A.')),
    verdictDiffers(one, met('A.', 'C.')),
    verdictDiffers(one, met('C.', 'B.')),
  ]).toEqual([false, false, false, true, true, true, true]);
});

test('a number that was always the same is read on any day', () => {
  const always = defineParameter({
    ...{ id: 'us.toy.always', title: 'Days', unit: 'days', checkedOn: '2026-11-25', status: 'seen' },
    ...{ values: [{ from: null, value: 30, reference: 'old' }], recheckAfterMonths: 12 },
  } as never);
  const rule = toy('x', (_f, _m, p, take) => take('good', { n: p.number('us.toy.always') }), {
    parameters: ['us.toy.always'],
    branches: { good: { status: 'met', says: '{n}.' } },
  });
  expect(found(rule, [always] as never).finding.says).toBe('30.');
});
