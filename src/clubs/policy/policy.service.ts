import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import {
  addRecord,
  findRecord,
  notThere,
  removeRecord,
  writeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/versions.js';
import { type LocalDate, type Policy, POLICY_PARAMETERS } from '../../rules/index.js';
import { clubToday } from '../club-time.js';
import { policyParameter, requireValueOf } from './definitions.js';
import type { NewPolicyValue, PolicyValueChanges, PolicyValueView, PolicyView } from './policy.dto.js';
import { changesOf, type PolicyChangesView } from './policy-changes.js';
import { alreadyInForce, backdated } from './policy.problems.js';
import { parameterView, valueView } from './policy.views.js';
import { PolicyValueRow } from './policy-value.entity.js';

const VALUES = { entity: PolicyValueRow, noun: 'policy value' };

/** A dated value by id, with the version the client saw. */
export interface ValueEdit {
  id: string;
  version: number;
}

/** The club's dated policy: what the club asks of its members beyond the law. */
@Injectable()
export class PolicyService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Every parameter with the value in force on a day (today unless said otherwise) and its whole history. */
  read({ clubId }: SignedIn, asOf?: LocalDate): Promise<PolicyView> {
    const work = async (em: EntityManager) => {
      const day = asOf ?? (await this.today(em, clubId));
      const rows = await em.find(PolicyValueRow, { where: { clubId }, order: { validFrom: 'ASC' } });
      return { asOf: day, items: POLICY_PARAMETERS.map((parameter) => parameterView(parameter, rows, day)) };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Who changed a parameter's values, when, and how. @throws ProblemException 404 for one that clubs do not set */
  async changes({ clubId }: SignedIn, parameterId: string): Promise<PolicyChangesView> {
    const parameter = POLICY_PARAMETERS.find(({ id }) => id === parameterId);
    if (!parameter) throw notThere('policy parameter');
    return this.db.run(clubId, async (em) => ({ items: await changesOf(em, parameter.id) }), {
      readOnly: true,
    });
  }

  /** @throws ProblemException 422 for an unknown or lawful parameter, a wrong type or a past date; 409 for a taken date. */
  add({ clubId, memberId }: SignedIn, body: NewPolicyValue): Promise<PolicyValueView> {
    const parameter = policyParameter(body.parameterId);
    requireValueOf(parameter, body.value);
    const work = async (em: EntityManager) => {
      const today = await this.today(em, clubId);
      if (body.validFrom < today) throw backdated(body.validFrom, today);
      return this.view(em, today, await addRecord(em, VALUES, { ...body, clubId }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 once the value is in force; otherwise as `add`. */
  edit(
    { clubId, memberId }: SignedIn,
    { id, version }: ValueEdit,
    changes: PolicyValueChanges,
  ): Promise<PolicyValueView> {
    const work = async (em: EntityManager) => {
      const today = await this.today(em, clubId);
      const row = await this.notYetInForce(em, clubId, id, today);
      requireVersion(row.rowVersion, version);
      if (changes.value !== undefined) requireValueOf(policyParameter(row.parameterId), changes.value);
      if (changes.validFrom !== undefined && changes.validFrom < today)
        throw backdated(changes.validFrom, today);
      return this.view(em, today, await writeRecord(em, VALUES, row, { ...changes }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** @throws ProblemException 409 once the value is in force. */
  remove({ clubId, memberId }: SignedIn, { id, version }: ValueEdit): Promise<void> {
    const work = async (em: EntityManager) => {
      await this.notYetInForce(em, clubId, id, await this.today(em, clubId));
      await removeRecord(em, VALUES, { where: { clubId, id }, version });
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** The policy as the rules take it. Runs in the caller's transaction. */
  async forRules(em: EntityManager, clubId: string): Promise<Policy> {
    const rows = await em.find(PolicyValueRow, {
      where: { clubId },
      order: { parameterId: 'ASC', validFrom: 'ASC' },
    });
    const values = rows.map(({ parameterId, validFrom, value, reference }) => ({
      id: parameterId,
      from: validFrom,
      value,
      reference,
    }));
    return { values };
  }

  private async today(em: EntityManager, clubId: string): Promise<LocalDate> {
    return clubToday(em, clubId, this.clock.now());
  }

  private async notYetInForce(
    em: EntityManager,
    clubId: string,
    id: string,
    today: LocalDate,
  ): Promise<PolicyValueRow> {
    const row = await findRecord(em, VALUES, { clubId, id }, { lock: true });
    if (row.validFrom <= today) throw alreadyInForce(row.validFrom);
    return row;
  }

  private async view(em: EntityManager, today: LocalDate, row: PolicyValueRow): Promise<PolicyValueView> {
    const { clubId, parameterId } = row;
    return valueView(row, await em.find(PolicyValueRow, { where: { clubId, parameterId } }), today);
  }
}
