import type { OpenAPIObject } from '@nestjs/swagger';

type Schema = NonNullable<NonNullable<OpenAPIObject['components']>['schemas']>[string];

const FIELD_ERROR: Schema = {
  type: 'object',
  required: ['field', 'message'],
  properties: {
    field: { type: 'string', description: "Name of the field, as in 'legs[0].from', or of the header" },
    pointer: { type: 'string', description: 'JSON pointer (RFC 6901)' },
    in: { type: 'string', enum: ['body', 'query', 'path', 'header'] },
    message: { type: 'string', description: 'What to change' },
    line: {
      type: 'integer',
      minimum: 1,
      description: 'Line of the text at fault, where it is an expression',
    },
    column: { type: 'integer', minimum: 1, description: 'Column in that line' },
  },
};

/** Schema of every error answer (RFC 9457). */
export const PROBLEM_SCHEMA: Schema = {
  type: 'object',
  required: ['type', 'title', 'status', 'detail', 'instance', 'code', 'requestId'],
  properties: {
    type: { type: 'string', format: 'uri-reference', description: 'Page that explains this kind of problem' },
    title: { type: 'string' },
    status: { type: 'integer', minimum: 400, maximum: 599 },
    detail: { type: 'string', description: 'What is wrong this time and what to do' },
    instance: { type: 'string', format: 'uri-reference' },
    code: { type: 'string' },
    requestId: { type: 'string' },
    errors: { type: 'array', items: FIELD_ERROR },
  },
};
