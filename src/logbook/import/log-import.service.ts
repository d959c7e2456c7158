import { Injectable, Logger } from '@nestjs/common';
import type { Response } from 'express';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { answerOnce, claimKey, type StoredAnswer } from '../../bookings/idempotency.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr, OFFICERS, READERS } from '../../members/members.access.js';
import { assertTaughtOr } from '../../members/students.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { LineStream } from '../../platform/http/line-stream.js';
import type { Page, PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { problemDocument } from '../../platform/problems/problem-document.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { sha256 } from '../../platform/sha256.js';
import { digestOf as canonicalDigestOf, type Instant } from '../../rules/index.js';
import { formOf, type LogForm } from './log-import-form.js';
import { LogImport } from './log-import.entity.js';
import { fileMissing, fileTooSlow, fileUnreadable, notReady } from './log-import.problems.js';
import { gatherKnown, rememberedChoices, writeEntries } from './log-import-rows.js';
import { LogImportView } from './log-import-view.dto.js';
import { isReady, previewView } from './log-import-views.js';
import { LogFileTooSlow, readApart } from './read-apart.js';
import type { Known, LogFile, LogFileReading, LogFileTask, Progress } from './read-log.js';

const IMPORTS = { entity: LogImport, noun: 'import' };
/** Twenty thousand entries take more than a statement usually may on a slow machine. */
const STATEMENT_TIMEOUT_MS = 60_000;

const viewOf = (row: LogImport): LogImportView => show(LogImportView, row);

interface WasRead {
  reading: LogFileReading;
  fileSha256: string;
  known: Known;
  /** Of the file, the choices and what would be written. */
  digest: string;
}

/** Takes files of flights over into members' logs: looked at first, then whole or not at all. */
@Injectable()
export class LogImportService {
  private readonly logger = new Logger(LogImportService.name);

  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /**
   * What taking the file over would do, as lines: how far it is, and at last the preview. Nothing is written.
   * @throws 400, 403, 404, 413, 422 before the first line; an error on the way becomes the last one
   */
  async preview(by: SignedIn, memberId: string, sent: LogForm, response: Response): Promise<void> {
    assertOwnOr(by, memberId, ['administrator']);
    const lines = new LineStream(response);
    let written: Promise<unknown> | null = null;
    // The file as a whole is known to be readable once the first row is begun: from there on there are lines.
    const tell = (progress: Progress): void => {
      if (written === null) lines.begin();
      written = (written ?? Promise.resolve()).then(() => lines.write(progress));
    };
    try {
      const { reading, digest } = await this.read(by, memberId, sent, tell);
      await written;
      await lines.write(previewView(reading, digest));
    } catch (error) {
      if (written === null) throw error;
      await written;
      await lines.write({ error: this.problemOf(error, response) });
    }
    lines.end();
  }

  /**
   * Takes it over as its preview showed, in one transaction, or gives the stored answer of an earlier request with the same key.
   * @throws 400, 403, 404, 409 when it would do something else by now, 413, 422 naming what is in the way
   */
  async take(by: SignedIn, key: string, memberId: string, sent: LogForm): Promise<StoredAnswer> {
    assertOwnOr(by, memberId, ['administrator']);
    const { clubId } = by;
    const form = await formOf(sent);
    const request = { logImport: memberId, ...form, file: form.file && sha256(form.file) };
    // Imports for one member queue here, so that a flight is not written twice.
    const queue = (em: EntityManager): Promise<unknown> =>
      findRecord(em, MEMBERS, { clubId, id: memberId }, { lock: true });
    const claim = async (em: EntityManager): Promise<StoredAnswer | null> => {
      await queue(em);
      return claimKey(em, by.memberId, key, request);
    };
    const earlier = await this.tenants.run(clubId, claim, { actorId: by.memberId, rehearse: true });
    if (earlier) return earlier;
    const read = await this.read(by, memberId, sent, () => undefined);
    const { reading } = read;
    if (!isReady(reading))
      throw notReady({ questions: reading.questions.map(({ says }) => says), bad: reading.bad });
    if (form.preview !== read.digest) throw new ProblemException('log-preview-stale', { field: 'preview' });
    const work = async (em: EntityManager): Promise<StoredAnswer> => {
      await queue(em);
      return answerOnce(em, { memberId: by.memberId, key, request }, async () => {
        const now = this.clock.now();
        const known = await gatherKnown(em, { clubId, memberId, now });
        if (digestOf(known) !== digestOf(read.known))
          throw new ProblemException('log-preview-stale', { field: 'preview' });
        return { status: 201, body: viewOf(await this.write(em, by, memberId, read)) };
      });
    };
    return this.tenants.run(clubId, work, { actorId: by.memberId, statementTimeoutMs: STATEMENT_TIMEOUT_MS });
  }

  /** A member's imports, newest first. @throws 403, 404 */
  list(person: SignedIn, memberId: string, query: PageQuery): Promise<Page<LogImportView>> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now: this.clock.now() });
        const page = await pageOfRecords(em, IMPORTS, { clubId, memberId }, query, true);
        return { ...page, items: page.items.map(viewOf) };
      },
      { readOnly: true },
    );
  }

  /** Takes every entry of an import out of the log; they stay on record, void. @throws 403, 404, 409 */
  takeBack(by: SignedIn, memberId: string, importId: string): Promise<LogImportView> {
    assertOwnOr(by, memberId, ['administrator']);
    const { clubId } = by;
    const work = async (em: EntityManager): Promise<LogImportView> => {
      const where = { clubId, memberId, id: importId };
      const row = await findRecord(em, IMPORTS, where, { lock: true });
      if (row.takenBackAt !== null) throw new ProblemException('log-import-taken-back');
      const [rests]: unknown[] = await em.query(
        `SELECT 1 FROM practice_records p JOIN log_entries e ON e.club_id = p.club_id AND e.id = p.log_entry_id
          WHERE e.club_id = $1 AND e.import_id = $2 AND e.voided_at IS NULL
            AND NOT EXISTS (SELECT 1 FROM practice_records c WHERE c.club_id = p.club_id AND c.corrects = p.id) LIMIT 1`,
        [clubId, importId],
      );
      if (rests) throw new ProblemException('log-import-in-use');
      const now = this.clock.now();
      await em.query(
        'UPDATE log_entries SET voided_at = $3 WHERE club_id = $1 AND import_id = $2 AND voided_at IS NULL',
        [clubId, importId, now],
      );
      await em.update(LogImport, where, { takenBackAt: now, takenBackBy: by.memberId });
      return viewOf(await findRecord(em, IMPORTS, where));
    };
    return this.tenants.run(clubId, work, { actorId: by.memberId, statementTimeoutMs: STATEMENT_TIMEOUT_MS });
  }

  private async read(
    by: SignedIn,
    memberId: string,
    sent: LogForm,
    tell: (progress: Progress) => void,
  ): Promise<WasRead> {
    const { clubId } = by;
    const now = this.clock.now();
    const { known, remembered } = await this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        return {
          known: await gatherKnown(em, { clubId, memberId, now }),
          remembered: await rememberedChoices(em, { clubId, memberId }),
        };
      },
      { readOnly: true },
    );
    const { file, choices } = await formOf(sent);
    if (file === undefined || file.length === 0) throw fileMissing();
    const read = await readFile({ bytes: file, choices, remembered, known, now }, tell);
    if (!read.ok) throw fileUnreadable(read);
    const { reading } = read;
    const fileSha256 = sha256(file);
    // The choices come back from the client, with their keys in another order perhaps.
    const choicesDigest = canonicalDigestOf(JSON.parse(JSON.stringify(reading.choices)) as object);
    const digest = digestOf({ fileSha256, memberId, choicesDigest, drafts: reading.drafts });
    return { reading, fileSha256, known, digest };
  }

  private async write(
    em: EntityManager,
    by: SignedIn,
    memberId: string,
    { reading, fileSha256 }: WasRead,
  ): Promise<LogImport> {
    const { clubId } = by;
    const { drafts, bad, rows, sums, choices, headingsSha256 } = reading;
    const days = drafts.map(({ flownOn }) => flownOn).sort();
    const row = await addRecord(em, IMPORTS, {
      ...{ clubId, memberId, importedBy: by.memberId, fileSha256, headingsSha256, choices },
      ...{ fileRows: rows, entries: drafts.length, unreadableRows: bad.length },
      repeatedRows: rows - sums.length - bad.length - drafts.length,
      ...{ firstFlownOn: days[0]!, lastFlownOn: days.at(-1)! },
    });
    await writeEntries(em, { clubId, memberId, importId: row.id }, drafts);
    return row;
  }

  private problemOf(error: unknown, response: Response): object {
    const problem =
      error instanceof ProblemException ? error : new ProblemException('unexpected', { cause: error });
    const request = response.req as Response['req'] & { id?: unknown };
    const requestId = String(request.id ?? '');
    this.logger.error({ err: error, requestId, code: problem.code }, problem.title);
    return problemDocument(problem, { path: request.originalUrl.split('?')[0]!, requestId });
  }
}

const digestOf = (value: object): string => sha256(JSON.stringify(value));

const readFile = (
  task: LogFileTask & { now: Instant },
  tell: (progress: Progress) => void,
): Promise<LogFile> =>
  readApart(task, tell).catch((error: unknown) => {
    throw error instanceof LogFileTooSlow ? fileTooSlow() : error;
  });
