import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { AIRFIELDS } from '../../clubs/airfields/airfields.service.js';
import { Clock } from '../../platform/clock.js';
import {
  addRecord,
  editRecord,
  findRecord,
  pageOfRecords,
  removeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { takeUpDirectives } from '../directives/take-up.js';
import { MODELS } from '../models/models.service.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { requireReference } from '../references.js';
import { currentWeighing } from '../weighings/current-weight.js';
import type {
  AircraftChanges,
  AircraftPage,
  AircraftQuery,
  AircraftView,
  NewAircraft,
} from './aircraft.dto.js';
import { AIRCRAFT } from './aircraft.records.js';
import { aircraftSummaries, aircraftView } from './aircraft.views.js';

const IN_USE = 'The aircraft has records, so it stays. Set its status to out-of-service instead.';

/** The club's aircraft. */
@Injectable()
export class AircraftService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn, query: AircraftQuery): Promise<AircraftPage> {
    const work = async (em: EntityManager) => {
      const where = { clubId, ...(query.status ? { status: query.status } : {}) };
      const { items, nextCursor } = await pageOfRecords(em, AIRCRAFT, where, query);
      return { items: await aircraftSummaries(em, clubId, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, id: string): Promise<AircraftView> {
    const work = async (em: EntityManager) =>
      aircraftView(em, await findRecord(em, AIRCRAFT, { clubId, id }));
    return this.db.run(clubId, work, { readOnly: true });
  }

  add({ clubId, memberId }: SignedIn, body: NewAircraft): Promise<AircraftView> {
    const work = async (em: EntityManager) => {
      await requireBoth(em, clubId, body);
      const row = await addRecord(em, AIRCRAFT, { ...body, clubId });
      await this.takeUp(em, clubId, row.id);
      return aircraftView(em, row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  edit(
    { clubId, memberId }: SignedIn,
    id: string,
    version: number,
    changes: AircraftChanges,
  ): Promise<AircraftView> {
    const work = async (em: EntityManager) => {
      await requireBoth(em, clubId, changes);
      if (changes.emptyWeightLb !== undefined) await weightIsFree(em, clubId, id);
      const edit = { where: { clubId, id }, version, change: () => ({ ...changes }) };
      const row = await editRecord(em, AIRCRAFT, edit);
      await this.takeUp(em, clubId, id);
      return aircraftView(em, row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  remove({ clubId, memberId }: SignedIn, id: string, version: number): Promise<void> {
    const work = (em: EntityManager) =>
      removeRecord(em, AIRCRAFT, { where: { clubId, id }, version, inUse: { detail: IN_USE } });
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** Model and serial number say which directives apply. */
  private async takeUp(em: EntityManager, clubId: string, aircraftId: string): Promise<void> {
    const today = await clubToday(em, clubId, this.clock.now());
    await takeUpDirectives(em, clubId, { aircraftIds: [aircraftId], today });
  }
}

async function requireBoth(em: EntityManager, clubId: string, body: AircraftChanges): Promise<void> {
  await requireReference(em, MODELS, { clubId, id: body.modelId }, 'modelId');
  await requireReference(em, AIRFIELDS, { clubId, id: body.homeAirfieldId }, 'homeAirfieldId');
}

/** @throws ProblemException 422 once weighings say what it weighs. */
async function weightIsFree(em: EntityManager, clubId: string, aircraftId: string): Promise<void> {
  if ((await currentWeighing(em, clubId, aircraftId)) === null) return;
  throw new ProblemException('value-refused', {
    field: 'emptyWeightLb',
    detail: 'The empty weight comes from the weighings on record. Record another weighing instead.',
  });
}
