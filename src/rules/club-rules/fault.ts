/** What is wrong with an expression, and where. */

/** Fields of a rule that hold expressions. */
export type ExpressionField = 'appliesWhen' | 'requirement' | 'message';

/** A place in a text. Lines and columns count from 1, in characters as JavaScript counts them. */
export interface Place {
  /** Characters before it. */
  offset: number;
  /** Characters it covers; at least 1. */
  length: number;
  line: number;
  column: number;
}

/** One fault of an expression. */
export interface Fault extends Place {
  /** Stable name of the kind of fault. */
  code: string;
  /** What is wrong and what to write instead. */
  message: string;
}

/** The place of [start, end) in a text. */
export function placeIn(text: string, start: number, end: number): Place {
  const offset = Math.max(0, Math.min(start, text.length));
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return {
    offset,
    length: Math.max(1, Math.min(end, text.length) - offset),
    line,
    column: offset - (before.lastIndexOf('\n') + 1) + 1,
  };
}

/** Where a fault is when its text is part of a longer one, from `start` on. */
export const within = (fault: Fault, whole: string, start: number): Fault => ({
  ...fault,
  ...placeIn(whole, start + fault.offset, start + fault.offset + fault.length),
});

/** The name among `known` most like a misspelt one; null when none is alike. */
export function nearest(name: string, known: Iterable<string>): string | null {
  let best: { name: string; distance: number } | null = null;
  for (const candidate of known) {
    const distance = edits(name.toLowerCase(), candidate.toLowerCase());
    if (best === null || distance < best.distance) best = { name: candidate, distance };
  }
  return best !== null && best.distance <= Math.max(2, Math.floor(name.length / 3)) ? best.name : null;
}

/** Edits from one word to another (Levenshtein's distance). */
function edits(first: string, second: string): number {
  const [a, b] = [[...first], [...second]];
  const start = Array.from({ length: b.length + 1 }, (_none, at) => at);
  const last = a.reduce(
    (row, letter, done) =>
      b.reduce(
        (next, other, at) => [
          ...next,
          Math.min(row[at]! + (letter === other ? 0 : 1), row[at + 1]! + 1, next[at]! + 1),
        ],
        [done + 1],
      ),
    start,
  );
  return last.at(-1)!;
}
