import type { EntityManager } from 'typeorm';
import { hoursOf, show } from '../../platform/http/views.js';
import { ComplianceView } from './compliance.dto.js';
import { Compliance } from './compliance.entity.js';

/** A compliance with hours in place of tenths. */
export const complianceView = (row: Compliance): ComplianceView =>
  show(ComplianceView, row, { doneH: hoursOf(row.doneTenths), dueH: hoursOf(row.dueTenths) });

/** The newest compliance of each item that is not void, by item id. */
export async function lastCompliances(
  em: EntityManager,
  clubId: string,
  itemIds: string[],
): Promise<Map<string, Compliance>> {
  if (itemIds.length === 0) return new Map();
  const rows = await em
    .createQueryBuilder(Compliance, 'c')
    .distinctOn(['c.itemId'])
    .where('c.clubId = :clubId AND c.itemId IN (:...itemIds) AND c.voidedAt IS NULL', { clubId, itemIds })
    .orderBy('c.itemId')
    .addOrderBy('c.doneOn', 'DESC')
    .addOrderBy('c.id', 'DESC')
    .getMany();
  return new Map(rows.map((row) => [row.itemId, row]));
}
