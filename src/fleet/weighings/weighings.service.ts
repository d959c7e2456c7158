import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { notToCome } from '../not-to-come.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { keepWeightInStep } from './current-weight.js';
import { type NewWeighing, type WeighingPage, WeighingView } from './weighing.dto.js';
import { Weighing } from './weighing.entity.js';

export const WEIGHINGS = { entity: Weighing, noun: 'weighing' };

defineProblems({
  code: 'weighing-kept',
  status: 409,
  title: 'Not taken back here',
  detail:
    'It is void already, or came with an equipment change. Take the change back, or record a weighing of a later day.',
});

/** A row with its moment. */
export const weighingView = (row: Weighing): WeighingView =>
  show(WeighingView, row, {
    emptyMomentLbIn: row.emptyArmIn === null ? null : row.emptyWeightLb * row.emptyArmIn,
  });

/** Empty weights by date. Signed records: a wrong one is made void, none is edited. */
@Injectable()
export class WeighingsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn, aircraftId: string, page: PageQuery): Promise<WeighingPage> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const { items, nextCursor } = await pageOfRecords(em, WEIGHINGS, { clubId, aircraftId }, page, true);
      return { items: items.map(weighingView), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws ProblemException 422 for a day to come. */
  add({ clubId, memberId }: SignedIn, aircraftId: string, body: NewWeighing): Promise<WeighingView> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId }, { lock: true });
      await notToCome(em, clubId, { field: 'effectiveOn', on: body.effectiveOn, now: this.clock.now() });
      const row = await addRecord(em, WEIGHINGS, { ...body, clubId, aircraftId });
      await keepWeightInStep(em, clubId, aircraftId);
      return weighingView(row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 when it is void, or an equipment change's. */
  void({ clubId, memberId }: SignedIn, aircraftId: string, id: string): Promise<WeighingView> {
    const work = async (em: EntityManager) => {
      const row = await findRecord(em, WEIGHINGS, { clubId, aircraftId, id }, { lock: true });
      if (row.voidedAt !== null || row.changeId !== null) throw new ProblemException('weighing-kept');
      const voided = await writeRecord(em, WEIGHINGS, row, { voidedAt: this.clock.now() });
      await keepWeightInStep(em, clubId, aircraftId);
      return weighingView(voided);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}
