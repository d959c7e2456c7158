/**
 * Reading, paging and editing one club's rows: the same few steps in every domain. All of it runs inside `TenantDb.run`.
 * A row of another club, or below another parent, is answered exactly like an unknown id.
 */
import {
  type EntityManager,
  type FindOptionsOrder,
  type FindOptionsWhere,
  LessThan,
  MoreThan,
} from 'typeorm';
import type { QueryDeepPartialEntity } from 'typeorm/query-builder/QueryPartialEntity.js';
import { pageOf, type Page, type PageQuery, readCursor } from '../http/pages.js';
import { requireVersion } from '../http/versions.js';
import { newId } from '../ids.js';
import { ProblemException, type ProblemOptions } from '../problems/problem-exception.js';
import type { ClubRow, FactRow } from './columns.js';
import { sqlStateOf } from './constraint-problems.js';

/** A table's class, and what people call one of its rows: 'runway'. */
export interface Records<T> {
  entity: new () => T;
  noun: string;
}

/** What a row is found by. Always with the club. */
export type Where<T> = FindOptionsWhere<T> & { clubId: string };

/** 404 for something that is not there, or not this club's. */
export const notThere = (noun: string): ProblemException =>
  new ProblemException('not-found', {
    detail: `Your club has no such ${noun}. Check the identifiers in the address.`,
  });

/** The row, or 404. `lock` keeps others from changing it until the transaction ends. */
export async function findRecord<T extends ClubRow>(
  em: EntityManager,
  of: Records<T>,
  where: Where<T>,
  options: { lock?: boolean } = {},
): Promise<T> {
  const row = await em.findOne(of.entity, {
    where,
    ...(options.lock ? { lock: { mode: 'pessimistic_write' as const } } : {}),
  });
  if (!row) throw notThere(of.noun);
  return row;
}

/** One page by id: oldest first, or newest first. */
export async function pageOfRecords<T extends ClubRow>(
  em: EntityManager,
  of: Records<T>,
  where: Where<T>,
  page: PageQuery,
  newestFirst = false,
): Promise<Page<T>> {
  const after = readCursor(page.cursor);
  const beyond = after === null ? {} : { id: newestFirst ? LessThan(after) : MoreThan(after) };
  const rows = await em.find(of.entity, {
    where: { ...where, ...beyond },
    order: { id: newestFirst ? 'DESC' : 'ASC' } as FindOptionsOrder<T>,
    take: page.limit + 1,
  });
  return pageOf(rows, page.limit);
}

/** Writes a new row and reads it back as the database keeps it. Values left undefined get the column's default. */
export async function addRecord<T extends ClubRow>(
  em: EntityManager,
  of: Records<T>,
  values: Partial<T> & { clubId: string },
): Promise<T> {
  const id = values.id ?? newId();
  await em.insert(of.entity, { ...values, id } as QueryDeepPartialEntity<T>);
  return findRecord(em, of, { clubId: values.clubId, id } as Where<T>);
}

/**
 * Changes a row that still has the version the client saw. Undefined changes are left alone; with none, nothing is written.
 * @throws ProblemException 404, or 412 when somebody changed it in between.
 */
export async function editRecord<T extends FactRow>(
  em: EntityManager,
  of: Records<T>,
  edit: { where: Where<T>; version: number; change: (row: T) => Partial<T> | Promise<Partial<T>> },
): Promise<T> {
  const row = await findRecord(em, of, edit.where, { lock: true });
  requireVersion(row.rowVersion, edit.version);
  return writeRecord(em, of, row, await edit.change(row));
}

/** Writes changes to a row that was read under lock, and reads it back. */
export async function writeRecord<T extends FactRow>(
  em: EntityManager,
  of: Records<T>,
  row: T,
  changes: Partial<T>,
): Promise<T> {
  const defined = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
  if (Object.keys(defined).length === 0) return row;
  const where = { clubId: row.clubId, id: row.id } as Where<T>;
  await em.update(of.entity, where, defined as QueryDeepPartialEntity<T>);
  return findRecord(em, of, where);
}

/**
 * Deletes a row that still has the version the client saw.
 * @param inUse what to say when other records point at it.
 */
export async function removeRecord<T extends FactRow>(
  em: EntityManager,
  of: Records<T>,
  edit: { where: Where<T>; version: number; inUse?: ProblemOptions },
): Promise<void> {
  const row = await findRecord(em, of, edit.where, { lock: true });
  requireVersion(row.rowVersion, edit.version);
  try {
    await em.delete(of.entity, { clubId: row.clubId, id: row.id } as FindOptionsWhere<T>);
  } catch (error) {
    if (sqlStateOf(error) !== '23503' || !edit.inUse) throw error;
    throw new ProblemException('reference-not-kept', { ...edit.inUse, cause: error });
  }
}
