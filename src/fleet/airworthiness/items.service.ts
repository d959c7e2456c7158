import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { TenantDb } from '../../platform/database/tenant.js';
import { hoursOf, show, tenthsOf } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { AircraftRecords } from '../aircraft-records.js';
import { requireEquipment } from '../references.js';
import { AirworthinessItem } from './airworthiness-item.entity.js';
import { complianceView, lastCompliances } from './compliance.views.js';
import { ItemView, type NewItem } from './item.dto.js';

/** How items are found, and what keeps one from being deleted. */
export const ITEMS = {
  entity: AirworthinessItem,
  noun: 'airworthiness item',
  inUse: 'The item has compliances, so it stays. Give it a retirement date (retiredOn) instead.',
};

/** Kinds whose interval comes from no regulation, so that the item itself must say it. */
const OWN_INTERVAL: ReadonlySet<AirworthinessItem['kind']> = new Set(['directive', 'club']);

const itemView = (row: AirworthinessItem, lastCompliance: ItemView['lastCompliance']): ItemView =>
  show(ItemView, row, {
    intervalH: hoursOf(row.intervalTenths),
    fixedDueH: hoursOf(row.fixedDueTenths),
    toleranceH: hoursOf(row.toleranceTenths),
    lastCompliance,
  });

/** Airworthiness items: inspections, checks, directives, the club's own. */
@Injectable()
export class ItemsService extends AircraftRecords<AirworthinessItem, NewItem, ItemView> {
  constructor(db: TenantDb) {
    super(db, ITEMS, ItemView);
  }

  protected override valuesOf(body: Partial<NewItem>): Partial<AirworthinessItem> {
    const { intervalH, fixedDueH, toleranceH, ...rest } = body;
    const tenths = { intervalTenths: tenthsOf(intervalH), fixedDueTenths: tenthsOf(fixedDueH) };
    return { ...rest, ...tenths, toleranceTenths: tenthsOf(toleranceH) };
  }

  protected override async check(em: EntityManager, row: Partial<AirworthinessItem>): Promise<void> {
    requireInterval(row);
    const { clubId, aircraftId, equipmentId } = row as AirworthinessItem;
    await requireEquipment(em, { clubId, aircraftId, id: equipmentId });
  }

  protected override async views(em: EntityManager, rows: AirworthinessItem[]): Promise<ItemView[]> {
    const ids = rows.map(({ id }) => id);
    const last = await lastCompliances(em, rows[0]?.clubId ?? '', ids);
    return rows.map((row) => itemView(row, last.has(row.id) ? complianceView(last.get(row.id)!) : null));
  }
}

/** @throws ProblemException 422 for an item that recurs and does not say when. */
export function requireInterval(row: Partial<AirworthinessItem>): void {
  if (row.recurring === false || !OWN_INTERVAL.has(row.kind!)) return;
  const { calendarMonths, plainMonths, days, intervalTenths, fixedDueOn, fixedDueTenths } = row;
  const given = [calendarMonths, plainMonths, days, intervalTenths, fixedDueOn, fixedDueTenths];
  if (given.some((value) => value !== null && value !== undefined)) return;
  throw new ProblemException('value-refused', {
    field: 'calendarMonths',
    detail:
      'An item that recurs says when: give calendarMonths, plainMonths, days, intervalH, fixedDueOn or fixedDueH; or set recurring to ' +
      'false when one compliance settles it.',
  });
}
