import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { assertOwnOr, OFFICERS, READERS } from '../members/members.access.js';
import { assertTaughtOr } from '../members/students.js';
import { MEMBERS } from '../members/member-rows.js';
import { Clock } from '../platform/clock.js';
import { addRecord, findRecord, writeRecord } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import type { Page } from '../platform/http/pages.js';
import { requireVersion } from '../platform/http/versions.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { clubToday } from '../clubs/club-time.js';
import type { LogEntryChanges, LogEntryDto } from './log.dto.js';
import { checked, placesOf } from './log-checked.js';
import { fileEntries, type FileEntry } from './log-export.js';
import { listChecked, type Owner } from './log-list.js';
import type { CheckedEntryView, LogQuery } from './log-list.dto.js';
import { LogEntry } from './log-entry.entity.js';
import { settle } from './log-rows.js';
import { totalsOf } from './log-totals.js';
import type { LogTotalsView } from './log-totals.dto.js';

const ENTRIES = { entity: LogEntry, noun: 'log entry' };

/** Members' logs: written by the member, corrected by an administrator where needed, never deleted. */
@Injectable()
export class LogService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A member's entries with their checks, newest flight first. @throws 403, 404 */
  list(person: SignedIn, memberId: string, query: LogQuery): Promise<Page<CheckedEntryView>> {
    return this.readOf(person, memberId, (em, of) => listChecked(em, of, query));
  }

  /** Hours and landings of a member up to a day; today unless given. @throws 403, 404 */
  totals(person: SignedIn, memberId: string, on?: string): Promise<LogTotalsView> {
    return this.readOf(person, memberId, async (em, of) =>
      totalsOf(em, of, on ?? (await clubToday(em, of.clubId, this.clock.now()))),
    );
  }

  /** Every entry that counts, by the columns of a log file, oldest first. @throws 403, 404 */
  file(person: SignedIn, memberId: string): Promise<FileEntry[]> {
    return this.readOf(person, memberId, fileEntries);
  }

  /** @throws 403, 404, 422 */
  create(by: SignedIn, memberId: string, draft: LogEntryDto): Promise<CheckedEntryView> {
    assertOwnOr(by, memberId, ['administrator']);
    const { clubId } = by;
    return this.write(by, async (em) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      const values = await settle(em, clubId, draft, this.clock.now());
      return shown(em, await addRecord(em, ENTRIES, { ...values, clubId, memberId }));
    });
  }

  /** @throws 403, 404, 409 when void, 412, 422 */
  update(
    by: SignedIn,
    memberId: string,
    id: string,
    version: number,
    changes: LogEntryChanges,
  ): Promise<CheckedEntryView> {
    assertOwnOr(by, memberId, ['administrator']);
    return this.write(by, async (em) => {
      const row = await this.read(em, by, memberId, id, version);
      const values = await settle(em, by.clubId, changes, this.clock.now(), row);
      return shown(em, await writeRecord(em, ENTRIES, row, values));
    });
  }

  /** Takes an entry out of every count; it stays on record. @throws 403, 404, 409 when void already, 412 */
  void(by: SignedIn, memberId: string, id: string, version: number): Promise<CheckedEntryView> {
    assertOwnOr(by, memberId, ['administrator']);
    return this.write(by, async (em) => {
      const row = await this.read(em, by, memberId, id, version);
      return shown(em, await writeRecord(em, ENTRIES, row, { voidedAt: this.clock.now() }));
    });
  }

  /** Reads somebody's log, for themselves or who may read it. @throws 403, 404 */
  private readOf<T>(
    person: SignedIn,
    memberId: string,
    work: (em: EntityManager, of: Owner) => Promise<T>,
  ): Promise<T> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now: this.clock.now() });
        return work(em, { clubId, memberId });
      },
      { readOnly: true },
    );
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

const shown = async (em: EntityManager, row: LogEntry): Promise<CheckedEntryView> =>
  checked(row, await placesOf(em, row.clubId));
