import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ClubRounds, type Rounds } from '../../platform/queue/club-rounds.js';
import { lookForOverdue } from './look-for-overdue.js';

/** How often clubs are looked for with an aircraft whose time has come. */
const SWEEP_MS = 20_000;

/** Looks for aircraft that are not back. Each club's is a job of the queue's, done by one replica at a time, again where it fails. */
@Injectable()
export class OverdueWorker implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(OverdueWorker.name);
  private rounds: Rounds | null = null;

  constructor(
    private readonly clock: Clock,
    private readonly db: TenantDb,
    private readonly clubs: ClubRounds,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    this.rounds = await this.clubs.begin({
      queue: 'overdue',
      work: (clubId) => this.tell(clubId),
      due: (em) =>
        em.query('SELECT DISTINCT club_id AS id FROM aircraft_out WHERE look_at <= $1::timestamptz', [
          this.clock.now(),
        ]),
      sweepMs: SWEEP_MS,
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.rounds?.stop();
  }

  private async tell(clubId: string): Promise<void> {
    const told = await this.db.run(clubId, (em) => lookForOverdue(em, clubId, this.clock.now()));
    if (told > 0) this.logger.log(`Aircraft are overdue: ${told} people told.`);
  }
}
