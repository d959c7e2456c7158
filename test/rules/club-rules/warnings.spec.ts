/** What a rule's text alone gives to think about, held against judging it on arbitrary values. */
import fc from 'fast-check';
import { checkRule, warningsOf, type ClubRule, type ReadRule } from '../../../src/rules/index.js';
import { all, casesOf, possible } from '../../../src/rules/club-rules/analysis/cases.js';
import { readExpression } from '../../../src/rules/club-rules/expression.js';
import { ENVIRONMENT } from '../../../src/rules/club-rules/environment.js';
import { rule } from './scene.js';

const read = (of: Partial<ClubRule>): ReadRule => {
  const one = rule(of);
  const check = checkRule(one);
  if (!check.rule) throw new Error(check.faults.map((fault) => fault.message).join(' '));
  return { rule: one, checked: check.rule };
};
const codes = (of: Partial<ClubRule>, ...others: Partial<ClubRule>[]) =>
  warningsOf(
    read(of),
    others.map((other, at) => read({ code: `club.own.other-${at}`, title: `Other ${at}`, ...other })),
  ).map(({ code, otherRule }) => `${code}${otherRule ? ` ${otherRule}` : ''}`);

test.each([
  ['true', 'flight.passengers == 0', []],
  ['true', 'true', ['constant', 'never-fails']],
  ['true', '1 > 2', ['constant', 'never-kept']],
  ['false', 'flight.passengers == 0', ['never-applies']],
  ['flight.alone', 'false', ['never-kept']],
  ['flight.alone', 'true', ['never-fails']],
  ['flight.purpose == "solo" && flight.purpose == "dual"', 'flight.alone', ['never-applies']],
  ['flight.purpose == "leisure"', 'flight.alone', ['never-applies']],
  ['flight.purpose in ["solo", "dual"]', 'flight.purpose != "passengers"', ['never-fails']],
  ['flight.passengers > 2', 'flight.passengers > 3 || flight.passengers < 4', ['never-fails']],
  ['flight.passengers > 2 && flight.passengers < 4', 'flight.passengers == 3', ['never-fails']],
  ['flight.hours > 2.0 && flight.hours < 4.0', 'flight.hours == 3.0', []],
  ['flight.month > 12', 'flight.alone', ['never-applies']],
  ['true', 'flight.departsHour < 24', ['never-fails']],
  ['flight.alone', '!flight.alone', ['never-kept']],
  ['flight.alone', 'flight.alone == true', ['never-fails']],
  ['flight.date >= date("2027-01-01")', 'flight.date > date("2026-12-31")', ['never-fails']],
  ['flight.date >= date("2027-01-01")', 'flight.date < date("2026-12-31")', ['never-kept']],
  ['pilot.totalHours < member.totalHours', 'member.totalHours > pilot.totalHours', ['never-fails']],
  ['pilot.totalHours >= member.totalHours', 'pilot.totalHours < member.totalHours', ['never-kept']],
  ['flight.alone ? flight.forHire : false', 'flight.alone && flight.forHire', ['never-fails']],
  ['"solo" in pilot.endorsements', '!("solo" in pilot.endorsements)', ['never-kept']],
  // Different terms have nothing to do with each other, as far as the text tells.
  ['pilot.landingsInDays(30) >= 3', 'pilot.landingsInDays(90) >= 3', []],
])('applies when %s, asks %s: %j', (appliesWhen, requirement, expected) => {
  expect(codes({ appliesWhen, requirement })).toEqual(expected);
});

describe('beside other rules', () => {
  test('two that cannot both be kept', () => {
    const day = { requirement: 'flight.departsHour >= 8' };
    expect(codes({ requirement: 'flight.departsHour < 8' }, day)).toEqual(['contradicts club.own.other-0']);
    expect(
      codes(
        { requirement: 'flight.departsHour < 8', appliesWhen: 'flight.alone' },
        { ...day, appliesWhen: 'flight.alone && flight.hours > 1.0' },
      ),
    ).toEqual(['contradicts club.own.other-0']);
    // They never apply together.
    expect(
      codes(
        { requirement: 'flight.departsHour < 8', appliesWhen: 'flight.alone' },
        { ...day, appliesWhen: '!flight.alone' },
      ),
    ).toEqual([]);
    expect(codes({ requirement: 'flight.departsHour <= 8' }, day)).toEqual([]);
  });

  test('one that says no more than another', () => {
    const loose = { requirement: 'pilot.totalHours >= 100.0' };
    const strict = { requirement: 'pilot.totalHours >= 200.0' };
    expect(codes(loose, strict)).toEqual(['says-the-same club.own.other-0']);
    expect(codes(strict, loose)).toEqual([]);
    expect(codes(loose, { ...strict, appliesWhen: 'flight.passengers > 0' })).toEqual([]);
    expect(
      codes(
        { ...loose, appliesWhen: 'flight.passengers > 1' },
        { ...strict, appliesWhen: 'flight.passengers > 0' },
      ),
    ).toEqual(['says-the-same club.own.other-0']);
  });

  test('one that can never be kept, or never fails, is told of itself alone', () => {
    expect(codes({ requirement: '1 > 2' }, { requirement: 'flight.alone' })).toEqual([
      'constant',
      'never-kept',
    ]);
    expect(codes({ requirement: 'true' }, { requirement: 'flight.alone' })).toEqual([
      'constant',
      'never-fails',
    ]);
    // Whoever is short of this one is short of what nobody keeps.
    expect(codes({ requirement: 'flight.alone' }, { requirement: '1 > 2' })).toEqual([
      'says-the-same club.own.other-0',
    ]);
  });

  test('its own other versions are not other rules', () => {
    expect(
      codes({ requirement: 'flight.alone' }, { code: 'club.own.test', requirement: '!flight.alone' }),
    ).toEqual([]);
  });
});

test('what is told late and has no condition, and conditions that are never told', () => {
  const [late, ...more] = warningsOf(read({ requirement: 'wind.crosswindKt <= 10.0' }));
  expect(late?.says).toContain('seldom tell wind.crosswindKt when');
  expect(more).toHaveLength(0);
  expect(codes({ requirement: 'wind.crosswindKt <= 10.0' })).toEqual(['refuses-while-not-told']);
  expect(codes({ requirement: 'wind.crosswindKt <= 10.0', condition: 'Wait.' })).toEqual([]);
  expect(codes({ requirement: 'flight.alone', condition: 'Wait.' })).toEqual(['condition-not-used']);
  expect(codes({ requirement: 'int(wind.speedKt) < 10', condition: 'Wait.' })).toEqual([
    'condition-not-used',
  ]);
});

test('too many cases to look at say nothing', () => {
  const many = Array.from(
    { length: 12 },
    (_none, at) => `(flight.passengers != ${at} || flight.landings != ${at})`,
  ).join(' && ');
  expect(possible(casesOf(readExpression(many, ['bool']).expression!.ast))).toBeNull();
  expect(codes({ requirement: many })).toEqual([]);
});

test('what is called impossible is true for no values (every small choice of them)', () => {
  // Four terms of the schema, with values that the expressions below are evaluated with directly.
  const atom = fc.oneof(
    fc
      .tuple(fc.constantFrom('<', '<=', '>', '>=', '==', '!='), fc.integer({ min: 0, max: 3 }))
      .map(([op, n]) => `flight.passengers ${op} ${n}`),
    fc.constantFrom('flight.alone', '!flight.alone', 'flight.alone == false'),
    fc.constantFrom(
      'flight.purpose == "solo"',
      'flight.purpose != "dual"',
      'flight.purpose in ["solo", "checkout"]',
      '!(flight.purpose in ["dual"])',
    ),
    fc
      .tuple(fc.constantFrom('<', '>='), fc.constantFrom('1.0', '2.5'))
      .map(([op, n]) => `${n} ${op} flight.hours`),
  );
  const any = fc.letrec<{ it: string }>((tie) => ({
    it: fc.oneof(
      { maxDepth: 3 },
      atom,
      fc.tuple(tie('it'), fc.constantFrom('&&', '||'), tie('it')).map(([a, op, b]) => `(${a} ${op} ${b})`),
      tie('it').map((a) => `!(${a})`),
      fc.tuple(tie('it'), tie('it'), tie('it')).map(([a, b, c]) => `(${a} ? ${b} : ${c})`),
    ),
  })).it;
  const scenes = [0, 1, 2, 3, 4].flatMap((passengers) =>
    [true, false].flatMap((alone) =>
      ['solo', 'dual', 'checkout', 'passengers'].flatMap((purpose) =>
        [0.5, 1, 2, 2.5, 3].map((hours) => ({ passengers, alone, purpose, hours })),
      ),
    ),
  );
  let impossible = 0;
  fc.assert(
    fc.property(any, any, (a, b) => {
      const [x, y] = [a, b].map((text) => readExpression(text, ['bool']).expression!.ast);
      const verdict = possible(all(casesOf(x!), casesOf(y!, false)));
      const some = scenes.some((scene) => evaluate(a, scene) && !evaluate(b, scene));
      if (verdict === false) impossible += 1;
      if (verdict === false && some) throw new Error(`(${a}) && !(${b}) is called impossible`);
      // These terms do not hang together, and the scenes hold a value of each kind: what no scene shows is impossible.
      if (verdict === true && !some) throw new Error(`(${a}) && !(${b}) is called possible`);
    }),
    { numRuns: 600, seed: 7 },
  );
  expect(impossible).toBeGreaterThan(30);
});

/** Evaluates with the values of a scene in place of a flight. */
function evaluate(
  text: string,
  scene: { passengers: number; alone: boolean; purpose: string; hours: number },
): boolean {
  const written = text
    .replaceAll('flight.passengers', String(scene.passengers))
    .replaceAll('flight.alone', String(scene.alone))
    .replaceAll('flight.purpose', JSON.stringify(scene.purpose))
    .replaceAll('flight.hours', scene.hours.toFixed(1));
  return ENVIRONMENT.evaluate(written) as boolean;
}
