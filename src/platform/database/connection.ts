/** Opening single connections to PostgreSQL at start, with messages that say what to do. */
import pg from 'pg';
import { setTimeout as pause } from 'node:timers/promises';
import { StartupError } from '../startup-error.js';
import type { Notice } from './embedded/index.js';

/** The oldest PostgreSQL that the SQL of the migrations is written for. */
export const OLDEST_MAJOR = 15;

/** `url` with another user and password. */
export function withLogin(url: string, user: string, password: string): string {
  const changed = new URL(url);
  changed.username = encodeURIComponent(user);
  changed.password = encodeURIComponent(password);
  return changed.href;
}

/** Host, port and database of a connection address, for messages: never the password. */
export function describeUrl(url: string): string {
  const { hostname, port, pathname } = new URL(url);
  return `${hostname || 'localhost'}:${port || 5432}${pathname}`;
}

const errorCode = (error: unknown) => String((error as { code?: unknown }).code ?? '');
/** The server is not there yet, or is still starting: worth waiting for. */
const NOT_YET = new Set(['ECONNREFUSED', 'ECONNRESET', 'EAI_AGAIN', '57P03']);

/** How to connect. */
export interface ConnectOptions {
  /** Name of the variable the address came from, for messages. */
  variable: string;
  /** How long to wait for a server that is still starting (milliseconds). */
  patienceMs?: number;
  notice?: Notice;
}

/** Connects, waiting a while for a server that is still starting. The caller ends the client. */
export async function connect(url: string, options: ConnectOptions): Promise<pg.Client> {
  const { patienceMs = 20_000, notice, variable } = options;
  for (let waited = 0; ; waited += 500) {
    const client = new pg.Client({
      connectionString: url,
      application_name: 'bellcrank-setup',
      connectionTimeoutMillis: 10_000,
    });
    // Without a listener, a connection lost between two queries would end the process.
    client.on('error', () => undefined);
    try {
      await client.connect();
      return client;
    } catch (error) {
      await client.end().catch(() => undefined);
      if (!NOT_YET.has(errorCode(error)) || waited >= patienceMs)
        throw explainConnection(error, url, variable);
      if (waited === 0) notice?.(`Waiting for PostgreSQL at ${describeUrl(url)} (${errorCode(error)}).`);
      await pause(500);
    }
  }
}

function explainConnection(error: unknown, url: string, variable: string): StartupError {
  const where = describeUrl(url);
  const code = errorCode(error);
  const reasons: Record<string, string> = {
    '28P01': `PostgreSQL at ${where} refuses this user and password`,
    '28000': `PostgreSQL at ${where} does not let this user in`,
    '3D000': `PostgreSQL at ${where} has no such database; create it first`,
    '53300': `PostgreSQL at ${where} has no connection left; lower DATABASE_POOL_MAX or raise its max_connections`,
    ENOTFOUND: `the host of ${where} is not known`,
    ECONNREFUSED: `nothing answers at ${where}; start PostgreSQL there`,
  };
  const reason =
    reasons[code] ?? `cannot connect to PostgreSQL at ${where} (${(error as Error).message || code})`;
  return new StartupError(`${reason}. Check ${variable}.`, { cause: error });
}

/**
 * Version of the server, such as '15.18'.
 * @throws StartupError when it is older than the oldest supported.
 */
export async function checkServerVersion(client: pg.Client): Promise<string> {
  const result = await client.query<{ version: string; number: number }>(
    `SELECT split_part(current_setting('server_version'), ' ', 1) AS version, current_setting('server_version_num')::int AS number`,
  );
  const { version, number } = result.rows[0]!;
  if (number < OLDEST_MAJOR * 10_000) {
    throw new StartupError(
      `the database server is PostgreSQL ${version}; Bellcrank needs ${OLDEST_MAJOR} or later. Upgrade it, or unset DATABASE_URL.`,
    );
  }
  return version;
}
