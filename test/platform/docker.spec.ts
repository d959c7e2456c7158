import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { parse } from 'yaml';
import { AppConfig, parseConfig } from '../../src/platform/config.js';
import { startEmbedded } from '../../src/platform/database/embedded/index.js';
import { openDatabase } from '../../src/platform/database/open.js';
import { SETTING_NAMES } from '../../src/platform/environment.js';
import { projectPath } from '../../src/platform/paths.js';

const text = (...path: string[]) => readFileSync(projectPath(...path), 'utf8');

interface Compose {
  services: Record<
    string,
    {
      environment: Record<string, string>;
      healthcheck?: { test: string[] };
      depends_on?: Record<string, { condition: string }>;
      build?: { context: string; dockerfile: string };
      volumes?: string[];
      networks: string[];
    }
  >;
  volumes: Record<string, unknown>;
  networks: Record<string, unknown>;
}

/** What `docker compose` does with ${NAME}, ${NAME:-default} and ${NAME:?message}. */
function interpolate(value: string, env: Record<string, string>): string {
  return value.replace(
    /\$\{(\w+)(?::([-?])([^}]*))?\}/g,
    (_all, name: string, kind?: string, rest?: string) => {
      if (env[name]) return env[name]!;
      if (kind === '?') throw new Error(`${name}: ${rest}`);
      return kind === '-' ? rest! : '';
    },
  );
}

jest.setTimeout(60_000);

// No container engine takes part: the files are read as data, and what they say is tried on a PostgreSQL of our own.
describe('the container files', () => {
  const compose = parse(text('docker-compose.yml'), { strict: true, uniqueKeys: true }) as Compose;
  const { postgres, bellcrank } = compose.services as {
    postgres: Compose['services'][string];
    bellcrank: Compose['services'][string];
  };
  const env = {
    POSTGRES_PASSWORD: 'a1',
    OWNER_PASSWORD: 'b2',
    SERVICE_PASSWORD: 'c3',
    SIGNING_SECRET: 'd4'.repeat(20),
  };

  it('fit together', () => {
    expect(Object.keys(compose.services)).toEqual(['postgres', 'bellcrank']);
    expect(bellcrank.depends_on).toEqual({ postgres: { condition: 'service_healthy' } });
    expect(postgres.healthcheck?.test[1]).toBe('pg_isready');
    expect(existsSync(projectPath(bellcrank.build!.dockerfile))).toBe(true);
    for (const volume of postgres.volumes!) {
      const source = volume.split(':')[0]!;
      if (source.startsWith('./')) expect(existsSync(projectPath(source))).toBe(true);
      else expect(compose.volumes).toHaveProperty(source);
    }
    for (const service of [postgres, bellcrank])
      for (const network of service.networks) expect(compose.networks).toHaveProperty(network);
    expect(statSync(projectPath('docker', 'postgres', 'roles.sh')).mode & 0o111).not.toBe(0);
  });

  it('give the service settings that it accepts, and demand the secrets', () => {
    const settings = Object.fromEntries(
      Object.entries(bellcrank.environment).map(([name, value]) => [name, interpolate(value, env)]),
    );
    for (const name of Object.keys(settings)) expect(SETTING_NAMES).toContain(name);
    expect(parseConfig(settings)).toMatchObject({
      databaseUrl: 'postgres://bellcrank_owner:b2@postgres:5432/bellcrank',
      trustProxy: false,
    });
    expect(() => Object.values(bellcrank.environment).map((value) => interpolate(value, {}))).toThrow(
      /make a .env file first/,
    );
    expect(text('docker-compose.yml')).not.toMatch(/PASSWORD: [A-Za-z0-9]/);
  });

  it('build an image that runs as an ordinary user and leaves out what does not belong in it', () => {
    const lines = text('docker', 'Dockerfile').split('\n');
    const last = lines.findLastIndex((line) => line.startsWith('FROM '));
    const runtime = lines.slice(last);
    expect(runtime).toContain('USER node');
    expect(runtime.findIndex((line) => line.startsWith('USER'))).toBeLessThan(
      runtime.findIndex((line) => line.startsWith('CMD')),
    );
    expect(runtime).toContain('CMD ["node", "dist/src/main.js", "serve"]');
    const environment = runtime
      .find((line) => line.startsWith('ENV '))!
      .slice(4)
      .split(' ')
      .map((pair) => pair.split('=') as [string, string]);
    expect(
      parseConfig(Object.fromEntries(environment.filter(([name]) => name !== 'NODE_ENV'))),
    ).toMatchObject({ host: '0.0.0.0', port: 8087 });
    const copied = lines.flatMap((line) => /^COPY (?!--from)(.+) \.\/$/.exec(line)?.[1]!.split(' ') ?? []);
    for (const file of copied) expect(existsSync(projectPath(file))).toBe(true);
    const ignored = text('.dockerignore').split('\n');
    expect(ignored).toEqual(expect.arrayContaining(['.git', '.env', '.bellcrank', 'node_modules', 'dist']));
    for (const file of copied) expect(ignored).not.toContain(file);
  });

  it('make roles with which the service opens its database, as owner and service apart', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'bellcrank-docker-'));
    chmodSync(folder, 0o711);
    const cluster = await startEmbedded({ dataDir: join(folder, 'server'), fast: true });
    try {
      const admin = new pg.Client({ connectionString: cluster.superuserUrl() });
      await admin.connect();
      const sql = text('docker', 'postgres', 'roles.sql')
        .replace(/--.*$/gm, '')
        .replace(":'owner_password'", `'b2'`)
        .replace(":'service_password'", `'c3'`);
      for (const statement of sql.split(';').filter((part) => part.trim())) await admin.query(statement);
      await admin.end();
      const address = (value: string) =>
        interpolate(value, env).replace('@postgres:5432', `@127.0.0.1:${cluster.port}`);
      const settings = {
        DATABASE_URL: address(bellcrank.environment['DATABASE_URL']!),
        DATABASE_SERVICE_URL: address(bellcrank.environment['DATABASE_SERVICE_URL']!),
      };
      const config = new AppConfig(
        parseConfig({ ...settings, BELLCRANK_SECRET: env.SIGNING_SECRET }) as AppConfig,
      );
      const database = await openDatabase(config);
      expect(database.applied.length).toBeGreaterThan(0);
      expect(new URL(database.serviceUrl).username).toBe('bellcrank_service');
      expect((await openDatabase(config)).applied).toEqual([]);
    } finally {
      await cluster.stop();
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
