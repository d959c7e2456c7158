import { Injectable, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { clubZone } from '../clubs/club-time.js';
import { Clock } from '../platform/clock.js';
import { forgetOldKeys } from '../platform/database/old-keys.js';
import { forgetOldMarks } from '../platform/database/old-marks.js';
import { TenantDb } from '../platform/database/tenant.js';
import { ClubRounds, type Rounds } from '../platform/queue/club-rounds.js';
import { Deliveries } from './outbox/deliver.js';
import { noteDue } from './outbox/post-notice.js';
import { Settling } from './outbox/settle.js';
import { nextClock } from './preferences/when.js';
import { LapseReminders } from './reminders/lapse-reminders.js';
import { MaintenanceWarnings } from './reminders/maintenance-warnings.js';

/** How often clubs are looked for that have something due. Notices gather for minutes, so nobody waits for this. */
const SWEEP_MS = 15_000;
/** When the day's reminders are worked out, on the club's clock; mail of them keeps quiet hours all the same. */
const REMIND_AT = '05:00';
/** How long open pages may ask what they missed. */
export const LIVE_KEPT = "interval '1 hour'";

/**
 * Does what is due of a club's notices: reminders once a day, notices that have gathered, mail. `notice_due` says when to
 * look; a row goes once what it stands for is done, so that nothing is lost with the process that was at it. Old Idempotency-Keys
 * go with the daily round.
 */
@Injectable()
export class NoticesWorker implements OnApplicationBootstrap, OnApplicationShutdown {
  private rounds: Rounds | null = null;

  constructor(
    private readonly clock: Clock,
    private readonly db: TenantDb,
    private readonly clubs: ClubRounds,
    private readonly settling: Settling,
    private readonly deliveries: Deliveries,
    private readonly lapses: LapseReminders,
    private readonly maintenance: MaintenanceWarnings,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    this.rounds = await this.clubs.begin({
      queue: 'notices',
      work: (clubId) => this.workOff(clubId),
      due: (em) =>
        em.query('SELECT DISTINCT club_id AS id FROM notice_due WHERE due_at <= $1::timestamptz', [
          this.clock.now(),
        ]),
      sweepMs: SWEEP_MS,
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.rounds?.stop();
  }

  /** Everything that is due of a club. What fails comes again. */
  async workOff(clubId: string): Promise<void> {
    const now = this.clock.now();
    const due: { id: string; work: string }[] = await this.db.run(
      clubId,
      (em) =>
        em.query(
          'SELECT id, work FROM notice_due WHERE club_id = bellcrank_club() AND due_at <= $1::timestamptz',
          [now],
        ),
      { readOnly: true },
    );
    if (due.length === 0) return;
    const remind = due.some(({ work }) => work === 'reminders');
    if (remind) {
      await this.lapses.remind(clubId);
      await this.maintenance.warn(clubId);
    }
    await this.settling.settleDue(clubId);
    await this.deliveries.sendDue(clubId);
    await this.db.run(clubId, async (em) => {
      const [, gone]: [unknown, number] = await em.query(
        'DELETE FROM notice_due WHERE club_id = bellcrank_club() AND id = ANY ($1::bigint[])',
        [due.map(({ id }) => id)],
      );
      if (remind && gone > 0) {
        await noteDue(em, 'reminders', nextClock(now, await clubZone(em, clubId), REMIND_AT));
        await forgetOldKeys(em);
        await forgetOldMarks(em);
      }
      await em.query(
        `DELETE FROM live_changes WHERE club_id = bellcrank_club() AND recorded_at < now() - ${LIVE_KEPT}`,
      );
    });
  }
}
