/** Holds what an entry expects against what was found. */

/** Keys of `expect` that loosen the comparison instead of being compared. */
export const isTolerance = (key: string): boolean => key === 'tolerance' || key.startsWith('tolerance_');

/** How far numbers under `key` may be apart: `tolerance_ft` serves keys that end in `_ft`, `tolerance` every number. */
function toleranceFor(key: string, expect: Readonly<Record<string, unknown>>): number | null {
  const unit = /_([a-z]+)$/.exec(key)?.[1];
  const own = unit === undefined ? undefined : expect[`tolerance_${unit}`];
  const given = own ?? expect.tolerance;
  return typeof given === 'number' ? given : null;
}

/** Null when they agree, else why not. `path` names the value in the message. */
export function differs(
  path: string,
  expected: unknown,
  found: unknown,
  expect: Readonly<Record<string, unknown>>,
): string | null {
  const miss = `${path}: expected ${show(expected)}, found ${show(found)}`;
  if (typeof expected === 'number') {
    if (typeof found !== 'number' || !Number.isFinite(found)) return miss;
    const allowed = toleranceFor(path.split('.').at(-1)!, expect) ?? asPrinted(expected);
    return Math.abs(expected - found) <= allowed + 1e-9 ? null : miss;
  }
  if (typeof expected === 'string' && isInstant(expected)) {
    if (typeof found !== 'string' || Number.isNaN(Date.parse(found))) return miss;
    const minutes = typeof expect.tolerance_min === 'number' ? expect.tolerance_min : 0.5;
    return Math.abs(Date.parse(expected) - Date.parse(found)) <= minutes * 60_000 ? null : miss;
  }
  if (Array.isArray(expected)) {
    if (!Array.isArray(found) || found.length !== expected.length) return miss;
    // Lists of names say what belongs to them; lists of numbers are ranges and have an order.
    const inOrder = (list: readonly unknown[]): unknown[] =>
      list.every((one) => typeof one === 'string') ? [...list].sort() : [...list];
    const [ours, theirs] = [inOrder(found), inOrder(expected)];
    const wrong = theirs.some((one, index) => differs(path, one, ours[index], expect) !== null);
    return wrong ? miss : null;
  }
  if (typeof expected === 'object' && expected !== null) {
    if (typeof found !== 'object' || found === null) return miss;
    const wrong = Object.entries(expected)
      .map(([key, value]) =>
        differs(`${path}.${key}`, value, (found as Record<string, unknown>)[key], expect),
      )
      .filter((one) => one !== null);
    return wrong.length > 0 ? wrong.join('; ') : null;
  }
  return Object.is(expected, found) ? null : miss;
}

/** Half a unit of the last decimal written; whole numbers are meant exactly. */
function asPrinted(expected: number): number {
  const decimals = /\.(\d+)$/.exec(String(expected))?.[1]?.length ?? 0;
  return decimals === 0 ? 0.005 : 0.5 * 10 ** -decimals;
}

const isInstant = (text: string): boolean => /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?Z$/.test(text);

const show = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value));
