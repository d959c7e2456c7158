/** Settings: environment variables, checked once at start, then passed around as one frozen object. */
import 'reflect-metadata';
import { plainToInstance } from 'class-transformer';
import { validateSync } from 'class-validator';
import { join } from 'node:path';
import { Environment, NOT_OURS, SETTING_NAMES } from './environment.js';
import { DEFAULT_DATA_DIR } from './paths.js';
import { readOrCreateSecret } from './secret-file.js';
import { StartupError } from './startup-error.js';

/** How chatty the log is. */
export type LogLevel = 'fatal' | 'error' | 'warn' | 'info' | 'debug' | 'trace' | 'silent';

/** The service's settings. Also the injection token: `constructor(private readonly config: AppConfig)`. */
export class AppConfig {
  /** TCP port of the HTTP server; 0 lets the system choose. */
  readonly port: number;
  /** Address the HTTP server binds. */
  readonly host: string;
  /** Address people reach the service under; used in links in messages and feeds. No trailing slash. */
  readonly publicUrl: string;
  /** Owner's connection to an external PostgreSQL; absent means the embedded one. */
  readonly databaseUrl?: string;
  /** The service role's own connection; absent means a role is made with a password derived from the secret. */
  readonly databaseServiceUrl?: string;
  /** Connections in the pool, per replica. */
  readonly databasePoolMax: number;
  /** A statement running longer than this is cancelled (milliseconds). */
  readonly databaseStatementTimeoutMs: number;
  /** Folder of the embedded database and generated secrets. */
  readonly dataDir: string;
  /** Port of the embedded database; absent means any free one. */
  readonly embeddedPort?: number;
  /** Signs tokens and derives passwords. Same on all replicas. */
  readonly secret: string;
  readonly logLevel: LogLevel;
  /** Whether this process does the work in the background too, or only answers requests. */
  readonly backgroundWork: boolean;
  /** Mail server that notices go out through; absent: they stand on the page only. */
  readonly smtpUrl?: string;
  /** Whom mail comes from. Given whenever there is a mail server. */
  readonly mailFrom?: string;
  /** Express' "trust proxy": false, or the number of proxies in front. */
  readonly trustProxy: number | false;

  constructor(values: AppConfig) {
    Object.assign(this, values);
    Object.freeze(this);
  }
}

/** Settings as read, before a missing secret has been made up. */
export type ParsedConfig = Omit<AppConfig, 'secret'> & { secret?: string };

/**
 * Checks the environment without touching the disk.
 * @throws StartupError naming each wrong variable and what it should be.
 */
export function parseConfig(source: NodeJS.ProcessEnv): ParsedConfig {
  const env = readEnvironment(source);
  if (env.DATABASE_URL !== undefined && env.BELLCRANK_SECRET === undefined) {
    throw new StartupError(
      'DATABASE_URL is set but BELLCRANK_SECRET is not. Every replica needs the same secret of at least 32 characters; ' +
        'make one with: node -p "crypto.randomBytes(32).toString(\'base64url\')"',
    );
  }
  if (env.DATABASE_SERVICE_URL !== undefined && env.DATABASE_URL === undefined) {
    throw new StartupError('DATABASE_SERVICE_URL is set but DATABASE_URL is not; set both or neither.');
  }
  if (env.BELLCRANK_SMTP_URL !== undefined && env.BELLCRANK_MAIL_FROM === undefined) {
    throw new StartupError(
      'BELLCRANK_SMTP_URL is set but BELLCRANK_MAIL_FROM is not; say whom mail comes from.',
    );
  }
  return {
    port: env.PORT,
    host: env.HOST,
    publicUrl: (
      env.PUBLIC_URL ?? `http://${env.HOST.includes(':') ? `[${env.HOST}]` : env.HOST}:${env.PORT}`
    ).replace(/\/+$/, ''),
    databaseUrl: env.DATABASE_URL,
    databaseServiceUrl: env.DATABASE_SERVICE_URL,
    databasePoolMax: env.DATABASE_POOL_MAX,
    databaseStatementTimeoutMs: env.DATABASE_STATEMENT_TIMEOUT_MS,
    dataDir: env.BELLCRANK_DATA_DIR ?? DEFAULT_DATA_DIR,
    embeddedPort: env.BELLCRANK_PG_PORT,
    secret: env.BELLCRANK_SECRET,
    logLevel: env.LOG_LEVEL,
    backgroundWork: env.BELLCRANK_BACKGROUND_WORK === 'on',
    smtpUrl: env.BELLCRANK_SMTP_URL,
    mailFrom: env.BELLCRANK_MAIL_FROM,
    trustProxy: Number(env.TRUST_PROXY) || false,
  };
}

/** Settings ready for use; with the embedded database a missing secret is made once and kept in the data folder. */
export function loadConfig(source: NodeJS.ProcessEnv = process.env): AppConfig {
  const parsed = parseConfig(source);
  const secret = parsed.secret ?? readOrCreateSecret(join(parsed.dataDir, 'signing-secret'));
  return new AppConfig({ ...parsed, secret });
}

function readEnvironment(source: NodeJS.ProcessEnv): Environment {
  const strange = Object.keys(source).filter(
    (name) => name.startsWith('BELLCRANK_') && !SETTING_NAMES.includes(name) && !NOT_OURS.test(name),
  );
  const problems = strange.map(
    (name) =>
      `${name} is not a setting. Known: ${SETTING_NAMES.filter((n) => n.startsWith('BELLCRANK_')).join(', ')}.`,
  );
  // An empty variable means "not set": compose files and shells produce them for unset ones.
  const given = Object.fromEntries(
    SETTING_NAMES.flatMap((name) => (source[name]?.trim() ? [[name, source[name]!.trim()]] : [])),
  );
  const env = plainToInstance(Environment, given, { exposeDefaultValues: true });
  for (const error of validateSync(env, { whitelist: true })) {
    const reason = Object.values(error.constraints ?? {})[0] ?? 'is not valid';
    // Never echo a value: it may be a password.
    problems.push(reason.startsWith(error.property) ? `${reason}.` : `${error.property} ${reason}.`);
  }
  if (problems.length > 0) throw new StartupError(problems.join(' '));
  return env;
}
