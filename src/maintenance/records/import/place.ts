/** What the writers of rows share. */
import type { EntityManager } from 'typeorm';
import { AirworthinessItem } from '../../../fleet/airworthiness/airworthiness-item.entity.js';
import type { Compliance } from '../../../fleet/airworthiness/compliance.entity.js';
import { lastCompliances } from '../../../fleet/airworthiness/compliance.views.js';
import { Equipment } from '../../../fleet/equipment/equipment.entity.js';
import { latestReadings } from '../../../fleet/meters/latest-readings.js';
import type { MeterReading } from '../../../fleet/meters/meter-reading.entity.js';
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
  /** The day in the club's zone, and the zone. */
  today: string;
  zone: string;
  taken: Set<string>;
  known: Known;
}

/** Read once and kept up with what is written: an import holds the aircraft's row, so nobody else writes meanwhile. */
export interface Known {
  pieces?: Equipment[];
  items?: AirworthinessItem[];
  last?: Map<string, Compliance>;
  /** Of the inspection meter; asked for once all readings of the file are in. */
  meter?: MeterReading | null;
}

/** Every piece of the aircraft. */
export const piecesOf = async ({ em, clubId, aircraftId, known }: Place): Promise<Equipment[]> =>
  (known.pieces ??= await em.findBy(Equipment, { clubId, aircraftId }));

/** Its items, and what was last done of each when the import began. */
export async function itemsOf({ em, clubId, aircraftId, known }: Place): Promise<AirworthinessItem[]> {
  if (known.items) return known.items;
  known.items = await em.findBy(AirworthinessItem, { clubId, aircraftId });
  known.last = await lastCompliances(
    em,
    clubId,
    known.items.map(({ id }) => id),
  );
  return known.items;
}

/** What the inspection meter stood at last. */
export async function meterOf(place: Place): Promise<MeterReading | null> {
  const { em, clubId, aircraftId, inspectionMeter, known } = place;
  if (known.meter === undefined) {
    const readings = await latestReadings(em, clubId, [aircraftId]);
    known.meter = readings.find(({ kind }) => kind === inspectionMeter) ?? null;
  }
  return known.meter;
}

/** @throws RowRefused for a day still to come in the club's zone. */
export function requireNotToCome({ today }: Place, on: string): void {
  if (on > today)
    throw new RowRefused(`${on} is still to come; today is ${today}. Record the work once it is done.`);
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
