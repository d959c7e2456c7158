/** From findings to an answer, and who is who aboard: the design's rules, one by one. */
import {
  answerAsAsked,
  answerSays,
  answerWithDual,
  blocks,
  conditionsOf,
  pullOf,
  refuses,
  setsCondition,
  type Weighable,
} from '../../../src/rules/engine/combine.js';
import { decideCrew, type Crew } from '../../../src/rules/engine/crew.js';
import type { Finding } from '../../../src/rules/engine/finding.js';
import { FLIGHT } from '../../../src/rules/workshop/base-sheet.js';

const SOLO: Crew = {
  picId: 'member-1',
  picBecause: '',
  instruction: false,
  learnerId: null,
  alone: true,
  passengers: 0,
};
const DUAL: Crew = { ...SOLO, picId: 'instructor-1', instruction: true, learnerId: 'member-1', alone: false };
const UNNAMED: Crew = { ...DUAL, picId: null };

const finding = (change: Partial<Weighable>): Weighable => ({
  weight: 'law',
  overridable: change.weight === 'club',
  binds: 'flight',
  status: 'met',
  conditions: [],
  ...change,
});
const short = (weight: Weighable['weight'], change: Partial<Weighable> = {}) =>
  finding({ weight, status: 'short', ...change });

test.each([
  ['nothing found', [], SOLO, 'yes'],
  ['all met', [finding({}), finding({ status: 'not-applicable' })], SOLO, 'yes'],
  ['a condition', [finding({ conditions: ['Be down by six.'] })], SOLO, 'yes-with-conditions'],
  ['advice short', [short('advice')], SOLO, 'yes'],
  ['advice unknown', [finding({ weight: 'advice', status: 'unknown' })], SOLO, 'yes'],
  ['the law short', [short('law')], SOLO, 'no'],
  ['the law unknown', [finding({ status: 'unknown' })], SOLO, 'no'],
  ['the law in error', [finding({ status: 'error' })], SOLO, 'no'],
  ['in error with a condition', [finding({ status: 'error', conditions: ['x'] })], SOLO, 'no'],
  [
    'unknown, settled before departure',
    [finding({ status: 'unknown', conditions: ['Work it out.'] })],
    SOLO,
    'yes-with-conditions',
  ],
  ['short with a condition', [short('law', { conditions: ['x'] })], SOLO, 'no'],
  ['the club short', [short('club')], SOLO, 'ask-officer'],
  ['the club unknown', [finding({ weight: 'club', status: 'unknown' })], SOLO, 'ask-officer'],
  ['the club short where no officer may', [short('club', { overridable: false })], SOLO, 'no'],
  ['the club and the law short', [short('club'), short('law')], SOLO, 'no'],
  ['the law and the club short', [short('law'), short('club')], SOLO, 'no'],
  ['the club short and a condition', [short('club'), finding({ conditions: ['x'] })], SOLO, 'ask-officer'],
  [
    'a condition of what does not apply',
    [finding({ status: 'not-applicable', conditions: ['x'] })],
    SOLO,
    'yes',
  ],
  ['a lesson with its instructor', [finding({})], DUAL, 'yes'],
  ['a lesson whose instructor is to be named', [finding({})], UNNAMED, 'dual-only'],
  ['what binds the pilot waits for the name', [short('law', { binds: 'pilot' })], UNNAMED, 'dual-only'],
  [
    'what binds the instructor waits for the name',
    [short('law', { binds: 'instructor' })],
    UNNAMED,
    'dual-only',
  ],
  ['what binds the aircraft does not', [short('law', { binds: 'aircraft' })], UNNAMED, 'no'],
  ['with the name nothing waits', [short('law', { binds: 'pilot' })], DUAL, 'no'],
  ['alone nothing waits', [short('law', { binds: 'pilot' })], { ...SOLO, picId: null }, 'no'],
] as const)('%s: %s', (_, findings, crew, answer) => {
  expect(answerAsAsked(findings, crew)).toBe(answer);
});

test.each([
  ['no', 'dual-only', 'dual-only'],
  ['ask-officer', 'dual-only', 'dual-only'],
  ['no', 'no', 'no'],
  ['ask-officer', 'no', 'ask-officer'],
  ['no', null, 'no'],
  ['yes', 'dual-only', 'yes'],
  ['yes-with-conditions', 'dual-only', 'yes-with-conditions'],
] as const)('%s as asked and %s with an instructor: %s', (asked, dual, answer) => {
  expect(answerWithDual(asked, dual)).toBe(answer);
});

test('how a finding pulls', () => {
  expect(pullOf(finding({}), SOLO)).toBe('none');
  expect(pullOf(short('club'), SOLO)).toBe('asks');
  expect(pullOf(short('law'), SOLO)).toBe('refuses');
  expect([refuses(short('law'), SOLO), refuses(short('club'), SOLO)]).toEqual([true, false]);
  expect([blocks(short('law')), blocks(short('advice')), blocks(finding({}))]).toEqual([true, false, false]);
  expect(setsCondition({ status: 'unknown', conditions: ['x'] })).toBe(true);
  expect(setsCondition({ status: 'short', conditions: ['x'] })).toBe(false);
  expect(setsCondition({ status: 'met', conditions: [] })).toBe(false);
});

test('conditions are told once each, in order, and only those that stand', () => {
  const of = (status: Finding['status'], conditions: string[]) => ({ status, conditions }) as Finding;
  expect(
    conditionsOf([
      of('met', ['b', 'a']),
      of('short', ['never']),
      of('unknown', ['a', 'c']),
      of('not-applicable', ['no']),
    ]),
  ).toEqual(['b', 'a', 'c']);
});

test('each answer is told in a sentence of its own', () => {
  const told = (['yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no'] as const).map(answerSays);
  expect(new Set(told).size).toBe(5);
  for (const sentence of told) expect(sentence).toMatch(/^[A-Z].*\.$/);
});

describe('the crew', () => {
  const crew = (change: object, secondPilotIsPassenger = true) =>
    decideCrew({ ...FLIGHT, ...change }, { secondPilotIsPassenger });

  test.each([
    [{}, { picId: 'member-1', instruction: false, learnerId: null, alone: true, passengers: 0 }],
    [
      { purpose: 'passengers', personsOnBoard: 3 },
      { picId: 'member-1', alone: false, passengers: 2 },
    ],
    [{ personsOnBoard: 0 }, { alone: false, passengers: 0 }],
    [
      { purpose: 'dual', instructorId: 'instructor-1', personsOnBoard: 2 },
      { picId: 'instructor-1', instruction: true, learnerId: 'member-1', alone: false, passengers: 0 },
    ],
    [
      { purpose: 'checkout', instructorId: 'instructor-1', personsOnBoard: 3 },
      { picId: 'instructor-1', instruction: true, passengers: 1 },
    ],
    [
      { purpose: 'dual', personsOnBoard: 1 },
      { picId: null, instruction: true, alone: false, passengers: 0 },
    ],
    [
      { secondPilotId: 'member-2', personsOnBoard: 2 },
      { picId: 'member-1', passengers: 1 },
    ],
    [
      { secondPilotId: 'member-2', actingPilotId: 'member-2', personsOnBoard: 2 },
      { picId: 'member-2', passengers: 1 },
    ],
    [
      { secondPilotId: 'member-2', secondPilotRequired: true, personsOnBoard: 2 },
      { picId: 'member-1', passengers: 0 },
    ],
    [{ secondPilotId: 'member-2', secondPilotRequired: true, personsOnBoard: 3 }, { passengers: 1 }],
    // An acting pilot without a second pilot is nobody.
    [{ actingPilotId: 'member-2' }, { picId: 'member-1', passengers: 0 }],
    [{ secondPilotRequired: true, personsOnBoard: 2 }, { passengers: 1 }],
  ])('%j', (change, wanted) => {
    expect(crew(change)).toMatchObject(wanted);
  });

  test('a club may count a second pilot as crew', () => {
    expect(crew({ secondPilotId: 'member-2', personsOnBoard: 2 }, false).passengers).toBe(0);
    expect(crew({ personsOnBoard: 2 }, false).passengers).toBe(1);
  });

  test('why is told', () => {
    expect(crew({}).picBecause).toContain('without an instructor');
    expect(crew({ secondPilotId: 'member-2' }).picBecause).toContain('two pilots');
    expect(crew({ purpose: 'dual' }).picBecause).toContain('not named yet');
    expect(crew({ purpose: 'dual', instructorId: 'instructor-1' }).picBecause).toContain(
      'while instruction is given',
    );
  });
});
