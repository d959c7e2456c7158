import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import pg from 'pg';
import { DataSource } from 'typeorm';
import { Sealer } from '../../decisions/audit/sealer.js';
import { Clock } from '../../platform/clock.js';
import { AppConfig } from '../../platform/config.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { JobQueue } from '../../platform/queue/job-queue.js';
import { passOn } from './pass-on.js';

/** How often clubs are looked for where something is due: offers run out, facts change, announcements get lost. */
const SWEEP_MS = 10_000;
/** One cancellation often brings others. */
const GATHER_MS = 100;

/**
 * Passes free slots on. The database announces that time came free; each announcement becomes a job of the club's, done by one
 * replica at a time. Announcements may be lost; what is due stays in its table until it is taken up, and is swept for.
 */
@Injectable()
export class StandbyWorker implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(StandbyWorker.name);
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
    private readonly sealer: Sealer,
    private readonly dataSource: DataSource,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    if (!this.config.backgroundWork) return;
    this.look = await this.queue.work('standby', ({ clubId }) => this.passOn(clubId));
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

  private async passOn(clubId: string): Promise<void> {
    const note = (id: string): void => this.sealer.note(id);
    const { expired, offered } = await passOn(this.db, clubId, { now: this.clock.now(), note });
    if (expired + offered > 0)
      this.logger.log(`Standby: ${offered} slots offered, ${expired} offers run out.`);
  }

  /** A connection of its own, for announcements; behind a pooler in transaction mode there are none, and the sweep does. */
  private async listen(): Promise<void> {
    const { url } = this.dataSource.options as { url: string };
    const client = new pg.Client({ connectionString: url, application_name: 'bellcrank standby' });
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
      await client.query('LISTEN bellcrank_standby');
      this.listener = client;
    } catch (error) {
      this.logger.warn(
        `Slots that come free are not heard of at once (${(error as Error).message}); they are swept for.`,
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
      await this.queue.send('standby', { clubId });
      this.look();
    } catch (error) {
      // What is due stays in its table, and the next sweep finds it.
      this.logger.warn(`A club's standby could not be put up for passing on (${(error as Error).message}).`);
    }
  }

  private async sweep(): Promise<void> {
    try {
      if (this.listener === null) await this.listen();
      const clubs = await this.db.runWithoutClub(
        null,
        (em): Promise<{ id: string }[]> =>
          em.query('SELECT DISTINCT club_id AS id FROM standby_wakes WHERE due_at <= $1::timestamptz', [
            this.clock.now(),
          ]),
        { readOnly: true },
      );
      for (const { id } of clubs) await this.enqueue(id);
    } catch (error) {
      this.logger.warn(`Standby could not be looked through (${(error as Error).message}).`);
    }
  }
}
