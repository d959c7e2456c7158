import PgBoss from 'pg-boss';

/** Schema of the job queue; pg-boss keeps its tables there and brings them up to date itself. */
export const QUEUE_SCHEMA = 'pgboss';

/** Every queue of the service. One job waits for a club at a time: whoever runs it does all there is to do. */
export const QUEUES = {
  /** Judges booked flights again whose facts changed. Data: `{ clubId }`. */
  standing: { policy: 'short', retryLimit: 10, retryDelay: 5, retryBackoff: true, expireInSeconds: 600 },
  /** Tells of aircraft that are not back. Data: `{ clubId }`. */
  overdue: { policy: 'short', retryLimit: 10, retryDelay: 5, retryBackoff: true, expireInSeconds: 120 },
  /** Settles notices, sends mail, reminds. Data: `{ clubId }`. */
  notices: { policy: 'short', retryLimit: 10, retryDelay: 30, retryBackoff: true, expireInSeconds: 1800 },
  /** Passes slots that came free on to who waits for them. Data: `{ clubId }`. */
  standby: { policy: 'short', retryLimit: 10, retryDelay: 5, retryBackoff: true, expireInSeconds: 600 },
  /** Fetches the weather of booked flights. Data: `{ clubId }`. */
  weather: { policy: 'short', retryLimit: 2, retryDelay: 60, retryBackoff: true, expireInSeconds: 300 },
} as const satisfies Record<string, Omit<PgBoss.Queue, 'name'>>;

export type QueueName = keyof typeof QUEUES;

/** Makes or updates the queue's tables as the owner, and lets the service use them. Run while no other replica starts. */
export async function prepareQueues(ownerUrl: string, groupRole: string): Promise<void> {
  const boss = new PgBoss({
    connectionString: ownerUrl,
    schema: QUEUE_SCHEMA,
    ...{ supervise: false, schedule: false, max: 1 },
  });
  try {
    await boss.start();
    for (const [name, options] of Object.entries(QUEUES)) await boss.createQueue(name, { name, ...options });
    const db = (boss as unknown as { getDb(): PgBoss.Db }).getDb();
    await db.executeSql(
      `GRANT USAGE ON SCHEMA ${QUEUE_SCHEMA} TO ${groupRole};
       GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA ${QUEUE_SCHEMA} TO ${groupRole};`,
      [],
    );
  } finally {
    await boss.stop({ graceful: false, wait: true });
  }
}
