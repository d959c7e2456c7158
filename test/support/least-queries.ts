import type { Api } from './api.js';

/** How many statements an act takes: the least of three, since what is done in the background now and then only adds to it. */
export async function leastQueries(api: Api, act: () => PromiseLike<unknown>): Promise<number> {
  const counts: number[] = [];
  for (let time = 0; time < 3; time += 1) {
    const statements = api.countQueries();
    await act();
    counts.push(await statements.stop());
  }
  return Math.min(...counts);
}
