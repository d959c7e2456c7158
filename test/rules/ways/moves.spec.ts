/** Single steps of the search in a world worked out by hand: when an act is done, on what flight, and what can be done next. */
import { addDays } from '../../../src/rules/calendar/dates.js';
import { known, toInstant, type FlightFacts } from '../../../src/rules/index.js';
import { offersForPractice } from '../../../src/rules/ways/offers.js';
import { earliest, isRefusal, place, type Placed, type Refusal } from '../../../src/rules/ways/place.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import type { Done, Offer, State } from '../../../src/rules/ways/state.js';
import { settle, stepsWith, type Step } from '../../../src/rules/ways/steps.js';
import { successors } from '../../../src/rules/ways/successors.js';
import { worldOf, type World } from '../../../src/rules/ways/world.js';
import * as records from '../../../src/rules/workshop/records.js';
import {
  entry,
  hour,
  lesson,
  logged,
  paper,
  quarter,
  question,
  Scene,
  START,
  taken,
  taught,
  wants,
  type Toy,
  type ToyAct,
  type Want,
} from './toy.js';

const HOUR = 3600;
const DAY = 24 * HOUR;

describe('on the ground an act is done', () => {
  const slow: ToyAct = { gives: ['a'], fee: 'document', lead: 'document' };
  const at = (hours: number): Scene => new Scene({ wants: wants(['a', 's']), acts: { s: slow }, hours });

  test('when its wait is over, and no later than the flight begins', () => {
    expect(at(96).place('s')).toEqual({ at: START + 4 * DAY, sortie: null, atOnce: true });
    const late = at(95);
    expect(late.refused('s')).toBe('late ');
    expect([...late.world.late]).toEqual([['s', { title: 'Do s.', done: START + 4 * DAY }]]);
  });

  test('not before the instant asked for, not before it is offered, nor before an instructor can be had', () => {
    const scene = at(240);
    expect(scene.place('s', false, START + 5 * DAY)).toMatchObject({ at: START + 5 * DAY });
    expect(scene.place('s', false, START + 3 * DAY)).toMatchObject({ at: START + 4 * DAY });
    const offer = { ...scene.offer('s'), notBefore: START + 6 * DAY };
    expect(earliest(scene.world, offer)).toBe(START + 6 * DAY);
    expect(earliest(scene.world, { ...offer, notBefore: 0 })).toBe(START + 4 * DAY);
    const quick = new Scene({
      wants: wants(['a', 'p']),
      acts: { p: paper('a') },
      prices: { 'lead.instructor': 3 },
    });
    expect(quick.place('p')).toMatchObject({ at: START });
    expect(quick.place('p', true)).toMatchObject({ at: START + 3 * DAY });
  });

  test('a change of the request is made at once', () => {
    const scene = at(1);
    const request: Offer = {
      ...scene.offer('s'),
      change: { is: 'effects', effects: [{ op: 'flight', fields: {} }] },
    };
    expect(place(scene.world, scene.root, { offers: [request], dual: false })).toEqual({
      at: START,
      sortie: null,
      atOnce: true,
    });
  });
});

describe('a practice flight', () => {
  const alone = (act: ToyAct, prices: Record<string, number> = {}): Scene =>
    new Scene({ wants: wants(['a', 'f']), acts: { f: act }, prices });

  test('is there and back and what is done on it, in tenths, rounded up', () => {
    expect(alone(hour('a')).place('f')).toEqual({
      at: START,
      sortie: {
        dual: false,
        night: false,
        tenths: 15,
        flights: 1,
        from: START,
        to: START + 1.5 * HOUR,
        person: 'member-1',
      },
      atOnce: true,
    });
    expect(alone(quarter('any', 'a')).flight('f').tenths).toBe(8);
    expect(alone(hour('a')).flight('f', true)).toMatchObject({ dual: true });
    const nothing = { 'cost.hours.landing': 0, 'cost.hours.sortie': 0 };
    expect(alone(quarter('any', 'a'), nothing).flight('f')).toMatchObject({ flights: 1, tenths: 1 });
  });

  test.each([
    // An hour and a half beside there and back is as much as fits.
    [15, 1, 20],
    [16, 2, 13],
    [30, 2, 20],
    [35, 3, 17],
  ])('%i tenths of practice: %i flights of %i tenths', (tenths, flights, each) => {
    expect(alone(logged(tenths, 'a')).flight('f')).toMatchObject({ flights, tenths: each });
  });

  test('of no length at all would never end', () => {
    expect(alone(hour('a'), { 'cost.hours.longest': 0.5 }).flight('f')).toMatchObject({
      flights: 10,
      tenths: 6,
    });
    expect(alone(hour('a'), { 'cost.hours.longest': 0.2 }).flight('f')).toMatchObject({
      flights: 10,
      tenths: 6,
    });
  });

  test('is over before the flight begins', () => {
    const hours = (before: number): Scene =>
      new Scene({ wants: wants(['a', 'f']), acts: { f: hour('a') }, hours: before });
    expect(hours(1.5).refused('f')).toBe(false);
    const late = hours(1);
    expect(late.refused('f')).toBe('late ');
    expect(late.world.late.get('f')).toEqual({ title: 'Do f.', done: START + 1.5 * HOUR });
    // Two flights, on two days.
    const twice = new Scene({ wants: wants(['a', 'f']), acts: { f: logged(30, 'a') }, hours: 25 });
    expect(twice.refused('f')).toBe('late ');
    expect(twice.world.late.get('f')).toEqual({ title: 'Do f.', done: START + DAY + 2 * HOUR });
  });

  test('of what comes too late the earliest is told', () => {
    const scene = new Scene({ wants: wants(['a', 'f']), acts: { f: hour('a') }, hours: 1 });
    scene.place('f', false, START + 10 * HOUR);
    const first = scene.world.late.get('f')!.done;
    scene.place('f', false, START + 2 * DAY);
    expect(scene.world.late.get('f')!.done).toBe(first);
    scene.place('f');
    expect(scene.world.late.get('f')!.done).toBe(START + 1.5 * HOUR);
  });

  test('by night waits for the night, and goes nowhere where there is none to be had', () => {
    const scene = alone(quarter('night', 'a'));
    const { night, from } = scene.flight('f');
    expect(night).toBe(true);
    // An hour after sunset in June: past nine in Denver.
    expect(toInstant(from).slice(0, 13)).toBe('2027-06-11T03');
    const booked = new Scene({
      wants: wants(['a', 'f']),
      acts: { f: hour('a') },
      change: (sheet) => {
        const span = { from: '2027-06-01T00:00:00Z', to: '2027-08-01T00:00:00Z' };
        sheet.aircraft.reservations = known([{ ...records.RESERVATION, ...span }], sheet.knownAt);
      },
    });
    expect(booked.refused('f')).toBe('blocked ');
  });

  test('of somebody else is theirs', () => {
    const scene = alone(hour('a'));
    const offer = { ...scene.offer('f'), person: 'member-2' };
    expect(place(scene.world, scene.root, { offers: [offer], dual: false })).toMatchObject({
      sortie: { person: 'member-2' },
    });
    const nobody = { ...offer, person: null };
    expect(place(scene.world, scene.root, { offers: [nobody], dual: false })).toMatchObject({
      sortie: { person: 'member-1' },
    });
  });
});

describe('a practice flight that something stands in the way of', () => {
  const toy: Toy = {
    wants: [
      ...wants(['a', 'f'], ['x', 'early'], ['y', 'later'], ['z', 'last']),
      { token: 'm', offers: [], on: ['solo'] },
      { token: 'n', offers: [], on: ['solo'] },
    ],
    acts: {
      f: hour('a'),
      early: { gives: ['x', 'm'], fee: 'course', lead: 'course' },
      later: { gives: ['y'], fee: 'document', lead: 'document' },
      last: { gives: ['z', 'n'], fee: 'document', lead: 'inspection' },
    },
    prices: { 'lead.inspection': 6 },
  };

  test('cannot be flown until it is done', () => {
    const scene = new Scene(toy);
    expect(scene.refused('f')).toBe('blocked toy.m,toy.n');
    const [m, n] = [4, 5];
    expect(scene.world.held.get('f')).toEqual({ title: 'Do f.', by: new Set([m, n]) });
    // The last first: the times are tried in their order all the same.
    const state = ['last', 'later', 'early'].reduce((at, act) => scene.do(scene.unit(act), at), scene.root);
    const placed = place(scene.world, state, scene.unit('f')) as Placed;
    expect(placed).toMatchObject({ at: START + 6 * DAY, atOnce: false });
    const only = scene.do(scene.unit('last'));
    expect(place(scene.world, only, scene.unit('f'))).toMatchObject({
      refused: 'blocked',
      blockers: [{ rule: m }, { rule: n }],
    });
  });

  test('is flown as soon as it is done', () => {
    const { wants: list, ...rest } = toy;
    const scene = new Scene({ ...rest, wants: list.filter(({ token }) => token !== 'n') });
    const state = ['last', 'early'].reduce((at, act) => scene.do(scene.unit(act), at), scene.root);
    expect(place(scene.world, state, scene.unit('f'))).toMatchObject({ at: START + 2 * DAY, atOnce: false });
    // With an instructor nothing is in the way at all.
    expect(place(scene.world, state, scene.unit('f', true))).toMatchObject({ at: START, atOnce: true });
  });

  test('and that would come too late then, is blocked rather than late', () => {
    const { wants: list, ...rest } = toy;
    const scene = new Scene({ ...rest, wants: list.filter(({ token }) => token !== 'n'), hours: 49 });
    const state = scene.do(scene.unit('early'));
    expect(place(scene.world, state, scene.unit('f'))).toMatchObject({ refused: 'blocked' });
    expect(scene.world.late.has('f')).toBe(false);
    expect(scene.world.held.has('f')).toBe(true);
  });
});

describe('flown together', () => {
  const examiner: ToyAct = {
    gives: ['e'],
    kind: 'appointment',
    air: 'check',
    sketch: { with: 'examiner', light: 'day', alsoMet: ['toy.m'] },
  };
  const hood: ToyAct = {
    gives: ['h'],
    kind: 'flight',
    air: 'landing',
    sketch: { with: 'safety-pilot', light: 'any' },
  };
  const toy: Toy = {
    wants: wants(['a', 'f', 'd', 'n'], ['b', 'g'], ['h', 'h'], ['e', 'e']),
    acts: {
      f: hour('a'),
      d: quarter('day', 'a'),
      n: quarter('night', 'a'),
      g: quarter('night', 'b'),
      h: hood,
      e: examiner,
    },
  };
  const scene = new Scene(toy);

  test('is what needs the same light, the same company, and fits into one flight', () => {
    expect(scene.refused('n g')).toBe(false);
    expect(scene.refused('d g')).toBe('gone ');
    expect(scene.refused('g d')).toBe('gone ');
    // Nothing else alone with a safety pilot, for under the hood alone the safety pilot is crew (14 CFR 91.109(c)).
    expect(scene.refused('h n')).toBe('gone ');
    expect(scene.refused('h n', true)).toBe(false);
    expect(scene.refused('h')).toBe(false);
    expect(scene.refused('h h')).toBe(false);
    expect(scene.flight('f g')).toMatchObject({ night: true, tenths: 18, flights: 1 });
    const short = new Scene({ ...toy, prices: { 'cost.hours.longest': 1.7 } });
    expect(short.refused('f g')).toBe('gone ');
    expect(short.refused('f')).toBe(false);
    const long = new Scene({ ...toy, prices: { 'cost.hours.longest': 1.4 } });
    expect(long.flight('f').flights).toBe(2);
  });

  test('steps: the act on its own, and on a flight that is planned already', () => {
    const state = scene.do(scene.unit('f'));
    const steps = scene.steps('g', state);
    expect(steps).toHaveLength(2);
    const [own, joined] = steps as Step[];
    // An hour of 110 and half an hour there and back; then the same again for a quarter, by night of the same day.
    expect(own).toMatchObject({ atLeast: 247.5, acts: 2, settled: true });
    expect(joined).toMatchObject({ atLeast: 192.5, acts: 2, settled: true });
    const [one, both] = [taken(own!.take()), taken(joined!.take())];
    expect(one.cost.total).toBe(247.5);
    expect(both.cost.total).toBe(192.5);
    expect(new Set(both.done.map(({ sortie }) => sortie)).size).toBe(1);
    expect(both.done.map(({ books }) => books)).toEqual([true, false]);
    expect(new Set(one.done.map(({ sortie }) => sortie)).size).toBe(2);
    // Told beforehand what it comes to.
    expect(own!.key).toBe(one.key);
    expect(joined!.key).toBe(both.key);
    expect(own!.name).not.toBe(joined!.name);
  });

  test('neither by day with something by night, nor a paper', () => {
    const day = scene.do(scene.unit('d'));
    expect(scene.steps('g', day)).toEqual([
      expect.objectContaining({ acts: 2 }),
      { refused: 'gone', blockers: [] },
    ]);
    const { world, root } = scene;
    const signed = { ...scene.offer('f'), entries: [entry({})], meaning: 'paper' };
    expect(stepsWith(world, scene.do(scene.unit('f')), signed)).toHaveLength(1);
    expect(stepsWith(world, root, signed)).toHaveLength(1);
  });

  test('several things at once are flown with whom any of them needs', () => {
    const state = scene.do(scene.unit('f'));
    const of = (...acts: ToyAct[]): Offer => ({
      ...scene.offer('g', state),
      entries: acts.map(({ gives: _, effects: __, ...rest }) => entry(rest)),
    });
    const flight = (offer: Offer): (boolean | undefined)[] =>
      (stepsWith(scene.world, state, offer) as Step[]).map(
        (step) => taken(step.take()).done.at(-1)!.sortie?.dual,
      );
    const taughtBit: ToyAct = { gives: [], ...taught({ air: 'landing' }) };
    const bit = quarter('any');
    expect(flight(of(paper(), taughtBit))).toEqual([true, true]);
    expect(flight(of(bit, taughtBit))).toEqual([true, true]);
    expect(flight(of(paper(), bit))).toEqual([false, false]);
    expect(flight(of(paper(), examiner))).toEqual([true]);
    expect(flight(of(bit, examiner))).toEqual([true]);
  });

  test('not where a rule keeps putting off what would be flown together', () => {
    const put = new Scene({
      wants: wants(['a', 'f'], ['b', 'g'], ['c', 'p']),
      acts: {
        f: hour('a'),
        p: paper('c'),
        g: {
          ...quarter('any', 'b'),
          effects: (today) => [{ op: 'append', fact: 'member.log', value: { on: addDays(today, 1) } }],
        },
      },
    });
    const state = put.do(put.unit('p'), put.do(put.unit('f')));
    expect((put.steps('g', state) as Step[]).map((step) => step.take())).toEqual([
      { refused: 'gone', blockers: [] },
      { refused: 'gone', blockers: [] },
    ]);
  });

  test('a test is flown on its own, with an examiner', () => {
    const state = scene.do(scene.unit('f'));
    const steps = scene.steps('e', state) as Step[];
    expect(steps).toHaveLength(1);
    expect(taken(steps[0]!.take()).done[1]!.sortie).toMatchObject({ dual: true });
    const tested = scene.do(scene.unit('e', true));
    expect(scene.steps('f', tested)).toHaveLength(1);
  });

  test('with an instructor where the other needs one, and who flies is the same', () => {
    const both = new Scene({
      wants: wants(['a', 'f'], ['b', 'l']),
      acts: { f: quarter('any', 'a'), l: lesson('b') },
    });
    const state = both.do(both.unit('f'));
    const [, joined] = both.steps('l', state) as Step[];
    expect(taken(joined!.take()).done.map(({ sortie }) => sortie!.dual)).toEqual([true, true]);
    const other = { ...both.offer('l', state), person: 'member-2' };
    expect(stepsWith(both.world, state, other)).toHaveLength(1);
  });

  test('what was done after the flight is done again', () => {
    const three = new Scene({
      wants: wants(['a', 'f'], ['b', 'g'], ['c', 'p']),
      acts: { f: hour('a'), g: quarter('any', 'b'), p: { ...paper('c'), lead: 'course' } },
    });
    const state = three.do(three.unit('p'), three.do(three.unit('f')));
    const [own, joined] = three.steps('g', state) as Step[];
    const both = taken(joined!.take());
    expect(both.done.map(({ offer }) => offer.act)).toEqual(['f', 'g', 'p']);
    expect(both.key).toBe(joined!.key);
    // 192.5 for the flight, 30 for the paper and two days of waiting for it; the step does not count the days.
    expect(both.cost.total).toBe(232.5);
    expect(joined!.atLeast).toBe(222.5);
    expect(own!.atLeast).toBe(287.5);
    expect(own!.acts).toBe(3);
  });
});

describe('alone, or with an instructor', () => {
  const toy = (m: Partial<Want>): Toy => ({
    wants: [...wants(['a', 'f']), { token: 'm', offers: [], on: ['solo'], ...m }],
    acts: { f: hour('a'), p: paper('m') },
  });
  test('alone where nothing is in the way at once', () => {
    const steps = new Scene({ wants: wants(['a', 'f']), acts: { f: hour('a') } }).steps('f') as Step[];
    expect(steps).toHaveLength(1);
    expect(taken(steps[0]!.take()).done[0]!.sortie).toMatchObject({ dual: false });
  });
  test('with an instructor where something is', () => {
    const [own, dual] = new Scene(toy({})).steps('f');
    expect(own).toMatchObject({ refused: 'blocked' });
    expect(taken((dual as Step).take()).done[0]!.sortie).toMatchObject({ dual: true });
  });
  test('by the night, and any time besides', () => {
    const [own] = new Scene({ wants: wants(['a', 'l']), acts: { l: lesson('a') } }).steps('l') as Step[];
    expect(taken(own!.take()).done[0]!.sortie).toMatchObject({ dual: true });
  });
  test('what would make room is offered for the practice flight, but no other flight', () => {
    const scene = new Scene(toy({ offers: ['p'] }));
    const blocked = scene.place('f') as Refusal;
    const offers = offersForPractice(scene.world, scene.root, blocked.blockers);
    expect(offers.map(({ act }) => act)).toEqual(['p']);
    expect(offers[0]).toMatchObject({
      title: 'Do p.',
      by: 'member',
      person: 'member-1',
      notBefore: START,
      askers: [{ rule: 1, nth: 0, practice: { dual: false } }],
    });
    const next = successors(scene.world, scene.root, [scene.offer('f')]);
    expect(next.map(({ name }) => name.split(' ')[1])).toEqual(['f', 'p']);
    expect([...scene.world.enablers.values()].map(({ act }) => act)).toEqual(['p']);
    // Done for a practice flight, the act is asked of the rule on that flight.
    const [, step] = next;
    const after = taken(step!.take());
    expect(after.done[0]).toMatchObject({
      offer: { act: 'p' },
      cures: [],
      as: { flight: { purpose: 'solo' } },
    });
    expect(after.sheet.flight.purpose).toBe('maintenance');
    expect(place(scene.world, after, scene.unit('f'))).toMatchObject({ at: START });
  });
  test('an act that would change the practice flight makes no room', () => {
    const scene = new Scene({
      wants: [...wants(['a', 'f']), { token: 'm', offers: ['p', 'q'], on: ['solo'] }],
      acts: {
        f: hour('a'),
        p: { gives: ['m'], effects: () => [{ op: 'flight', fields: { usesVor: true } }] },
        q: paper('m'),
      },
    });
    const { blockers } = scene.place('f') as Refusal;
    expect(offersForPractice(scene.world, scene.root, blockers).map(({ act }) => act)).toEqual(['q']);
  });
});

describe('steps from a state', () => {
  test('none after an officer has given leave', () => {
    const scene = new Scene({ wants: wants(['a', 'p']), acts: { p: paper('a') } });
    const { offers } = scene.unit('p');
    expect(successors(scene.world, scene.root, offers)).toHaveLength(1);
    expect(successors(scene.world, { ...scene.root, overrides: ['toy.a'] }, offers)).toEqual([]);
  });

  test('none that was done for the same rule already, whatever undid it', () => {
    const scene = new Scene({
      wants: wants(['a', 'p', 'q'], ['b', 'p']),
      acts: { p: paper('a'), q: paper('a') },
    });
    const [p, q] = [scene.offer('p'), scene.offer('q')];
    const asked = (...rules: number[]): Offer['askers'] =>
      rules.map((rule) => ({ rule, nth: 0, practice: null }));
    const done = (of: Partial<Offer>): State => ({
      ...scene.root,
      done: [
        {
          offer: { ...p, ...of },
          to: START,
          bill: scene.root.cost,
          sortie: null,
          mark: 'm',
          change: p.change,
        } as unknown as Done,
      ],
    });
    const left = (state: State, offer: Offer): number => successors(scene.world, state, [offer]).length;
    expect(left(scene.root, p)).toBe(1);
    expect(left(done({}), p)).toBe(0);
    // The same to the letter, for another rule; another letter, for the same rule.
    expect(left(done({ askers: asked(7) }), p)).toBe(0);
    expect(left(done({ meaning: 'other', askers: asked(0, 1) }), { ...p, askers: asked(0, 1) })).toBe(0);
    expect(left(done({ meaning: 'other', askers: asked(0) }), { ...p, askers: asked(0, 1) })).toBe(1);
    expect(left(done({ meaning: 'other', askers: asked(7) }), { ...p, askers: asked(0) })).toBe(1);
    expect(left(done({ meaning: 'other', askers: asked(0, 1) }), { ...p, askers: asked(0) })).toBe(0);
    expect(left(done({}), q)).toBe(1);
  });

  test('what makes room for two practice flights is kept for each, whichever was looked at last', () => {
    const scene = new Scene({
      wants: [...wants(['a', 'f'], ['b', 'g']), { token: 'm', offers: ['p'], on: ['solo'] }],
      acts: { f: hour('a'), g: quarter('any', 'b'), p: paper('m') },
    });
    for (const act of ['f', 'g']) successors(scene.world, scene.root, [scene.offer(act)]);
    const kept = [...scene.world.enablers.values()];
    expect(kept.map(({ act, askers }) => [act, ...askers.map(({ practice }) => practice!.tenths)])).toEqual([
      ['p', 15],
      ['p', 8],
    ]);
  });

  test('of what is left out none, by name or by kind', () => {
    const scene = new Scene({ wants: wants(['a', 'p']), acts: { p: paper('a') } });
    const { offers } = scene.unit('p');
    for (const banned of ['p', 'kind paper'])
      expect(successors({ ...scene.world, banned: new Set([banned]) }, scene.root, offers)).toEqual([]);
  });

  test('what makes room for what makes room, four deep', () => {
    // Each lesson wants what the next one gives, as a test wants a medical.
    const found = (depth: number): string[] => {
      const names = Array.from({ length: depth + 1 }, (_, index) => `f${index}`);
      const scene = new Scene({
        wants: [
          ...wants(['t0', 'f0']),
          ...names.slice(1).map((name, index) => ({ token: `t${index + 1}`, offers: [name], on: ['solo'] })),
        ],
        acts: Object.fromEntries(
          names.map((name, index) => [
            name,
            {
              gives: [`t${index}`],
              kind: 'flight' as const,
              air: 'landing' as const,
              sketch: { with: 'instructor' as const, light: 'any' as const, alsoMet: [`toy.t${index + 1}`] },
            },
          ]),
        ),
      });
      return successors(scene.world, scene.root, scene.unit('f0').offers).map(
        ({ name }) => name.split(' ')[1]!,
      );
    };
    expect([0, 1, 4, 5].map(found)).toEqual([['f0'], ['f1'], ['f4'], []]);
  });

  test('before the request is settled it is changed, or settled', () => {
    const world = worldOf(
      question({
        wants: wants(['a', 'p', 'r']),
        acts: {
          p: paper('a'),
          r: { gives: [], effects: () => [{ op: 'flight', fields: { purpose: 'solo' } }] },
        },
      }),
    );
    const root = rootOf(world);
    const steps = successors(world, root, []);
    expect(steps.map(({ name }) => name.split(' ').slice(0, 3).join(' '))).toEqual([
      `plain ${START} r`,
      'settle ',
    ]);
    const [changed, settled] = steps;
    expect(changed).toMatchObject({ acts: 1, settled: false });
    expect(taken(changed!.take())).toMatchObject({
      settled: false,
      key: changed!.key,
      done: [{ cures: ['toy.a'] }],
    });
    expect(settled).toMatchObject({
      acts: 0,
      settled: true,
      atLeast: 0,
      key: root.key.replace('open', 'settled'),
    });
    expect(taken(settled!.take())).toEqual({ ...root, settled: true, key: settled!.key });
    expect(settle(root).name).toBe('settle ');
  });

  test('the request is changed only for what it gets out of the way', () => {
    const world = worldOf(
      question({
        wants: wants(['a', 'r']),
        acts: { r: { gives: [], effects: () => [{ op: 'flight', fields: { usesVor: true } }] } },
      }),
    );
    const [changed] = successors(world, rootOf(world), []);
    expect(changed!.take()).toMatchObject({ refused: 'gone' });
  });

  test('one thing got out of the way is enough; a flight that begins before anything can be done is not', () => {
    const changed = (fields: Partial<FlightFacts>) => {
      const world = worldOf(
        question({
          wants: [...wants(['a', 'r']), { token: 'b', offers: [], on: ['maintenance', 'solo'] }],
          acts: { r: { gives: [], effects: () => [{ op: 'flight', fields }] } },
        }),
      );
      return successors(world, rootOf(world), [])[0]!.take();
    };
    expect(changed({ purpose: 'solo' })).toMatchObject({
      done: [{ cures: ['toy.a'] }],
      verdicts: { blocking: [1] },
    });
    expect(changed({ purpose: 'solo', departs: toInstant(START - HOUR) })).toEqual({
      refused: 'late',
      blockers: [],
    });
  });

  test('a lesson without an instructor is no way, unless one is looked for or it was one before', () => {
    const lessonOf = (aim: World['aim'], before: Partial<FlightFacts>) => {
      const open = { purpose: 'dual' as const, personsOnBoard: 2, instructorId: null };
      const world = {
        ...worldOf(
          question({
            wants: [{ token: 'a', offers: ['r'], binds: 'aircraft', on: ['maintenance', 'checkout'] }],
            acts: { r: { gives: [], effects: () => [{ op: 'flight', fields: open }] } },
            change: (sheet) => {
              sheet.flight = { ...sheet.flight, ...before };
            },
          }),
        ),
        aim,
      };
      const next = successors(world, rootOf(world), [])
        .find(({ name }) => name.includes(' r '))!
        .take();
      return isRefusal(next) ? next.refused : next.done.map(({ offer }) => offer.act);
    };
    expect(lessonOf('plain', {})).toBe('gone');
    expect(lessonOf('instructor', {})).toEqual(['r']);
    expect(lessonOf('plain', { purpose: 'checkout', personsOnBoard: 2, instructorId: null })).toEqual(['r']);
    expect(lessonOf('plain', { purpose: 'checkout', personsOnBoard: 2, instructorId: 'instructor-1' })).toBe(
      'gone',
    );
  });
});
