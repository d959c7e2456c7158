/** Which end of the search is taken, in a world worked out by hand. */
import { defineRule, known, ruleList, type FactSheet } from '../../../src/rules/index.js';
import { cheapest, DEFAULT_LIMITS, rootOf } from '../../../src/rules/ways/search.js';
import { worldOf } from '../../../src/rules/ways/world.js';
import * as records from '../../../src/rules/workshop/records.js';
import type { WaysQuestion } from '../../../src/rules/ways/types.js';
import { question, signOff, wants, type ToyAct } from './toy.js';

/** The acts of the cheapest end, with what it costs. */
function cheapestOf(of: WaysQuestion): { acts: string[]; total: number } | null {
  const world = worldOf(of);
  const spent = { limits: DEFAULT_LIMITS, looked: 0, bound: null, cured: new Set<number>() };
  return cheapest(world, rootOf(world), spent, ({ done, cost }) => ({
    acts: done.map(({ offer }) => offer.act),
    total: cost.total,
  }));
}

/** Signed off on the thirteenth whenever it is asked for: three days from now, which only doing it shows. */
const late: ToyAct = {
  gives: [],
  fee: 'document',
  effects: () => [{ op: 'append', fact: 'member.checkouts', value: signOff('a', '2027-06-13') as never }],
};
const quick: ToyAct = { gives: ['a'], fee: 'medical-exam' };
/** The late one costs 30 and three days at 5; the quick one what is given. */
const between = (price: number) =>
  cheapestOf(
    question({
      wants: wants(['a', 'late', 'quick']),
      acts: { late, quick },
      prices: { 'cost.medical-exam': price },
    }),
  );

test('an act that turns out later than thought is charged its days before it is taken', () => {
  expect(between(46)).toEqual({ acts: ['late'], total: 45 });
  expect(between(44)).toEqual({ acts: ['quick'], total: 44 });
});

test('by a cent', () => {
  expect(between(45.01)).toEqual({ acts: ['late'], total: 45 });
  expect(between(44.99)).toEqual({ acts: ['quick'], total: 44.99 });
  expect(between(44.8)).toEqual({ acts: ['quick'], total: 44.8 });
});

test('papers that wait are looked at for a rule that asks of nothing but those', () => {
  const waits = defineRule({
    id: 'toy.looked_at',
    title: 'Papers looked at',
    weight: 'law',
    binds: 'pilot',
    reads: ['pic.unverified'],
    parameters: [],
    branches: {
      all: { status: 'met', says: 'All are.' },
      some: { status: 'short', says: 'Some are not.' },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: { text: 'toy', status: 'club paper' },
        judge: (f, _moment, _p, take) => take(f.get('pic.unverified').length === 0 ? 'all' : 'some'),
      },
    ],
  });
  const of = question({
    wants: [],
    acts: {},
    change: (sheet: FactSheet) => {
      sheet.people['member-1']!.unverified = known([records.UNVERIFIED], sheet.knownAt);
    },
  });
  const verified = {
    'member-1': { ...of.sheet.people['member-1']!, unverified: known([], of.sheet.knownAt) },
  };
  const asked = { ...of, ruleset: { ...of.ruleset!, rules: ruleList(waits) }, verified };
  expect(cheapestOf(asked)?.acts).toEqual(['have-papers-verified']);
  expect(cheapestOf({ ...asked, verified: {} })).toBeNull();
});
