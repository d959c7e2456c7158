import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import pg from 'pg';
import { DataSource } from 'typeorm';
import { JURISDICTIONS } from '../clubs/club.dto.js';
import { Clock } from '../platform/clock.js';
import { AppConfig } from '../platform/config.js';
import { TenantDb } from '../platform/database/tenant.js';
import { JobQueue } from '../platform/queue/job-queue.js';
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
  private readonly announced = new Map<string, NodeJS.Timeout>();
  private listener: pg.Client | null = null;
  private sweeping: NodeJS.Timeout | undefined;
  private look: () => void = () => undefined;
  private stopped = false;

  constructor(
    private readonly config: AppConfig,
    private readonly clock: Clock,
    private readonly db: TenantDb,
    private readonly queue: JobQueue,
    private readonly dataSource: DataSource,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    if (!this.config.backgroundWork) return;
    this.look = await this.queue.work('standing', ({ clubId }) => this.bringUpToDate(clubId));
    await this.listen();
    this.sweeping = setInterval(() => void this.sweep(), SWEEP_MS);
    await this.sweep();
  }

  async onApplicationShutdown(): Promise<void> {
    this.stopped = true;
    clearInterval(this.sweeping);
    for (const timer of this.announced.values()) clearTimeout(timer);
    await this.listener?.end().catch(() => undefined);
  }

  private async bringUpToDate(clubId: string): Promise<void> {
    const { judged, changed, facts } = await rejudgeClub(this.db, clubId, () => this.clock.now());
    if (judged > 0)
      this.logger.log(
        `${facts} changed facts: ${judged} booked flights judged again, ${changed} answered otherwise.`,
      );
  }

  /** A connection of its own, for announcements; behind a pooler in transaction mode there are none, and the sweep does. */
  private async listen(): Promise<void> {
    const { url } = this.dataSource.options as { url: string };
    const client = new pg.Client({ connectionString: url, application_name: 'bellcrank changes' });
    const lost = (): void => {
      if (this.listener !== client || this.stopped) return;
      this.listener = null;
      void client.end().catch(() => undefined);
    };
    client.on('error', lost);
    client.on('end', lost);
    client.on('notification', ({ payload }) => payload && this.announce(payload));
    try {
      await client.connect();
      await client.query('LISTEN bellcrank_facts');
      this.listener = client;
    } catch (error) {
      this.logger.warn(
        `Changes of facts are not heard of at once (${(error as Error).message}); they are swept for.`,
      );
      await client.end().catch(() => undefined);
    }
  }

  private announce(clubId: string): void {
    if (this.announced.has(clubId)) return;
    const timer = setTimeout(() => {
      this.announced.delete(clubId);
      void this.enqueue(clubId);
    }, GATHER_MS);
    this.announced.set(clubId, timer);
  }

  private async enqueue(clubId: string): Promise<void> {
    try {
      await this.queue.send('standing', { clubId });
      this.look();
    } catch (error) {
      // The changes stay where they are, and the next sweep finds them.
      this.logger.warn(`A club's flights could not be put up for judging (${(error as Error).message}).`);
    }
  }

  /** Clubs with changes to take up, answers that come due, or answers judged by a law of before. */
  private async sweep(): Promise<void> {
    try {
      if (this.listener === null) await this.listen();
      const clubs = await this.db.runWithoutClub(
        null,
        (em): Promise<{ id: string }[]> =>
          em.query(
            `SELECT club_id AS id FROM fact_changes UNION
             SELECT club_id FROM standing_clubs WHERE due_at <= $1::timestamptz OR NOT law = ANY ($2::text[])`,
            [this.clock.now(), JURISDICTIONS.map(lawDigest)],
          ),
        { readOnly: true },
      );
      for (const { id } of clubs) await this.enqueue(id);
    } catch (error) {
      this.logger.warn(`Standing answers could not be looked through (${(error as Error).message}).`);
    }
  }
}
