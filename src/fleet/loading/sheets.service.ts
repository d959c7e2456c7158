import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import {
  addRecord,
  editRecord,
  findRecord,
  removeRecord,
  type Records,
  type Where,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { MODELS } from '../models/models.service.js';
import { LoadingSheet } from './loading-sheet.entity.js';
import { PerformanceSheet } from './performance-sheet.entity.js';
import type { SheetRow } from './sheet-row.js';

export const LOADING_SHEETS = { entity: LoadingSheet, noun: 'loading sheet' };
export const PERFORMANCE_SHEETS = { entity: PerformanceSheet, noun: 'performance sheet' };

/** Whose sheet: a model's, or one aircraft's own. */
export type OwnerOf = { modelId: string } | { aircraftId: string };

/** Sheets out of handbooks, one of each kind for a model and one for an aircraft that differs. */
@Injectable()
export class SheetsService {
  constructor(private readonly db: TenantDb) {}

  read<T extends SheetRow>({ clubId }: SignedIn, of: Records<T>, owner: OwnerOf): Promise<T> {
    const work = async (em: EntityManager) => {
      await findOwner(em, clubId, owner);
      return findRecord(em, of, where<T>(clubId, owner));
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  add<T extends SheetRow>(
    { clubId, memberId }: SignedIn,
    of: Records<T>,
    owner: OwnerOf,
    values: Partial<T>,
  ): Promise<T> {
    const work = async (em: EntityManager) => {
      await findOwner(em, clubId, owner);
      return addRecord(em, of, { ...values, ...owner, clubId });
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  replace<T extends SheetRow>(
    { clubId, memberId }: SignedIn,
    of: Records<T>,
    owner: OwnerOf,
    edit: { version: number; values: Partial<T> },
  ): Promise<T> {
    const { version, values } = edit;
    const work = (em: EntityManager) =>
      editRecord(em, of, { where: where<T>(clubId, owner), version, change: () => values });
    return this.db.run(clubId, work, { actorId: memberId });
  }

  remove<T extends SheetRow>(
    { clubId, memberId }: SignedIn,
    of: Records<T>,
    owner: OwnerOf,
    version: number,
  ): Promise<void> {
    const work = (em: EntityManager) => removeRecord(em, of, { where: where<T>(clubId, owner), version });
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

const where = <T extends SheetRow>(clubId: string, owner: OwnerOf): Where<T> =>
  ({ clubId, ...owner }) as unknown as Where<T>;

async function findOwner(em: EntityManager, clubId: string, owner: OwnerOf): Promise<void> {
  if ('modelId' in owner) await findRecord(em, MODELS, { clubId, id: owner.modelId });
  else await findRecord(em, AIRCRAFT, { clubId, id: owner.aircraftId });
}
