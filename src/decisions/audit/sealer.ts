import { Injectable, Logger, type OnModuleDestroy } from '@nestjs/common';
import { TenantDb } from '../../platform/database/tenant.js';
import { sealClub } from './seal.js';

/** A club's decisions are sealed when it has been quiet for so long ... */
const QUIET_MS = 10_000;
/** ... and at the latest so long after the first of them. */
const AT_MOST_MS = 60_000;

/** A club with decisions to seal. */
interface Waiting {
  /** Begun again with every decision. */
  quiet: NodeJS.Timeout;
  atMost: NodeJS.Timeout;
}

/** Seals clubs' decisions a little after they are made, outside the transactions that make them. */
@Injectable()
export class Sealer implements OnModuleDestroy {
  private readonly logger = new Logger(Sealer.name);
  private readonly waiting = new Map<string, Waiting>();
  /** Clubs all of whose records were looked through since this process began. */
  private readonly swept = new Set<string>();

  constructor(private readonly db: TenantDb) {}

  /** Says that decisions of a club are being stored. Cheap; call it as often as they are. */
  note(clubId: string): void {
    const already = this.waiting.get(clubId);
    if (already) {
      already.quiet.refresh();
      return;
    }
    // A process that has nothing else to do may end (unref); one that is stopped in order seals first.
    const after = (milliseconds: number) => setTimeout(() => void this.due(clubId), milliseconds).unref();
    this.waiting.set(clubId, { quiet: after(QUIET_MS), atMost: after(AT_MOST_MS) });
  }

  /** Seals what a club has, all of it; returns how many records. */
  async seal(clubId: string): Promise<number> {
    const sealed = await sealClub(this.db, clubId, 'all');
    this.swept.add(clubId);
    return sealed;
  }

  /** Seals what is waiting before the connections close. */
  async onModuleDestroy(): Promise<void> {
    await Promise.all([...this.waiting.keys()].map((clubId) => this.due(clubId)));
  }

  private async due(clubId: string): Promise<void> {
    const waiting = this.waiting.get(clubId);
    clearTimeout(waiting?.quiet);
    clearTimeout(waiting?.atMost);
    this.waiting.delete(clubId);
    try {
      await sealClub(this.db, clubId, this.swept.has(clubId) ? 'latest' : 'all');
      this.swept.add(clubId);
    } catch (error) {
      // They stay unsealed, which the chain tells, until the club's next decision.
      this.logger.warn(
        `Decisions could not be sealed (${(error as Error).message}); they will be with the next.`,
      );
    }
  }
}
