/** The operations of the served API description, in a form that tests can walk over. */

/** A schema of the description, as far as the walk needs it. */
export interface Schema {
  $ref?: string;
  type?: string | string[];
  format?: string;
  enum?: unknown[];
  items?: Schema;
  properties?: Record<string, Schema>;
  required?: string[];
  allOf?: Schema[];
  oneOf?: Schema[];
  anyOf?: Schema[];
  maxLength?: number;
}

/** One parameter of an operation. */
export interface Parameter {
  name: string;
  in: 'path' | 'query' | 'header';
  required?: boolean;
  schema?: Schema;
}

/** One operation. */
export interface Operation {
  id: string;
  method: string;
  path: string;
  open: boolean;
  parameters: Parameter[];
  /** Name and fields of the body's schema; null for an operation without a body. */
  body: { name: string; schema: Schema } | null;
  /** Whether an If-Match is needed. */
  versioned: boolean;
}

/** The parts of an OpenAPI document that are read here. */
export interface Description {
  paths: Record<
    string,
    Record<
      string,
      {
        operationId: string;
        security?: unknown[];
        parameters?: Parameter[];
        requestBody?: { content: Record<string, { schema: Schema }> };
      }
    >
  >;
  components: { schemas: Record<string, Schema> };
}

/** Every operation, in the document's order. */
export function operationsOf(description: Description): Operation[] {
  return Object.entries(description.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { operationId, security, parameters = [], requestBody }]) => {
      const schema = requestBody?.content['application/json']?.schema;
      return {
        id: operationId,
        method: method.toUpperCase(),
        path,
        open: security === undefined || security.length === 0,
        parameters,
        body: schema
          ? { name: schema.$ref?.split('/').at(-1) ?? '?', schema: resolve(description, schema) }
          : null,
        versioned: parameters.some((parameter) => parameter.name === 'If-Match'),
      };
    }),
  );
}

/** The schema behind references and single-part compositions. */
export function resolve(description: Description, schema: Schema): Schema {
  if (schema.$ref)
    return resolve(description, description.components.schemas[schema.$ref.split('/').at(-1)!]!);
  if (schema.allOf?.length === 1) return resolve(description, schema.allOf[0]!);
  return schema;
}

/** The types a schema allows, without null. */
export const typesOf = (schema: Schema): string[] =>
  [schema.type ?? []].flat().filter((type) => type !== 'null');

/** Names of the body's fields that hold an identifier; a list of them is named with [] behind. */
export function idFieldsOf({ body }: Operation): string[] {
  return Object.entries(body?.schema.properties ?? {}).flatMap(([name, field]) => {
    if (field.format === 'uuid') return [name];
    return field.items?.format === 'uuid' ? [`${name}[]`] : [];
  });
}
