import { Body, Controller, Get, HttpException, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { ThrottlerException } from '@nestjs/throttler';
import { Type } from 'class-transformer';
import { IsArray, IsInt, IsOptional, IsString, Max, Min, ValidateNested } from 'class-validator';
import type { Server } from 'node:http';
import request from 'supertest';
import { TenantDb } from '../../src/platform/database/index.js';
import { registerConstraint } from '../../src/platform/database/index.js';
import {
  IdempotencyKey,
  IfMatch,
  IsHoursTenths,
  IsInstant,
  IsLocalDate,
  PageQuery,
  pageOf,
  readCursor,
  requireVersion,
  UuidPipe,
} from '../../src/platform/http/index.js';
import { ProblemException } from '../../src/platform/problems/index.js';
import { startPlatform } from '../support/platform-app.js';

class LegDto {
  @ApiProperty() @IsString() from: string;
  @ApiProperty() @IsInt() @Min(1) @Max(9) seats: number;
}
class TripDto {
  @ApiProperty() @IsInstant() departs: string;
  @ApiProperty() @IsOptional() @IsLocalDate() on?: string;
  @ApiProperty() @IsOptional() @IsHoursTenths() hours?: number;
  @ApiProperty({ type: [LegDto] })
  @IsArray()
  @ValidateNested({ each: true })
  @Type(() => LegDto)
  legs: LegDto[];
}

const CLUB = '0190a5c2-7d1e-7c3a-9b4f-2f6d1c0a9e11';
const IDS = [1, 2, 3].map((n) => `0190a5c2-7d1e-7c3a-9b4f-00000000000${n}`);
const insertClub = (slug: string) =>
  `INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES (gen_random_uuid(), '${slug}', 'Alpha', 'Etc/UTC', 'US')`;

@Controller('trips')
class TripsController {
  constructor(private readonly db: TenantDb) {}

  @Post() create(@Body() trip: TripDto): TripDto {
    return trip;
  }
  @Get() list(@Query() query: PageQuery) {
    const after = readCursor(query.cursor);
    const rows = IDS.filter((id) => after === null || id > after).slice(0, query.limit + 1);
    return pageOf(
      rows.map((id) => ({ id })),
      query.limit,
    );
  }
  @Get('versioned') versioned() {
    return { id: CLUB, rowVersion: 7 };
  }
  @Patch('versioned') edit(@IfMatch() version: number) {
    requireVersion(7, version);
    return { id: CLUB, rowVersion: 8 };
  }
  @Post('once') once(@IdempotencyKey() key: string) {
    return { key };
  }
  @Get('crash') crash() {
    throw new Error('SELECT secret FROM vault');
  }
  @Get('limited') limited() {
    throw new ThrottlerException();
  }
  @Get('teapot') teapot() {
    throw new HttpException('Short and stout.', 418);
  }
  @Get('own') own() {
    throw new ProblemException('trip-odd', {
      status: 409,
      title: 'Odd trip',
      detail: 'Make it even.',
      field: 'legs[0].from',
      extensions: { status: 1, odd: 3 },
    });
  }
  @Get('sql/:what') async sql(@Param('what') what: string) {
    const statement = {
      syntax: 'SELEC 1',
      uuid: `SELECT 'x'::uuid`,
      check: insertClub('NOT A SLUG'),
      slow: 'SELECT pg_sleep(5)',
    }[what]!;
    await this.db.run(CLUB, (em) => em.query(statement), { statementTimeoutMs: 150 });
  }
  @Get(':id') one(@Param('id', UuidPipe) id: string) {
    return { id };
  }
}

describe('the HTTP layer', () => {
  let platform: Awaited<ReturnType<typeof startPlatform>>;
  let http: ReturnType<typeof request>;
  beforeAll(async () => {
    registerConstraint({
      constraint: 'clubs_slug_chk',
      code: 'club-slug-malformed',
      status: 422,
      title: 'Short name not possible',
      detail: 'Use a to z, 0 to 9 and dashes.',
      field: 'slug',
    });
    platform = await startPlatform([TripsController]);
    http = request(platform.app.getHttpServer() as Server);
  }, 60_000);
  afterAll(() => platform?.stop());

  const trips = '/api/v1/trips';
  const good = { departs: '2026-03-01T12:00:00+01:00', legs: [{ from: 'XKA', seats: 2 }] };

  /** Checks what every problem has, and returns the document. */
  const problem = (response: request.Response, status: number, code: string) => {
    expect(response.status).toBe(status);
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(response.body).toMatchObject({
      type: `/problems/${code}`,
      status,
      code,
      title: expect.any(String),
      detail: expect.any(String),
    });
    expect(response.body.requestId).toBe(response.headers['x-request-id']);
    expect(response.text).not.toMatch(/SELECT|INSERT|node_modules|at \w+ \(/);
    return response.body;
  };

  it('rewrites instants to UTC', async () => {
    const response = await http.post(trips).send(good).expect(201);
    expect(response.body.departs).toBe('2026-03-01T11:00:00Z');
  });

  it('lists every refused field with a JSON pointer', async () => {
    const body = {
      departs: '2026-02-30T12:00:00Z',
      on: '2026-02-29',
      hours: 1.25,
      legs: [{ from: 'XKA', seats: 0, wings: 2 }],
      engine: 1,
    };
    const document = problem(await http.post(trips).send(body), 400, 'validation-failed');
    const places = document.errors.map((e: { field: string; pointer: string; in: string }) => [
      e.field,
      e.pointer,
      e.in,
    ]);
    expect(places).toEqual(
      expect.arrayContaining([
        ['departs', '/departs', 'body'],
        ['on', '/on', 'body'],
        ['hours', '/hours', 'body'],
        ['legs[0].seats', '/legs/0/seats', 'body'],
        ['legs[0].wings', '/legs/0/wings', 'body'],
        ['engine', '/engine', 'body'],
      ]),
    );
    expect(places).toHaveLength(6);
    expect(document.instance).toBe(trips);
  });

  it.each([
    ['an array', '[]'],
    ['a null', 'null'],
    ['a text', '"x"'],
    ['nothing', undefined],
  ])('refuses %s where an object is due', async (_name, text) => {
    const call = http.post(trips).set('Content-Type', 'application/json');
    const response = await (text === undefined ? call.send() : call.send(text));
    expect(response.status).toBe(400);
    expect(['validation-failed', 'malformed-json']).toContain(response.body.code);
  });

  it('tells malformed JSON, too much, wrong type and wrong character set apart', async () => {
    const post = (type: string, text: string) => http.post(trips).set('Content-Type', type).send(text);
    problem(await post('application/json', '{"a":'), 400, 'malformed-json');
    const large = problem(
      await post('application/json', JSON.stringify({ a: 'x'.repeat(300_000) })),
      413,
      'body-too-large',
    );
    expect(large.detail).toContain('256 kB');
    problem(await post('text/plain', 'a'), 415, 'unsupported-media-type');
    problem(await post('application/x-www-form-urlencoded', 'a=1'), 415, 'unsupported-media-type');
    problem(await post('application/json; charset=latin-9', '{}'), 415, 'unsupported-media-type');
    problem(
      await http
        .post(trips)
        .set('Content-Type', 'application/json')
        .set('Content-Encoding', 'zip')
        .send('{}'),
      415,
      'unsupported-media-type',
    );
  });

  it('names the field that holds a zero byte', async () => {
    const body = problem(
      await http.post(trips).send({ ...good, legs: [{ from: 'A\0', seats: 1 }] }),
      400,
      'nul-byte',
    );
    expect(body.errors[0]).toMatchObject({ field: 'legs[0].from', pointer: '/legs/0/from', in: 'body' });
    const query = problem(await http.get(`${trips}?cursor=a%00b`), 400, 'nul-byte');
    expect(query.errors[0]).toMatchObject({ field: 'cursor', in: 'query' });
    problem(await http.get(`${trips}/a%00b`), 400, 'nul-byte');
  });

  it('tells an unknown address, a wrong method and a broken address apart', async () => {
    problem(await http.get('/api/v1/nowhere'), 404, 'not-found');
    problem(await http.get('/nowhere'), 404, 'not-found');
    const response = await http.delete(trips);
    problem(response, 405, 'method-not-allowed');
    expect(response.headers['allow']).toBe('GET, HEAD, POST');
    problem(await http.get(`${trips}/%zz`), 400, 'malformed-request');
    const id = problem(await http.get(`${trips}/17`), 400, 'identifier-malformed');
    expect(id.errors[0].field).toBe('id');
  });

  it('hides what went wrong inside, and keeps what the code meant to say', async () => {
    problem(await http.get(`${trips}/crash`), 500, 'unexpected');
    const limited = await http.get(`${trips}/limited`);
    problem(limited, 429, 'too-many-requests');
    expect(limited.headers['retry-after']).toBe('60');
    expect((await http.get(`${trips}/teapot`)).status).toBe(418);
    const own = problem(await http.get(`${trips}/own`), 409, 'trip-odd');
    expect(own).toMatchObject({
      detail: 'Make it even.',
      odd: 3,
      errors: [{ field: 'legs[0].from', pointer: '/legs/0/from' }],
    });
  });

  it('translates what the database refuses', async () => {
    problem(await http.get(`${trips}/sql/syntax`), 500, 'unexpected');
    problem(await http.get(`${trips}/sql/uuid`), 422, 'value-refused');
    const slow = await http.get(`${trips}/sql/slow`);
    problem(slow, 503, 'database-too-slow');
    expect(slow.headers['retry-after']).toBe('5');
    // The service role may not insert clubs at all: a missing grant is our fault, not the client's.
    problem(await http.get(`${trips}/sql/check`), 500, 'unexpected');
  });

  it('pages with an opaque cursor', async () => {
    const first = await http.get(`${trips}?limit=2`).expect(200);
    expect(first.body.items.map((i: { id: string }) => i.id)).toEqual(IDS.slice(0, 2));
    const second = await http.get(`${trips}?limit=2&cursor=${first.body.nextCursor}`).expect(200);
    expect(second.body).toEqual({ items: [{ id: IDS[2] }], nextCursor: null });
    problem(
      await http.get(`${trips}?cursor=${Buffer.from('[1]').toString('base64url')}`),
      400,
      'cursor-malformed',
    );
    for (const limit of ['0', '201', '1.5', 'many', '-1']) {
      const document = problem(await http.get(`${trips}?limit=${limit}`), 400, 'validation-failed');
      expect(document.errors[0]).toMatchObject({ field: 'limit', in: 'query' });
    }
  });

  it('locks optimistically with ETag and If-Match', async () => {
    const got = await http.get(`${trips}/versioned`).expect(200);
    expect(got.headers['etag']).toBe('"7"');
    await http.get(`${trips}/versioned`).set('If-None-Match', '"7"').expect(304);
    problem(await http.patch(`${trips}/versioned`), 428, 'if-match-missing');
    problem(await http.patch(`${trips}/versioned`).set('If-Match', '*'), 428, 'if-match-missing');
    for (const stale of ['"6"', 'W/"7"', '7', '"7", "8"']) {
      problem(await http.patch(`${trips}/versioned`).set('If-Match', stale), 412, 'edit-conflict');
    }
    const edited = await http.patch(`${trips}/versioned`).set('If-Match', '"7"').expect(200);
    expect(edited.headers['etag']).toBe('"8"');
  });

  it('needs an idempotency key where the route says so', async () => {
    const missing = problem(await http.post(`${trips}/once`), 400, 'idempotency-key-missing');
    expect(missing.errors[0].field).toBe('Idempotency-Key');
    problem(await http.post(`${trips}/once`).set('Idempotency-Key', 'a b'), 400, 'idempotency-key-missing');
    problem(
      await http.post(`${trips}/once`).set('Idempotency-Key', 'k'.repeat(129)),
      400,
      'idempotency-key-missing',
    );
    await http.post(`${trips}/once`).set('Idempotency-Key', 'k'.repeat(128)).expect(201);
  });

  it('keeps a sane request id and replaces any other', async () => {
    const kept = await http.get('/health/live').set('X-Request-Id', 'trace-0001.a');
    expect(kept.headers['x-request-id']).toBe('trace-0001.a');
    const replaced = await http.get('/health/live').set('X-Request-Id', '<script>alert(1)</script>');
    expect(replaced.headers['x-request-id']).toMatch(/^[0-9a-f-]{36}$/);
  });

  it('sends security headers that allow this service only', async () => {
    const { headers } = await http.get('/health/live').expect(200, { status: 'alive' });
    expect(headers['content-security-policy']).toContain("default-src 'self'");
    expect(headers['content-security-policy']).toContain("script-src 'self'");
    expect(headers['content-security-policy']).not.toContain('unsafe');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['x-powered-by']).toBeUndefined();
  });

  it('explains every kind of problem', async () => {
    const one = await http.get('/problems/edit-conflict').expect(200);
    expect(one.body).toMatchObject({ code: 'edit-conflict', status: 412 });
    const all = await http.get('/problems').expect(200);
    expect(all.body.items.map((k: { code: string }) => k.code)).toContain('club-slug-malformed');
    problem(await http.get('/problems/none-such'), 404, 'not-found');
  });

  it('is ready only while the database answers', async () => {
    await http.get('/health/ready').expect(200, { status: 'ready' });
    // The server lets only superusers into this database from now on, and ends the present ones.
    await platform.db.admin.query(`ALTER DATABASE ${platform.db.name} CONNECTION LIMIT 0`);
    await platform.db.admin.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = $1 AND pid <> pg_backend_pid()`,
      [platform.db.name],
    );
    try {
      problem(await http.get('/health/ready'), 503, 'database-unavailable');
      await http.get('/health/live').expect(200);
    } finally {
      await platform.db.admin.query(`ALTER DATABASE ${platform.db.name} CONNECTION LIMIT -1`);
    }
    await http.get('/health/ready').expect(200);
  });
});
