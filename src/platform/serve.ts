/** Runs the service until it is told to stop. */
import type { DynamicModule } from '@nestjs/common';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { createApp } from './bootstrap.js';
import type { AppConfig } from './config.js';
import { openDatabase, type Database, type OpenOptions } from './database/open.js';
import { stopOnSignal } from './signals.js';
import { StartupError } from './startup-error.js';

/** Makes the root module of the service. */
export type RootModule = (config: AppConfig, database: Database) => DynamicModule;

/** A service that answers. */
export interface RunningService {
  app: NestExpressApplication;
  database: Database;
  /** Address to open in a browser. */
  url: string;
  /** Finishes running requests (10 s at most), closes connections, stops the embedded database. */
  stop(): Promise<void>;
}

const DRAIN_MS = 10_000;

/**
 * Opens the database and listens.
 * @throws StartupError when the port is taken, and as `openDatabase`; then everything opened is closed again.
 */
export async function startService(
  config: AppConfig,
  rootModule: RootModule,
  options: OpenOptions = {},
): Promise<RunningService> {
  const database = await openDatabase(config, { notice: say, ...options });
  let app: NestExpressApplication | undefined;
  try {
    app = await createApp(rootModule(config, database), config);
    await listen(app, config);
  } catch (error) {
    await app?.close().catch(() => undefined);
    await database.close();
    throw error;
  }
  const running = app;
  let stopping: Promise<void> | undefined;
  return {
    app,
    database,
    url: (await app.getUrl()).replace('[::1]', '127.0.0.1'),
    stop: () => (stopping ??= stopInOrder(running, database)),
  };
}

/** `startService`, then stays until SIGINT or SIGTERM. */
export async function serve(
  config: AppConfig,
  rootModule: RootModule,
  options: OpenOptions = {},
): Promise<void> {
  const service = await startService(config, rootModule, options);
  stopOnSignal(service);
  say(
    `Bellcrank answers at ${service.url} (PostgreSQL ${service.database.serverVersion}, ${service.database.kind}). Stop with Ctrl-C.`,
  );
}

async function stopInOrder(app: NestExpressApplication, database: Database): Promise<void> {
  const server = app.getHttpServer() as import('node:http').Server;
  const deadline = setTimeout(() => server.closeAllConnections(), DRAIN_MS);
  server.closeIdleConnections();
  try {
    await app.close();
  } finally {
    clearTimeout(deadline);
    await database.close();
  }
}

async function listen(app: NestExpressApplication, config: AppConfig): Promise<void> {
  try {
    await app.listen(config.port, config.host);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const reasons: Record<string, string> = {
      EADDRINUSE: `port ${config.port} on ${config.host} is taken by another program. Stop that program or set PORT to another number.`,
      EACCES: `this user may not use port ${config.port}. Set PORT to a number above 1023.`,
      EADDRNOTAVAIL: `${config.host} is not an address of this machine. Set HOST, for example to 127.0.0.1 or 0.0.0.0.`,
      ENOTFOUND: `the host name ${config.host} is not known. Set HOST, for example to 127.0.0.1 or 0.0.0.0.`,
    };
    const reason = reasons[code ?? ''];
    throw reason ? new StartupError(reason, { cause: error }) : error;
  }
}

const say = (line: string) => void process.stdout.write(`${line}\n`);
