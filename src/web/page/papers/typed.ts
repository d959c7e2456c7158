/** Between a paper as the service has it and a form as it is typed; lists stand a line each. */
import type { Field, Kind } from './kinds.js';
import type { Paper } from './types.js';

export type Typed = Record<string, string>;

const lines = (text: string): string[] => text.split('\n').flatMap((line) => line.trim() || []);

/** What somebody would have typed for the paper as it is. */
export function typedOf(kind: Kind, paper: Paper): Typed {
  return Object.fromEntries(kind.fields.map(({ name, type }) => [name, asTyped(type, paper[name])]));
}

function asTyped(type: Field['type'], value: unknown): string {
  if (value === null || value === undefined) return '';
  if (type === 'tick') return value === true ? 'yes' : '';
  if (!Array.isArray(value)) return String(value);
  return value
    .map((one: string | { category: string; class: string }) =>
      typeof one === 'string' ? one : `${one.category} ${one.class}`,
    )
    .join('\n');
}

/** A new paper's body: what was left empty is left out. */
export const bodyOf = (kind: Kind, typed: Typed): Record<string, unknown> =>
  Object.fromEntries(
    kind.fields.flatMap((field) => {
      const value = typed[field.name] ?? '';
      return value === '' ? [] : [[field.name, valueOf(field, value)]];
    }),
  );

/** The body of a change: what was typed otherwise than before, and what was emptied. The rest stays with the service as it is. */
export const changesOf = (kind: Kind, before: Typed, after: Typed): Record<string, unknown> =>
  Object.fromEntries(
    kind.fields.flatMap((field) => {
      const value = after[field.name] ?? '';
      if (value === (before[field.name] ?? '')) return [];
      return [[field.name, value === '' ? NOTHING[field.type] : valueOf(field, value)]];
    }),
  );

const NOTHING: Record<Field['type'], unknown> = {
  ...{ day: null, hours: null, text: null, choice: null, number: null },
  ...{ words: [], ticks: [], tick: false },
};

function valueOf({ name, type }: Field, value: string): unknown {
  if (type === 'ticks') {
    const picked = lines(value);
    if (name !== 'ratings' || !picked.some((one) => one.includes(' '))) return picked;
    return picked.map((one) => {
      const [category, ...rest] = one.split(' ');
      return { category, class: rest.join(' ') };
    });
  }
  if (type === 'hours' || type === 'number') return Number(value);
  if (type === 'tick') return value === 'yes';
  return type === 'words' ? lines(value) : value;
}
