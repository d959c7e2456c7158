import { Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { EntityManager } from 'typeorm';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { Clock } from '../../platform/clock.js';
import { instant } from '../../platform/database/instant.js';
import { notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery, pageOf, readCursor, UuidPipe } from '../../platform/http/index.js';
import { kindOf } from './kinds.js';
import { GivenUpMailPage, type GivenUpMailDto } from './mail.dto.js';
import { Mailer } from './mailer.js';
import { noteDue } from './post-notice.js';

const SELECT = `SELECT q.id, q.member_id AS "memberId", m.name AS "memberName", q.attempts, q.fault, ${instant('q.due_at')} AS "dueAt",
    (SELECT coalesce(jsonb_agg(DISTINCT n.kind), '[]') FROM notices n WHERE n.club_id = q.club_id AND n.mail_id = q.id) AS about
  FROM notice_mails q JOIN members m ON m.club_id = q.club_id AND m.id = q.member_id
  WHERE q.club_id = bellcrank_club() AND q.state = 'given-up'`;

/** Mail that was given up, for whoever can mend an address or a mail server. */
@ApiTags('notices')
@Controller('undelivered-mail')
@Roles('safety-officer', 'administrator')
export class MailController {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly mailer: Mailer,
  ) {}

  @Get()
  @ApiRoute({
    id: 'listUndeliveredMail',
    summary: 'Mail that did not go out and is not tried any more',
    answer: GivenUpMailPage,
    refuses: [403],
  })
  list(@CurrentUser() { clubId }: SignedIn, @Query() query: PageQuery): Promise<GivenUpMailPage> {
    const before = readCursor(query.cursor);
    const work = async (em: EntityManager): Promise<GivenUpMailPage> => {
      const rows: GivenUpMailDto[] = await em.query(
        `${SELECT} AND ($1::uuid IS NULL OR q.id < $1) ORDER BY q.id DESC LIMIT $2`,
        [before, query.limit + 1],
      );
      const page = pageOf(rows, query.limit);
      const items = page.items.map((row) => ({
        ...row,
        about: row.about.map((kind) => kindOf(kind)?.title ?? kind),
      }));
      return { ...page, items, mailGoesOut: this.mailer.configured };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  @Post(':mailId/retry')
  @ApiRoute({
    id: 'retryMail',
    summary: 'Try to deliver it once more, from now',
    answer: null,
    refuses: [403, 404],
  })
  async retry(
    @CurrentUser() { clubId, memberId }: SignedIn,
    @Param('mailId', UuidPipe) id: string,
  ): Promise<void> {
    await this.db.run(
      clubId,
      async (em) => {
        const now = this.clock.now();
        // Not as if it had never been tried: a digest that is waiting takes in what comes, and there is one of them.
        const [, found]: [unknown, number] = await em.query(
          `UPDATE notice_mails SET state = 'waiting', attempts = 1, due_at = $2::timestamptz
            WHERE club_id = bellcrank_club() AND id = $1 AND (state = 'given-up' OR state = 'waiting' AND attempts > 0)`,
          [id, now],
        );
        if (found === 0) throw notThere('mail that was given up');
        await noteDue(em, 'notices', now);
      },
      { actorId: memberId },
    );
  }
}
