/** Roots of a smooth function whose steepness is bounded. */

/** Longest stretch in which a change of sign is taken to be one crossing. */
const LONGEST = 6 * 3600;
/** Pairs of crossings closer than this are passed over: refraction makes them uncertain anyway. */
const SHORTEST = 1;

/**
 * All crossings of zero in [from, to], in order. `steepest` bounds |f'|: a stretch whose ends are too far from zero to
 * reach it and come back is skipped, so grazing pairs near the polar circles are found and the rest costs little.
 */
export function crossingsOf(f: (at: number) => number, from: number, to: number, steepest: number): number[] {
  const found: number[] = [];
  const look = (t1: number, f1: number, t2: number, f2: number): void => {
    const length = t2 - t1;
    const changes = f1 < 0 !== f2 < 0;
    if (changes && length <= LONGEST) {
      found.push(root(f, t1, f1, t2, f2));
      return;
    }
    if (!changes && (length < SHORTEST || Math.abs(f1) + Math.abs(f2) > steepest * length)) return;
    const middle = (t1 + t2) / 2;
    const fm = f(middle);
    look(t1, f1, middle, fm);
    look(middle, fm, t2, f2);
  };
  look(from, f(from), to, f(to));
  return found;
}

/** The crossing between two points of opposite sign, to a twentieth of a second (regula falsi, Illinois variant). */
function root(f: (at: number) => number, t1: number, f1: number, t2: number, f2: number): number {
  let side = 0;
  for (let tries = 0; tries < 60 && t2 - t1 > 0.05; tries += 1) {
    const at = (t1 * f2 - t2 * f1) / (f2 - f1);
    const value = f(at);
    if (Math.abs(value) < 1e-10) return at;
    if (value < 0 === f2 < 0) {
      [t2, f2] = [at, value];
      if (side === -1) f1 /= 2;
      side = -1;
    } else {
      [t1, f1] = [at, value];
      if (side === 1) f2 /= 2;
      side = 1;
    }
  }
  return (t1 * f2 - t2 * f1) / (f2 - f1);
}
