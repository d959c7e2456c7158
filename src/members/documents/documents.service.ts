import { Injectable } from '@nestjs/common';
import { sha256 as digestOf } from '../../platform/sha256.js';
import { type EntityManager, IsNull, Not } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { findRecord, notThere, pageOfRecords, type Where } from '../../platform/database/records.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { type Page, pageOf, type PageQuery, readCursor } from '../../platform/http/pages.js';
import { requireVersion } from '../../platform/http/versions.js';
import { show } from '../../platform/http/views.js';
import { newId } from '../../platform/ids.js';
import { cleanImage } from '../../platform/images/image.js';
import { cleanPdf } from '../../platform/images/pdf.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { MEMBERS } from '../member-rows.js';
import { assertOwnOr, OFFICERS } from '../members.access.js';
import { assertTaughtOr } from '../students.js';
import { keepersOf } from '../papers/papers.service.js';
import { DOCUMENT_KINDS, kindOf } from './document-kinds.js';
import { DocumentView, type UnverifiedView } from './document.dto.js';
import { type DocumentType, PaperDocument } from './document.entity.js';
import { documentMissing, documentUnreadable } from './document.problems.js';

/** Documents never change. */
const ONLY_VERSION = 1;
const DOCUMENTS = { entity: PaperDocument, noun: 'document' };

/** Where a document lies. */
export interface DocumentAddress {
  memberId: string;
  id: string;
}

/**
 * Scans of papers: for the member, for officers, and with endorsements for the member's instructors, who may verify those. Each
 * reading is noted in the audit log.
 */
@Injectable()
export class DocumentsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** A member's documents, newest first; an instructor is shown those of their students' endorsements. @throws 403, 404 */
  list(by: SignedIn, memberId: string, query: PageQuery): Promise<Page<DocumentView>> {
    assertOwnOr(by, memberId, ['instructor', ...OFFICERS]);
    const { clubId } = by;
    const all = by.memberId === memberId || hasAnyRole(by, ...OFFICERS);
    const work = async (em: EntityManager) => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      await assertTaughtOr(em, by, memberId, { roles: OFFICERS, now: this.clock.now() });
      const where = { clubId, memberId, ...(all ? {} : { endorsementId: Not(IsNull()) }) };
      const page = await pageOfRecords(em, DOCUMENTS, where, query, true);
      return { ...page, items: page.items.map(viewOf) };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Keeps a scan without what the camera noted. The same once more is the one already there. @throws 400, 403, 404, 422 */
  async add(
    by: SignedIn,
    at: { memberId: string; kind: string; paperId: string },
    content: Buffer | undefined,
  ): Promise<DocumentView> {
    const of = DOCUMENT_KINDS.find(({ kind }) => kind.path === at.kind);
    if (!of) throw notThere('kind of paper');
    const { clubId } = by;
    const { memberId, paperId } = at;
    assertOwnOr(by, memberId, keepersOf(of.kind));
    const find = (em: EntityManager) =>
      findRecord(em, of.kind, { clubId, memberId, id: paperId } as Where<{
        clubId: string;
        id: string;
      }> as never);
    // Before the document is read: whoever may not add one, or where there is nothing to add to, is told that.
    await this.db.run(clubId, find, { readOnly: true });
    if (content === undefined || content.length === 0) throw documentMissing();
    const clean = await cleaned(content);
    if (!clean) throw documentUnreadable();
    const work = async (em: EntityManager) => {
      await find(em);
      const sha256 = digestOf(clean.bytes);
      const same = await em.findOneBy(PaperDocument, { clubId, paperId, sha256 });
      if (same) return viewOf(same);
      const id = newId();
      await em.query(
        `INSERT INTO documents (club_id, id, member_id, ${of.column}, media_type, size_bytes, sha256, content, added_by)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
        [
          clubId,
          id,
          memberId,
          paperId,
          clean.mediaType,
          clean.bytes.length,
          sha256,
          clean.bytes,
          by.memberId,
        ],
      );
      return viewOf(await findRecord(em, DOCUMENTS, { clubId, id }));
    };
    return this.db.run(clubId, work, { actorId: by.memberId });
  }

  /** The scan, and a note of who read it. @throws 403, 404 */
  read(by: SignedIn, at: DocumentAddress): Promise<{ document: DocumentView; content: Buffer }> {
    return this.within(by, at, async (em, document) => {
      const { clubId } = by;
      const [row]: { content: Buffer }[] = await em.query(
        'SELECT content FROM documents WHERE club_id = $1 AND id = $2',
        [clubId, at.id],
      );
      await em.query(
        `INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after)
         VALUES ($1, $2, 'read', 'documents', $3, $4)`,
        [clubId, by.memberId, at.id, JSON.stringify({ member_id: at.memberId, paper_id: document.paperId })],
      );
      return { document: viewOf(document), content: row!.content };
    });
  }

  /** Deletes a document: an officer any, the member one of a paper that nobody has verified. @throws 403, 404 */
  remove(by: SignedIn, at: DocumentAddress, version: number): Promise<void> {
    assertOwnOr(by, at.memberId, OFFICERS);
    return this.within(by, at, async (em, document) => {
      const { clubId } = by;
      requireVersion(ONLY_VERSION, version);
      const { kind } = kindOf(document);
      const paper = await em.findOneByOrFail(kind.entity, { clubId, id: document.paperId });
      if (paper.verifiedBy !== null && !hasAnyRole(by, ...OFFICERS))
        throw new ProblemException('verified-paper', {
          detail: 'An officer has verified this paper, so only an officer deletes its documents. Ask one.',
        });
      await em.delete(PaperDocument, { clubId, id: at.id });
    });
  }

  /** Papers of all members that nobody has verified, those entered first coming first. */
  unverified({ clubId }: SignedIn, query: PageQuery): Promise<Page<UnverifiedView>> {
    const after = readCursor(query.cursor);
    const each = DOCUMENT_KINDS.map(
      ({ kind, table }) => `SELECT '${kind.path}' AS kind, p.id, p.member_id, m.name, p.recorded_at
         FROM ${table} p JOIN members m ON m.club_id = p.club_id AND m.id = p.member_id
        WHERE p.club_id = $1 AND p.verified_by IS NULL AND ($2::uuid IS NULL OR p.id > $2)`,
    ).join(' UNION ALL ');
    const work = async (em: EntityManager) =>
      pageOf<UnverifiedView>(
        await em.query(
          `SELECT u.kind, u.id, u.member_id AS "memberId", u.name AS "memberName",
                  (SELECT count(*)::int FROM documents d WHERE d.club_id = $1 AND d.paper_id = u.id) AS documents
             FROM (${each}) u ORDER BY u.id LIMIT $3`,
          [clubId, after, query.limit + 1],
        ),
        query.limit,
      );
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Finds the document for somebody who may read it. A document that is not there is told to those alone who may see all. */
  private within<T>(
    by: SignedIn,
    { memberId, id }: DocumentAddress,
    work: (em: EntityManager, document: PaperDocument) => Promise<T>,
  ): Promise<T> {
    assertOwnOr(by, memberId, ['instructor', ...OFFICERS]);
    const { clubId } = by;
    return this.db.run(
      clubId,
      async (em) => {
        const document = await em.findOneBy(PaperDocument, { clubId, memberId, id });
        assertOwnOr(by, memberId, document === null ? OFFICERS : keepersOf(kindOf(document).kind));
        await assertTaughtOr(em, by, memberId, { roles: OFFICERS, now: this.clock.now() });
        if (document === null) throw notThere('document');
        return work(em, document);
      },
      { actorId: by.memberId },
    );
  }
}

/** A scan as it is kept; null for what is neither a picture nor a PDF. */
async function cleaned(content: Buffer): Promise<{ mediaType: DocumentType; bytes: Buffer } | null> {
  const image = cleanImage(content);
  if (image) return image;
  const bytes = await cleanPdf(content);
  return bytes && { mediaType: 'application/pdf', bytes };
}

const viewOf = (document: PaperDocument): DocumentView =>
  show(DocumentView, document, { kind: kindOf(document).kind.path, rowVersion: ONLY_VERSION });
