import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { JURISDICTIONS } from '../clubs/club.dto.js';
import { Clock } from '../platform/clock.js';
import { TenantDb } from '../platform/database/tenant.js';
import { ClubRounds, type Rounds } from '../platform/queue/club-rounds.js';
import { lawDigest } from './judge-again.js';
import { rejudgeClub } from './rejudge.js';

/** How often clubs are looked for whose changes nobody announced: a listener that was cut off, answers that come due. */
const SWEEP_MS = 15_000;
/** Facts often change several at a time. */
const GATHER_MS = 150;

/**
 * Keeps standing answers up to date. The database announces changed facts; each announcement becomes a job of the
 * club's, done by one replica at a time. Announcements may be lost, changes are not: they stay in their table until
 * they are taken up, and are swept for.
 */
@Injectable()
export class StandingWorker implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(StandingWorker.name);
  private rounds: Rounds | null = null;

  constructor(
    private readonly clock: Clock,
    private readonly db: TenantDb,
    private readonly clubs: ClubRounds,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    this.rounds = await this.clubs.begin({
      queue: 'standing',
      work: (clubId) => this.bringUpToDate(clubId),
      // Changes to take up, answers that come due, or answers judged by a law of before.
      due: (em) =>
        em.query(
          `SELECT club_id AS id FROM fact_changes UNION
           SELECT club_id FROM standing_clubs WHERE due_at <= $1::timestamptz OR NOT law = ANY ($2::text[])`,
          [this.clock.now(), JURISDICTIONS.map(lawDigest)],
        ),
      sweepMs: SWEEP_MS,
      announced: { channel: 'bellcrank_facts', gatherMs: GATHER_MS },
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.rounds?.stop();
  }

  private async bringUpToDate(clubId: string): Promise<void> {
    const { judged, changed, facts } = await rejudgeClub(this.db, clubId, () => this.clock.now());
    if (judged > 0)
      this.logger.log(
        `${facts} changed facts: ${judged} booked flights judged again, ${changed} answered otherwise.`,
      );
  }
}
