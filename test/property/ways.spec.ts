/** Ways to yes: the cheapest is what brute force finds, and none is shown that does not hold. */
import fc from 'fast-check';
import { cheapest, rootOf } from '../../src/rules/ways/search.js';
import { blocks, judge, type FactSheet } from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { prove, without } from '../../src/rules/ways/prove.js';
import type { State, Unit } from '../../src/rules/ways/state.js';
import type { WaysQuestion, WaysToYes } from '../../src/rules/ways/types.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';
import { findWays } from '../../src/rules/ways/ways.js';
import { worldOf } from '../../src/rules/ways/world.js';
import { anySheet, runs, SEED } from './engine-sheets.js';
import { damaged, leastOfAll, type Damaged } from './ways-real.js';
import { anyToy, bruteForce, bruteForceWithLeave, toyQuestion, type Toy } from './ways-toy.js';

const RUNS = Number(process.env.WAYS_RUNS ?? runs(150));
const MANY = { nodes: 50_000 };

describe(`ways through random toy worlds (seed ${SEED})`, () => {
  /** Nothing in the way is no question; both kinds of world must be met. */
  const agree = (
    wanted: (toy: Toy) => boolean,
    found: (toy: Toy) => number | null,
    brute: (toy: Toy) => number | null,
  ): void => {
    const met = { way: 0, none: 0 };
    fc.assert(
      fc.property(anyToy.filter(wanted), (toy) => {
        const best = brute(toy);
        met[best === null ? 'none' : 'way'] += 1;
        expect(found(toy)).toEqual(best === null ? null : expect.closeTo(best, 1));
      }),
      { seed: SEED, endOnFailure: true, numRuns: RUNS },
    );
    expect(Math.min(met.way, met.none)).toBeGreaterThan(RUNS / 20);
  };

  test('the cheapest plain way costs what brute force finds over all subsets of acts', () => {
    agree(
      ({ law, club }) => law.length + club.length > 0,
      (toy) => {
        const { ways } = findWays({ ...toyQuestion(toy), policy: { values: [] }, limits: MANY });
        expect(ways.bound).toBeNull();
        return ways.plans.find(({ rests }) => rests.length === 0)?.cost.total ?? null;
      },
      (toy) => bruteForce(toy, []),
    );
  });

  test("and so does the cheapest with an officer's leave", () => {
    const policy = {
      values: [{ id: 'club.override.allowed', from: '2000-01-01', value: true, reference: 'toy' }],
    };
    agree(
      ({ club }) => club.length > 0,
      (toy) => {
        const world = { ...worldOf({ ...toyQuestion(toy), policy }), aim: 'officer' as const };
        const spent = { limits: MANY, looked: 0, bound: null, cured: new Set<number>() };
        return cheapest(world, rootOf(world), spent, (end) => end.cost.total);
      },
      bruteForceWithLeave,
    );
  });
});

describe(`ways on the damaged base sheet (seed ${SEED})`, () => {
  const policy = startingPolicy();

  test('the cheapest plain way is the cheapest of all acts in all orders', () => {
    const met = { way: 0, none: 0, cut: 0 };
    fc.assert(
      fc.property(damaged(3), ({ names, sheet }) => {
        const { ways } = findWays({ sheet, policy, limits: MANY });
        if (ways.answer === 'yes' || ways.answer === 'yes-with-conditions') return;
        const world = worldOf({ sheet, policy });
        const { least, whole } = leastOfAll(world, rootOf(world), 1500);
        if (!whole) {
          met.cut += 1;
          return;
        }
        met[least === null ? 'none' : 'way'] += 1;
        const plain = ways.plans.find(({ rests }) => rests.length === 0)?.cost.total ?? null;
        if (plain !== least)
          throw new Error(`${names.join(', ')}: ${String(plain)} instead of ${String(least)}`);
      }),
      { seed: SEED, endOnFailure: true, numRuns: Math.ceil(RUNS / 2) },
    );
    expect(met.cut).toBeLessThan(RUNS / 20);
    expect(Math.min(met.way, met.none)).toBeGreaterThan(RUNS / 40);
  });
});

describe(`every way shown (seed ${SEED})`, () => {
  const policy = startingPolicy();
  const question = ({ sheet }: Damaged): WaysQuestion => {
    const other = baseSheet().aircraft;
    const instructor = baseSheet().people['instructor-1']!;
    return {
      sheet,
      policy,
      alternatives: [{ aircraft: { ...other, id: 'aircraft-2' }, route: null }],
      instructors: [instructor],
      limits: { nodes: 2000 },
    };
  };
  /** Digests of facts whose lists stand in another order differ. */
  const told = (ways: WaysToYes): string =>
    JSON.stringify(ways, (key, value: unknown) => (key === 'provenBy' ? undefined : value));

  test('is borne out by the engine judging the hypothetical facts by itself', () => {
    const met = { yes: 0, officer: 0, instructor: 0 };
    fc.assert(
      fc.property(damaged(5), (one) => {
        const asked = question(one);
        const { ways, proofs, disproved } = findWays(asked);
        expect(disproved).toBe(0);
        expect(ways.plans.length).toBeLessThanOrEqual(3);
        expect(ways.plans.length > 0 || ways.none !== null || ways.answer.startsWith('yes')).toBe(true);
        for (const { way, sheet } of proofs) {
          const decision = judge(sheet, policy);
          expect(way.provenBy).toBe(decision.digest);
          expect(way.answer).toBe(decision.answer);
          expect(way.conditions).toEqual(decision.conditions);
          const blocking = decision.findings.filter((finding) => blocks(finding));
          if (way.rests.length === 0) {
            expect(decision.answer).toMatch(/^yes/);
            met.yes += 1;
          } else if (way.rests.includes('officer')) {
            // Nothing but what the officer sets aside, and that is a club's to set aside.
            expect(blocking.map(({ rule }) => rule).sort()).toEqual([...way.overrides].sort());
            expect(blocking.every(({ overridable }) => overridable)).toBe(true);
            met.officer += 1;
          } else {
            expect(decision.answer).toBe('dual-only');
            met.instructor += 1;
          }
          expect(way.steps.every(({ doneBy }) => doneBy <= sheet.flight.departs)).toBe(true);
          expect(way.steps.every(({ startsOn }) => startsOn >= one.sheet.knownAt)).toBe(true);
        }
      }),
      { seed: SEED, endOnFailure: true, numRuns: Math.ceil(RUNS / 2) },
    );
    expect(Math.min(...Object.values(met))).toBeGreaterThan(RUNS / 60);
  });

  test('and so it is on arbitrary sheets, whatever is in them, under every pack', () => {
    let shown = 0;
    fc.assert(
      fc.property(anySheet, (sheet) => {
        const { proofs, laterProof, disproved } = findWays({ sheet, policy, limits: { nodes: 150 } });
        expect(disproved).toBe(0);
        for (const { way, sheet: then } of laterProof ? [...proofs, laterProof] : proofs) {
          const { answer, digest } = judge(then, policy, then.flight.departs, { days: 1, stepsPerRule: 1 });
          expect({ answer, digest }).toEqual({ answer: way.answer, digest: way.provenBy });
          if (way.rests.length === 0) expect(answer === 'dual-only' || answer.startsWith('yes')).toBe(true);
          shown += 1;
        }
      }),
      { seed: SEED, endOnFailure: true, numRuns: RUNS },
    );
    expect(shown).toBeGreaterThan(RUNS / 10);
  });

  test('falls apart without any one of its acts, and holds nothing of a cheaper one whole', () => {
    fc.assert(
      fc.property(damaged(4), (one) => {
        const world = worldOf(question(one));
        const { ways } = findWays(question(one));
        for (const aim of ['plain', 'instructor', 'officer'] as const) {
          const then = { ...world, aim };
          const spent = { limits: { nodes: 2000 }, looked: 0, bound: null, cured: new Set<number>() };
          const end = cheapest(then, rootOf(then), spent, (found) => (prove(then, found) ? found : null));
          if (!end) continue;
          unitsOf(end).forEach((unit, index) =>
            unit.offers.forEach((_, offer) => {
              expect(without(then, end, { unit: index, offer }).yes).toBe(false);
            }),
          );
        }
        const acts = ways.plans.map(({ steps }) => new Set(steps.map(({ act }) => act)));
        acts.forEach((mine, index) =>
          acts.forEach((other, at) => {
            if (index !== at) expect([...other].every((act) => mine.has(act))).toBe(false);
          }),
        );
      }),
      { seed: SEED, endOnFailure: true, numRuns: Math.ceil(RUNS / 6) },
    );
  });

  test('is the same however often it is asked for, and however the lists of the question are ordered', () => {
    fc.assert(
      fc.property(damaged(4), (one) => {
        const asked = question(one);
        const first = findWays(asked).ways;
        expect(JSON.stringify(findWays(structuredClone(asked)).ways)).toBe(JSON.stringify(first));
        const turned = {
          ...asked,
          sheet: reversed(asked.sheet),
          alternatives: [...asked.alternatives!].reverse(),
        };
        expect(told(findWays(turned).ways)).toBe(told(first));
      }),
      { seed: SEED, endOnFailure: true, numRuns: Math.ceil(RUNS / 6) },
    );
  });

  test('comes of a search that keeps to its limits and says when one was met', () => {
    const met = { nodes: 0, time: 0 };
    fc.assert(
      fc.property(damaged(5), fc.integer({ min: 0, max: 30 }), (one, nodes) => {
        const asked = question(one);
        const whole = findWays(asked).ways;
        const few = findWays({ ...asked, limits: { nodes } }).ways;
        expect(few.looked).toBeLessThanOrEqual(nodes);
        expect(few.bound).toBe(whole.looked > nodes ? 'nodes' : whole.bound);
        let calls = 0;
        const hurried = findWays({
          ...asked,
          limits: { nodes: 2000, shouldStop: () => (calls += 1) > nodes },
        }).ways;
        expect(hurried.looked).toBeLessThanOrEqual(nodes);
        expect(hurried.bound).toBe(whole.looked > nodes ? 'time' : whole.bound);
        if (few.bound) met.nodes += 1;
        if (hurried.bound) met.time += 1;
        // What was found before the limit is proven all the same.
        for (const way of few.plans) expect(way.provenBy).toMatch(/^[0-9a-f]{64}$/);
      }),
      { seed: SEED, endOnFailure: true, numRuns: Math.ceil(RUNS / 6) },
    );
    expect(Math.min(met.nodes, met.time)).toBeGreaterThan(RUNS / 60);
  });
});

function unitsOf(end: State): Unit[] {
  const units: Unit[] = [];
  for (let at: State = end; at.parent; at = at.parent) units.unshift(at.unit!);
  return units;
}

/** Every list of records the other way round; the route keeps its order, which means something. */
function reversed(sheet: FactSheet): FactSheet {
  const facts = <T extends object>(of: T): T =>
    Object.fromEntries(
      Object.entries(of).map(([key, fact]: [string, unknown]) => {
        const list = (fact as { value?: unknown } | null)?.value;
        return [key, Array.isArray(list) ? { ...(fact as object), value: [...list].reverse() } : fact];
      }),
    ) as T;
  return {
    ...sheet,
    people: Object.fromEntries(Object.entries(sheet.people).map(([id, person]) => [id, facts(person)])),
    aircraft: facts(sheet.aircraft),
  };
}
