import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { clubToday } from '../../clubs/club-time.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr, isOwn, OFFICERS, READERS } from '../../members/members.access.js';
import { assertTaughtOr, teaches } from '../../members/students.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { decodeCursor, pageOf } from '../../platform/http/pages.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { CAUTION } from '../../rules/index.js';
import { addPractice, listRecords, PRACTICE, viewsOf } from './practice-rows.js';
import type { PracticeRecord } from './practice-record.entity.js';
import type {
  PracticeCorrectionDto,
  PracticePage,
  PracticeQuery,
  PracticeRecordDto,
  PracticeRecordView,
} from './practice.dto.js';
import './practice.problems.js';

/** What members practised, by themselves or before an instructor. Records are never edited. */
@Injectable()
export class PracticeService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /**
   * A member's records, newest flight first: all for the member and who teaches them, what an instructor signed for officers.
   * @throws 403, 404
   */
  list(person: SignedIn, memberId: string, query: PracticeQuery): Promise<PracticePage> {
    assertOwnOr(person, memberId, READERS);
    const { clubId } = person;
    const after = decodeCursor(query.cursor);
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        const now = this.clock.now();
        await assertTaughtOr(em, person, memberId, { roles: OFFICERS, now });
        const all = isOwn(person, memberId) || (await teaches(em, person, memberId, now));
        const of = { clubId, memberId, corrected: query.corrected ?? false, signedOnly: !all };
        const page = pageOf(
          await listRecords(em, of, after, query.limit + 1),
          query.limit,
          ({ flownOn }) => flownOn,
        );
        return { ...page, items: await viewsOf(em, page.items), caution: CAUTION };
      },
      { readOnly: true },
    );
  }

  /** One's own practice, or, by an instructor, what was seen of somebody else's. @throws 403, 404, 422 */
  add(by: SignedIn, memberId: string, draft: PracticeRecordDto): Promise<PracticeRecordView> {
    assertOwnOr(by, memberId, ['instructor']);
    return this.write(by, memberId, async (em) =>
      addPractice(em, draft, {
        ...{ clubId: by.clubId, memberId, recordedBy: by.memberId, today: await this.today(em, by) },
        instructorId: isOwn(by, memberId) ? null : by.memberId,
      }),
    );
  }

  /**
   * Puts another record in a record's place, or withdraws it. What an instructor signed is replaced by an instructor and
   * withdrawn by whoever signed it or an officer; one's own is one's own to correct.
   * @throws 403, 404, 409, 422
   */
  correct(
    by: SignedIn,
    memberId: string,
    id: string,
    { because, record }: PracticeCorrectionDto,
  ): Promise<PracticeRecordView> {
    assertOwnOr(by, memberId, READERS);
    return this.write(by, memberId, async (em) => {
      const row = await findRecord(em, PRACTICE, { clubId: by.clubId, memberId, id });
      assertMayCorrect(by, row, record ?? null);
      const correction = { corrects: id, because };
      const who = { clubId: by.clubId, memberId, recordedBy: by.memberId };
      if (!record) {
        const { id: _id, recordedAt: _at, trackSha256: _sha, trackEvent: _event, ...kept } = row;
        return addRecord(em, PRACTICE, { ...kept, ...who, ...correction, withdraws: true });
      }
      const instructorId = row.seenBy === 'instructor' ? by.memberId : null;
      return addPractice(em, record, {
        ...{ ...who, correction, instructorId, today: await this.today(em, by), at: 'record.' },
      });
    });
  }

  private write(
    by: SignedIn,
    memberId: string,
    work: (em: EntityManager) => Promise<PracticeRecord>,
  ): Promise<PracticeRecordView> {
    const { clubId } = by;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        return (await viewsOf(em, [await work(em)]))[0]!;
      },
      { actorId: by.memberId },
    );
  }

  private today(em: EntityManager, { clubId }: SignedIn): Promise<string> {
    return clubToday(em, clubId, this.clock.now());
  }
}

function assertMayCorrect(by: SignedIn, row: PracticeRecord, record: PracticeRecordDto | null): void {
  if (row.withdraws) throw new ProblemException('practice-corrected-already');
  const own = isOwn(by, row.memberId);
  if (row.seenBy === 'self') {
    if (own) return;
    throw new ProblemException('not-yours', { detail: 'What a member recorded is the member’s to correct.' });
  }
  const may = record
    ? hasAnyRole(by, 'instructor')
    : row.instructorId === by.memberId || hasAnyRole(by, ...OFFICERS);
  if (own || !may) throw new ProblemException('practice-signed');
}
