/** The description of these routes against OpenAPI 3.1 (validator: @seriousme/openapi-schema-validator). */
import { execFileSync } from 'node:child_process';
import { PROJECT_ROOT } from '../../src/platform/paths.js';
import type { Api } from '../support/api.js';
import { startFleetApi } from './fleet-scene.js';

type Schema = {
  $ref?: string;
  type?: string | string[];
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
};
interface Operation {
  operationId: string;
  summary: string;
  tags: string[];
  parameters?: { name: string; in: string }[];
  responses: Record<string, { content?: Record<string, { schema: Schema }> }>;
}

let api: Api;
let document: {
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, Schema> };
};
let operations: { path: string; method: string; of: Operation }[];

beforeAll(async () => {
  api = await startFleetApi();
  document = (await api.http.get('/api/v1/openapi.json').expect(200)).body;
  operations = Object.entries(document.paths)
    .filter(([path]) => /^\/api\/v1\/(club|airfields|policy|models|aircraft)\b/.test(path))
    .flatMap(([path, methods]) => Object.entries(methods).map(([method, of]) => ({ path, method, of })));
}, 60_000);
afterAll(() => api.stop());

it('is valid', () => {
  // In a process of its own: the validator is an ES module, which jest on Node 20 cannot load.
  const program = `
    import { Validator } from '@seriousme/openapi-schema-validator';
    import { readFileSync } from 'node:fs';
    console.log(JSON.stringify(await new Validator().validate(JSON.parse(readFileSync(0, 'utf8')))));`;
  const options = { input: JSON.stringify(document), cwd: PROJECT_ROOT };
  const result = execFileSync(process.execPath, ['--input-type=module', '-e', program], options).toString();
  expect(JSON.parse(result)).toEqual({ valid: true });
});

it('names every operation once and says what it does', () => {
  expect(operations.length).toBeGreaterThan(50);
  const ids = operations.map(({ of }) => of.operationId);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { of } of operations) {
    expect(of).toMatchObject({
      operationId: expect.stringMatching(/^[a-z][A-Za-z]+$/),
      summary: expect.any(String),
    });
    expect([of.operationId, of.tags]).toEqual([of.operationId, [expect.any(String)]]);
  }
});

/** What a person puts into force, or ends, is the text they looked at: these acts name its version too. */
const ACTS_ON_A_VERSION = ['activateClubRule', 'endClubRule'];

it('describes problems as problem documents, and If-Match where it is needed', () => {
  for (const { method, of } of operations) {
    for (const [status, response] of Object.entries(of.responses)) {
      if (!/^[45]/.test(status)) continue;
      expect([of.operationId, status, Object.keys(response.content ?? {})]).toEqual([
        of.operationId,
        status,
        ['application/problem+json'],
      ]);
    }
    const header = (of.parameters ?? []).some(({ name }) => name === 'If-Match');
    const edits = ['patch', 'put', 'delete'].includes(method) || ACTS_ON_A_VERSION.includes(of.operationId);
    expect([of.operationId, header]).toEqual([of.operationId, edits]);
    expect([of.operationId, '428' in of.responses, '412' in of.responses]).toEqual([
      of.operationId,
      header,
      header,
    ]);
  }
});

/** The schema behind a reference. */
const resolve = (schema: Schema): Schema => {
  const one = schema as Schema & { allOf?: Schema[]; anyOf?: Schema[] };
  const ref = one.$ref ?? one.allOf?.[0]?.$ref ?? one.anyOf?.[0]?.$ref;
  return ref ? document.components.schemas[ref.split('/').at(-1)!]! : schema;
};

it('gives every answer a body in which every field is present', () => {
  for (const { of } of operations) {
    const [status, response] = Object.entries(of.responses).find(([code]) => code.startsWith('2'))!;
    if (status === '204' || /^read(SquawkPhoto|Document)$/.test(of.operationId)) continue;
    const schema = resolve(response.content!['application/json']!.schema);
    const fields = Object.keys(schema.properties ?? {});
    expect([of.operationId, fields.length > 0]).toEqual([of.operationId, true]);
    expect([of.operationId, [...(schema.required ?? [])].sort()]).toEqual([of.operationId, fields.sort()]);
  }
});
