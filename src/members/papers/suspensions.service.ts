import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { addRecord, editRecord, findRecord, removeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { Paper } from './paper.entity.js';
import type { SuspensionChanges, SuspensionDto, SuspensionView } from './suspension.dto.js';
import { SuspensionRow } from './suspension.entity.js';
import { type SuspensionParent, suspensionView } from './suspension-rows.js';

/** What a suspension may hang on. */
export interface Suspendable {
  entity: new () => Paper;
  noun: string;
  /** Column that points at it. */
  parent: SuspensionParent;
}

/** Where a certificate lies. */
export interface CertificateAddress {
  memberId: string;
  certificateId: string;
}

const SUSPENSIONS = { entity: SuspensionRow, noun: 'suspension' };

/** Times when a certificate gives no privileges; officers write them down. */
@Injectable()
export class SuspensionsService {
  constructor(private readonly tenants: TenantDb) {}

  /** @throws 404, 422 when it ends before it begins */
  create(
    kind: Suspendable,
    by: SignedIn,
    at: CertificateAddress,
    draft: SuspensionDto,
  ): Promise<SuspensionView> {
    return this.within(kind, by, at, async (em, key) => {
      const values = { suspendedFrom: draft.from, suspendedTo: draft.to ?? null };
      return suspensionView(await addRecord(em, SUSPENSIONS, { ...key, ...values }));
    });
  }

  /** @throws 404, 412, 422 */
  update(
    kind: Suspendable,
    by: SignedIn,
    at: CertificateAddress & { id: string },
    version: number,
    changes: SuspensionChanges,
  ): Promise<SuspensionView> {
    return this.within(kind, by, at, async (em, key) => {
      const change = () => ({ suspendedFrom: changes.from, suspendedTo: changes.to });
      return suspensionView(
        await editRecord(em, SUSPENSIONS, { where: { ...key, id: at.id }, version, change }),
      );
    });
  }

  /** @throws 404, 412 */
  remove(
    kind: Suspendable,
    by: SignedIn,
    at: CertificateAddress & { id: string },
    version: number,
  ): Promise<void> {
    return this.within(kind, by, at, (em, key) =>
      removeRecord(em, SUSPENSIONS, { where: { ...key, id: at.id }, version }),
    );
  }

  /** Runs `work` with the columns that tie a suspension to this member's certificate. @throws 404 */
  private within<T>(
    { entity, noun, parent }: Suspendable,
    { clubId, memberId: actorId }: SignedIn,
    { memberId, certificateId }: CertificateAddress,
    work: (
      em: EntityManager,
      key: { clubId: string } & Partial<Record<SuspensionParent, string>>,
    ) => Promise<T>,
  ): Promise<T> {
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, { entity, noun }, { clubId, memberId, id: certificateId });
        return work(em, { clubId, [parent]: certificateId });
      },
      { actorId },
    );
  }
}
