/** Which items, and how often each, are worth most in the time there is: exactly, by dynamic programming over minutes. */

/** One way to take an item. */
export interface Option {
  times: number;
  minutes: number;
  value: number;
}

export interface Candidate {
  /** Is the way to the practice area needed for it? */
  away: boolean;
  /** At least one; taking none is always allowed. */
  options: readonly Option[];
}

export interface Fit {
  /** For each candidate the option taken; null: none. */
  taken: (number | null)[];
  value: number;
  minutes: number;
}

/** Values are compared in millionths, so that sums in another order do not decide. */
const UNIT = 1_000_000;

/** The most valuable choice; of equals the one with fewer minutes. Minutes are whole numbers. */
export function fitTime(candidates: readonly Candidate[], available: number, transitMinutes: number): Fit {
  const near = choose(candidates, available, (one) => !one.away);
  const far = choose(candidates, available - transitMinutes, () => true);
  const goesAway = far.taken.some((option, at) => option !== null && candidates[at]!.away);
  if (!goesAway) return near;
  const total = { ...far, minutes: far.minutes + transitMinutes };
  const [a, b] = [Math.round(total.value * UNIT), Math.round(near.value * UNIT)];
  return a > b || (a === b && total.minutes < near.minutes) ? total : near;
}

function choose(
  candidates: readonly Candidate[],
  available: number,
  allowed: (one: Candidate) => boolean,
): Fit {
  const budget = Math.max(0, Math.floor(available));
  // best[m]: the most that exactly m minutes bring; -1: they cannot be filled exactly.
  let best: number[] = new Array<number>(budget + 1).fill(-1);
  best[0] = 0;
  const choices: (number | null)[][] = [];
  for (const one of candidates) {
    const next = [...best];
    const choice: (number | null)[] = new Array<number | null>(budget + 1).fill(null);
    if (allowed(one))
      for (const [index, { minutes, value }] of one.options.entries())
        for (let m = minutes; m <= budget; m += 1) {
          const before = best[m - minutes]!;
          const sum = before + Math.round(value * UNIT);
          if (before < 0 || sum <= next[m]!) continue;
          next[m] = sum;
          choice[m] = index;
        }
    best = next;
    choices.push(choice);
  }
  let minutes = 0;
  for (let m = 1; m <= budget; m += 1) if (best[m]! > best[minutes]!) minutes = m;
  const taken: (number | null)[] = new Array<number | null>(candidates.length).fill(null);
  const value = best[minutes]! / UNIT;
  let left = minutes;
  for (let at = candidates.length - 1; at >= 0; at -= 1) {
    const option = choices[at]![left] ?? null;
    taken[at] = option;
    if (option !== null) left -= candidates[at]!.options[option]!.minutes;
  }
  return { taken, value, minutes };
}
