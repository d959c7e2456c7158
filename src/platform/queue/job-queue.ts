import { Injectable, Logger, type OnApplicationShutdown } from '@nestjs/common';
import PgBoss from 'pg-boss';
import { DataSource } from 'typeorm';
import { QUEUE_SCHEMA, type QueueName } from './queues.js';

/** What a job is about: each concerns one club. */
export interface ClubJob {
  clubId: string;
}

/**
 * Jobs kept in PostgreSQL until they are done: at least once each, by whichever replica comes first, again later where
 * one fails. Nothing is connected until the queue is first used.
 */
@Injectable()
export class JobQueue implements OnApplicationShutdown {
  private readonly logger = new Logger(JobQueue.name);
  private started: Promise<PgBoss> | null = null;

  constructor(private readonly dataSource: DataSource) {}

  /** Puts a job in the queue, unless one for the same club is waiting there already. */
  async send(queue: QueueName, job: ClubJob): Promise<void> {
    await (await this.boss()).send(queue, job, { singletonKey: job.clubId });
  }

  /**
   * Does the jobs of a queue, one after another. A job that throws comes again.
   * @returns what to call when a job was put in by somebody who could not tell this process: it then looks at once.
   */
  async work(queue: QueueName, handle: (job: ClubJob) => Promise<void>): Promise<() => void> {
    const boss = await this.boss();
    const id = await boss.work<ClubJob>(queue, { pollingIntervalSeconds: 2 }, async (jobs) => {
      for (const { data } of jobs) await handle(data);
    });
    return () => boss.notifyWorker(id);
  }

  /** Lets running jobs end. */
  async onApplicationShutdown(): Promise<void> {
    const boss = await this.started?.catch(() => null);
    await boss?.stop({ graceful: true, wait: true, timeout: 10_000 });
  }

  private boss(): Promise<PgBoss> {
    return (this.started ??= this.start());
  }

  private async start(): Promise<PgBoss> {
    const { url } = this.dataSource.options as { url: string };
    // Its tables are made with the others, by the owner (prepareQueues).
    const boss = new PgBoss({
      connectionString: url,
      schema: QUEUE_SCHEMA,
      application_name: 'bellcrank jobs',
      ...{ migrate: false, schedule: false, max: 2 },
    });
    boss.on('error', (error) => this.logger.warn(`The job queue could not be read (${error.message}).`));
    return boss.start();
  }
}
