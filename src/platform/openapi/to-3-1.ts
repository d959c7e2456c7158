/** Rewrites what the generator still writes in the style of OpenAPI 3.0 into OpenAPI 3.1 (JSON Schema 2020-12). */

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };
type JsonObject = { [name: string]: Json };

const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A copy in which `nullable: true` has become a null type, and boolean `exclusiveMinimum` / `exclusiveMaximum` have
 * become bounds. Values under `example`, `examples`, `default`, `enum` and `const` are data and stay as they are.
 */
export function toOpenApi31<T>(document: T): T {
  return rewrite(JSON.parse(JSON.stringify(document)) as Json) as T;
}

const DATA = new Set(['example', 'examples', 'default', 'enum', 'const']);

function rewrite(value: Json): Json {
  if (Array.isArray(value)) return value.map(rewrite);
  if (!isObject(value)) return value;
  const copy: JsonObject = {};
  for (const [name, inner] of Object.entries(value)) copy[name] = DATA.has(name) ? inner : rewrite(inner);
  exclusiveBound(copy, 'exclusiveMinimum', 'minimum');
  exclusiveBound(copy, 'exclusiveMaximum', 'maximum');
  return typeof copy['nullable'] === 'boolean' ? withoutNullable(copy) : copy;
}

function exclusiveBound(schema: JsonObject, exclusive: string, bound: string): void {
  if (typeof schema[exclusive] !== 'boolean') return;
  const limit = schema[bound];
  const isExclusive = schema[exclusive];
  delete schema[exclusive];
  if (!isExclusive || limit === undefined) return;
  schema[exclusive] = limit;
  delete schema[bound];
}

function withoutNullable(schema: JsonObject): JsonObject {
  const { nullable, ...rest } = schema;
  if (nullable !== true) return rest;
  if (Array.isArray(rest['enum']) && !rest['enum'].includes(null)) rest['enum'] = [...rest['enum'], null];
  if (typeof rest['type'] === 'string') return { ...rest, type: [rest['type'], 'null'] };
  if (Array.isArray(rest['type'])) return { ...rest, type: [...new Set([...rest['type'], 'null'])] };
  const { description, ...target } = rest;
  if (!['$ref', 'allOf', 'oneOf', 'anyOf'].some((name) => name in target)) return rest; // no type: null is allowed already
  return { ...(description === undefined ? {} : { description }), anyOf: [target, { type: 'null' }] };
}
