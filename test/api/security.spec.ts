/** What a browser is told, and what it is not: headers of the page and of the API, no cookies, no other origins. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { startApi, type Api, type Session } from '../support/api.js';

const PAGE = join(__dirname, '../../dist/web/index.html');

describe('security', () => {
  let api: Api;
  let member: Session;

  beforeAll(async () => {
    api = await startApi();
    member = await (await api.createClub()).signInAs('member');
  });
  afterAll(() => api.stop());

  const POLICY: [string, string][] = [
    ['default-src', "'self'"],
    ['base-uri', "'none'"],
    ['form-action', "'self'"],
    ['frame-ancestors', "'none'"],
    ['object-src', "'none'"],
    ['script-src', "'self'"],
    ['script-src-attr', "'none'"],
    ['style-src', "'self'"],
  ];
  const policyOf = (header: string | undefined): Record<string, string> =>
    Object.fromEntries(
      (header ?? '').split(';').map((part) => {
        const [name, ...values] = part.trim().split(' ');
        return [name!, values.join(' ')];
      }),
    );

  // OWASP Secure Headers Project and the Content Security Policy Level 3 recommendation name these headers.
  test.each(['/', '/api/v1/club', '/api/v1/nothing-here', '/health/live'])(
    '%s carries the headers',
    async (path) => {
      const { headers } = await api.http
        .get(path)
        .set('Accept', 'text/html')
        .set('Origin', 'https://other.example');
      expect(policyOf(headers['content-security-policy'])).toMatchObject(Object.fromEntries(POLICY));
      expect(headers['content-security-policy']).not.toMatch(/unsafe|\*|http:/);
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
        'strict-transport-security': expect.stringMatching(/^max-age=\d{7,}/),
      });
      for (const absent of ['x-powered-by', 'set-cookie', 'access-control-allow-origin', 'server'])
        expect(headers).not.toHaveProperty(absent);
    },
  );

  test('a token counts in the Authorization header and nowhere else', async () => {
    await member.get('/club').expect(200);
    const { token } = member;
    await api.http.get('/api/v1/club').set('Cookie', `token=${token}; access_token=${token}`).expect(401);
    await api.http.get(`/api/v1/club?access_token=${token}`).expect(401);
    await api.http.get('/api/v1/club').set('X-Authorization', `Bearer ${token}`).expect(401);
  });

  test('another origin is not let in by a preflight', async () => {
    const { status, headers } = await api.http
      .options('/api/v1/decisions')
      .set('Origin', 'https://other.example')
      .set('Access-Control-Request-Method', 'POST');
    expect(status).toBeGreaterThanOrEqual(400);
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  test('the page is served and nothing beside it', async () => {
    expect(existsSync(PAGE)).toBe(true); // npm run build:web
    const { text, headers } = await api.http.get('/').set('Accept', 'text/html').expect(200);
    expect(headers['cache-control']).toBe('no-cache');
    expect(text).not.toMatch(/<script(?![^>]*\bsrc=)|\son\w+=|style=|https?:\/\//);
    await api.http.get('/calendar').set('Accept', 'text/html').expect(200);
    for (const path of [
      '/..%2fpackage.json',
      '/%2e%2e/%2e%2e/package.json',
      '/assets/..%2f..%2f..%2fpackage.json',
      '/.env',
      '/package.json',
      '/assets/%00',
      '/assets/..%5c..%5cpackage.json',
    ]) {
      const answer = await api.http.get(path).set('Accept', 'text/html');
      expect([path, answer.text.includes('"dependencies"')]).toEqual([path, false]);
      expect([path, [400, 403, 404].includes(answer.status)]).toEqual([path, true]);
      expect([path, answer.type]).toEqual([path, 'application/problem+json']);
    }
  });

  test('answers to signed-in people are kept by no cache', async () => {
    const { headers } = await member.get('/auth/me').expect(200);
    expect(headers['cache-control']).toBe('no-store');
    const body = { club: 'none', email: 'nobody@larkfield.example', password: 'x' };
    const tokens = await api.http.post('/api/v1/auth/sign-in').send(body).expect(401);
    expect(tokens.headers['cache-control']).toBe('no-store');
  });
});
