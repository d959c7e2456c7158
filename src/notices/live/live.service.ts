import { Injectable, Logger, type BeforeApplicationShutdown, type OnModuleDestroy } from '@nestjs/common';
import type { Response } from 'express';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/index.js';
import { toSeconds } from '../../rules/index.js';
import { EventStream } from './event-stream.js';
import {
  changesBetween,
  EVERYTHING,
  presentMark,
  topicsBetween,
  type LiveChange,
  type Mark,
} from './live-changes.js';

/** Pages one person may listen with, on each replica. */
export const MOST_STREAMS = 6;
const POLL_MS = 1000;
/** Changes are kept for an hour; whoever was away for nearly that long reads everything again. */
const MISSED_S = 50 * 60;
/** An event's id: the mark up to which was told, and when (seconds). */
const MARK_AT = /^(\d{1,20}:\d{1,20}:[\d,]{0,8000})-(\d{1,12})$/;

interface Listener {
  clubId: string;
  memberId: string;
  stream: EventStream;
}

/**
 * Tells open pages that something of theirs is to be read again. Changes are polled for by snapshots, one
 * small statement a second on each replica that somebody listens on: that works through any pooler, misses nothing that is
 * committed late, and needs no connection of its own.
 */
@Injectable()
export class LiveService implements OnModuleDestroy, BeforeApplicationShutdown {
  private readonly logger = new Logger(LiveService.name);
  private readonly listeners = new Set<Listener>();
  /** Everything before it has been told; null: nobody listens. */
  private mark: Mark | null = null;
  private timer: NodeJS.Timeout | undefined;

  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /**
   * Opens a stream.
   * @param lastId id of the last event of an earlier stream: what was missed since is told at once.
   * @throws ProblemException 429 with too many open.
   */
  async listen(
    { clubId, memberId }: SignedIn,
    of: { response: Response; seconds: number; lastId: string | undefined },
  ): Promise<void> {
    const own = [...this.listeners].filter((one) => one.memberId === memberId && one.clubId === clubId);
    if (own.length >= MOST_STREAMS)
      throw new ProblemException('too-many-streams', { headers: { 'Retry-After': '60' } });
    const present = await this.db.runWithoutClub(null, presentMark, { readOnly: true });
    // Another may have begun meanwhile, and then what it was told up to counts.
    const from = (this.mark ??= present);
    const listener: Listener = { clubId, memberId, stream: this.open(of, () => this.left(listener)) };
    this.listeners.add(listener);
    this.schedule();
    listener.stream.send('hello', this.idAt(from), { topics: [] });
    const missed = await this.missed(listener, of.lastId, from);
    if (missed.length > 0) listener.stream.send('change', this.idAt(from), { topics: missed });
  }

  /** Streams would keep the server from closing. */
  onModuleDestroy(): void {
    for (const { stream } of this.listeners) stream.end();
  }

  beforeApplicationShutdown(): void {
    clearTimeout(this.timer);
    this.onModuleDestroy();
  }

  private open(of: { response: Response; seconds: number }, closed: () => void): EventStream {
    return new EventStream(of.response, { seconds: of.seconds, closed });
  }

  private left(listener: Listener): void {
    this.listeners.delete(listener);
    if (this.listeners.size > 0) return;
    clearTimeout(this.timer);
    this.timer = undefined;
    this.mark = null;
  }

  private schedule(): void {
    this.timer ??= setTimeout(() => void this.poll(), POLL_MS);
  }

  private async poll(): Promise<void> {
    const from = this.mark;
    if (from !== null) {
      try {
        const { mark, changes } = await this.db.runWithoutClub(null, (em) => changesBetween(em, from), {
          readOnly: true,
        });
        // Everybody may have left meanwhile, or left and come again.
        if (this.mark === from) {
          this.mark = mark;
          this.tell(changes);
        }
      } catch (error) {
        this.logger.warn(`Open pages could not be told of changes (${(error as Error).message}).`);
      }
    }
    this.timer = undefined;
    if (this.listeners.size > 0) this.schedule();
  }

  private tell(changes: readonly LiveChange[]): void {
    if (changes.length === 0) return;
    for (const { clubId, memberId, stream } of this.listeners) {
      const topics = changes
        .filter((one) => one.clubId === clubId && (one.memberId === null || one.memberId === memberId))
        .map(({ topic }) => topic);
      if (topics.length > 0)
        stream.send('change', this.idAt(this.mark!), { topics: [...new Set(topics)].sort() });
    }
  }

  private async missed(of: Listener, lastId: string | undefined, until: Mark): Promise<string[]> {
    if (lastId === undefined) return [];
    const [, since, seconds] = MARK_AT.exec(lastId) ?? [];
    const away = toSeconds(this.clock.now()) - Number(seconds);
    if (since === undefined || away > MISSED_S || away < 0) return [EVERYTHING];
    try {
      return await this.db.run(
        of.clubId,
        (em) => topicsBetween(em, { since, until, memberId: of.memberId }),
        {
          readOnly: true,
        },
      );
    } catch {
      return [EVERYTHING];
    }
  }

  private idAt(mark: Mark): string {
    return `${mark}-${toSeconds(this.clock.now())}`;
  }
}
