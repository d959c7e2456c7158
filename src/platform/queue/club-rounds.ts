import { Injectable, Logger } from '@nestjs/common';
import pg from 'pg';
import { DataSource, type EntityManager } from 'typeorm';
import { AppConfig } from '../config.js';
import { TenantDb } from '../database/tenant.js';
import { JobQueue } from './job-queue.js';
import type { QueueName } from './queues.js';

/** Work that falls due club by club, and stays in its table until it is done. */
export interface ClubWork {
  queue: QueueName;
  /** Does what is due of one club: one replica at a time, again where it fails. */
  work: (clubId: string) => Promise<void>;
  /** Clubs where something is due. Asked for no club, of tables that show ids and times only. */
  due: (em: EntityManager) => Promise<{ id: string }[]>;
  /** How often such clubs are looked for. */
  sweepMs: number;
  /** Where the database announces clubs (NOTIFY), and how long one announcement waits for others of its club. */
  announced?: { channel: string; gatherMs: number };
}

/** Looks for clubs with work to do, and has the queue do it, in replicas that do work in the background. */
@Injectable()
export class ClubRounds {
  constructor(
    private readonly config: AppConfig,
    private readonly db: TenantDb,
    private readonly queue: JobQueue,
    private readonly dataSource: DataSource,
  ) {}

  /** Begins the rounds with one at once; null where this replica only answers. @returns what ends them */
  async begin(of: ClubWork): Promise<Rounds | null> {
    if (!this.config.backgroundWork) return null;
    const { url } = this.dataSource.options as { url: string };
    const rounds = new Rounds(of, { db: this.db, queue: this.queue, url });
    await rounds.begin();
    return rounds;
  }
}

/** The rounds of one work. Announcements may be lost, what is due is not: it is swept for. */
export class Rounds {
  private readonly logger = new Logger(Rounds.name);
  private readonly waiting = new Map<string, NodeJS.Timeout>();
  private listener: pg.Client | null = null;
  private sweeping: NodeJS.Timeout | undefined;
  private look: () => void = () => undefined;
  private stopped = false;

  constructor(
    private readonly of: ClubWork,
    private readonly by: { db: TenantDb; queue: JobQueue; url: string },
  ) {}

  async begin(): Promise<void> {
    this.look = await this.by.queue.work(this.of.queue, ({ clubId }) => this.of.work(clubId));
    await this.listen();
    this.sweeping = setInterval(() => void this.sweep(), this.of.sweepMs);
    await this.sweep();
  }

  async stop(): Promise<void> {
    this.stopped = true;
    clearInterval(this.sweeping);
    for (const timer of this.waiting.values()) clearTimeout(timer);
    await this.listener?.end().catch(() => undefined);
  }

  /** A connection of its own, for announcements; behind a pooler in transaction mode there are none, and the sweep does. */
  private async listen(): Promise<void> {
    const { announced, queue } = this.of;
    if (!announced || this.listener !== null) return;
    const client = new pg.Client({
      connectionString: this.by.url,
      application_name: `bellcrank ${queue}`,
    });
    const lost = (): void => {
      if (this.listener !== client || this.stopped) return;
      this.listener = null;
      void client.end().catch(() => undefined);
    };
    client.on('error', lost);
    client.on('end', lost);
    client.on('notification', ({ payload }) => payload && this.announce(payload, announced.gatherMs));
    try {
      await client.connect();
      await client.query(`LISTEN ${client.escapeIdentifier(announced.channel)}`);
      this.listener = client;
    } catch (error) {
      this.warn('is not heard of at once, and is swept for', error);
      await client.end().catch(() => undefined);
    }
  }

  private announce(clubId: string, gatherMs: number): void {
    if (this.waiting.has(clubId)) return;
    const timer = setTimeout(() => {
      this.waiting.delete(clubId);
      void this.enqueue(clubId);
    }, gatherMs);
    this.waiting.set(clubId, timer);
  }

  private async enqueue(clubId: string): Promise<void> {
    try {
      await this.by.queue.send(this.of.queue, { clubId });
      this.look();
    } catch (error) {
      // What is due stays where it is, and the next sweep finds it.
      this.warn('could not be put up for doing', error);
    }
  }

  private async sweep(): Promise<void> {
    try {
      await this.listen();
      const clubs = await this.by.db.runWithoutClub(null, this.of.due, { readOnly: true });
      for (const { id } of clubs) await this.enqueue(id);
    } catch (error) {
      this.warn('could not be looked for', error);
    }
  }

  private warn(what: string, error: unknown): void {
    this.logger.warn(`What is due of "${this.of.queue}" ${what} (${(error as Error).message}).`);
  }
}
