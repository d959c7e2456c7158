/**
 * Why there is no plan: a smallest set of needs that cannot be met together, whatever else is left. Found by implicit hitting sets: the
 * smallest set that hits every known way of giving needs up is tried; as long as it can be met, another way of giving up is learnt.
 */
import { metTogether, runHighs } from './solve.js';
import type { Model } from './model.js';
import { isMandatory, type Problem } from './problem.js';

/** Ids of the needs; empty when no need is to blame: pins and the shop contradict each other. */
export async function smallestConflict(problem: Problem): Promise<string[]> {
  const must = problem.needs.filter(isMandatory).map(({ id }) => id);
  /** Each: needs of which at least one has to be given up. */
  const giveUps: string[][] = [];
  for (;;) {
    const core = await smallestHitting(giveUps);
    const met = await metTogether(problem, {
      asMany: new Set(must.filter((id) => !core.includes(id))),
    });
    if (met === null) return core;
    giveUps.push(must.filter((id) => !met.has(id)));
  }
}

/** The smallest set with a member of each. */
async function smallestHitting(sets: readonly string[][]): Promise<string[]> {
  if (sets.length === 0) return [];
  const all = [...new Set(sets.flat())];
  const name = (id: string): string => `h_${all.indexOf(id)}`;
  const model: Model = {
    objective: new Map(all.map((id) => [name(id), 1])),
    constant: 0,
    rows: sets.map((set) => ({
      name: 'hit',
      terms: new Map(set.map((id) => [name(id), 1])),
      sense: '>=' as const,
      bound: 1,
    })),
    binaries: all.map(name),
    reals: [],
  };
  const { status, value } = await runHighs(model);
  if (status !== 'optimal') throw new Error('the needs that stand in the way cannot be told apart');
  return all.filter((id) => value(name(id)) > 0.5);
}
