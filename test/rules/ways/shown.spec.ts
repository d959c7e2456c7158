/** What is shown of the ways found, in a world worked out by hand: steps in their order, what opens what, other ways, or why there is none. */
import { known, toInstant, toSeconds } from '../../../src/rules/index.js';
import { advance } from '../../../src/rules/ways/advance.js';
import { laterWay, noWay } from '../../../src/rules/ways/none.js';
import { offersAgainst } from '../../../src/rules/ways/offers.js';
import { prove, without } from '../../../src/rules/ways/prove.js';
import { cheapest, DEFAULT_LIMITS, rootOf, type Spent } from '../../../src/rules/ways/search.js';
import type { Way, WaysToYes } from '../../../src/rules/ways/types.js';
import { findWays, waysToYes } from '../../../src/rules/ways/ways.js';
import { worldOf, type World } from '../../../src/rules/ways/world.js';
import * as records from '../../../src/rules/workshop/records.js';
import { lose, policyWith, scene, ways } from './scene.js';
import {
  entry,
  taken,
  hour,
  paper,
  question,
  settledIn,
  START,
  taught,
  wants,
  type Toy,
  type ToyAct,
} from './toy.js';

const HOUR = 3600;
const DAY = 24 * HOUR;

const exam = (...gives: string[]): ToyAct => ({ gives, fee: 'medical-exam' }); // 140
const course = (...gives: string[]): ToyAct => ({ gives, fee: 'course' }); // 10
const find = (toy: Toy): WaysToYes => waysToYes(question(toy));
const acts = (way: Way | undefined): string[] => way?.steps.map(({ act }) => act) ?? [];
const spent = (): Spent => ({ limits: { nodes: 1000 }, looked: 0, bound: null, cured: new Set() });

describe('a way', () => {
  const toy: Toy = {
    wants: [...wants(['a', 'f'], ['b', 'slow']), { token: 'm', offers: ['leave'], on: ['solo'] }],
    acts: {
      f: hour('a'),
      slow: { gives: ['b'], fee: 'document', lead: 'document' },
      leave: { gives: ['m'], fee: 'course', lead: 'course' },
    },
    // Nobody is taken along.
    prices: { 'cost.instructor-hour': 1000 },
  };

  test('is told step by step, in order of time, with what opens what', () => {
    const [way] = find(toy).plans;
    const at = (days: number, hours = 0): string => toInstant(START + days * DAY + hours * HOUR);
    expect(way).toEqual({
      steps: [
        {
          act: 'leave',
          title: 'Do leave.',
          kind: 'paper',
          by: 'member',
          person: 'member-1',
          cost: { hours: 0, money: 10, clubMoney: 0, days: 2, points: 0, total: 20 },
          startsOn: at(2),
          doneBy: at(2),
          cures: [],
          opens: ['f'],
          sortie: null,
        },
        {
          act: 'f',
          title: 'Do f.',
          kind: 'flight',
          by: 'member',
          person: 'member-1',
          cost: { hours: 1.5, money: 150, clubMoney: 0, days: 2, points: 0, total: 175 },
          startsOn: at(2),
          doneBy: at(2, 1.5),
          cures: ['toy.a'],
          opens: [],
          sortie: 1,
        },
        {
          act: 'slow',
          title: 'Do slow.',
          kind: 'paper',
          by: 'member',
          person: 'member-1',
          cost: { hours: 0, money: 30, clubMoney: 0, days: 4, points: 0, total: 50 },
          startsOn: at(4),
          doneBy: at(4),
          cures: ['toy.b'],
          opens: [],
          sortie: null,
        },
      ],
      sorties: [
        {
          number: 1,
          says: 'A flight on your own.',
          dual: false,
          night: false,
          departs: at(2),
          arrives: at(2, 1.5),
        },
      ],
      cost: { hours: 1.5, money: 190, clubMoney: 0, days: 4, points: 0, total: 225 },
      answer: 'yes',
      rests: [],
      restSays: [],
      overrides: [],
      flight: { departs: at(10), arrives: at(10, 1), aircraftId: 'aircraft-1', personsOnBoard: 1 },
      conditions: [],
      provenBy: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
  });

  test('falls apart without any one of its acts', () => {
    const { world } = settledIn(question(toy));
    const end = cheapest(world, rootOf(world), spent(), (found) => found)!;
    const order = end.done.map(({ offer }) => offer.act);
    const left = (act: string) => without(world, end, { unit: order.indexOf(act), offer: 0 });
    expect(left('leave')).toEqual({ yes: false, lost: ['f'] });
    expect(left('f')).toEqual({ yes: false, lost: [] });
    expect(left('slow')).toEqual({ yes: false, lost: [] });
    expect(without(world, end, { unit: 99, offer: 0 })).toEqual({ yes: true, lost: [] });
    expect(without(world, end, { unit: order.indexOf('f'), offer: 1 })).toEqual({ yes: true, lost: [] });
  });

  test('with an act too many is not shown', () => {
    const { world, root } = settledIn(
      question({
        wants: wants(['a', 'p', 'q'], ['b', 'q', 'r']),
        acts: { p: paper('a'), q: exam('a', 'b'), r: { ...paper('b'), fee: 'annual' } },
      }),
    );
    const found: (string[] | null)[] = [];
    cheapest(world, root, spent(), (end) => {
      const proof = prove(world, end);
      found.push(proof && acts(proof.way));
      return null;
    });
    expect(found).toEqual([['q'], null, ['p', 'r']]);
  });

  test('several flights are numbered by time, and told by who is aboard', () => {
    const [way] = find({
      wants: wants(['a', 'late'], ['b', 'soon'], ['c', 'with']),
      acts: {
        late: { ...hour('a'), lead: 'document' },
        soon: {
          gives: ['b'],
          kind: 'flight',
          air: 'check',
          lead: 'course',
          sketch: { with: 'safety-pilot', light: 'any' },
        },
        with: { ...paper('c'), lead: 'course' },
      },
      prices: { 'cost.instructor-hour': 1000, 'cost.hours.longest': 1.5 },
    }).plans;
    expect(way!.sorties.map(({ number, says }) => [number, says])).toEqual([
      [1, 'A flight with a safety pilot.'],
      [2, 'A flight on your own.'],
    ]);
    expect(way!.steps.map(({ act, sortie }) => [act, sortie]).sort()).toEqual([
      ['late', 2],
      ['soon', 1],
      ['with', null],
    ]);
  });

  test('a safety pilot aboard for one of the acts is aboard', () => {
    const hood: ToyAct['sketch'] = { with: 'safety-pilot', light: 'any' };
    const [way] = find({
      wants: wants(['a', 'f'], ['b', 'g']),
      acts: {
        f: { gives: ['a'], kind: 'flight', air: 'landing', sketch: hood },
        g: { gives: ['b'], kind: 'flight', air: 'landing', sketch: hood, fee: 'course' },
      },
      prices: { 'cost.instructor-hour': 1000 },
    }).plans;
    expect(way!.sorties).toEqual([
      expect.objectContaining({ says: 'One flight with a safety pilot for 2 of the steps.' }),
    ]);
  });

  test('and so it is for an act that is something on the ground besides', () => {
    const of = question({
      wants: wants(['a', 'keep-within-x']),
      acts: {
        'keep-within-x': {
          ...paper('a'),
          effects: () => [
            { op: 'append', fact: 'pic.medicals', value: { id: 'm' } },
            { op: 'append', fact: 'pic.endorsements', value: { id: 'e' } },
          ],
        },
      },
    });
    const found = waysToYes({
      ...of,
      catalogue: (act) =>
        act === 'get-endorsement-solo'
          ? entry({ kind: 'flight', air: 'landing', sketch: { with: 'safety-pilot', light: 'any' } })
          : entry({ fee: 'document' }),
    });
    expect(found.plans[0]!.sorties[0]!.says).toBe('A flight with a safety pilot.');
  });
});

test('with leave, too, an act too many is found out', () => {
  const { world, root } = settledIn(
    question({
      wants: [...wants(['a', 'p', 'q'], ['b', 'q']), { token: 'c', offers: [], weight: 'club' }],
      acts: { p: paper('a'), q: paper('a', 'b') },
    }),
    { aim: 'officer' },
  );
  const offer = (act: string) => offersAgainst(world, root).find((one) => one.act === act)!;
  const leave = { ...offer('p'), act: 'ask-officer', askers: [], change: { is: 'leave' as const } };
  const end = [offer('p'), offer('q'), leave].reduce(
    (at, one) => taken(advance(world, at, { offers: [one], dual: false })),
    root,
  );
  expect(without(world, end, { unit: 0, offer: 0 })).toEqual({ yes: true, lost: [] });
  expect(without(world, end, { unit: 1, offer: 0 })).toEqual({ yes: false, lost: [] });
  expect(without(world, end, { unit: 2, offer: 0 })).toEqual({ yes: false, lost: [] });
  expect(prove(world, end)).toBeNull();
});

describe('nothing is shown that a fresh judgement does not bear out', () => {
  test.each(['law', 'club'] as const)('%s', (weight) => {
    const world = worldOf(question({ wants: [{ token: 'a', offers: [], weight }], acts: {} }));
    const root = rootOf(world);
    expect(root.verdicts.blocking).toEqual([0]);
    const wrong = { ...root, settled: true, verdicts: { ...root.verdicts, blocking: [] } };
    expect(prove(world, wrong)).toBeNull();
    expect(world.disproved.count).toBe(1);
    // Set aside by an officer, it stands: a rule of the club's, and no other.
    const allowed = prove(world, { ...wrong, overrides: ['toy.a'] });
    if (weight === 'law') expect(allowed).toBeNull();
    else
      expect(allowed!.way).toMatchObject({ rests: ['officer'], overrides: ['toy.a'], answer: 'ask-officer' });
    expect(world.disproved.count).toBe(weight === 'law' ? 2 : 1);
    expect(prove(world, { ...wrong, overrides: ['toy.b'] })).toBeNull();
  });
});

describe("an officer's leave", () => {
  const club = (fee: number): WaysToYes =>
    find({
      wants: [{ token: 'a', offers: ['e'], weight: 'club' }],
      acts: { e: exam('a'), 'ask-officer': { gives: [], kind: 'office', ground: 'office' } },
      prices: { 'cost.medical-exam': fee },
    });
  // Half an hour of the member's, and 50 points at 2.
  test('is shown where it costs no more than a plain yes', () => {
    const shown = (fee: number): string[][] => club(fee).plans.map(acts);
    expect(shown(106)).toEqual([['ask-officer'], ['e']]);
    expect(shown(105).sort()).toEqual([['ask-officer'], ['e']]);
    expect(shown(104)).toEqual([['e']]);
  });
  test('says whom the answer hangs on', () => {
    const [way] = club(200).plans;
    expect(way).toMatchObject({
      rests: ['officer'],
      restSays: ['An officer must agree; until then the answer stays "ask an officer".'],
      overrides: ['toy.a'],
      cost: { hours: 0.5, points: 50, total: 105 },
      steps: [{ act: 'ask-officer', by: 'officer', cures: ['toy.a'], opens: [] }],
    });
  });
  test('of what is left once something else is done', () => {
    const found = find({
      wants: [...wants(['l', 'p']), { token: 'a', offers: [], weight: 'club' }],
      acts: { p: paper('l'), 'ask-officer': { gives: [], kind: 'office', ground: 'office' } },
    });
    expect(found.plans.map(acts)).toEqual([['p', 'ask-officer']]);
    // The leave does not wait for the paper to be any good; without the paper there is none.
    expect(found.plans[0]!.steps.map(({ opens }) => opens)).toEqual([[], []]);
    expect(found.plans[0]!.overrides).toEqual(['toy.a']);
  });
});

describe('other ways', () => {
  const three = (one: ToyAct, two: ToyAct, last: ToyAct, names: [string, string, string]): Toy => {
    const [a, b, c] = names;
    return {
      wants: wants(['a', a, 'a2'], ['b', b, 'b2'], ['c', c, 'c2']),
      acts: { [a]: one, [b]: two, [c]: last, a2: exam('a'), b2: exam('b'), c2: exam('c') },
    };
  };
  const prices = { 'cost.course': 10, 'cost.document': 30, 'cost.physician': 20 };

  test('without the dearest act of the cheapest first, three in all', () => {
    const toy = three(course('a'), { gives: ['b'], fee: 'physician' }, paper('c'), ['a1', 'b1', 'c1']);
    const plans = find({ ...toy, prices }).plans.map((way) => acts(way).sort());
    expect(plans).toEqual([
      ['a1', 'b1', 'c1'],
      ['a1', 'b1', 'c2'],
      ['a1', 'b2', 'c1'],
    ]);
  });

  test('of acts that cost the same in order of their names', () => {
    const toy = three(paper('a'), paper('b'), paper('c'), ['z', 'y', 'x']);
    const plans = find({ ...toy, prices }).plans.map((way) => acts(way).sort());
    expect(plans[0]).toEqual(['x', 'y', 'z']);
    expect(
      plans
        .slice(1)
        .map((plan) => plan.find((act) => act.endsWith('2')))
        .sort(),
    ).toEqual(['b2', 'c2']);
  });

  test('of the others none is looked for once there are three', () => {
    // The cheapest act could be had otherwise for little more.
    const toy = three(course('a'), { gives: ['b'], fee: 'physician' }, paper('c'), ['a1', 'b1', 'c1']);
    const acts_ = { ...toy.acts, a2: { gives: ['a'], fee: 'items' as const } };
    const plans = find({ ...toy, acts: acts_, prices: { ...prices, 'cost.items': 12 } }).plans;
    expect(
      plans.map((way) =>
        acts(way)
          .filter((act) => act.endsWith('2'))
          .join(),
      ),
    ).toEqual(['', 'c2', 'b2']);
  });

  test('of acts that cost the same, by their names whatever they were written for', () => {
    const toy = three(paper('a'), paper('b'), paper('c'), ['x', 'y', 'z']);
    const [, ...plans] = find({ ...toy, prices }).plans.map((way) =>
      acts(way).find((act) => act.endsWith('2')),
    );
    expect(plans.sort()).toEqual(['a2', 'b2']);
  });

  test('that cost the same are shown by kind', () => {
    const order = (p: ToyAct['kind'], q: ToyAct['kind']): string[][] =>
      find({
        wants: wants(['a', 'p', 'q']),
        acts: { p: { ...paper('a'), kind: p }, q: { ...paper('a'), kind: q } },
      }).plans.map(acts);
    expect(order('paper', 'appointment')).toEqual([['q'], ['p']]);
    expect(order('appointment', 'paper')).toEqual([['p'], ['q']]);
  });

  test('one is enough: no reason why there is none, and no later flight', () => {
    const late: ToyAct = { ...paper('a'), lead: 'document' };
    expect(
      find({ wants: wants(['a', 'p', 'l']), acts: { p: paper('a'), l: late }, hours: 24 }),
    ).toMatchObject({
      plans: [{ steps: [{ act: 'p' }] }],
      none: null,
      later: null,
    });
  });

  test('without an instructor are none where one is looked for', () => {
    const { world } = settledIn(question({ wants: wants(['a', 'p']), acts: { p: paper('a') } }));
    const end = (aim: World['aim']): string[] | null =>
      cheapest({ ...world, aim }, rootOf(world), spent(), (found) =>
        found.done.map(({ offer }) => offer.act),
      );
    expect(end('plain')).toEqual(['p']);
    expect(end('instructor')).toBeNull();
    expect(end('officer')).toBeNull();
  });

  test('are looked at in order of cost, then further on first, then by name', () => {
    const order = (toy: Toy): string[] => {
      const { world, root } = settledIn(question(toy));
      const ends: string[] = [];
      cheapest(world, root, spent(), (end) => {
        ends.push(end.done.map(({ offer }) => offer.act).join('+'));
        return null;
      });
      return ends;
    };
    expect(
      order({ wants: wants(['a', 'r', 'q', 'p']), acts: { p: paper('a'), q: paper('a'), r: paper('a') } }),
    ).toEqual(['p', 'q', 'r']);
    expect(
      order({ wants: wants(['a', 'e', 'p', 'c']), acts: { e: exam('a'), p: paper('a'), c: course('a') } }),
    ).toEqual(['c', 'p', 'e']);
    const forty = { 'cost.medical-exam': 40 };
    expect(
      order({
        wants: wants(['a', 'p', 'x'], ['b', 'c', 'x']),
        acts: { p: paper('a'), c: course('b'), x: exam('a', 'b') },
        prices: forty,
      }),
    ).toEqual(['p+c', 'x', 'p+x']);
  });

  test('of another kind come first', () => {
    const found = find({
      wants: wants(['a', 'p', 'q', 'f']),
      acts: { p: paper('a'), q: exam('a'), f: hour('a') },
    });
    expect(found.plans.map(acts)).toEqual([['p'], ['q'], ['f']]);
    const cheap = find({
      wants: wants(['a', 'p', 'q', 'r', 'f']),
      acts: { p: paper('a'), q: { gives: ['a'], fee: 'course' }, r: exam('a'), f: hour('a') },
    });
    expect(cheap.plans.map(acts)).toEqual([['q'], ['p'], ['f']]);
  });

  test('are looked for within the limits, and what was found is shown', () => {
    const toy = question(three(course('a'), paper('b'), paper('c'), ['a1', 'b1', 'c1']));
    const whole = findWays(toy);
    expect(whole).toMatchObject({
      disproved: 0,
      laterProof: null,
      ways: { bound: null, none: null, later: null },
    });
    expect(whole.ways.looked).toBeGreaterThan(4);
    expect(whole.proofs.map(({ way }) => way)).toEqual(whole.ways.plans);
    const none = waysToYes({ ...toy, limits: { nodes: 0 } });
    expect(none).toMatchObject({ bound: 'nodes', looked: 0, plans: [] });
    expect(none.none!.says).toBe('The search stopped at its limit before it found a way; there may be one.');
    const hurried = waysToYes({ ...toy, limits: { nodes: 1000, shouldStop: () => true } });
    expect(hurried).toMatchObject({ bound: 'time', looked: 0, plans: [], later: null });
    const exact = waysToYes({ ...toy, limits: { nodes: whole.ways.looked } });
    expect(exact).toMatchObject({ bound: null, looked: whole.ways.looked });
    const less = waysToYes({ ...toy, limits: { nodes: whole.ways.looked - 1 } });
    expect(less).toMatchObject({ bound: 'nodes', looked: whole.ways.looked - 1 });
    expect(less.plans.length).toBeGreaterThan(0);
    // No later flight is looked for once the limit was met.
    const late = question({
      wants: wants(['a', 's']),
      acts: { s: { ...paper('a'), lead: 'document' } },
      hours: 24,
    });
    expect(waysToYes(late).later).not.toBeNull();
    expect(waysToYes({ ...late, limits: { nodes: 0 } })).toMatchObject({ bound: 'nodes', later: null });
  });

  test('are looked for in four thousand states unless more are allowed', () => {
    expect(DEFAULT_LIMITS).toEqual({ nodes: 4000 });
  });

  test('none are needed where the answer is yes', () => {
    expect(findWays(question({ wants: [], acts: {} }))).toEqual({
      ways: {
        schema: 'bellcrank.ways/1',
        answer: 'yes',
        currency: 'dollars',
        plans: [],
        none: null,
        later: null,
        bound: null,
        looked: 0,
        caution: expect.any(String),
      },
      proofs: [],
      laterProof: null,
      disproved: 0,
    });
  });
});

describe('none', () => {
  const slow = (token: string, lead: ToyAct['lead'] = 'document'): ToyAct => ({ ...paper(token), lead });

  test('tells what is never put right, and not what could be', () => {
    const found = find({
      wants: wants(['a', 'p'], ['b', 's'], ['c']),
      acts: { p: paper('a'), s: slow('b') },
      hours: 24,
    });
    expect(found.none!.because.map(({ rule, why }) => [rule, why])).toEqual([
      // With nothing known for the third the search ends before anything is done.
      ['toy.a', 'It can be put right, but not together with the rest before the flight.'],
      ['toy.b', '"Do s" could be done by 2027-06-14 08:00 at the earliest, after the flight begins.'],
      ['toy.c', 'Nothing that can be done is known to put it right.'],
    ]);
    const { world, root } = settledIn(question({ wants: wants(['a', 'p'], ['b']), acts: { p: paper('a') } }));
    const told = (cured: number[]) => noWay(world, root, { ...spent(), cured: new Set(cured) }).because;
    expect(told([0]).map(({ rule }) => rule)).toEqual(['toy.b']);
    expect(told([]).map(({ rule }) => rule)).toEqual(['toy.a', 'toy.b']);
    expect(told([0, 1]).map(({ rule, why }) => [rule, why])).toEqual([
      ['toy.a', 'It can be put right, but not together with the rest before the flight.'],
      ['toy.b', 'It can be put right, but not together with the rest before the flight.'],
    ]);
    expect(told([1])[0]).toEqual({
      rule: 'toy.a',
      title: 'Token a',
      says: 'Lacks it.',
      why: 'It can be put right, but not together with the rest before the flight.',
    });
  });

  test('of several acts that come too late the first is told', () => {
    const found = find({
      wants: wants(['a', 's', 'r', 't']),
      acts: { s: slow('a'), r: slow('a', 'course'), t: slow('a', 'fitting') },
      hours: 24,
    });
    expect(found.none!.because[0]!.why).toContain('"Do r" could be done by 2027-06-12 08:00');
  });

  test('what serves two rules and comes too late is told of both', () => {
    const found = find({
      wants: wants(['a', 's'], ['b', 's']),
      acts: { s: { ...paper('a', 'b'), lead: 'document' } },
      hours: 24,
    });
    expect(found.none!.because.map(({ rule, why }) => [rule, why.slice(0, 22)])).toEqual([
      ['toy.a', '"Do s" could be done b'],
      ['toy.b', '"Do s" could be done b'],
    ]);
  });

  test('what was put right on the way is not told as what stands in it', () => {
    const found = find({
      wants: wants(['a', 'p'], ['b', 'f'], ['c', 'q']),
      acts: { p: paper('a'), f: hour('b'), q: course('c') },
      change: (sheet) => {
        const span = { from: '2027-06-01T00:00:00Z', to: '2027-08-01T00:00:00Z' };
        sheet.aircraft.reservations = known([{ ...records.RESERVATION, ...span }], sheet.knownAt);
      },
    });
    expect(found.none!.because.map(({ rule }) => rule)).toEqual(['toy.b']);
  });

  test('what no time is free for is told as that', () => {
    const found = find({
      wants: wants(['a', 'f']),
      acts: { f: hour('a') },
      change: (sheet) => {
        const span = { from: '2027-06-01T00:00:00Z', to: '2027-08-01T00:00:00Z' };
        sheet.aircraft.reservations = known([{ ...records.RESERVATION, ...span }], sheet.knownAt);
      },
    });
    expect(found.none!.because[0]!.why).toBe(
      'It can be put right, but not together with the rest before the flight.',
    );
  });

  test('what is offered for a practice flight alone is no answer to the flight', () => {
    const { world, root } = settledIn(question({ wants: wants(['a']), acts: {} }));
    expect(noWay(world, root, spent()).because[0]!.why).toContain('Nothing that can be done');
  });

  describe('and a later flight', () => {
    const later = (toy: Toy) => {
      const { later: found } = find(toy);
      return found && [found.departs, found.arrives, ...acts(found.way)];
    };
    const noon = '2027-06-11T14:00:00Z';
    test('is that of the first day for which there is a way, at the same clock', () => {
      expect(later({ wants: wants(['a', 's']), acts: { s: slow('a') }, hours: 24 })).toEqual([
        '2027-06-14T14:00:00Z',
        '2027-06-14T15:00:00Z',
        's',
      ]);
      // An hour earlier in the day it is the day after.
      expect(later({ wants: wants(['a', 's']), acts: { s: slow('a') }, hours: 23 })).toEqual([
        '2027-06-15T13:00:00Z',
        '2027-06-15T14:00:00Z',
        's',
      ]);
      expect(toSeconds(noon)).toBe(START + DAY);
    });

    test('of several acts the earliest will do, whichever is told first', () => {
      const both = { s: slow('a'), r: slow('a', 'course') };
      expect(later({ wants: wants(['a', 's', 'r']), acts: both, hours: 24 })![0]).toBe(
        '2027-06-12T14:00:00Z',
      );
      expect(later({ wants: wants(['a', 'r', 's']), acts: both, hours: 24 })![0]).toBe(
        '2027-06-12T14:00:00Z',
      );
      // All of them are needed: the last of them.
      expect(
        later({
          wants: wants(['a', 's'], ['b', 'r']),
          acts: { s: slow('a'), r: slow('b', 'course') },
          hours: 24,
        })![0],
      ).toBe('2027-06-14T14:00:00Z');
    });

    test('is looked for on six days', () => {
      const names = ['course', 'document', 'inspection', 'repair'] as const;
      const leads = { 'lead.course': 2, 'lead.document': 4, 'lead.inspection': 6, 'lead.repair': 8 };
      const of = (count: number): Toy => ({
        wants: names.slice(0, count).map((name) => ({ token: name, offers: [name] })),
        acts: Object.fromEntries(names.map((name) => [name, slow(name, name)])),
        hours: 24,
        prices: leads,
      });
      expect(later(of(3))![0]).toBe('2027-06-16T14:00:00Z');
      expect(later(of(4))).toBeNull();
      // The last of them may be needed: at the flight's hour the practice cannot be over on the fifth.
      const flown_: Toy = {
        ...of(3),
        acts: { ...of(3).acts, inspection: { ...hour('inspection'), lead: 'inspection' } },
      };
      expect(later(flown_)![0]).toBe('2027-06-17T14:00:00Z');
    });

    test('keeps to the clock where the clocks change', () => {
      const sheet = scene(10, (one) => {
        lose(one, 'medicals');
        one.flight = { ...one.flight, purpose: 'ferry-to-inspection' };
      });
      const found = ways(sheet, { policy: policyWith({ 'club.lead.medical': 15 }) });
      // Eleven in the morning in Denver before and after the second Sunday of March.
      expect(sheet.flight.departs).toBe('2027-03-10T18:00:00Z');
      expect(found.later).toMatchObject({ departs: '2027-03-16T17:00:00Z', arrives: '2027-03-16T18:00:00Z' });
      expect(found.later!.says).toBe('For the same flight on 2027-03-16 there is a way.');
    });

    test('is none where nothing was too late', () => {
      const world = worldOf(question({ wants: wants(['a', 'p']), acts: { p: paper('a') } }));
      expect(laterWay(world, spent())).toBeNull();
      world.late.set('p', { title: 'Do p.', done: START });
      expect(laterWay(world, spent())).toBeNull();
      world.late.set('p', { title: 'Do p.', done: toSeconds(world.question.sheet.flight.departs) });
      expect(laterWay(world, spent())).toBeNull();
      world.late.set('p', { title: 'Do p.', done: toSeconds(world.question.sheet.flight.departs) + 1 });
      expect(laterWay(world, spent())!.later.departs).toBe('2027-06-21T14:00:00Z');
      world.late.set('p', { title: 'Do p.', done: toSeconds(world.question.sheet.flight.departs) + DAY + 1 });
      expect(laterWay(world, spent())!.later.departs).toBe('2027-06-22T14:00:00Z');
    });
  });
});

test('an instructor taken along has a price of his own', () => {
  const found = find({
    wants: wants(['a', 'l']),
    acts: { l: { gives: ['a'], ...taught({ air: 'check' }) } },
  });
  expect(found.plans[0]!.cost).toEqual({
    hours: 1.5,
    money: 210,
    clubMoney: 0,
    days: 0,
    points: 0,
    total: 225,
  });
  expect(found.plans[0]!.sorties[0]).toMatchObject({ dual: true, says: 'A flight with an instructor.' });
});
