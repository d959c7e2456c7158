import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { Clock } from '../../platform/clock.js';
import { AppConfig } from '../../platform/config.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { JobQueue } from '../../platform/queue/job-queue.js';
import { lookForOverdue } from './look-for-overdue.js';

/** How often clubs are looked for with an aircraft whose time has come. */
const SWEEP_MS = 20_000;

/** Looks for aircraft that are not back. Each club's is a job of the queue's, done by one replica at a time, again where it fails. */
@Injectable()
export class OverdueWorker implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(OverdueWorker.name);
  private sweeping: NodeJS.Timeout | undefined;
  private look: () => void = () => undefined;

  constructor(
    private readonly config: AppConfig,
    private readonly clock: Clock,
    private readonly db: TenantDb,
    private readonly queue: JobQueue,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    if (!this.config.backgroundWork) return;
    this.look = await this.queue.work('overdue', ({ clubId }) => this.tell(clubId));
    this.sweeping = setInterval(() => void this.sweep(), SWEEP_MS);
    await this.sweep();
  }

  onApplicationShutdown(): void {
    clearInterval(this.sweeping);
  }

  private async tell(clubId: string): Promise<void> {
    const told = await this.db.run(clubId, (em) => lookForOverdue(em, clubId, this.clock.now()));
    if (told > 0) this.logger.log(`Aircraft are overdue: ${told} people told.`);
  }

  /** Clubs with an aircraft out whose time has come. */
  private async sweep(): Promise<void> {
    try {
      const clubs = await this.db.runWithoutClub(
        null,
        (em): Promise<{ id: string }[]> =>
          em.query('SELECT DISTINCT club_id AS id FROM aircraft_out WHERE look_at <= $1::timestamptz', [
            this.clock.now(),
          ]),
        { readOnly: true },
      );
      for (const { id } of clubs) await this.queue.send('overdue', { clubId: id });
      if (clubs.length > 0) this.look();
    } catch (error) {
      // They stay where they are, and the next sweep finds them.
      this.logger.warn(`Overdue aircraft could not be looked for (${(error as Error).message}).`);
    }
  }
}
