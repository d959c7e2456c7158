/** What the writers of rows share. */
import type { EntityManager } from 'typeorm';
import type { MetersService } from '../../../fleet/meters/meters.service.js';
import { hoursOf } from '../../../platform/http/views.js';
import type { MeterKind } from '../../../rules/index.js';
import { RowRefused } from './bodies.js';
import type { Outcome } from './import.dto.js';

/** Where the rows go, and what of it is spoken for: two equal rows are two records, and an equal record answers one row. */
export interface Place {
  em: EntityManager;
  meters: MetersService;
  clubId: string;
  aircraftId: string;
  inspectionMeter: MeterKind;
  now: string;
  taken: Set<string>;
}

/** What became of a row. */
export interface Written {
  outcome: Outcome;
  writes: string[];
  warnings: string[];
  because: string | null;
  /** The record, where there is one. */
  id: string | null;
}

export const written = (outcome: Outcome, more: Partial<Written> = {}): Written => ({
  ...{ outcome, writes: [], warnings: [], because: null, id: null },
  ...more,
});

export const same = (a: string, b: string): boolean =>
  a.trim().toLocaleLowerCase('en') === b.trim().toLocaleLowerCase('en');

/** @throws RowRefused naming what is on record otherwise: an import adds, it changes nothing. */
export function requireSame<T extends object>(there: T, body: Partial<T>, facts: readonly (keyof T)[]): void {
  const plain = (value: unknown): string =>
    value === null || value === undefined
      ? 'nothing'
      : Array.isArray(value)
        ? value.join('; ') || 'nothing'
        : String(value);
  const other = facts.filter((fact) => plain(there[fact]) !== plain(body[fact]));
  if (other.length === 0) return;
  const told = other.map((fact) => `${String(fact)} ${plain(there[fact])}, here ${plain(body[fact])}`);
  throw new RowRefused(
    `It is on record otherwise: ${told.join('; ')}. An import changes nothing that is on record: change it there, or leave the row out.`,
  );
}

export const inHours = (count: number | null): string => `${(hoursOf(count) ?? 0).toFixed(1)} h`;
