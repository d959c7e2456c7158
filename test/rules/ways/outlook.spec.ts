/** The least that is still to come, worked out by hand: never more than the cheapest plan, and what to go on with. */
import { candidatesIn, mayCure } from '../../../src/rules/ways/candidates.js';
import { offersAgainst } from '../../../src/rules/ways/offers.js';
import { outlookOf } from '../../../src/rules/ways/estimate.js';
import { waitingPapers } from '../../../src/rules/ways/own/office.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import type { State } from '../../../src/rules/ways/state.js';
import { isRefusal } from '../../../src/rules/ways/place.js';
import { stepsWith } from '../../../src/rules/ways/steps.js';
import { worldOf, type World } from '../../../src/rules/ways/world.js';
import { known } from '../../../src/rules/index.js';
import { POLICY, scene } from './scene.js';
import * as records from '../../../src/rules/workshop/records.js';
import {
  hour,
  lesson,
  paper,
  quarter,
  question,
  settledIn,
  taken,
  wants,
  type ToyAct,
  type Want,
} from './toy.js';

const exam = (...gives: string[]): ToyAct => ({ gives, fee: 'medical-exam' }); // 140
const course = (...gives: string[]): ToyAct => ({ gives, fee: 'course' }); // 10
// An hour alone is 110 with the member's time, with an instructor 150; there and back half of that.

function outlook(
  list: Want[],
  acts: Record<string, ToyAct>,
  more: { prices?: Record<string, number>; aim?: World['aim']; after?: string[] } = {},
): { least: number; next: string[] } | null {
  const { world, root } = settledIn(question({ wants: list, acts, prices: more.prices }), {
    aim: more.aim ?? 'plain',
  });
  const state = (more.after ?? []).reduce((at, act) => after(world, at, act), root);
  const found = outlookOf(world, state);
  return found && { least: found.least, next: found.next.map(({ act }) => act) };
}

/** The state after an act on its own. */
function after(world: World, state: State, act: string): State {
  const offer = offersAgainst(world, state).find((one) => one.act === act)!;
  const step = stepsWith(world, state, offer)[0]!;
  if (isRefusal(step)) throw new Error(`refused: ${step.refused}`);
  return taken(step.take());
}

test('nothing is to come where nothing is in the way, nor before the request is settled', () => {
  expect(outlook([], {})).toEqual({ least: 0, next: [] });
  const world = worldOf(question({ wants: wants(['a']), acts: {} }));
  expect(outlookOf(world, rootOf(world))).toEqual({ least: 0, next: [] });
});

test('none, where no act is known for something in the way', () => {
  expect(outlook(wants(['a']), {})).toBeNull();
  expect(outlook(wants(['a', 'p'], ['b']), { p: paper('a') })).toBeNull();
});

test.each<[string, Want[], Record<string, ToyAct>, number, string[]]>([
  ['a paper', wants(['a', 'p']), { p: paper('a') }, 30, ['p']],
  ['the cheaper of two', wants(['a', 'p', 'e']), { p: paper('a'), e: exam('a') }, 30, ['p', 'e']],
  ['two papers', wants(['a', 'p'], ['b', 'e']), { p: paper('a'), e: exam('b') }, 170, ['p']],
  ['one for both, once', wants(['a', 'p'], ['b', 'p']), { p: paper('a', 'b') }, 30, ['p']],
  // It gives what the other wants, who did not think of it.
  ['one for both, offered by one', wants(['a', 'p'], ['b']), { p: paper('a', 'b') }, 30, ['p']],
  [
    'half of the one for both, and the cheaper one',
    wants(['a', 'p'], ['b', 'p', 'c']),
    { p: paper('a', 'b'), c: course('b') },
    25,
    ['p'],
  ],
  ['an hour, and there and back', wants(['a', 'f']), { f: hour('a') }, 165, ['f']],
  ['with an instructor', wants(['a', 'l']), { l: lesson('a') }, 225, ['l']],
  [
    'no flight for certain, where a paper will do',
    wants(['a', 'f', 'e']),
    { f: hour('a'), e: exam('a') },
    110,
    ['f', 'e'],
  ],
  [
    'two hours do not fit into one flight of two',
    wants(['a', 'f'], ['b', 'g']),
    { f: hour('a'), g: hour('b') },
    330,
    ['f'],
  ],
  [
    'one alone, so none need be with an instructor',
    wants(['a', 'f'], ['b', 'l']),
    { f: quarter('any', 'a'), l: lesson('b') },
    232.5,
    ['f'],
  ],
  ['alone or with an instructor', wants(['a', 'f', 'l']), { f: hour('a'), l: lesson('a') }, 165, ['f', 'l']],
  [
    'the shorter of two counts, so that one flight may do',
    wants(['a', 'f', 'q'], ['b', 'g']),
    { f: hour('a'), q: quarter('any', 'a'), g: hour('b') },
    192.5,
    ['g'],
  ],
  [
    'the shorter of two counts, and what serves for both by half',
    wants(['a', 'f', 'q'], ['b', 'f']),
    { f: hour('a', 'b'), q: quarter('any', 'a') },
    137.5,
    ['f'],
  ],
  ['shared hours count once', wants(['a', 'f'], ['b', 'f']), { f: hour('a', 'b') }, 165, ['f']],
  [
    'two short ones are one flight',
    wants(['a', 'f'], ['b', 'g']),
    { f: quarter('any', 'a'), g: quarter('night', 'b') },
    110,
    ['f'],
  ],
  [
    'by day and by night are two',
    wants(['a', 'f'], ['b', 'g']),
    { f: quarter('day', 'a'), g: quarter('night', 'b') },
    165,
    ['f'],
  ],
  [
    'by night and by day are two',
    wants(['a', 'f'], ['b', 'g']),
    { f: quarter('night', 'a'), g: quarter('day', 'b') },
    165,
    ['f'],
  ],
  [
    'by day or at any time, and by night, may be one',
    wants(['a', 'f', 'h'], ['b', 'g']),
    { f: quarter('day', 'a'), h: quarter('any', 'a'), g: quarter('night', 'b') },
    110,
    ['g'],
  ],
])('%s', (_, list, acts, least, next) => {
  const found = outlook(list, acts)!;
  expect(found.least).toBeCloseTo(least, 6);
  expect(found.next).toEqual(next);
});

test.each<[string, Want[], Record<string, ToyAct>, string[]]>([
  [
    'what takes no flying',
    wants(['a', 'f'], ['b', 'p', 'e']),
    { f: hour('a'), p: paper('b'), e: exam('b') },
    ['p', 'e'],
  ],
  [
    'also when it comes first',
    wants(['b', 'p', 'e'], ['a', 'f']),
    { f: hour('a'), p: paper('b'), e: exam('b') },
    ['p', 'e'],
  ],
  [
    'what may take flying is flying',
    wants(['b', 'p', 'g'], ['a', 'f']),
    { f: hour('a'), g: hour('b'), p: paper('b') },
    ['f'],
  ],
  [
    'what leaves the least choice',
    wants(['a', 'p', 'e'], ['b', 'c']),
    { p: paper('a'), e: exam('a'), c: course('b') },
    ['c'],
  ],
  [
    'the first of what leaves as little',
    wants(['a', 'p'], ['b', 'c']),
    { p: paper('a'), c: course('b') },
    ['p'],
  ],
])('gone on with first: %s', (_, list, acts, next) => {
  expect(outlook(list, acts)!.next).toEqual(next);
});

test('the longest flight is there and back and what is done on it', () => {
  const two: [Want[], Record<string, ToyAct>] = [
    wants(['a', 'f'], ['b', 'g']),
    { f: hour('a'), g: hour('b') },
  ];
  const least = (longest: number): number =>
    outlook(...two, { prices: { 'cost.hours.longest': longest } })!.least;
  expect(least(2.5)).toBeCloseTo(275, 6);
  expect(least(2.4)).toBeCloseTo(330, 6);
  expect(least(1)).toBeCloseTo(330, 6);
  // No room for anything: one flight is begun all the same.
  expect(least(0.5)).toBeCloseTo(275, 6);
  expect(least(0.4)).toBeCloseTo(275, 6);
});

test('waiting counts as long as the slowest of what cannot be done without, each as fast as it can', () => {
  const slow: ToyAct = { gives: ['a'], fee: 'course', lead: 'document' }; // 4 days
  const fast: ToyAct = { gives: ['a'], fee: 'document', lead: 'course' }; // 2 days
  const other: ToyAct = { ...fast, gives: ['b'] };
  expect(outlook(wants(['a', 's']), { s: slow })!.least).toBe(30);
  expect(outlook(wants(['a', 's', 'f']), { s: slow, f: fast })!.least).toBe(20);
  expect(outlook(wants(['a', 's'], ['b', 'o']), { s: slow, o: other })!.least).toBe(60);
  // What has been waited already is waited for all.
  expect(outlook(wants(['a', 's'], ['b', 'o']), { s: slow, o: other }, { after: ['o'] })!.least).toBe(20);
  expect(outlook(wants(['a', 's'], ['b', 'o']), { s: slow, o: other }, { after: ['s'] })!.least).toBe(30);
});

describe('what is planned already', () => {
  const and = (first: ToyAct, second: ToyAct, prices: Record<string, number> = {}): number =>
    outlook(wants(['a', 'f'], ['b', 'g']), { f: first, g: second }, { prices, after: ['f'] })!.least;

  test('has room for more, or none', () => {
    expect(and(hour('a'), quarter('any', 'b'))).toBeCloseTo(27.5, 6);
    expect(and(hour('a'), hour('b'))).toBeCloseTo(165, 6);
    expect(and(hour('a'), hour('b'), { 'cost.hours.longest': 3 })).toBeCloseTo(110, 6);
    // A paper is no flight to join.
    expect(and(paper('a'), hour('b'))).toBeCloseTo(165, 6);
    // No room at all says nothing of how many.
    expect(and(hour('a'), quarter('any', 'b'), { 'cost.hours.longest': 0.5 })).toBeCloseTo(27.5, 6);
    // Longer than any flight: it is one all the same.
    expect(and(hour('a'), quarter('any', 'b'), { 'cost.hours.longest': 1 })).toBeCloseTo(82.5, 6);
  });

  test('is in the light or not', () => {
    expect(and(quarter('night', 'a'), quarter('day', 'b'))).toBeCloseTo(82.5, 6);
    expect(and(quarter('day', 'a'), quarter('night', 'b'))).toBeCloseTo(82.5, 6);
    expect(and(quarter('day', 'a'), quarter('day', 'b'))).toBeCloseTo(27.5, 6);
    expect(and(quarter('night', 'a'), quarter('night', 'b'))).toBeCloseTo(27.5, 6);
    expect(and(quarter('any', 'a'), quarter('night', 'b'))).toBeCloseTo(27.5, 6);
    expect(and(quarter('night', 'a'), quarter('any', 'b'))).toBeCloseTo(27.5, 6);
  });

  test('with an instructor costs more', () => {
    expect(and(hour('a'), lesson('b'))).toBeCloseTo(225, 6);
  });

  test('two flights by day want a third for the night', () => {
    const acts = { f: quarter('day', 'a'), g: quarter('day', 'b'), h: quarter('night', 'c') };
    const found = outlook(wants(['a', 'f'], ['b', 'g'], ['c', 'h']), acts, { after: ['f', 'g'] });
    expect(found!.least).toBeCloseTo(82.5, 6);
    const mixed = { f: quarter('day', 'a'), g: quarter('night', 'b'), h: quarter('night', 'c') };
    const again = outlook(wants(['a', 'f'], ['b', 'g'], ['c', 'h']), mixed, { after: ['f', 'g'] });
    expect(again!.least).toBeCloseTo(27.5, 6);
    const day = { f: quarter('day', 'a'), g: quarter('night', 'b'), h: quarter('day', 'c') };
    const third = outlook(wants(['a', 'f'], ['b', 'g'], ['c', 'h']), day, { after: ['f', 'g'] });
    expect(third!.least).toBeCloseTo(27.5, 6);
  });

  test('one at any time serves the day or the night, not both', () => {
    const acts = { f: quarter('any', 'a'), g: quarter('day', 'b'), h: quarter('night', 'c') };
    const found = outlook(wants(['a', 'f'], ['b', 'g'], ['c', 'h']), acts, { after: ['f'] });
    expect(found!.least).toBeCloseTo(110, 6);
  });

  test('what is flown at night with something else is flown at night', () => {
    const acts = { f: quarter('any', 'a'), g: quarter('night', 'b'), h: quarter('day', 'c') };
    const { world, root } = settledIn(question({ wants: wants(['a', 'f'], ['b', 'g'], ['c', 'h']), acts }));
    const state = after(world, root, 'f');
    const offer = offersAgainst(world, state).find(({ act }) => act === 'g')!;
    const joined = stepsWith(world, state, offer)[1]!;
    if (isRefusal(joined)) throw new Error('refused');
    expect(outlookOf(world, taken(joined.take()))!.least).toBeCloseTo(82.5, 6);
  });
});

describe("an officer's leave", () => {
  // 50 points at 2.
  const club = (token: string, ...offers: string[]): Want => ({ token, offers, weight: 'club' });
  test('is the least where there is nothing cheaper, and only where it is asked for', () => {
    expect(outlook([club('a')], {}, { aim: 'officer' })).toEqual({ least: 100, next: [] });
    expect(outlook([club('a')], {})).toBeNull();
    expect(outlook([club('a', 'p')], { p: paper('a') }, { aim: 'officer' })).toEqual({
      least: 30,
      next: ['p'],
    });
    expect(outlook([club('a', 'e')], { e: exam('a') }, { aim: 'officer' })).toEqual({
      least: 100,
      next: ['e'],
    });
    expect(outlook([club('a', 'e')], { e: exam('a') })).toEqual({ least: 140, next: ['e'] });
    expect(outlook([club('a'), club('b')], {}, { aim: 'officer' })!.least).toBe(200);
  });
  test('is none of the law', () => {
    expect(outlook(wants(['a']), {}, { aim: 'officer' })).toBeNull();
    const found = outlook(
      [club('a', 'c'), ...wants(['b', 'e'])],
      { c: course('a'), e: exam('b') },
      { aim: 'officer' },
    );
    expect(found).toEqual({ least: 150, next: ['e'] });
  });
  test('waits for nobody, and flies nowhere', () => {
    const slow: ToyAct = { gives: ['a'], fee: 'document', lead: 'document' };
    expect(outlook([club('a', 's')], { s: slow }, { aim: 'officer' })!.least).toBe(30);
    expect(outlook([club('a', 'f')], { f: quarter('any', 'a') }, { aim: 'officer' })!.least).toBeCloseTo(
      27.5,
      6,
    );
  });
});

describe('what an act of another may put right', () => {
  type Counted = 'member.log' | 'member.basicMed' | 'member.endorsements';
  /** Wants a sign-off, and looks at another record as well. */
  const looking = (token: string, at: Counted | 'aircraft.squawks'): Want => ({
    token,
    offers: [],
    reads: [at],
  });
  const writes = (fact: Counted | 'aircraft.squawks' | 'aircraft.permits'): ToyAct => ({
    ...paper('a'),
    effects: () => [{ op: 'append', fact, value: { ...records.LOG, id: 'new' } }],
  });
  test('alone, or together with others where several records count', () => {
    const list = (at: Counted | 'aircraft.squawks') => [...wants(['a', 'p']), looking('b', at)];
    expect(outlook(list('member.log'), { p: writes('member.log') })).toEqual({ least: 30, next: ['p'] });
    for (const counted of ['member.basicMed', 'member.endorsements'] as const)
      expect(outlook(list(counted), { p: writes(counted) })).toEqual({ least: 30, next: ['p'] });
    expect(outlook(list('aircraft.squawks'), { p: writes('aircraft.squawks') })).toBeNull();
    expect(outlook(list('member.log'), { p: writes('aircraft.permits') })).toBeNull();
  });
  test('papers that wait', () => {
    const of = question({ wants: [{ token: 'a', offers: [] }], acts: {} });
    const waiting = structuredClone(of.sheet);
    waiting.people['member-1']!.unverified = known([records.UNVERIFIED], waiting.knownAt);
    const verified = { 'member-1': waiting.people['member-1']! };
    const { world, root } = settledIn({ ...of, sheet: waiting, verified });
    // Sign-offs of the club are no papers, so none helps here.
    expect(outlookOf(world, root)).toBeNull();
  });
});

describe('what can be done', () => {
  const test_: ToyAct = {
    gives: ['d'],
    kind: 'appointment',
    air: 'check',
    fee: 'document',
    sketch: { with: 'examiner', light: 'day' },
  };
  const acts: Record<string, ToyAct> = {
    p: { gives: ['a'], fee: 'document', lead: 'course' },
    f: quarter('night', 'b'),
    l: lesson('c'),
    t: test_,
    late: { gives: ['a'], fee: 'document', lead: 'fitting' },
    r: { gives: [], effects: () => [{ op: 'flight', fields: { usesVor: true } }] },
  };
  const list = wants(['a', 'p', 'late', 'r'], ['b', 'f'], ['c', 'l'], ['d', 't']);
  const found = (more: Partial<World> = {}) => {
    const { world, root } = settledIn(question({ wants: list, acts }), more);
    return { world, candidates: candidatesIn(world, root) };
  };

  test('at the least, from when on, and in what light; nothing that comes too late, and no change of the request', () => {
    const { world, candidates } = found();
    expect(
      candidates.map(({ offer, least, ready, air, dual, light }) => [
        offer.act,
        least,
        (ready - world.start) / 86_400,
        air,
        dual,
        light,
      ]),
    ).toEqual([
      ['p', 30, 2, null, false, 'any'],
      ['f', 27.5, 0, 0.25, false, 'night'],
      ['l', 150, 0, 1, true, 'any'],
      // A test is flown on its own; the examiner's fee is the document's here.
      ['t', 140, 0, null, false, 'day'],
    ]);
    expect(world.late.get('late')).toEqual({ title: 'Do late.', done: world.start + 21 * 86_400 });
  });

  test('what is left out is not there, and what comes just in time is', () => {
    expect(
      found({ banned: new Set(['p', 'kind appointment']) }).candidates.map(({ offer }) => offer.act),
    ).toEqual(['f', 'l']);
    const { world, root } = settledIn(question({ wants: wants(['a', 'p']), acts, hours: 48 }));
    expect(candidatesIn(world, root)).toHaveLength(1);
    const sooner = settledIn(question({ wants: wants(['a', 'p']), acts, hours: 47 }));
    expect(candidatesIn(sooner.world, sooner.root)).toEqual([]);
  });

  test('what made room for another act is asked for on both behalves', () => {
    const { world, root } = settledIn(question({ wants: wants(['a', 'p']), acts }));
    const [offer] = offersAgainst(world, root);
    const practice = {
      person: 'member-1',
      dual: false,
      night: false,
      tenths: 10,
      transponder: null,
      alsoMet: [],
    };
    const enabler = { ...offer!, askers: [{ rule: 7, nth: 0, practice }] };
    world.enablers.set('x', enabler).set('y', { ...enabler, meaning: 'another' });
    const all = candidatesIn(world, root);
    expect(all.map((one) => one.offer.askers.map(({ rule }) => rule))).toEqual([[0, 7], [7]]);
  });

  test('several things on one flight need the light and the company of each', () => {
    const { world, root } = settledIn(question({ wants: wants(['a', 'p']), acts }));
    const [offer] = offersAgainst(world, root);
    const entries = ['f', 'l', 'p', 't'].map((act) => world.look(act)!);
    const of = (...chosen: number[]) => {
      world.enablers.clear();
      world.enablers.set('x', { ...offer!, meaning: 'x', entries: chosen.map((index) => entries[index]!) });
      const { dual, light, air } = candidatesIn(world, root).find((one) => one.offer.meaning === 'x')!;
      return [dual, light, air];
    };
    expect(of(1, 0)).toEqual([true, 'night', 1.25]);
    expect(of(0, 1)).toEqual([true, 'night', 1.25]);
    expect(of(2, 0)).toEqual([false, 'night', 0.25]);
    expect(of(0, 3)).toEqual([false, 'night', null]);
    expect(of(2)).toEqual([false, 'any', null]);
  });

  test('may put a rule right that asks for it on the flight itself, or that reads what it changes', () => {
    const { world, root } = settledIn(
      question({ wants: [...wants(['a', 'p']), { token: 'b', offers: [] }], acts }),
    );
    const [offer] = offersAgainst(world, root);
    const practice = {
      person: 'member-1',
      dual: false,
      night: false,
      tenths: 10,
      transponder: null,
      alsoMet: [],
    };
    const may = (rule: number, change: Partial<NonNullable<typeof offer>>): boolean =>
      mayCure(world, root, { ...offer!, meaning: JSON.stringify(change), ...change }, rule);
    expect(may(0, {})).toBe(true);
    expect(may(1, {})).toBe(false);
    expect(may(1, { askers: [{ rule: 1, nth: 0, practice: null }] })).toBe(true);
    expect(may(1, { askers: [{ rule: 1, nth: 0, practice }] })).toBe(false);
    const both = [
      { rule: 0, nth: 0, practice: null },
      { rule: 1, nth: 0, practice: null },
    ];
    expect(may(1, { askers: both })).toBe(true);
    expect(may(0, { askers: [], change: { is: 'leave' } })).toBe(false);
    expect(may(0, { askers: [], change: { is: 'effects', effects: [] } })).toBe(false);
    const request = { op: 'flight' as const, fields: { usesVor: true } };
    expect(may(0, { askers: [], change: { is: 'effects', effects: [request] } })).toBe(false);
  });

  test('and so does what changes the aircraft, or shows papers', () => {
    const sheet = scene(5, (one) => {
      one.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' as const }], one.knownAt);
      one.people['member-1']!.unverified = known([records.UNVERIFIED], one.knownAt);
    });
    const world = worldOf({ sheet, policy: POLICY, verified: { 'member-1': sheet.people['member-1']! } });
    const root = rootOf(world);
    const grounding = world.ruleset.rules.findIndex(({ id }) => id === 'squawk.grounding');
    const fixed = offersAgainst(world, root).find(({ act }) => act === 'fix-squawk')!;
    expect(mayCure(world, root, { ...fixed, askers: [] }, grounding)).toBe(true);
    expect(mayCure(world, root, waitingPapers(world, root)[0]!, grounding)).toBe(false);
  });
});
