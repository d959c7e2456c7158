/** Sets of values that one term can have: numbers, words, true or false. */

/** An interval of numbers; an open end leaves its number out. */
export interface Interval {
  least: number;
  leastOpen: boolean;
  most: number;
  mostOpen: boolean;
}

/** What a term may be. Whole numbers say so, so that nothing lies between 3 and 4. */
export type Values =
  | { kind: 'numbers'; whole: boolean; intervals: readonly Interval[] }
  /** Just these words, or all but these. */
  | { kind: 'words'; but: boolean; words: ReadonlySet<string> }
  | { kind: 'truth'; of: ReadonlySet<boolean> };

export type Order = '==' | '!=' | '<' | '<=' | '>' | '>=';

/** Numbers that compare with a limit as the operator says. */
export function numbers(op: Order, limit: number, whole: boolean): Values {
  const below = (open: boolean): Interval => ({
    least: -Infinity,
    leastOpen: true,
    most: limit,
    mostOpen: open,
  });
  const above = (open: boolean): Interval => ({
    least: limit,
    leastOpen: open,
    most: Infinity,
    mostOpen: true,
  });
  const intervals: Record<Order, Interval[]> = {
    '==': [{ least: limit, leastOpen: false, most: limit, mostOpen: false }],
    '!=': [below(true), above(true)],
    '<': [below(true)],
    '<=': [below(false)],
    '>': [above(true)],
    '>=': [above(false)],
  };
  return normal({ kind: 'numbers', whole, intervals: intervals[op] });
}

export const between = (least: number, most: number, whole: boolean): Values =>
  normal({ kind: 'numbers', whole, intervals: [{ least, leastOpen: false, most, mostOpen: false }] });

export const words = (of: Iterable<string>, but = false): Values => ({
  kind: 'words',
  but,
  words: new Set(of),
});
export const truth = (of: boolean): Values => ({ kind: 'truth', of: new Set([of]) });

/** What both allow. Terms have one type, so kinds do not meet; if they did, nothing would be ruled out. */
export function both(a: Values, b: Values): Values {
  if (a.kind === 'numbers' && b.kind === 'numbers') {
    const intervals = a.intervals.flatMap((one) => b.intervals.map((other) => meet(one, other)));
    return normal({ kind: 'numbers', whole: a.whole || b.whole, intervals });
  }
  if (a.kind === 'truth' && b.kind === 'truth')
    return { kind: 'truth', of: new Set([...a.of].filter((one) => b.of.has(one))) };
  if (a.kind === 'words' && b.kind === 'words') return bothWords(a, b);
  return a;
}

type Words = Extract<Values, { kind: 'words' }>;

function bothWords(a: Words, b: Words): Values {
  if (a.but && b.but) return words([...a.words, ...b.words], true);
  if (a.but) return bothWords(b, a);
  return words([...a.words].filter((word) => b.words.has(word) !== b.but));
}

export function isEmpty(values: Values): boolean {
  if (values.kind === 'numbers') return values.intervals.length === 0;
  return values.kind === 'truth' ? values.of.size === 0 : !values.but && values.words.size === 0;
}

function meet(a: Interval, b: Interval): Interval {
  const [least, leastOpen] = later([a.least, a.leastOpen], [b.least, b.leastOpen], 1);
  const [most, mostOpen] = later([a.most, a.mostOpen], [b.most, b.mostOpen], -1);
  return { least, leastOpen, most, mostOpen };
}

/** Of two ends the one that allows less: the greater of lower ends, the smaller of upper ends; open over closed. */
function later(a: [number, boolean], b: [number, boolean], sign: 1 | -1): [number, boolean] {
  if (a[0] === b[0]) return [a[0], a[1] || b[1]];
  return a[0] * sign > b[0] * sign ? a : b;
}

/** Whole numbers get whole, closed ends; empty intervals go. */
function normal(values: Extract<Values, { kind: 'numbers' }>): Values {
  const intervals = values.intervals.map((one) => (values.whole ? closed(one) : one));
  return {
    ...values,
    intervals: intervals.filter(
      ({ least, most, leastOpen, mostOpen }) => least < most || (least === most && !leastOpen && !mostOpen),
    ),
  };
}

function closed({ least, leastOpen, most, mostOpen }: Interval): Interval {
  const from = Number.isFinite(least) ? (leastOpen ? Math.floor(least) + 1 : Math.ceil(least)) : least;
  const to = Number.isFinite(most) ? (mostOpen ? Math.ceil(most) - 1 : Math.floor(most)) : most;
  return { least: from, leastOpen: !Number.isFinite(least), most: to, mostOpen: !Number.isFinite(most) };
}
