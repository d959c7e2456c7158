/**
 * The whole service in this process, on an embedded PostgreSQL in a folder that is thrown away, with two bare routes beside
 * it. Nothing is relaxed: the database waits for its disk, requests pass the guards, decisions are stored.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { AccessTokens } from '../../../dist/src/accounts/access-tokens.js';
import { CurrentUser } from '../../../dist/src/accounts/current-user.js';
import { AppModule } from '../../../dist/src/app.module.js';
import { createApp } from '../../../dist/src/platform/bootstrap.js';
import { loadConfig } from '../../../dist/src/platform/config.js';
import { openDatabase } from '../../../dist/src/platform/database/open.js';
import { TenantDb } from '../../../dist/src/platform/database/tenant.js';

/** Answers with one SELECT, straight from Express: no guard, no validation, no transaction. */
export const BARE_PATH = '/bench/one-select';
/** Answers with one SELECT behind the service's guards, in a transaction of the club. */
export const GUARDED_PATH = '/api/v1/bench/one-select';

class OneSelectController {
  constructor(db) {
    this.db = db;
  }

  async select(user, body) {
    const [row] = await this.db.run(
      user.clubId,
      (em) =>
        em.query('SELECT registration FROM aircraft WHERE club_id = bellcrank_club() AND id = $1', [
          body.aircraftIds[0],
        ]),
      { readOnly: true },
    );
    return row;
  }
}
// What a decorator does, without a compiler.
Reflect.defineMetadata('design:paramtypes', [TenantDb], OneSelectController);
Controller('bench')(OneSelectController);
const selectMethod = Object.getOwnPropertyDescriptor(OneSelectController.prototype, 'select');
Post('one-select')(OneSelectController.prototype, 'select', selectMethod);
HttpCode(200)(OneSelectController.prototype, 'select', selectMethod);
CurrentUser()(OneSelectController.prototype, 'select', 0);
Body()(OneSelectController.prototype, 'select', 1);

class BenchModule {}

/** A running service. `prepare(database, config)` fills the database before the application starts; `more` is put into its environment. */
export async function startBenchService(prepare, more = {}) {
  const dataDir = mkdtempSync(join(tmpdir(), 'bellcrank-bench-'));
  let database;
  let app;
  const stop = async () => {
    await app?.close();
    await database?.close();
    rmSync(dataDir, { recursive: true, force: true });
  };
  try {
    const config = loadConfig({
      BELLCRANK_DATA_DIR: dataDir,
      PORT: '0',
      LOG_LEVEL: 'silent',
      // One proxy in front: each request names an address, so that the limit of requests per address does not cut in.
      TRUST_PROXY: '1',
      ...more,
    });
    database = await openDatabase(config, { notice: () => undefined });
    const prepared = await prepare(database, config);
    app = await createApp(
      {
        module: BenchModule,
        imports: [AppModule.register(config, database)],
        controllers: [OneSelectController],
      },
      config,
    );
    const source = app.get(DataSource, { strict: false });
    app
      .getHttpAdapter()
      .getInstance()
      .post(BARE_PATH, async (_request, response, next) => {
        try {
          const [row] = await source.query('SELECT 1 AS one');
          response.json(row);
        } catch (error) {
          next(error);
        }
      });
    await app.listen(0, '127.0.0.1');
    const tokens = app.get(AccessTokens, { strict: false });
    return {
      app,
      prepared,
      database,
      poolMax: config.databasePoolMax,
      url: (await app.getUrl()).replace('[::1]', '127.0.0.1'),
      tokenFor: (person) => tokens.issue(person),
      stop,
    };
  } catch (error) {
    await stop();
    throw error;
  }
}
