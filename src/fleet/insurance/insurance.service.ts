import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { Page, PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { type EndInsuranceTerms, InsuranceTermsView, type NewInsuranceTerms } from './insurance.dto.js';
import { InsuranceNamedPilot, InsuranceTerms } from './insurance-terms.entity.js';
import { minimumsOf, minimumsView } from './minimums.js';

const TERMS = { entity: InsuranceTerms, noun: 'insurance terms' };

/** On what terms aircraft are insured, as far as they are about pilots: entered, ended early or taken back, never changed. */
@Injectable()
export class InsuranceService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 404 */
  list(user: SignedIn, aircraftId: string, page: PageQuery): Promise<Page<InsuranceTermsView>> {
    const { clubId } = user;
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const { items, nextCursor } = await pageOfRecords(em, TERMS, { clubId, aircraftId }, page, true);
      return { items: await views(em, user, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws 404; 409 where other terms hold on one of the days; 422 */
  add(user: SignedIn, aircraftId: string, body: NewInsuranceTerms): Promise<InsuranceTermsView> {
    const { clubId, memberId } = user;
    const { namedPilotIds = [], source, validFrom, validThrough } = body;
    const minimums = body.minimums ? minimumsOf(body.minimums) : null;
    checkTerms(body);
    return this.write(user, async (em) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId }, { lock: true });
      await assertMembers(em, namedPilotIds);
      const row = await addRecord(em, TERMS, {
        ...{ clubId, aircraftId, source, validFrom, validThrough, minimums },
        recordedBy: memberId,
      });
      if (namedPilotIds.length > 0)
        await em.insert(
          InsuranceNamedPilot,
          namedPilotIds.map((pilot) => ({ clubId, termsId: row.id, memberId: pilot })),
        );
      return (await views(em, user, [row]))[0]!;
    });
  }

  /** Without a day the terms are taken back as if they never held. @throws 404; 409 for terms taken back before; 422 */
  end(
    user: SignedIn,
    of: { aircraftId: string; id: string },
    { through = null, because }: EndInsuranceTerms,
  ): Promise<InsuranceTermsView> {
    const { clubId } = user;
    return this.write(user, async (em) => {
      const row = await findRecord(em, TERMS, { clubId, ...of }, { lock: true });
      if (row.voidedAt !== null) throw new ProblemException('insurance-terms-void');
      if (through !== null && through < row.validFrom)
        throw valueRefused(
          'through',
          `They began on ${row.validFrom}. To take them back whole, leave the day out.`,
        );
      if (through !== null && through >= row.validThrough)
        throw valueRefused('through', `They end on ${row.validThrough} already. Enter new terms to go on.`);
      const changes = through === null ? { voidedAt: this.clock.now() } : { validThrough: through };
      const ended = await writeRecord(em, TERMS, row, { ...changes, endedBecause: because });
      return (await views(em, user, [ended]))[0]!;
    });
  }

  private write<T>({ clubId, memberId }: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

function checkTerms({ validFrom, validThrough, minimums, namedPilotIds = [] }: NewInsuranceTerms): void {
  if (validThrough < validFrom)
    throw valueRefused('validThrough', 'A policy ends on or after the day it begins. Check both dates.');
  if (!minimums && namedPilotIds.length === 0)
    throw valueRefused('minimums', 'Nobody would be covered: name pilots, or say what is asked of others.');
  if (!minimums) return;
  const { recentH, recentDays, leastAgeYears, mostAgeYears } = minimums;
  if (recentH && !recentDays)
    throw valueRefused('minimums.recentDays', 'Hours lately go with the days they are flown in.');
  if (recentDays && !recentH)
    throw valueRefused('minimums.recentH', 'Days go with the hours that are flown in them.');
  if (leastAgeYears && mostAgeYears && leastAgeYears > mostAgeYears)
    throw valueRefused('minimums.mostAgeYears', 'The greatest age is not below the least. Check both.');
}

async function assertMembers(em: EntityManager, ids: readonly string[]): Promise<void> {
  const known: { id: string }[] = await em.query(
    'SELECT id FROM members WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])',
    [ids],
  );
  const unknown = ids.find((id) => !known.some((one) => one.id === id.toLowerCase()));
  if (unknown !== undefined)
    throw valueRefused('namedPilotIds', `The club has no member ${unknown}. Check the id.`);
}

/** Whom a policy names is for those who look after the aircraft and its pilots; a member sees whether it is themselves. */
async function views(
  em: EntityManager,
  user: SignedIn,
  rows: InsuranceTerms[],
): Promise<InsuranceTermsView[]> {
  const { clubId, memberId } = user;
  const named = await em.find(InsuranceNamedPilot, {
    where: { clubId, termsId: In(rows.map(({ id }) => id)) },
    order: { memberId: 'ASC' },
  });
  const all = hasAnyRole(user, 'instructor', 'safety-officer', 'maintenance-coordinator', 'administrator');
  return rows.map((row) => {
    const pilots = named.filter(({ termsId }) => termsId === row.id).map((one) => one.memberId);
    return show(InsuranceTermsView, row, {
      minimums: row.minimums === null ? null : minimumsView(row.minimums),
      namedPilotIds: pilots.filter((id) => all || id === memberId),
      namedPilots: pilots.length,
    });
  });
}
