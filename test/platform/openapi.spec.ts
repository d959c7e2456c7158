import { Body, Controller, Get, Post } from '@nestjs/common';
import { ApiOkResponse, ApiProperty } from '@nestjs/swagger';
import { IsIn, IsNumber, IsOptional } from 'class-validator';
import { execFileSync } from 'node:child_process';
import type { Server } from 'node:http';
import request from 'supertest';
import { IdempotencyKey, IfMatch } from '../../src/platform/http/index.js';
import { PROJECT_ROOT } from '../../src/platform/paths.js';
import { toOpenApi31 } from '../../src/platform/openapi/to-3-1.js';
import { startPlatform } from '../support/platform-app.js';

/** Validates in a process of its own: the validator is an ES module, which jest on Node 20 cannot load. */
function validate(document: string): { version: string; valid: boolean; errors?: unknown } {
  const program = `
    import { Validator } from '@seriousme/openapi-schema-validator';
    import { readFileSync } from 'node:fs';
    const validator = new Validator();
    const result = await validator.validate(JSON.parse(readFileSync(0, 'utf8')));
    console.log(JSON.stringify({ version: validator.version, ...result }));`;
  const output = execFileSync(process.execPath, ['--input-type=module', '-e', program], {
    input: document,
    cwd: PROJECT_ROOT,
  });
  return JSON.parse(output.toString()) as ReturnType<typeof validate>;
}

class PartDto {
  @ApiProperty() name: string;
}
class AskDto {
  @ApiProperty({ nullable: true, type: 'number', minimum: 0, exclusiveMinimum: true as never })
  @IsOptional()
  @IsNumber()
  hours?: number | null;
  @ApiProperty({ nullable: true, enum: ['a', 'b'] }) @IsOptional() @IsIn(['a', 'b']) kind?: 'a' | 'b' | null;
  @ApiProperty({ nullable: true, type: () => PartDto }) part: PartDto | null;
}

@Controller('asks')
class AsksController {
  @Get() @ApiOkResponse({ type: [AskDto] }) list(): AskDto[] {
    return [];
  }
  @Post() post(@Body() ask: AskDto, @IdempotencyKey() _key: string, @IfMatch() _version: number): AskDto {
    return ask;
  }
}

describe('the API description', () => {
  let platform: Awaited<ReturnType<typeof startPlatform>>;
  let http: ReturnType<typeof request>;
  beforeAll(async () => {
    platform = await startPlatform([AsksController]);
    http = request(platform.app.getHttpServer() as Server);
  }, 60_000);
  afterAll(() => platform?.stop());

  it('is valid OpenAPI 3.1 by the published schema, and holds nothing of 3.0', async () => {
    const response = await http.get('/api/v1/openapi.json').expect(200);
    // Checked against the OpenAPI Initiative's JSON schemas, which the validator package carries.
    expect(validate(response.text)).toEqual({ version: '3.1', valid: true });
    const broken = { ...response.body, paths: { '/x': { get: { responses: 7 } } } };
    expect(validate(JSON.stringify(broken)).valid).toBe(false);
    expect(response.text).not.toContain('nullable');
    const schema = response.body.components.schemas.AskDto.properties;
    expect(schema.hours).toMatchObject({ type: ['number', 'null'], exclusiveMinimum: 0 });
    expect(schema.kind.enum).toEqual(['a', 'b', null]);
    expect(schema.part).toEqual({ anyOf: [{ $ref: '#/components/schemas/PartDto' }, { type: 'null' }] });
  });

  it('describes headers, errors and the open routes', async () => {
    const { body } = await http.get('/api/v1/openapi.json').expect(200);
    const post = body.paths['/api/v1/asks'].post;
    expect(post.parameters.map((p: { name: string; required: boolean }) => [p.name, p.required])).toEqual(
      expect.arrayContaining([
        ['Idempotency-Key', true],
        ['If-Match', true],
      ]),
    );
    expect(post.responses.default.content).toHaveProperty(['application/problem+json']);
    expect(Object.keys(body.paths)).toEqual(
      expect.arrayContaining(['/health/live', '/health/ready', '/problems/{code}']),
    );
  });

  it('leaves data under example and default alone', () => {
    const schema = { type: 'object', example: { nullable: true }, default: { nullable: true } };
    expect(toOpenApi31(schema)).toEqual(schema);
  });

  it('has a page that needs nothing from elsewhere', async () => {
    const page = await http.get('/api/v1/docs').redirects(1).expect(200);
    expect(page.text).not.toMatch(/(src|href)="(https?:)?\/\//);
    expect(page.text).not.toMatch(/<script>|<script [^>]*>[^<\s]/);
    const scripts = [...page.text.matchAll(/(?:src|href)="([^"]+)"/g)].map((m) => m[1]!);
    for (const script of scripts)
      await http.get(new URL(script, 'http://x/api/v1/docs').pathname).expect(200);
    expect(page.headers['content-security-policy']).toContain("script-src 'self'");
  });
});
