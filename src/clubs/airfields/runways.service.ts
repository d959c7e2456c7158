import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { addRecord, editRecord, findRecord, removeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { show } from '../../platform/http/views.js';
import { type NewRunway, type RunwayChanges, RunwayView } from './airfield.dto.js';
import { AIRFIELDS } from './airfields.service.js';
import { Runway } from './runway.entity.js';

const RUNWAYS = { entity: Runway, noun: 'runway' };

/** Where a runway is. */
export interface RunwayPlace {
  airfieldId: string;
  id: string;
}

/** Runways of one airfield, each direction by itself. */
@Injectable()
export class RunwaysService {
  constructor(private readonly db: TenantDb) {}

  add({ clubId, memberId }: SignedIn, airfieldId: string, body: NewRunway): Promise<RunwayView> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRFIELDS, { clubId, id: airfieldId });
      return show(RunwayView, await addRecord(em, RUNWAYS, { ...body, clubId, airfieldId }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  edit(
    { clubId, memberId }: SignedIn,
    place: RunwayPlace,
    version: number,
    changes: RunwayChanges,
  ): Promise<RunwayView> {
    const work = async (em: EntityManager) =>
      show(
        RunwayView,
        await editRecord(em, RUNWAYS, {
          where: { clubId, ...place },
          version,
          change: () => ({ ...changes }),
        }),
      );
    return this.db.run(clubId, work, { actorId: memberId });
  }

  remove({ clubId, memberId }: SignedIn, place: RunwayPlace, version: number): Promise<void> {
    const work = (em: EntityManager) => removeRecord(em, RUNWAYS, { where: { clubId, ...place }, version });
    return this.db.run(clubId, work, { actorId: memberId });
  }
}
