/** The most answers one function keeps; then it forgets all of them and starts anew. */
const MOST_KEPT = 20_000;

/**
 * Keeps the answers of a function of two plain values. Only for functions whose answer hangs on nothing but their
 * arguments: calendar and zone arithmetic is asked the same few questions thousands of times in one decision. Errors are
 * not kept.
 */
export function remember<A, B, T>(make: (a: A, b: B) => T): (a: A, b: B) => T {
  const known = new Map<B, Map<A, T>>();
  let kept = 0;
  return (a, b) => {
    let byA = known.get(b);
    const before = byA?.get(a);
    if (before !== undefined) return before;
    const value = make(a, b);
    if (kept >= MOST_KEPT) {
      known.clear();
      byA = undefined;
      kept = 0;
    }
    if (byA === undefined) {
      byA = new Map();
      known.set(b, byA);
    }
    byA.set(a, value);
    kept += 1;
    return value;
  };
}

/** The same for a function of one plain value. */
export function rememberOne<A, T>(make: (a: A) => T): (a: A) => T {
  const known = new Map<A, T>();
  return (a) => {
    const before = known.get(a);
    if (before !== undefined) return before;
    const value = make(a);
    if (known.size >= MOST_KEPT) known.clear();
    known.set(a, value);
    return value;
  };
}
