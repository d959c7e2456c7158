import type { DataSourceOptions } from 'typeorm';
import type { AppConfig } from '../config.js';

/** Entity classes or schemas, as TypeORM takes them. */
export type EntityList = NonNullable<DataSourceOptions['entities']>;

/**
 * TypeORM options for the service role. No start-up parameter besides the name is sent, because poolers in transaction
 * mode refuse them; time limits are set per transaction (see TenantDb).
 */
export function serviceDataSourceOptions(
  serviceUrl: string,
  config: Pick<AppConfig, 'databasePoolMax'>,
  entities: EntityList,
): DataSourceOptions {
  return {
    type: 'postgres',
    url: serviceUrl,
    entities,
    synchronize: false,
    migrationsRun: false,
    installExtensions: false,
    logging: false,
    applicationName: 'bellcrank',
    poolSize: config.databasePoolMax,
    connectTimeoutMS: 10_000,
    // A broken idle connection is replaced by the pool; the next request reports if the server is really gone.
    poolErrorHandler: () => undefined,
    extra: { idleTimeoutMillis: 30_000 },
  };
}
