/** What an act does in a world worked out by hand, and what rules offer: on which day, for whom, and at what cost. */
import { addDays } from '../../../src/rules/calendar/dates.js';
import type { Effect } from '../../../src/rules/engine/remedy.js';
import { known, toInstant } from '../../../src/rules/index.js';
import { advance } from '../../../src/rules/ways/advance.js';
import { ask, effectsAt, offersAgainst, offersForPractice } from '../../../src/rules/ways/offers.js';
import { isRefusal, type Refusal } from '../../../src/rules/ways/place.js';
import type { Outcome } from '../../../src/rules/engine/run.js';
import { remediesOf } from '../../../src/rules/ways/verdicts.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import { worldOf } from '../../../src/rules/ways/world.js';
import * as records from '../../../src/rules/workshop/records.js';
import {
  hour,
  paper,
  question,
  Scene,
  signOff,
  START,
  wants,
  type Toy,
  type ToyAct,
  type Want,
} from './toy.js';

const DAY = 86_400;

describe('an act is done', () => {
  const dated = (on: (today: string) => string, effect: 'append' | 'amend' = 'append', field = 'on'): Scene =>
    new Scene({
      wants: [{ token: 'a', offers: ['p'], reads: ['aircraft.items', 'member.medicals'] }],
      acts: {
        p: {
          gives: [],
          fee: 'document',
          effects: (today) =>
            effect === 'append'
              ? [
                  {
                    op: 'append',
                    fact: 'member.checkouts',
                    value: { ...signOff('a', today), on: null, [field]: on(today) },
                  },
                  { op: 'append', fact: 'member.medicals', value: { on: 7 } },
                ]
              : [{ op: 'amend', fact: 'aircraft.items', id: 'item-annual', fields: { [field]: on(today) } }],
        },
      },
    });
  const begins = (scene: Scene): string | Refusal => {
    const next = advance(scene.world, scene.root, scene.unit('p'));
    return isRefusal(next) ? next : toInstant(next.done[0]!.from);
  };
  const notBefore =
    (day: string) =>
    (today: string): string =>
      today < day ? day : today;

  test.each(['on', 'examOn', 'courseOn', 'issuedOn', 'lastDoneOn'])(
    'on the day for which a rule dates it: %s',
    (field) => {
      // Midnight in Denver.
      expect(begins(dated(notBefore('2027-06-13'), 'append', field))).toBe('2027-06-13T06:00:00Z');
      expect(begins(dated(notBefore('2027-06-13'), 'amend', field))).toBe('2027-06-13T06:00:00Z');
      expect(begins(dated(notBefore('2027-06-10'), 'append', field))).toBe('2027-06-10T14:00:00Z');
      expect(begins(dated(notBefore('2027-06-01'), 'append', field))).toBe('2027-06-10T14:00:00Z');
    },
  );

  test('whatever else is dated', () => {
    expect(begins(dated(notBefore('2027-06-13'), 'append', 'expiresOn'))).toBe('2027-06-10T14:00:00Z');
  });

  test('unless the rule keeps putting it off: asked three times, it is gone', () => {
    const steps =
      (...days: string[]) =>
      (today: string): string =>
        days.find((day) => today < day) ?? today;
    expect(begins(dated(steps('2027-06-11', '2027-06-12')))).toBe('2027-06-12T06:00:00Z');
    expect(begins(dated(steps('2027-06-11', '2027-06-12', '2027-06-13')))).toEqual({
      refused: 'gone',
      blockers: [],
    });
    expect(begins(dated((today) => addDays(today, 1)))).toEqual({ refused: 'gone', blockers: [] });
  });

  test('on the latest of several days', () => {
    const scene = new Scene({
      wants: wants(['a', 'p']),
      acts: {
        p: {
          gives: ['a'],
          effects: () => [
            { op: 'append', fact: 'member.log', value: { on: '2027-06-14' } },
            { op: 'append', fact: 'member.log', value: { on: '2027-06-12' } },
          ],
        },
      },
    });
    expect(begins(scene)).toBe('2027-06-14T06:00:00Z');
  });

  test('no longer, where no rule offers it any more', () => {
    const scene = new Scene({ wants: wants(['a', 'p']), acts: { p: paper('a') } });
    const unit = scene.unit('p');
    const cured = scene.do(unit);
    expect(advance(scene.world, cured, unit)).toEqual({ refused: 'gone', blockers: [] });
    expect(effectsAt(scene.world, cured, unit.offers[0]!, START)).toBeNull();
  });

  test('not where the flight as changed would be over by then', () => {
    const scene = new Scene({
      wants: wants(['a', 'p']),
      acts: {
        p: {
          gives: ['a'],
          lead: 'document',
          effects: () => [{ op: 'flight', fields: { departs: toInstant(START + 3 * DAY) } }],
        },
      },
    });
    expect(advance(scene.world, scene.root, scene.unit('p'))).toEqual({ refused: 'late', blockers: [] });
    expect(scene.world.late.get('p')).toEqual({ title: 'Do p.', done: START + 4 * DAY });
    // What was done before, in time, makes it no better.
    const two = new Scene({
      wants: wants(['b', 'q'], ['a', 'p']),
      acts: {
        q: paper('b'),
        p: {
          gives: ['a'],
          lead: 'document',
          effects: () => [{ op: 'flight', fields: { departs: toInstant(START + 3 * DAY) } }],
        },
      },
    });
    const [q, p] = [two.unit('q'), two.unit('p')];
    expect(advance(two.world, two.do(q), p)).toEqual({ refused: 'late', blockers: [] });
  });

  test("and an officer's leave is given only for what an officer may set aside", () => {
    const leave = (weight: 'law' | 'club') => {
      const scene = new Scene({ wants: [{ token: 'a', offers: [], weight }], acts: {} });
      const offer = { ...paperOffer, change: { is: 'leave' as const } };
      return advance(scene.world, scene.root, { offers: [offer], dual: false });
    };
    const paperOffer = {
      ...new Scene({ wants: wants(['a', 'p']), acts: { p: paper('a') } }).offer('p'),
      askers: [],
    };
    expect(leave('law')).toEqual({ refused: 'gone', blockers: [] });
    expect(leave('club')).toMatchObject({
      overrides: ['toy.a'],
      cost: { points: 50 },
      verdicts: { blocking: [] },
    });
  });

  test('with an instructor it is logged as instruction, and nothing else is changed', () => {
    const entries = [
      { id: '1', role: 'pilot-in-command' },
      { id: '2', role: 'instructor' },
      { id: '3', other: 'pilot-in-command' },
    ];
    const scene = new Scene({
      wants: wants(['a', 'f']),
      acts: {
        f: {
          ...hour('a'),
          effects: () => [
            ...entries.map((value) => ({ op: 'append' as const, fact: 'member.log' as const, value })),
            { op: 'amend', fact: 'member.reviews', id: 'review-1', fields: { role: 'pilot-in-command' } },
          ],
        },
      },
    });
    const roles = (dual: boolean): unknown[] => {
      const { log, reviews } = scene.do(scene.unit('f', dual)).sheet.people['member-1']!;
      return [
        ...(log.known ? log.value.slice(-3).map(({ role }) => role) : []),
        reviews.known && (reviews.value[0] as unknown as { role: string }).role,
      ];
    };
    expect(roles(true)).toEqual(['dual-received', 'instructor', undefined, 'pilot-in-command']);
    expect(roles(false)).toEqual(['pilot-in-command', 'instructor', undefined, 'pilot-in-command']);
  });

  test('and told: when, for whom, what it puts right and what it costs', () => {
    const scene = new Scene({
      wants: [...wants(['a', 'p'], ['b', 'p'], ['c', 'q'])],
      acts: { p: { ...paper('a', 'b'), lead: 'course' }, q: paper('c') },
    });
    const unit = scene.unit('p');
    const state = scene.do(unit);
    const [offer] = unit.offers;
    expect(state.parent).toBe(scene.root);
    expect(state.unit).toBe(unit);
    expect(state.done).toEqual([
      {
        offer,
        change: { is: 'effects', effects: expect.any(Array) },
        as: { crew: scene.root.verdicts.crew, flight: null },
        from: START + 2 * DAY,
        to: START + 2 * DAY,
        bill: { hours: 0, money: 30, clubMoney: 0, points: 0 },
        cures: ['toy.a', 'toy.b'],
        sortie: null,
        books: false,
        mark: `${START + 2 * DAY} ${offer!.meaning}`,
      },
    ]);
    expect(state.cost).toEqual({ hours: 0, money: 30, clubMoney: 0, days: 2, points: 0, total: 40 });
    expect(state.trail).toBe(`\n${state.done[0]!.mark}`);
    expect(state.verdicts.blocking).toEqual([2]);
    const both = scene.do(scene.unit('q'), state);
    expect(both.cost.total).toBe(70);
    expect(both.trail).toBe(`${state.trail}\n${both.done[1]!.mark}`);
    expect(both.settled).toBe(true);
    // The sign-off is dated by the day on which it is given.
    const { checkouts } = both.sheet.people['member-1']!;
    expect(checkouts.known && checkouts.value.map(({ modelId, on }) => [modelId, on])).toEqual([
      ['a', '2027-06-12'],
      ['b', '2027-06-12'],
      ['c', '2027-06-10'],
    ]);
  });
});

describe('what rules offer', () => {
  test('once for all who can be asked for it', () => {
    const scene = new Scene({
      wants: wants(['a', 'p', 'q'], ['b', 'p']),
      acts: { p: paper('a', 'b'), q: paper('a') },
    });
    const offers = offersAgainst(scene.world, scene.root);
    expect(offers.map(({ act, askers }) => [act, askers.map(({ rule }) => rule)])).toEqual([
      ['p', [0, 1]],
      ['q', [0]],
    ]);
    expect(offers[0]).toMatchObject({
      title: 'Do p.',
      by: 'member',
      entries: [{ fee: 'document' }],
      change: { is: 'effects' },
      person: 'member-1',
      notBefore: START,
      meaning: expect.stringMatching(/^p member-1 \[\{"fact":"member.checkouts"/),
    });
  });

  test('the same act twice by one rule is two', () => {
    const scene = new Scene({ wants: wants(['a', 'p', 'p']), acts: { p: paper('a') } });
    const [first] = offersAgainst(scene.world, scene.root);
    expect(first!.askers.map(({ nth }) => nth)).toEqual([0, 1]);
    let nth = 0;
    const varied = new Scene({
      wants: wants(['a', 'p', 'p']),
      acts: {
        p: {
          gives: ['a'],
          effects: () => [{ op: 'append', fact: 'member.log', value: { id: `${(nth += 1) % 2}` } }],
        },
      },
    });
    const two = offersAgainst(varied.world, varied.root);
    expect(two.map(({ askers }) => askers.map((one) => one.nth))).toEqual([[0], [1]]);
    // Asked of a rule that offers something else first, it is asked of the next.
    const elsewhere = new Scene({
      wants: wants(['a', 'p'], ['b', 'q']),
      acts: { p: paper('a'), q: paper('b') },
    });
    const offer = elsewhere.offer('p');
    const askers = [{ rule: 1, nth: 0, practice: null }, ...offer.askers];
    expect(effectsAt(elsewhere.world, elsewhere.root, { ...offer, askers }, START)).toMatchObject({
      title: 'Do p.',
    });
    const effect = effectsAt(varied.world, varied.root, two[1]!, START)!.effects[1];
    expect(effect).toEqual(two[1]!.change.is === 'effects' && two[1]!.change.effects[1]);
  });

  test('of the aircraft is nobody’s record; closed records are not touched', () => {
    const toy: Toy = {
      wants: wants(['a', 'p', 'q']),
      acts: {
        p: { gives: [], effects: () => [{ op: 'append', fact: 'aircraft.squawks', value: { id: 's' } }] },
        q: {
          gives: [],
          effects: () => [
            { op: 'flight', fields: { usesVor: true } },
            { op: 'append', fact: 'aircraft.squawks', value: { id: 's' } },
            { op: 'append', fact: 'member.log', value: { id: 'l' } },
          ],
        },
      },
    };
    const of = (closedRecords: string[]): [string, string | null][] => {
      const world = worldOf({ ...question(toy), closedRecords });
      return offersAgainst(world, rootOf(world)).map(({ act, person }) => [act, person]);
    };
    expect(of([])).toEqual([
      ['p', null],
      ['q', 'member-1'],
    ]);
    expect(of(['member-1'])).toEqual([['p', null]]);
    expect(of(['member-2'])).toHaveLength(2);
  });

  test('of an aircraft is nobody’s on a lesson either', () => {
    const scene = new Scene({
      wants: [{ token: 'a', offers: ['p'], on: ['dual'], binds: 'aircraft' }],
      acts: {
        p: { gives: [], effects: () => [{ op: 'append', fact: 'aircraft.squawks', value: { id: 's' } }] },
      },
      change: (sheet) => {
        sheet.flight = { ...sheet.flight, purpose: 'dual', personsOnBoard: 2, instructorId: 'instructor-1' };
      },
    });
    expect(scene.offer('p').person).toBeNull();
  });

  test('and that puts several things right is made of the facts it touches', () => {
    const kinds = (effects: NonNullable<ToyAct['effects']>): string[] =>
      new Scene({
        wants: wants(['a', 'keep-within-x']),
        acts: { 'keep-within-x': { gives: [], fee: 'document', effects } },
      })
        .offer('keep-within-x')
        .entries.map(({ kind }) => kind);
    const medical: Effect = { op: 'append', fact: 'pic.medicals', value: { id: 'm' } };
    const request: Effect = { op: 'flight', fields: { usesVor: true } };
    expect(kinds(() => [request])).toEqual(['paper']);
    // The toy knows no medical examination: a matter for the office.
    expect(kinds(() => [request, medical])).toEqual(['office']);
    expect(kinds(() => [medical, { ...medical, fact: 'pic.reviews' }])).toEqual(['office', 'office']);
  });

  test('for a practice flight is asked for on each flight that it stands in the way of', () => {
    const scene = new Scene({
      wants: [...wants(['a', 'f']), { token: 'm', offers: ['p'], on: ['solo'] }],
      acts: { f: hour('a'), p: paper('m') },
    });
    const practice = {
      person: 'member-1',
      dual: false,
      night: false,
      tenths: 10,
      transponder: null,
      alsoMet: [],
    };
    const blockers = [practice, { ...practice, tenths: 20 }].map((one) => ({ rule: 1, practice: one }));
    const [offer, ...others] = offersForPractice(scene.world, scene.root, blockers);
    expect(others).toEqual([]);
    expect(offer!.askers.map((one) => one.practice!.tenths)).toEqual([10, 20]);
    // Where the calendar has no room for the flight, nothing is asked for it.
    const asker = { rule: 1, practice };
    expect(ask(scene.world, scene.root, asker, START)).toMatchObject({ remedies: [{ act: 'p' }] });
    const span = { from: '2027-06-01T00:00:00Z', to: '2027-08-01T00:00:00Z' };
    const { sheet } = scene.root;
    const full = {
      ...sheet,
      aircraft: {
        ...sheet.aircraft,
        reservations: known([{ ...records.RESERVATION, ...span }], sheet.knownAt),
      },
    };
    expect(ask(scene.world, { ...scene.root, sheet: full }, asker, START)).toBeNull();
  });

  test('for a flight far off is also asked for shortly before it', () => {
    const until = (days: number): (string | number)[][] => {
      const early = (today: string): boolean => today < '2027-06-20';
      const scene = new Scene({
        wants: [{ token: 'a', offers: [], offersOn: (today) => (early(today) ? ['p', 'q'] : ['q', 'r']) }],
        acts: { p: paper('a'), q: paper('a'), r: paper('a') },
        hours: days * 24,
      });
      return offersAgainst(scene.world, scene.root).map(({ act, notBefore }) => [
        act,
        (notBefore - START) / DAY,
      ]);
    };
    // Two days before, if that is more than a fortnight off; what was offered today already is not offered again.
    expect(until(16)).toEqual([
      ['p', 0],
      ['q', 0],
    ]);
    expect(until(17)).toEqual([
      ['p', 0],
      ['q', 0],
      ['r', 15],
    ]);
  });

  test('shortly before a flight far off by another rule, or once more, is another act; by the same rule it is not', () => {
    const offered = (list: Want[]): string[] => {
      const scene = new Scene({ wants: list, acts: { p: paper('a', 'b') }, hours: 20 * 24 });
      return offersAgainst(scene.world, scene.root).map(
        ({ act, notBefore, askers }) =>
          `${act} ${(notBefore - START) / DAY} ${askers.map(({ rule, nth }) => `${rule}.${nth}`).join()}`,
      );
    };
    const late = (today: string): boolean => today > '2027-06-20';
    expect(offered(wants(['a', 'p'], ['b', 'p']))).toEqual(['p 0 0.0,1.0']);
    expect(
      offered([
        ...wants(['a', 'p']),
        { token: 'b', offers: [], offersOn: (today) => (late(today) ? ['p'] : []) },
      ]),
    ).toEqual(['p 0 0.0', 'p 18 1.0']);
    expect(
      offered([{ token: 'a', offers: [], offersOn: (today) => (late(today) ? ['p', 'p'] : ['p']) }]),
    ).toEqual(['p 0 0.0', 'p 18 0.1']);
  });
});

describe('what a rule offers that cannot say', () => {
  const outcome = (remedies: unknown): Outcome => ({ judgement: { remedies } }) as unknown as Outcome;
  test('is nothing', () => {
    const fails = (): never => {
      throw new Error('cannot say');
    };
    expect(remediesOf(outcome(fails))).toEqual([]);
    expect(remediesOf({ judgement: null } as unknown as Outcome)).toEqual([]);
    expect(remediesOf(outcome([{ act: 'x' }]))).toEqual([{ act: 'x' }]);
    expect(remediesOf(outcome(() => [{ act: 'x' }]))).toEqual([{ act: 'x' }]);
  });
});
