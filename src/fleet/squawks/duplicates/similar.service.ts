import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../../accounts/current-user.js';
import { findRecord } from '../../../platform/database/records.js';
import { TenantDb } from '../../../platform/database/tenant.js';
import { AIRCRAFT } from '../../aircraft/aircraft.records.js';
import { requireEquipment } from '../../references.js';
import type { NewSquawk } from '../squawk.dto.js';
import { openSquawks } from '../open-squawks.js';
import { squawkViews } from '../squawk.views.js';
import { ALIKE_FROM, likeness } from './similar.js';
import type { SimilarSquawks } from './similar.dto.js';

const MOST = 5;

/** Finds open squawks that may be the same fault. It only suggests: what a report says is kept in any case. */
@Injectable()
export class SimilarService {
  constructor(private readonly db: TenantDb) {}

  find({ clubId }: SignedIn, aircraftId: string, body: NewSquawk): Promise<SimilarSquawks> {
    const work = async (em: EntityManager) => {
      const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      await requireEquipment(em, { clubId, aircraftId, id: body.equipmentId });
      const asked = { title: body.title, detail: body.detail ?? '', equipmentId: body.equipmentId ?? null };
      const open = await openSquawks(em, clubId, aircraftId);
      const alike = open
        .map((row) => ({ row, likeness: likeness(asked, row) }))
        .filter((one) => one.likeness >= ALIKE_FROM)
        .sort((a, b) => b.likeness - a.likeness || (a.row.id < b.row.id ? -1 : 1))
        .slice(0, MOST);
      const views = await squawkViews(
        em,
        aircraft,
        alike.map(({ row }) => row),
      );
      return {
        items: alike.map((one, index) => ({
          squawk: views[index]!,
          likeness: Math.round(one.likeness * 100) / 100,
          sameEquipment: asked.equipmentId !== null && one.row.equipmentId === asked.equipmentId,
        })),
      };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}
