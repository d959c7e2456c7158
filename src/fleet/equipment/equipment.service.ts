import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { clubToday } from '../../clubs/club-time.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { AircraftRecords } from '../aircraft-records.js';
import { takeUpDirectives } from '../directives/take-up.js';
import { EquipmentView, type NewEquipment } from './equipment.dto.js';
import { Equipment } from './equipment.entity.js';

/** What is fitted to an aircraft, and what was. */
@Injectable()
export class EquipmentService extends AircraftRecords<Equipment, NewEquipment, EquipmentView> {
  constructor(
    db: TenantDb,
    private readonly clock: Clock,
  ) {
    const inUse =
      'Squawks or airworthiness items name this equipment, so it stays. Give it a removal date (removedOn) instead.';
    super(db, { entity: Equipment, noun: 'piece of equipment', inUse }, EquipmentView);
  }

  protected override async after(
    em: EntityManager,
    { clubId, aircraftId }: { clubId: string; aircraftId: string },
  ): Promise<void> {
    const today = await clubToday(em, clubId, this.clock.now());
    await takeUpDirectives(em, clubId, { aircraftIds: [aircraftId], today });
  }

  /** Portable is what its basis says, so the two cannot disagree. */
  protected override valuesOf(body: Partial<NewEquipment>): Partial<Equipment> {
    return body.basis === undefined ? { ...body } : { ...body, portable: body.basis === 'portable' };
  }
}
