/**
 * Edges of a rule that its table tries from both sides: two cases that differ in one value, by the smallest step there is (a day, a
 * minute, a second, a tenth, one), and come out differently.
 */
import { Temporal } from 'temporal-polyfill';
import { FLIGHT } from './base-sheet.js';
import type { Case } from './case-table.js';

/** Two cases either side of an edge. */
export interface Edge {
  /** The value that differs: 'asOf', 'pic.log.0.on'. */
  value: string;
  /** 'a day', 'a second', 'one', ... */
  step: string;
  below: string;
  above: string;
}

/** Pairs of cases either side of an edge. `came` is what must differ. */
export function edgesIn(cases: readonly { one: Case; came: string }[]): Edge[] {
  const flat = cases.map(({ one, came }) => ({ name: one.name, came, given: flattened(one) }));
  const edges: Edge[] = [];
  flat.forEach((a, index) => {
    for (const b of flat.slice(index + 1)) {
      if (a.came === b.came) continue;
      const value = onlyDifference(a.given, b.given);
      if (value === null) continue;
      const [one, two] = [a.given.get(value), b.given.get(value)];
      const step = stepBetween(one, two);
      if (step === null) continue;
      const [below, above] = (one as number) < (two as number) ? [a.name, b.name] : [b.name, a.name];
      edges.push({ value, step, below, above });
    }
  });
  return edges;
}

/** What a case gives, leaf by leaf. */
function flattened(one: Case): Map<string, unknown> {
  const leaves = new Map<string, unknown>();
  const add = (path: string, value: unknown): void => {
    if (typeof value === 'object' && value !== null && Object.keys(value).length > 0)
      for (const [key, inner] of Object.entries(value)) add(`${path}.${key}`, inner);
    else leaves.set(path, value);
  };
  for (const [key, value] of Object.entries({ asOf: FLIGHT.departs, durationMinutes: 60, ...one.given }))
    add(key, value);
  return leaves;
}

function onlyDifference(a: Map<string, unknown>, b: Map<string, unknown>): string | null {
  if (a.size !== b.size) return null;
  let found: string | null = null;
  for (const [key, value] of a) {
    if (!b.has(key)) return null;
    if (JSON.stringify(b.get(key)) === JSON.stringify(value)) continue;
    if (found !== null) return null;
    found = key;
  }
  return found;
}

const SECONDS: Record<number, string> = { 1: 'a second', 60: 'a minute', 86_400: 'a day' };
const NUMBERS: Record<string, string> = {
  '0.01': 'a hundredth',
  '0.1': 'a tenth',
  '0.25': 'a quarter',
  '0.5': 'a half',
  '1': 'one',
};

function stepBetween(a: unknown, b: unknown): string | null {
  if (typeof a === 'number' && typeof b === 'number')
    return (
      NUMBERS[
        Math.abs(a - b)
          .toFixed(2)
          .replace(/\.?0+$/, '')
      ] ?? null
    );
  if (typeof a !== 'string' || typeof b !== 'string') return null;
  const [from, to] = [secondsOf(a), secondsOf(b)];
  return from === null || to === null ? null : (SECONDS[Math.abs(from - to)] ?? null);
}

function secondsOf(text: string): number | null {
  if (!/^\d{4}-\d{2}-\d{2}(T[\d:]+Z)?$/.test(text)) return null;
  return Temporal.Instant.from(text.length === 10 ? `${text}T00:00:00Z` : text).epochMilliseconds / 1000;
}
