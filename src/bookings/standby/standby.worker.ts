import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { Sealer } from '../../decisions/audit/sealer.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ClubRounds, type Rounds } from '../../platform/queue/club-rounds.js';
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
  private rounds: Rounds | null = null;

  constructor(
    private readonly clock: Clock,
    private readonly db: TenantDb,
    private readonly sealer: Sealer,
    private readonly clubs: ClubRounds,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    this.rounds = await this.clubs.begin({
      queue: 'standby',
      work: (clubId) => this.passOn(clubId),
      due: (em) =>
        em.query('SELECT DISTINCT club_id AS id FROM standby_wakes WHERE due_at <= $1::timestamptz', [
          this.clock.now(),
        ]),
      sweepMs: SWEEP_MS,
      announced: { channel: 'bellcrank_standby', gatherMs: GATHER_MS },
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.rounds?.stop();
  }

  private async passOn(clubId: string): Promise<void> {
    const note = (id: string): void => this.sealer.note(id);
    const { expired, offered } = await passOn(this.db, clubId, { now: this.clock.now(), note });
    if (expired + offered > 0)
      this.logger.log(`Standby: ${offered} slots offered, ${expired} offers run out.`);
  }
}
