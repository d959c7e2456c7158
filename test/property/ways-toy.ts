/**
 * A toy world for the search: rules that want tokens, acts that give them, and a brute force that knows nothing of the
 * search. A token is a club sign-off named after it.
 */
import fc from 'fast-check';
import {
  defineRule,
  known,
  ParameterBook,
  ruleList,
  toInstant,
  toSeconds,
  type CheckoutFact,
  type FactSheet,
  type Rule,
  type Ruleset,
} from '../../src/rules/index.js';
import { CLUB_COSTS } from '../../src/rules/parameters/club/costs.js';
import { clubParameter } from '../../src/rules/parameters/club/club-parameter.js';
import type { Parameter } from '../../src/rules/parameters/parameter.js';
import type { ActEntry, Catalogue } from '../../src/rules/ways/acts.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';

/** An act: what it gives, asks for and costs. */
export interface ToyAct {
  name: string;
  gives: number[];
  fee: number;
  leadDays: number;
  /** Flown: alone or with an instructor; null when it is a paper. */
  flown: { taught: boolean; hours: number } | null;
}

export interface Toy {
  acts: ToyAct[];
  /** Tokens the flight wants; those of the club an officer may set aside. */
  law: number[];
  club: number[];
  /** Tokens that practising alone, and any practice, wants. */
  alone: number[];
  practice: number[];
  days: number;
}

const TOKENS = 5;
const DAY = 86_400;
/** Morning of a long day: three practice flights fit before dusk. */
const KNOWN_AT = '2027-06-10T14:00:00Z';
const tokens = (most: number): fc.Arbitrary<number[]> =>
  fc.uniqueArray(fc.integer({ min: 0, max: TOKENS - 1 }), { maxLength: most });

export const anyToy: fc.Arbitrary<Toy> = fc
  .record({
    acts: fc.array(
      fc.record({
        gives: fc.uniqueArray(fc.integer({ min: 0, max: TOKENS - 1 }), { minLength: 1, maxLength: 3 }),
        fee: fc.integer({ min: 1, max: 400 }),
        leadDays: fc.integer({ min: 0, max: 6 }),
        flown: fc.oneof(
          fc.constant(null),
          fc.record({ taught: fc.boolean(), hours: fc.constantFrom(0.2, 0.5, 1) }),
        ),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    law: tokens(3),
    club: tokens(2),
    alone: tokens(1),
    practice: fc.oneof(
      { weight: 3, arbitrary: fc.constant<number[]>([]) },
      { weight: 1, arbitrary: tokens(1) },
    ),
    days: fc.integer({ min: 2, max: 9 }),
  })
  .map((toy) => ({
    ...toy,
    club: toy.club.filter((token) => !toy.law.includes(token)),
    acts: toy.acts.map((act, index) => ({ ...act, name: `act-${index}` })),
  }));

const record = (token: number, on: string): CheckoutFact => ({
  id: `token-${token}`,
  kind: 'model',
  modelId: `token-${token}`,
  aircraftId: null,
  on,
  expiresOn: null,
  signedById: 'planned',
});

/** A rule that wants a token on flights of some purposes, and offers every act that gives it. */
function wants(toy: Toy, token: number, of: { id: string; weight: Rule['weight']; on: string[] }): object {
  return defineRule({
    id: `toy.${of.id}_${token}`,
    title: `Token ${token} (${of.id})`,
    weight: of.weight,
    // What any practice wants does not wait for an instructor's name.
    binds: of.id === 'practice' ? 'aircraft' : 'pilot',
    reads: ['member.checkouts'],
    parameters: [],
    branches: {
      'not-asked': { status: 'not-applicable', says: 'Not asked.' },
      has: { status: 'met', says: 'Has it.' },
      lacks: { status: 'short', says: 'Lacks it.' },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: { text: 'toy', status: 'club paper' },
        judge(f, moment, _p, take) {
          if (!of.on.includes(f.flight.purpose)) return take('not-asked');
          const held = f
            .get('member.checkouts')
            .some(({ modelId, on }) => modelId === `token-${token}` && moment.startsOnOrAfter(on));
          if (held) return take('has');
          return take(
            'lacks',
            {},
            {
              remedies: () =>
                toy.acts
                  .filter((act) => act.gives.includes(token))
                  .map((act) => ({
                    act: act.name,
                    title: act.name,
                    by: 'member' as const,
                    effects: act.gives.map((given) => ({
                      op: 'append' as const,
                      fact: 'member.checkouts' as const,
                      value: record(given, moment.knowledgeDate()),
                    })),
                  })),
            },
          );
        },
      },
    ],
  });
}

/** The toy as a question for the search. */
export function toyQuestion(toy: Toy): { sheet: FactSheet; ruleset: Ruleset; catalogue: Catalogue } {
  const sheet = baseSheet();
  const departs = toSeconds(KNOWN_AT) + toy.days * DAY;
  sheet.knownAt = KNOWN_AT;
  sheet.flight = {
    ...sheet.flight,
    departs: toInstant(departs),
    arrives: toInstant(departs + 3600),
    purpose: 'maintenance',
  };
  sheet.people['member-1']!.checkouts = known([], KNOWN_AT);
  const rules = ruleList(
    ...toy.law.map((token) => wants(toy, token, { id: 'law', weight: 'law', on: ['maintenance'] })),
    ...toy.club.map((token) => wants(toy, token, { id: 'club', weight: 'club', on: ['maintenance'] })),
    ...toy.alone.map((token) => wants(toy, token, { id: 'alone', weight: 'law', on: ['solo'] })),
    ...toy.practice.map((token) =>
      wants(toy, token, { id: 'practice', weight: 'law', on: ['solo', 'dual'] }),
    ),
  );
  const parameters = [...CLUB_COSTS, ...toy.acts.flatMap(pricesOf)];
  return {
    sheet,
    ruleset: { rules, book: new ParameterBook(parameters, { values: [] }) },
    catalogue: (name) => {
      const act = toy.acts.find((one) => one.name === name);
      return act && entryOf(act);
    },
  };
}

const pricesOf = ({ name, fee, leadDays, flown }: ToyAct): Parameter[] => [
  clubParameter({ id: `club.cost.${name}`, title: name, unit: 'money', start: fee, section: '0' }),
  clubParameter({ id: `club.lead.${name}`, title: name, unit: 'days', start: leadDays, section: '0' }),
  clubParameter({
    id: `club.cost.hours.${name}`,
    title: name,
    unit: 'hours',
    start: flown?.hours ?? 0,
    section: '0',
  }),
];

/** The catalogue knows its own parameters only; the toy's are named the same way. */
const entryOf = ({ name, flown }: ToyAct): ActEntry =>
  ({
    kind: flown ? 'flight' : 'paper',
    lead: name,
    air: flown ? name : null,
    ground: null,
    fee: name,
    payer: 'member',
    instructed: false,
    points: null,
    sketch: flown && { with: flown.taught ? 'instructor' : 'nobody', light: 'any' },
  }) as unknown as ActEntry;

const price = (id: string): number => CLUB_COSTS.find((one) => one.id === id)!.values[0]!.value as number;

/** The least with an officer's leave for some of the club's rules. */
export function bruteForceWithLeave(toy: Toy): number | null {
  let best: number | null = null;
  for (let mask = 1; mask < 1 << toy.club.length; mask += 1) {
    const left = toy.club.filter((_, index) => mask & (1 << index));
    const rest = bruteForce(toy, left);
    if (rest === null) continue;
    const leave =
      price('club.cost.hours.office') * price('club.cost.value-of-hour') +
      left.length * price('club.cost.points.officer') * price('club.cost.value-of-point');
    if (best === null || rest + leave < best) best = rest + leave;
  }
  return best;
}

interface Sortie {
  acts: ToyAct[];
  dual: boolean;
}

/**
 * The least any set of acts costs after which nothing but `left` stands in the way; null when none does in time. Tries
 * all subsets, all ways to fly them together, and each flight alone and with an instructor.
 */
export function bruteForce(toy: Toy, left: readonly number[]): number | null {
  let best: number | null = null;
  const wanted = [...toy.law, ...toy.club].filter((token) => !left.includes(token));
  for (let mask = 0; mask < 1 << toy.acts.length; mask += 1) {
    const chosen = toy.acts.filter((_, index) => mask & (1 << index));
    const gives = new Set(chosen.flatMap((act) => act.gives));
    if (!wanted.every((token) => gives.has(token))) continue;
    if (left.some((token) => gives.has(token))) continue;
    const papers = chosen.filter((act) => !act.flown);
    for (const grouping of partitions(chosen.filter((act) => act.flown))) {
      for (let duals = 0; duals < 1 << grouping.length; duals += 1) {
        const sorties = grouping.map((acts, index) => ({ acts, dual: (duals & (1 << index)) !== 0 }));
        if (sorties.some(({ acts, dual }) => !dual && acts.some((act) => act.flown!.taught))) continue;
        if (
          sorties.some(
            (sortie) => sortie.acts.length > 1 && hoursOf(sortie) > price('club.cost.hours.longest'),
          )
        )
          continue;
        const days = daysFor(toy, papers, sorties);
        if (days === null) continue;
        const cost = costOf(
          papers,
          sorties,
          left.length > 0 ? Math.max(days, price('club.lead.office')) : days,
        );
        if (best === null || cost < best) best = cost;
      }
    }
  }
  return best;
}

/** As the search rounds meter hours up to tenths. */
const hoursOf = ({ acts }: Sortie): number =>
  Math.ceil(
    Math.round(
      (acts.reduce((sum, act) => sum + act.flown!.hours, 0) + price('club.cost.hours.sortie')) * 1000,
    ) / 100,
  ) / 10;

function costOf(papers: readonly ToyAct[], sorties: readonly Sortie[], days: number): number {
  const fees = [...papers, ...sorties.flatMap(({ acts }) => acts)].reduce((sum, act) => sum + act.fee, 0);
  const flying = sorties.reduce((sum, { acts, dual }) => {
    const hours = acts.reduce((all, act) => all + act.flown!.hours, price('club.cost.hours.sortie'));
    const rate = price('club.cost.aircraft-hour') + (dual ? price('club.cost.instructor-hour') : 0);
    return sum + hours * (rate + price('club.cost.value-of-hour'));
  }, 0);
  return fees + flying + days * price('club.cost.value-of-day');
}

/** The day on which the last of them is done, each as early as it can; null when some never can, or not in time. */
function daysFor(toy: Toy, papers: readonly ToyAct[], sorties: readonly Sortie[]): number | null {
  const held = new Set<number>();
  const waiting: { acts: ToyAct[]; lead: number; needs: number[] }[] = [
    ...papers.map((act) => ({ acts: [act], lead: act.leadDays, needs: [] })),
    ...sorties.map(({ acts, dual }) => ({
      acts,
      lead: Math.max(...acts.map((act) => act.leadDays), dual ? price('club.lead.instructor') : 0),
      needs: dual ? toy.practice : [...toy.practice, ...toy.alone],
    })),
  ];
  const isFlight = ({ acts }: { acts: ToyAct[] }): boolean => acts[0]!.flown !== null;
  let last = 0;
  for (let day = 0; day <= toy.days && waiting.length > 0; day += 1) {
    for (let again = true; again;) {
      again = false;
      for (const one of [...waiting]) {
        // A practice flight takes an hour or more: on the day of departure there is none left.
        if (one.lead > day || (isFlight(one) && day === toy.days)) continue;
        if (!one.needs.every((token) => held.has(token))) continue;
        waiting.splice(waiting.indexOf(one), 1);
        for (const act of one.acts) for (const token of act.gives) held.add(token);
        last = day;
        again = true;
      }
    }
  }
  return waiting.length === 0 ? last : null;
}

function partitions<T>(items: readonly T[]): T[][][] {
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  return partitions(rest).flatMap((groups) => [
    [[first], ...groups],
    ...groups.map((_, at) => groups.map((group, index) => (index === at ? [first, ...group] : group))),
  ]);
}
