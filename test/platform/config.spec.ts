import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Clock, FixedClock } from '../../src/platform/clock.js';
import { loadConfig, parseConfig } from '../../src/platform/config.js';
import { PROJECT_ROOT, projectManifest } from '../../src/platform/paths.js';

const SECRET = 'x'.repeat(40);

describe('settings', () => {
  let dataDir: string;
  beforeEach(() => (dataDir = mkdtempSync(join(tmpdir(), 'bellcrank-config-'))));
  afterEach(() => rmSync(dataDir, { recursive: true, force: true }));

  it('have defaults that work on one machine', () => {
    expect(parseConfig({})).toMatchObject({
      port: 8087,
      host: '127.0.0.1',
      publicUrl: 'http://127.0.0.1:8087',
      logLevel: 'info',
      trustProxy: false,
    });
    expect(parseConfig({}).databaseUrl).toBeUndefined();
  });

  it('read every variable; an empty one counts as unset', () => {
    const env = {
      ...{
        PORT: '9000',
        HOST: '::',
        PUBLIC_URL: 'https://club.example/',
        DATABASE_URL: 'postgres://o:p@db:5432/b',
        BELLCRANK_SECRET: SECRET,
      },
      ...{
        DATABASE_SERVICE_URL: 'postgres://s:p@db:5432/b',
        DATABASE_POOL_MAX: '20',
        DATABASE_STATEMENT_TIMEOUT_MS: '500',
        BELLCRANK_BACKGROUND_WORK: 'off',
        TRUST_PROXY: '2',
      },
      ...{
        BELLCRANK_PG_PORT: '',
        LOG_LEVEL: 'debug',
        BELLCRANK_DATA_DIR: 'here',
      },
      ...{
        BELLCRANK_WEATHER_URL: 'https://weather.example/{kind}?of={stations}',
        BELLCRANK_WEATHER_TIMEOUT_MS: '1500',
        BELLCRANK_WEATHER_CACHE_SECONDS: '60',
      },
    };
    expect(parseConfig(env)).toEqual({
      ...{
        port: 9000,
        host: '::',
        publicUrl: 'https://club.example',
        databaseUrl: env.DATABASE_URL,
        databaseServiceUrl: env.DATABASE_SERVICE_URL,
      },
      ...{
        databasePoolMax: 20,
        databaseStatementTimeoutMs: 500,
        trustProxy: 2,
        backgroundWork: false,
        embeddedPort: undefined,
        logLevel: 'debug',
        secret: SECRET,
        dataDir: join(process.cwd(), 'here'),
      },
      weather: { url: env.BELLCRANK_WEATHER_URL, timeoutMs: 1500, cacheSeconds: 60 },
    });
  });

  it.each([
    ['PORT', 'eighty'],
    ['PORT', '70000'],
    ['HOST', 'a b'],
    ['PUBLIC_URL', 'club.example'],
    ['DATABASE_URL', 'mysql://x'],
    ['DATABASE_POOL_MAX', '0'],
    ['DATABASE_STATEMENT_TIMEOUT_MS', '-5'],
    ['BELLCRANK_BACKGROUND_WORK', 'yes'],
    ['BELLCRANK_PG_PORT', '0'],
    ['BELLCRANK_SECRET', 'short'],
    ['BELLCRANK_WEATHER_URL', 'https://weather.example/metar'],
    ['BELLCRANK_WEATHER_URL', 'weather.example/{kind}/{stations}'],
    ['BELLCRANK_WEATHER_TIMEOUT_MS', 'soon'],
    ['BELLCRANK_WEATHER_CACHE_SECONDS', '-1'],
    ['LOG_LEVEL', 'loud'],
    ['TRUST_PROXY', 'yes'],
  ])('refuse %s=%s, naming the variable and not the value', (name, value) => {
    let message = '';
    try {
      parseConfig({ BELLCRANK_SECRET: SECRET, [name]: value });
    } catch (error) {
      message = (error as Error).message;
    }
    expect(message).toMatch(new RegExp(`^${name} must `));
    expect(message).not.toContain(value === '0' ? 'value 0' : value);
  });

  it('refuse a misspelt variable, but not what a cluster injects', () => {
    expect(() => parseConfig({ BELLCRANK_DATADIR: '/x' })).toThrow(
      /BELLCRANK_DATADIR is not a setting.*BELLCRANK_DATA_DIR/,
    );
    expect(() =>
      parseConfig({
        BELLCRANK_SERVICE_HOST: '10.0.0.1',
        BELLCRANK_PORT: 'tcp://10.0.0.1:80',
        BELLCRANK_PORT_80_TCP: 'x',
      }),
    ).not.toThrow();
  });

  it('want a secret with an external database, and make one for the embedded database', () => {
    expect(() => parseConfig({ DATABASE_URL: 'postgres://o:p@db/b' })).toThrow(/BELLCRANK_SECRET is not/);
    expect(() => parseConfig({ DATABASE_SERVICE_URL: 'postgres://o:p@db/b' })).toThrow(/DATABASE_URL is not/);
    const env = { BELLCRANK_DATA_DIR: dataDir };
    const { secret } = loadConfig(env);
    expect(secret.length).toBeGreaterThanOrEqual(43);
    expect(loadConfig(env).secret).toBe(secret);
    const file = join(dataDir, 'signing-secret');
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(file, 'utf8').trim()).toBe(secret);
  });
});

describe('clock and paths', () => {
  it('give whole seconds in UTC', () => {
    expect(new Clock().now()).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    const clock = new FixedClock('2026-03-10T15:00:00Z');
    clock.set('2026-03-10T16:00:00Z');
    expect(clock.now()).toBe('2026-03-10T16:00:00Z');
  });

  it('find the project', () => {
    expect(JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')).name).toBe('bellcrank');
    expect(projectManifest().version).toMatch(/^\d+\.\d+\.\d+/);
  });
});
