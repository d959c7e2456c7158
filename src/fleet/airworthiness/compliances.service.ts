import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PageQuery } from '../../platform/http/pages.js';
import { tenthsOf } from '../../platform/http/views.js';
import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { notToCome } from '../not-to-come.js';
import type { AirworthinessItem } from './airworthiness-item.entity.js';
import type { CompliancePage, ComplianceView, NewCompliance } from './compliance.dto.js';
import { Compliance } from './compliance.entity.js';
import { complianceView } from './compliance.views.js';
import { ITEMS } from './items.service.js';

const COMPLIANCES = { entity: Compliance, noun: 'compliance' };

defineProblems({
  code: 'compliance-already-void',
  status: 409,
  title: 'Already void',
  detail: 'The compliance was voided before and does not count. Record a new one.',
});

/** Where an item is. */
export interface ItemPlace {
  aircraftId: string;
  itemId: string;
}

/** Items as they were done. Signed records: never edited, never deleted; a wrong one is voided. */
@Injectable()
export class CompliancesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn, place: ItemPlace, page: PageQuery): Promise<CompliancePage> {
    const work = async (em: EntityManager) => {
      const { id: itemId } = await this.item(em, clubId, place);
      const { items, nextCursor } = await pageOfRecords(em, COMPLIANCES, { clubId, itemId }, page, true);
      return { items: items.map(complianceView), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws ProblemException 422 for a day to come, or missing hours where the item counts hours. */
  add({ clubId, memberId }: SignedIn, place: ItemPlace, body: NewCompliance): Promise<ComplianceView> {
    const work = async (em: EntityManager) => {
      const item = await this.item(em, clubId, place);
      await this.check(em, item, body);
      const { doneH, dueH, detail, ...rest } = body;
      const values = {
        ...rest,
        doneTenths: tenthsOf(doneH),
        dueTenths: tenthsOf(dueH),
        detail: detail && { ...detail },
      };
      return complianceView(await addRecord(em, COMPLIANCES, { ...values, clubId, itemId: item.id }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 when it is void already. */
  void({ clubId, memberId }: SignedIn, place: ItemPlace, id: string): Promise<ComplianceView> {
    const work = async (em: EntityManager) => {
      const { id: itemId } = await this.item(em, clubId, place);
      const row = await findRecord(em, COMPLIANCES, { clubId, itemId, id }, { lock: true });
      if (row.voidedAt !== null) throw new ProblemException('compliance-already-void');
      return complianceView(await writeRecord(em, COMPLIANCES, row, { voidedAt: this.clock.now() }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  private item(
    em: EntityManager,
    clubId: string,
    { aircraftId, itemId }: ItemPlace,
  ): Promise<AirworthinessItem> {
    return findRecord(em, ITEMS, { clubId, aircraftId, id: itemId });
  }

  private async check(
    em: EntityManager,
    item: AirworthinessItem,
    { doneOn, doneH }: NewCompliance,
  ): Promise<void> {
    await notToCome(em, item.clubId, { field: 'doneOn', on: doneOn, now: this.clock.now() });
    if (
      (item.intervalTenths !== null || item.kind === 'hours-100') &&
      (doneH === undefined || doneH === null)
    ) {
      const detail =
        'This item counts hours. Give what the inspection meter stood at when the work was done.';
      throw new ProblemException('value-refused', { field: 'doneH', detail });
    }
  }
}
