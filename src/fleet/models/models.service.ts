import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import {
  addRecord,
  editRecord,
  findRecord,
  pageOfRecords,
  removeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { requireClassOfCategory } from './class-of-category.js';
import { AircraftModel } from './aircraft-model.entity.js';
import { type ModelChanges, type ModelPage, ModelView, type NewModel } from './model.dto.js';

export const MODELS = { entity: AircraftModel, noun: 'aircraft model' };

const IN_USE =
  'Aircraft, log entries or checkouts name this model, so it stays. Give its aircraft another model first; a model that was ever flown or checked out in is kept.';

/** The makes and models the club knows. */
@Injectable()
export class ModelsService {
  constructor(private readonly db: TenantDb) {}

  list({ clubId }: SignedIn, page: PageQuery): Promise<ModelPage> {
    const work = async (em: EntityManager) => {
      const { items, nextCursor } = await pageOfRecords(em, MODELS, { clubId }, page);
      return { items: items.map((row) => show(ModelView, row)), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, id: string): Promise<ModelView> {
    const work = async (em: EntityManager) => show(ModelView, await findRecord(em, MODELS, { clubId, id }));
    return this.db.run(clubId, work, { readOnly: true });
  }

  add({ clubId, memberId }: SignedIn, body: NewModel): Promise<ModelView> {
    requireClassOfCategory(body);
    const work = async (em: EntityManager) =>
      show(ModelView, await addRecord(em, MODELS, { ...body, clubId }));
    return this.db.run(clubId, work, { actorId: memberId });
  }

  edit(
    { clubId, memberId }: SignedIn,
    id: string,
    version: number,
    changes: ModelChanges,
  ): Promise<ModelView> {
    const change = (row: AircraftModel) => {
      requireClassOfCategory({
        category: changes.category ?? row.category,
        class: changes.class ?? row.class,
      });
      return { ...changes };
    };
    const work = async (em: EntityManager) =>
      show(ModelView, await editRecord(em, MODELS, { where: { clubId, id }, version, change }));
    return this.db.run(clubId, work, { actorId: memberId });
  }

  remove({ clubId, memberId }: SignedIn, id: string, version: number): Promise<void> {
    const work = (em: EntityManager) =>
      removeRecord(em, MODELS, { where: { clubId, id }, version, inUse: { detail: IN_USE } });
    return this.db.run(clubId, work, { actorId: memberId });
  }
}
