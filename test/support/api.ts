/**
 * The whole service over HTTP on a real database, for API specs.
 *
 *   let api: Api;
 *   beforeAll(async () => { api = await startApi(); });
 *   afterAll(() => api.stop());
 *   const club = await api.createClub();
 *   const officer = await club.signInAs('safety-officer');
 *   await officer.get('/members').expect(200);
 */
import type { DynamicModule, ModuleMetadata } from '@nestjs/common';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { Test } from '@nestjs/testing';
import request from 'supertest';
import { DataSource } from 'typeorm';
import { ACCOUNT_ENTITIES } from '../../src/accounts/entities.js';
import { AccountsModule } from '../../src/accounts/accounts.module.js';
import { APP_OPTIONS, configureApp } from '../../src/platform/bootstrap.js';
import { Clock, FixedClock } from '../../src/platform/clock.js';
import { AppConfig } from '../../src/platform/config.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { PlatformModule } from '../../src/platform/platform.module.js';
import { type ClubSeed, type Sql, TestClub } from './test-club.js';

export { Session } from './session.js';
export { TestClub, type ClubSeed, type MemberSeed, type TestMember } from './test-club.js';

/** Every API spec's clock stands here until a spec moves it. */
export const NOW = '2026-03-10T15:00:00Z';

/** How to start. */
export interface ApiOptions {
  /** Where the clock stands; NOW unless said otherwise. */
  now?: string;
  /** Judge booked flights again and so on, as a service does; left out unless a spec is about that. */
  backgroundWork?: boolean;
  /** Other settings than a test's usual ones. */
  settings?: Partial<AppConfig>;
  /** The database of another service, to run a second one beside it; that one keeps it. */
  beside?: Api;
  /** Only these modules, on top of platform and accounts; without it the whole service. */
  parts?: { imports: NonNullable<ModuleMetadata['imports']>; entities: (new () => object)[] };
}

/** A test's way into the service and round it. */
export interface Api {
  app: NestExpressApplication;
  clock: FixedClock;
  database: TestDatabase;
  /** Supertest without a token, for public routes; give paths in full (/api/v1/…). */
  http: ReturnType<typeof request>;
  /** SQL past row-level security: for setting a scene and looking behind the service, never for what is under test. */
  sql: Sql;
  createClub(values?: Partial<ClubSeed>): Promise<TestClub>;
  /** Counts the statements the service sends to the database, until stopped. */
  countQueries(): { stop(): number };
  stop(): Promise<void>;
}

/** Starts the service on a fresh copy of the migrated database, on a clock that stands still, on a free loopback port. */
export async function startApi(options: ApiOptions = {}): Promise<Api> {
  const database = options.beside?.database ?? (await createTestDatabase());
  // One proxy in front, so that a spec can come from different addresses with X-Forwarded-For.
  const config = new AppConfig({
    ...database.config,
    trustProxy: 1,
    backgroundWork: options.backgroundWork ?? false,
    ...options.settings,
  });
  const clock = options.beside?.clock ?? new FixedClock(options.now ?? NOW);
  const root = await rootModule(config, database, options.parts);
  const testing = await Test.createTestingModule({ imports: [root] })
    .overrideProvider(Clock)
    .useValue(clock)
    .compile();
  const app = configureApp(testing.createNestApplication<NestExpressApplication>(APP_OPTIONS), config);
  await app.listen(0, '127.0.0.1');
  // One connection, one statement at a time: specs may ask for several at once.
  let last: Promise<unknown> = Promise.resolve();
  const sql: Sql = (text, params) => {
    const next = last.then(async () => (await database.admin.query(text, params)).rows);
    last = next.catch(() => undefined);
    return next;
  };
  return {
    ...{ app, clock, database, sql },
    http: request(app.getHttpServer()),
    createClub: (values) => TestClub.create(app, sql, values),
    countQueries: () => countQueries(app.get(DataSource)),
    async stop() {
      await app.close();
      if (options.beside === undefined) await database.drop();
    },
  };
}

async function rootModule(
  config: AppConfig,
  { database }: TestDatabase,
  parts: ApiOptions['parts'],
): Promise<DynamicModule> {
  if (parts === undefined) {
    const { AppModule } = await import('../../src/app.module.js');
    return AppModule.register(config, database);
  }
  const entities = [...new Set([...ACCOUNT_ENTITIES, ...parts.entities])];
  return {
    module: class TestRoot {},
    imports: [PlatformModule.register(config, database, entities), AccountsModule, ...parts.imports],
  };
}

function countQueries(source: DataSource): { stop(): number } {
  let count = 0;
  const pg = (
    source.driver as unknown as {
      postgres: { Client: { prototype: { query: (...args: unknown[]) => unknown } } };
    }
  ).postgres;
  const { query } = pg.Client.prototype;
  pg.Client.prototype.query = function counted(...args: unknown[]) {
    count += 1;
    return query.apply(this, args);
  };
  return {
    stop() {
      pg.Client.prototype.query = query;
      return count;
    },
  };
}
