/** Answer bodies made out of request bodies and rows. */
import type { Type } from '@nestjs/common';
import { type ApiPropertyOptions, PartialType, PickType } from '@nestjs/swagger';
import { rememberFields } from './field-description.js';
import { fieldsOf, Shown } from './fields.js';

type Answered<T> = { [K in keyof T]-?: Exclude<T[K], undefined> };

/** The fields of a request body as an answer has them: every one present. Extend it with what the service adds. */
export function ViewOf<T>(source: Type<T>): Type<Answered<T>> {
  class View {}
  for (const [key, options] of fieldsOf(source))
    Shown({ ...options, required: true } as ApiPropertyOptions)(View.prototype, key);
  return View as Type<Answered<T>>;
}

/** Some fields of a body as the beginning of another one. `PickType` alone would lose what `ViewOf` and `show` go by. */
export function SomeOf<T, K extends keyof T & string>(source: Type<T>, keys: readonly K[]): Type<Pick<T, K>> {
  class Some extends (PickType(source, keys) as Type<object>) {}
  rememberFields(source, Some, keys);
  return Some as Type<Pick<T, K>>;
}

/** A request body for edits: every field may be left out, null only where it was allowed. */
export function ChangesOf<T>(source: Type<T>): Type<Partial<T>> {
  return PartialType(source, { skipNullProperties: false }) as Type<Partial<T>>;
}

/** What every editable record shows of itself. */
export class RecordHead {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer', description: 'Counts the edits; the ETag is this number in quotes' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** Copies from a row the fields the answer declares, and adds the ones the row does not have. */
export function show<V extends object>(view: Type<V>, row: object, more: Partial<V> = {}): V {
  const source = { ...row, ...more } as Record<string, unknown>;
  return Object.fromEntries([...fieldsOf(view).keys()].map((key) => [key, source[key] ?? null])) as V;
}

/** Hours to a tenth from tenths, and back; null and undefined stay what they are. */
export const hoursOf = <T extends number | null | undefined>(tenths: T): T =>
  (typeof tenths === 'number' ? tenths / 10 : tenths) as T;
export const tenthsOf = <T extends number | null | undefined>(hours: T): T =>
  (typeof hours === 'number' ? Math.round(hours * 10) : hours) as T;

/** A record taken back: by whom, when and why. */
export class VoidedView {
  @Shown({ type: 'string', format: 'uuid' })
  by: string;

  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown({ type: 'string' })
  reason: string;

  /** Null where nothing took it back. */
  static of(taken: { voidedBy: string; recordedAt: string; reason: string } | undefined): VoidedView | null {
    return taken === undefined ? null : { by: taken.voidedBy, at: taken.recordedAt, reason: taken.reason };
  }
}
