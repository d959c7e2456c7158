import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { assertOwnOr, READERS } from '../members/members.access.js';
import { MEMBERS } from '../members/member-rows.js';
import { Clock } from '../platform/clock.js';
import { addRecord, findRecord, writeRecord } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import { decodeCursor, type Page, pageOf } from '../platform/http/pages.js';
import { requireVersion } from '../platform/http/versions.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { LogEntryChanges, LogEntryDto, LogEntryView, LogQuery } from './log.dto.js';
import { LogEntry } from './log-entry.entity.js';
import { listEntries, settle, viewOf } from './log-rows.js';
import { type LogTotalsView, totalsOf } from './log-totals.js';

const ENTRIES = { entity: LogEntry, noun: 'log entry' };

/** Members' logs: written by the member, corrected by an administrator where needed, never deleted. */
@Injectable()
export class LogService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A member's entries, newest flight first. @throws 403, 404 */
  list(person: SignedIn, memberId: string, query: LogQuery): Promise<Page<LogEntryView>> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    const after = decodeCursor(query.cursor);
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        const rows = await listEntries(
          em,
          { clubId, memberId, voided: query.voided ?? false },
          after,
          query.limit + 1,
        );
        const page = pageOf(rows, query.limit, ({ departedAt }) => departedAt);
        return { ...page, items: page.items.map(viewOf) };
      },
      { readOnly: true },
    );
  }

  /** Hours and landings of a member. @throws 403, 404 */
  totals(person: SignedIn, memberId: string): Promise<LogTotalsView> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        return totalsOf(em, clubId, memberId, this.clock.now());
      },
      { readOnly: true },
    );
  }

  /** @throws 403, 404, 422 */
  create(by: SignedIn, memberId: string, draft: LogEntryDto): Promise<LogEntryView> {
    assertOwnOr(by, memberId, ['administrator']);
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      const values = await settle(em, clubId, draft, this.clock.now());
      return viewOf(await addRecord(em, ENTRIES, { ...values, clubId, memberId }));
    });
  }

  /** @throws 403, 404, 409 when void, 412, 422 */
  update(
    by: SignedIn,
    memberId: string,
    id: string,
    version: number,
    changes: LogEntryChanges,
  ): Promise<LogEntryView> {
    assertOwnOr(by, memberId, ['administrator']);
    return this.write(by, async (em) => {
      const row = await this.read(em, by, memberId, id, version);
      const values = await settle(em, by.clubId, changes, this.clock.now(), row);
      return viewOf(await writeRecord(em, ENTRIES, row, values));
    });
  }

  /** Takes an entry out of every count; it stays on record. @throws 403, 404, 409 when void already, 412 */
  void(by: SignedIn, memberId: string, id: string, version: number): Promise<LogEntryView> {
    assertOwnOr(by, memberId, ['administrator']);
    return this.write(by, async (em) => {
      const row = await this.read(em, by, memberId, id, version);
      return viewOf(await writeRecord(em, ENTRIES, row, { voidedAt: this.clock.now() }));
    });
  }

  private async read(
    em: EntityManager,
    { clubId }: SignedIn,
    memberId: string,
    id: string,
    version: number,
  ): Promise<LogEntry> {
    const row = await findRecord(em, ENTRIES, { clubId, memberId, id }, { lock: true });
    requireVersion(row.rowVersion, version);
    if (row.voidedAt !== null) throw new ProblemException('log-entry-void');
    return row;
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.tenants.run(by.clubId, work, { actorId: by.memberId });
  }
}
