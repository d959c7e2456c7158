/** A point of the search told from another, the day's prices and leave, and the words of the search. */
import { toInstant, toSeconds } from '../../../src/rules/index.js';
import { candidateOf } from '../../../src/rules/ways/choose.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import { catalogue } from '../../../src/rules/ways/acts.js';
import {
  departureOf,
  endOf,
  isBanned,
  isPractice,
  isRequest,
  isUnnamed,
  keyOf,
  markOf,
  marksOf,
  requestOf,
  type Change,
  type Done,
  type Offer,
  type Sortie,
  type State,
} from '../../../src/rules/ways/state.js';
import * as words from '../../../src/rules/ways/words.js';
import { worldOf } from '../../../src/rules/ways/world.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { POLICY, scene } from './scene.js';

const effects = (...ops: ('flight' | 'set')[]): Change => ({
  is: 'effects',
  effects: ops.map((op) =>
    op === 'flight' ? { op, fields: {} } : { op, fact: 'aircraft.use' as const, value: null },
  ),
});
const offer = (act: string, change: Change, more: Partial<Offer> = {}): Offer => ({
  act,
  title: act,
  by: 'member',
  entries: [catalogue(act)!],
  change,
  askers: [],
  person: null,
  notBefore: 0,
  meaning: act,
  ...more,
});
const sortie = (of: Partial<Sortie> = {}): Sortie => ({
  dual: false,
  night: false,
  tenths: 10,
  flights: 1,
  from: 1000,
  to: 4600,
  person: 'member-1',
  ...of,
});
const done = (of: Offer, more: Partial<Done> = {}): Done => ({
  offer: of,
  change: of.change,
  as: { crew: rootOf(worldOf({ sheet: baseSheet(), policy: POLICY })).verdicts.crew, flight: null },
  from: 0,
  to: 0,
  bill: { hours: 0, money: 0, clubMoney: 0, points: 0 },
  cures: [],
  sortie: null,
  books: false,
  mark: `mark of ${of.act}`,
  ...more,
});

test.each<[string, Change, boolean]>([
  ['fields of the flight', effects('flight'), true],
  ['fields of the flight, twice', effects('flight', 'flight'), true],
  ['a fact besides', effects('flight', 'set'), false],
  ['a fact', effects('set'), false],
  ['nothing', effects(), false],
  ['another aircraft', { is: 'parts', flight: {} }, true],
  ['papers', { is: 'parts', papers: baseSheet().people['member-1']! }, false],
  ['leave', { is: 'leave' }, false],
])('a change of the request: %s', (_, change, wanted) => {
  expect(isRequest({ change })).toBe(wanted);
});

test('practice is what is flown, and no change of the request', () => {
  expect(isPractice(offer('fly-checkout', effects('set')))).toBe(true);
  expect(isPractice(offer('fly-checkout', effects('flight')))).toBe(false);
  expect(isPractice(offer('pass-medical-exam', effects('set')))).toBe(false);
  const both = { entries: [catalogue('pass-medical-exam')!, catalogue('fly-checkout')!] };
  expect(isPractice(offer('x', effects('set'), both))).toBe(true);
});

test('acts are left out by name or by kind', () => {
  const medical = offer('pass-medical-exam', effects('set'));
  expect(isBanned(new Set(), medical)).toBe(false);
  expect(isBanned(new Set(['pass-medical-exam']), medical)).toBe(true);
  expect(isBanned(new Set(['kind appointment']), medical)).toBe(true);
  expect(isBanned(new Set(['kind paper', 'appointment']), medical)).toBe(false);
  const both = { entries: [catalogue('renew-certificate')!, catalogue('pass-medical-exam')!] };
  expect(isBanned(new Set(['kind appointment']), offer('x', effects('set'), both))).toBe(true);
});

test('what was done tells states apart, and the order in which it was does not', () => {
  expect(markOf({ meaning: 'act' }, { at: 7, sortie: null })).toBe('7 act');
  expect(markOf({ meaning: 'act' }, { at: 7, sortie: sortie() })).toBe('7 act');
  expect(markOf({ meaning: 'act' }, { at: 7, sortie: sortie({ dual: true }) })).toBe('7d act');
  expect(keyOf({ settled: true, request: 'r', marks: ['b', 'a'] })).toBe('settled r\na\nb');
  expect(keyOf({ settled: false, request: 'r', marks: [] })).toBe('open r\n');
  const marks = ['b', 'a'];
  keyOf({ settled: true, request: 'r', marks });
  expect(marks).toEqual(['b', 'a']);
  // A change of the request shows in the request; another aircraft is remembered as an act besides.
  expect(
    marksOf([
      done(offer('land-before-night', effects('flight'))),
      done(offer('take-other-aircraft', { is: 'parts', flight: {} })),
      done(offer('pass-medical-exam', effects('set'))),
    ]),
  ).toEqual(['mark of take-other-aircraft', 'mark of pass-medical-exam']);
});

test('the request is the aircraft and the flight, whatever the order in which its fields were set', () => {
  const sheet = baseSheet();
  const turned = Object.fromEntries(Object.entries(sheet.flight).reverse()) as typeof sheet.flight;
  expect(requestOf(sheet)).toBe(requestOf({ ...sheet, flight: turned }));
  expect(requestOf(sheet)).toMatch(/^aircraft-1 \{"actingPilotId":null,/);
  // The flight is the same object; the aircraft is not.
  expect(requestOf({ ...sheet, aircraft: { ...sheet.aircraft, id: 'aircraft-2' } })).toMatch(/^aircraft-2 /);
  expect(requestOf({ ...sheet, flight: { ...sheet.flight, usesVor: true } })).not.toBe(requestOf(sheet));
});

test('what takes several flights ends with the last of them, a day apart', () => {
  expect(endOf(sortie())).toBe(4600);
  expect(endOf(sortie({ flights: 3 }))).toBe(4600 + 2 * 86_400);
});

test('an instructor still has to be found on a lesson without one alone', () => {
  const state = (fields: object): State => {
    const sheet = baseSheet();
    sheet.flight = { ...sheet.flight, ...fields };
    return rootOf(worldOf({ sheet, policy: POLICY }));
  };
  expect(isUnnamed(state({}))).toBe(false);
  expect(isUnnamed(state({ purpose: 'dual', personsOnBoard: 2 }))).toBe(true);
  expect(isUnnamed(state({ purpose: 'dual', personsOnBoard: 2, instructorId: 'instructor-1' }))).toBe(false);
});

describe('the state before anything is done', () => {
  const sheet = scene(5, () => undefined);
  const root = rootOf(worldOf({ sheet, policy: POLICY }));
  test('is the question', () => {
    expect(root).toMatchObject({
      parent: null,
      unit: null,
      done: [],
      settled: false,
      overrides: [],
      trail: '',
      cost: { hours: 0, money: 0, clubMoney: 0, days: 0, points: 0, total: 0 },
    });
    expect(root.sheet).toBe(sheet);
    expect(root.key).toBe(`open ${requestOf(sheet)}\n`);
    expect(departureOf(sheet)).toBe(toSeconds('2027-03-05T18:00:00Z'));
  });

  test('ends are told apart by what was done, and practice by what it put right', () => {
    const ends: State = {
      ...root,
      cost: { ...root.cost, total: 12 },
      done: [
        done(offer('fly-checkout', effects('set')), { sortie: sortie(), cures: ['b', 'a'] }),
        done(offer('fly-landings-day', effects('set')), { sortie: sortie(), cures: [] }),
        done(offer('fly-club-check', effects('set')), { sortie: sortie(), cures: ['d'] }),
        done(offer('pass-medical-exam', effects('set')), { cures: ['c'] }),
      ],
    };
    expect(candidateOf(ends, root)).toEqual({
      acts: new Set(['flown for a,b', 'fly-landings-day', 'flown for d', 'pass-medical-exam']),
      kinds: 'appointment,flight',
      plain: true,
      total: 12,
    });
    expect(candidateOf({ ...ends, overrides: ['x'] }, root).plain).toBe(false);
    const lesson = { ...root.verdicts.crew, instruction: true, picId: null };
    const unnamed = { ...root, verdicts: { ...root.verdicts, crew: lesson } };
    expect(candidateOf(unnamed, root).plain).toBe(false);
    // Nobody was asked for: it hangs on nobody more than it did.
    expect(candidateOf(unnamed, unnamed).plain).toBe(true);
  });
});

describe('what one search shares', () => {
  const sheet = scene(5, () => undefined);
  const start = (from?: string): string => toInstant(worldOf({ sheet, policy: POLICY, from }).start);
  const leave = (...values: [from: string, value: boolean | string][]): boolean =>
    worldOf({
      sheet,
      policy: {
        values: [
          ...POLICY.values.filter(({ id }) => id !== 'club.override.allowed'),
          ...values.map(([from, value]) => ({ id: 'club.override.allowed', from, value, reference: 'spec' })),
        ],
      },
    }).mayOverride;

  test('nothing is done before the facts are known, nor before the instant asked for', () => {
    expect(start()).toBe(sheet.knownAt);
    expect(start('2027-02-28T17:59:59Z')).toBe(sheet.knownAt);
    expect(start('2027-03-01T12:00:00Z')).toBe('2027-03-01T12:00:00Z');
  });

  test('an officer may set rules aside where the club says so on the day', () => {
    expect(leave()).toBe(false);
    expect(leave(['2027-02-28', true])).toBe(true);
    expect(leave(['2027-03-01', true])).toBe(false);
    expect(leave(['2027-02-01', false], ['2026-01-01', true])).toBe(false);
    expect(leave(['2026-01-01', true], ['2027-02-01', false])).toBe(false);
    expect(leave(['2026-01-01', false], ['2027-02-01', true])).toBe(true);
    expect(leave(['2026-01-01', 'yes'])).toBe(false);
    // Another value of the club's, allowed or not, says nothing of it.
    const other = { id: 'club.other', from: '2026-01-01', value: true, reference: 'spec' };
    expect(worldOf({ sheet, policy: { values: [other] } }).mayOverride).toBe(false);
  });

  test('begins with nothing found out', () => {
    const world = worldOf({ sheet, policy: POLICY, closedRecords: ['member-2'] });
    expect(world.aim).toBe('plain');
    expect([...world.closed]).toEqual(['member-2']);
    expect([...worldOf({ sheet, policy: POLICY }).closed]).toEqual([]);
    expect([...world.banned]).toEqual([]);
    expect(world.disproved).toEqual({ count: 0 });
    expect(world.look).toBe(catalogue);
    const none = () => undefined;
    expect(worldOf({ sheet, policy: POLICY, catalogue: none }).look).toBe(none);
  });
});

test('a practice flight is told by who is aboard, by its light and by what it is for', () => {
  const says = (dual: boolean, safetyPilot: boolean, night: boolean, tasks: number): string =>
    words.sortieSays({ dual, safetyPilot, night, tasks });
  expect(says(false, false, false, 1)).toBe('A flight on your own.');
  expect(says(true, true, true, 1)).toBe('A flight with an instructor at night.');
  expect(says(false, true, false, 1)).toBe('A flight with a safety pilot.');
  expect(says(true, false, false, 2)).toBe('One flight with an instructor for 2 of the steps.');
  expect(says(false, true, true, 3)).toBe('One flight with a safety pilot at night for 3 of the steps.');
});

test('titles are quoted without their full stop', () => {
  const at = toSeconds('2027-03-05T18:00:00Z');
  expect(words.WHY.tooLate('Pass it by 1.5.', at, 'America/Denver')).toBe(
    '"Pass it by 1.5" could be done by 2027-03-05 11:00 at the earliest, after the flight begins.',
  );
  expect(words.WHY.held('Pass it', ['A', 'B'])).toBe(
    '"Pass it" cannot be done as long as this stands in the way: A; B.',
  );
});
