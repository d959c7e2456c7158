import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Validator } from '@seriousme/openapi-schema-validator';
import { startApi, type Api } from '../support/api.js';

const COMMITTED = join(__dirname, '../../src/platform/openapi/openapi.json');
const WRITING = process.env['BELLCRANK_TEST_WRITE_OPENAPI'] === '1';

interface Operation {
  operationId?: string;
  summary?: string;
  tags?: string[];
  responses: Record<string, unknown>;
}

/** The description of the API. After a wanted change: npm run openapi:write, and read the difference. */
describe('OpenAPI', () => {
  let api: Api;
  let served: { openapi: string; paths: Record<string, Record<string, Operation>> };

  beforeAll(async () => {
    api = await startApi();
    ({ body: served } = await api.http.get('/api/v1/openapi.json').expect(200));
    if (WRITING) writeFileSync(COMMITTED, `${JSON.stringify(served, null, 2)}\n`);
  });
  afterAll(() => api.stop());

  test('is a valid 3.1 document by the published schema', async () => {
    expect(served.openapi).toMatch(/^3\.1\./);
    const result = await new Validator().validate(
      JSON.parse(JSON.stringify(served)) as Record<string, unknown>,
    );
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
  });

  test('is the committed one', () => {
    expect(JSON.parse(readFileSync(COMMITTED, 'utf8'))).toEqual(served);
  });

  test('names, sums up and tags every operation once', () => {
    const operations = Object.entries(served.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, operation]) => ({ at: `${method} ${path}`, ...operation })),
    );
    expect(operations.length).toBeGreaterThan(80);
    expect(
      operations.filter((one) => !one.operationId || !one.summary || !one.tags?.length).map((one) => one.at),
    ).toEqual([]);
    const ids = operations.map((one) => one.operationId);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
});
