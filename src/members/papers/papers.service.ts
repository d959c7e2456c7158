import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole, type Role } from '../../accounts/roles.js';
import { Clock } from '../../platform/clock.js';
import {
  addRecord,
  findRecord,
  pageOfRecords,
  type Where,
  writeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { Page, PageQuery } from '../../platform/http/pages.js';
import { requireVersion } from '../../platform/http/versions.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { assertOwnOr, isOwn, OFFICERS, READERS } from '../members.access.js';
import { MEMBERS } from '../member-rows.js';
import { assertTaughtOr } from '../students.js';
import type { PaperHead } from './paper.dto.js';
import type { Paper } from './paper.entity.js';
import type { PaperKind, Writing } from './paper-kind.js';

/** Roles that may write papers of a kind for others, and verify them. */
export const keepersOf = (kind: { byInstructors?: boolean }): Role[] =>
  kind.byInstructors ? ['instructor', ...OFFICERS] : OFFICERS;

/** Members' papers of every kind: the member writes, an officer verifies, and an edit by the member undoes that. */
@Injectable()
export class PapersService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A member's papers of a kind, newest record first; for instructors, those of their students. @throws 403, 404 */
  list<R extends Paper, D extends object, V extends PaperHead>(
    kind: PaperKind<R, D, V>,
    person: SignedIn,
    memberId: string,
    query: PageQuery,
  ): Promise<Page<V>> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now: this.clock.now() });
        const page = await pageOfRecords(em, kind, { clubId, memberId } as Where<R>, query, true);
        return { ...page, items: await kind.views(em, page.items) };
      },
      { readOnly: true },
    );
  }

  /** A new paper; verified at once only when an instructor gives an endorsement. @throws 403, 404, 422 */
  create<R extends Paper, D extends object, V extends PaperHead>(
    kind: PaperKind<R, D, V>,
    by: SignedIn,
    memberId: string,
    draft: D,
  ): Promise<V> {
    assertOwnOr(by, memberId, keepersOf(kind));
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      const values = await this.complete(kind, em, { by, memberId, isNew: true }, kind.values(draft));
      const row = await addRecord(em, kind, { ...values, clubId, memberId } as Partial<R> & {
        clubId: string;
      });
      await kind.writeParts?.(em, row, draft);
      return viewOf(kind, em, row);
    });
  }

  /** Changes a paper. By its owner, it has to be verified again; by an officer, the officer stands for it. */
  edit<R extends Paper, D extends object, V extends PaperHead>(
    kind: PaperKind<R, D, V>,
    by: SignedIn,
    at: PaperAddress,
    version: number,
    changes: Partial<D>,
  ): Promise<V> {
    assertOwnOr(by, at.memberId, keepersOf(kind));
    return this.write(by, async (em) => {
      const row = await this.read(kind, em, by, at, version);
      const values = await this.complete(
        kind,
        em,
        { by, memberId: at.memberId, isNew: false },
        kind.values(changes),
      );
      const again = isOwn(by, at.memberId) || row.verifiedBy === null ? NOT_VERIFIED : this.stamp(by);
      const written = await writeRecord(em, kind, row, { ...again, ...values } as Partial<R>);
      await kind.writeParts?.(em, written, changes);
      return viewOf(kind, em, written);
    });
  }

  /** Says that somebody entitled has seen the original. @throws 403 `own-paper`, 404, 412 */
  verify<R extends Paper, D extends object, V extends PaperHead>(
    kind: PaperKind<R, D, V>,
    by: SignedIn,
    at: PaperAddress,
    version: number,
  ): Promise<V> {
    if (isOwn(by, at.memberId)) throw new ProblemException('own-paper');
    return this.write(by, async (em) => {
      const row = await this.read(kind, em, by, at, version);
      return viewOf(kind, em, await writeRecord(em, kind, row, this.stamp(by) as Partial<R>));
    });
  }

  /** Deletes a paper: an officer any, the member one that nobody has verified. @throws 403, 404, 412 */
  remove<R extends Paper, D extends object, V extends PaperHead>(
    kind: PaperKind<R, D, V>,
    by: SignedIn,
    at: PaperAddress,
    version: number,
  ): Promise<void> {
    assertOwnOr(by, at.memberId, OFFICERS);
    return this.write(by, async (em) => {
      const { clubId, id, verifiedBy } = await this.read(kind, em, by, at, version);
      if (verifiedBy !== null && !hasAnyRole(by, ...OFFICERS)) throw new ProblemException('verified-paper');
      await em.delete(kind.entity as new () => Paper, { clubId, id });
    });
  }

  private async read<R extends Paper>(
    kind: Pick<PaperKind<R>, 'entity' | 'noun'>,
    em: EntityManager,
    { clubId }: SignedIn,
    { memberId, id }: PaperAddress,
    version: number,
  ): Promise<R> {
    const row = await findRecord(em, kind, { clubId, memberId, id } as Where<R>, { lock: true });
    requireVersion(row.rowVersion, version);
    return row;
  }

  private async complete<R extends Paper, D extends object, V extends PaperHead>(
    kind: PaperKind<R, D, V>,
    em: EntityManager,
    writing: Omit<Writing, 'stamp'>,
    values: Partial<R>,
  ): Promise<Partial<R>> {
    const more = await kind.complete?.(em, { ...writing, stamp: this.stamp(writing.by) }, values);
    return { ...values, ...more };
  }

  private stamp(by: SignedIn): Pick<Paper, 'verifiedBy' | 'verifiedAt'> {
    return { verifiedBy: by.memberId, verifiedAt: this.clock.now() };
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.tenants.run(by.clubId, work, { actorId: by.memberId });
  }
}

/** Where a paper lies. */
export interface PaperAddress {
  memberId: string;
  id: string;
}

const NOT_VERIFIED = { verifiedBy: null, verifiedAt: null };

async function viewOf<R extends Paper, D extends object, V extends PaperHead>(
  kind: PaperKind<R, D, V>,
  em: EntityManager,
  row: R,
): Promise<V> {
  const [view] = await kind.views(em, [row]);
  return view!;
}
