/** Serial numbers, as data plates and directives write them: letters and digits mixed, '172-10345', 'L-1183-27A'. */
import type { SerialRange } from './directive.entity.js';

/**
 * Is a serial number within one of some ranges? Numbers within it are compared as numbers, the rest as letters, and only serials of
 * one form with each other: one that is written in another form than a range is `unclear`, for a person to look up.
 */
export function withinSerials(serial: string, ranges: readonly SerialRange[]): 'in' | 'out' | 'unclear' {
  const parts = partsOf(serial);
  let unclear = false;
  for (const { from, through } of ranges) {
    const [low, high] = [partsOf(from), partsOf(through)];
    if (!sameForm(parts, low) || !sameForm(parts, high)) unclear = true;
    else if (compare(low, parts) <= 0 && compare(parts, high) <= 0) return 'in';
  }
  return unclear ? 'unclear' : 'out';
}

/** Can a range be read: both ends of one form, in order? */
export function isRange({ from, through }: SerialRange): boolean {
  const [low, high] = [partsOf(from), partsOf(through)];
  return low.length > 0 && sameForm(low, high) && compare(low, high) <= 0;
}

type Part = string | bigint;

const partsOf = (serial: string): Part[] =>
  (
    serial
      .toUpperCase()
      .replace(/\s*-\s*/g, '-')
      .match(/\d+|[^\d\s]+/g) ?? []
  ).map((part) => (/^\d/.test(part) ? BigInt(part) : part));

/** The same letters in the same places, numbers where the other has numbers. */
const sameForm = (a: readonly Part[], b: readonly Part[]): boolean =>
  a.length === b.length &&
  a.every((part, at) => (typeof part === 'bigint' ? typeof b[at] === 'bigint' : part === b[at]));

function compare(a: readonly Part[], b: readonly Part[]): number {
  for (const [at, part] of a.entries()) {
    const other = b[at]!;
    if (part !== other) return part < other ? -1 : 1;
  }
  return 0;
}
