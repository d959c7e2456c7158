/** The rows behind a status, as of the end of a day: what was recorded for that day, by the records as they stand now. */
import { type EntityManager, In } from 'typeorm';
import { gatherAircraft } from '../../decisions/gather/aircraft.js';
import type { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { Compliance } from '../../fleet/airworthiness/compliance.entity.js';
import { Equipment } from '../../fleet/equipment/equipment.entity.js';
import { readingStands } from '../../fleet/meters/standing-readings.js';
import { MeterReading } from '../../fleet/meters/meter-reading.entity.js';
import { AircraftModel } from '../../fleet/models/aircraft-model.entity.js';
import { Deferral } from '../../fleet/squawks/deferral.entity.js';
import { Squawk } from '../../fleet/squawks/squawk.entity.js';
import { Weighing } from '../../fleet/weighings/weighing.entity.js';
import { findRecord } from '../../platform/database/records.js';
import type { ItemFact, LocalDate } from '../../rules/index.js';
import { statusTooLong } from './status.problems.js';

/** Rows of one kind that a status holds at most: far beyond any club's aircraft, and small enough for one page of memory. */
export const MOST_ROWS = 2000;

/** Of which aircraft and day; `until` is the first instant after the day. */
export interface StatusOf {
  clubId: string;
  aircraftId: string;
  on: LocalDate;
  until: string;
  now: string;
}

/** What is read. */
export interface StatusRows {
  aircraft: Aircraft;
  model: AircraftModel;
  /** Newest standing reading of each meter. */
  readings: MeterReading[];
  /** All items, with what was done of them by the day. */
  facts: ItemFact[];
  items: Map<string, AirworthinessItem>;
  done: Map<string, Compliance>;
  /** Every piece there ever was. */
  equipment: Equipment[];
  weighing: Weighing | null;
  squawks: Squawk[];
  deferrals: Map<string, Deferral>;
}

/** @throws ProblemException 404 without the aircraft; 422 when there is too much of it. */
export async function statusRows(em: EntityManager, of: StatusOf): Promise<StatusRows> {
  const { clubId, aircraftId, on } = of;
  const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
  const place = { clubId, aircraftId };
  const few = { take: MOST_ROWS + 1, order: { id: 'ASC' as const } };
  const items = bounded(await em.find(AirworthinessItem, { where: place, ...few }));
  const equipment = bounded(await em.find(Equipment, { where: place, ...few }));
  const done = await doneBy(em, clubId, items, on);
  const [gathered] = await gatherAircraft(em, [aircraftId], of.now, null);
  const facts = gathered?.facts.items.known ? gathered.facts.items.value : [];
  const squawks = await openSquawks(em, of);
  return {
    aircraft,
    model: await em.findOneByOrFail(AircraftModel, { clubId, id: aircraft.modelId }),
    readings: await readingsBy(em, of),
    facts: facts.map((fact) => asOf(fact, done.get(fact.id))),
    items: new Map(items.map((item) => [item.id, item])),
    ...{ done, equipment, squawks },
    weighing: await weighingBy(em, of),
    deferrals: await deferralsOf(em, clubId, squawks),
  };
}

/** The fact with what was done by the day in place of what was done by now. */
function asOf(fact: ItemFact, last: Compliance | undefined): ItemFact {
  return {
    ...fact,
    lastDoneOn: last?.doneOn ?? null,
    lastDoneTenths: last?.doneTenths ?? null,
    lastDueTenths: last?.dueTenths ?? null,
    complianceId: last?.id ?? null,
    detail: last?.detail ?? null,
  };
}

/** The compliance of each item that counted on the day, chosen as a decision chooses it (decisions/gather/aircraft.ts). */
async function doneBy(
  em: EntityManager,
  clubId: string,
  items: readonly AirworthinessItem[],
  on: LocalDate,
): Promise<Map<string, Compliance>> {
  if (items.length === 0) return new Map();
  const rows = await em
    .createQueryBuilder(Compliance, 'c')
    .distinctOn(['c.itemId'])
    .where('c.clubId = :clubId AND c.itemId IN (:...ids) AND c.voidedAt IS NULL AND c.doneOn <= :on', {
      ...{ clubId, on, ids: items.map(({ id }) => id) },
    })
    .orderBy('c.itemId')
    .addOrderBy('c.doneOn', 'DESC')
    .addOrderBy('c.doneTenths', 'DESC', 'NULLS LAST')
    .addOrderBy('c.id', 'DESC')
    .getMany();
  return new Map(rows.map((row) => [row.itemId, row]));
}

function readingsBy(em: EntityManager, { clubId, aircraftId, until }: StatusOf): Promise<MeterReading[]> {
  return em
    .createQueryBuilder(MeterReading, 'm')
    .distinctOn(['m.kind'])
    .where('m.clubId = :clubId AND m.aircraftId = :aircraftId AND m.readAt < :until', {
      ...{ clubId, aircraftId, until },
    })
    .andWhere(readingStands('m'))
    .orderBy('m.kind')
    .addOrderBy('m.readAt', 'DESC')
    .getMany();
}

function weighingBy(em: EntityManager, { clubId, aircraftId, on }: StatusOf): Promise<Weighing | null> {
  return em
    .createQueryBuilder(Weighing, 'w')
    .where('w.clubId = :clubId AND w.aircraftId = :aircraftId', { clubId, aircraftId })
    .andWhere('w.voidedAt IS NULL AND w.effectiveOn <= :on', { on })
    .orderBy('w.effectiveOn', 'DESC')
    .addOrderBy('w.id', 'DESC')
    .getOne();
}

/** Reported by the day and not closed by it. One closed and opened again since counts as open all along: rather one too many. */
async function openSquawks(em: EntityManager, { clubId, aircraftId, until }: StatusOf): Promise<Squawk[]> {
  const rows = await em
    .createQueryBuilder(Squawk, 's')
    .where('s.clubId = :clubId AND s.aircraftId = :aircraftId AND s.reportedAt < :until', {
      ...{ clubId, aircraftId, until },
    })
    .andWhere('(s.closedAt IS NULL OR s.closedAt >= :until)')
    .orderBy('s.reportedAt')
    .addOrderBy('s.id')
    .take(MOST_ROWS + 1)
    .getMany();
  return bounded(rows);
}

async function deferralsOf(
  em: EntityManager,
  clubId: string,
  squawks: readonly Squawk[],
): Promise<Map<string, Deferral>> {
  if (squawks.length === 0) return new Map();
  const rows = await em.findBy(Deferral, { clubId, squawkId: In(squawks.map(({ id }) => id)) });
  return new Map(rows.map((row) => [row.squawkId, row]));
}

function bounded<T>(rows: T[]): T[] {
  if (rows.length > MOST_ROWS) throw statusTooLong(MOST_ROWS);
  return rows;
}
