import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { projectManifest } from '../paths.js';
import { PROBLEM_SCHEMA } from './problem-schema.js';
import { toOpenApi31 } from './to-3-1.js';

const METHODS = ['get', 'put', 'post', 'delete', 'patch', 'head', 'options'] as const;

/** Describes the API of an application as OpenAPI 3.1. */
export function buildOpenApi(app: INestApplication): OpenAPIObject {
  const { version, description } = projectManifest();
  const config = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Bellcrank')
    .setDescription(
      `${description}\n\nAnswers are an aid: the pilot in command, the certificated mechanic and local rules decide.`,
    )
    .setVersion(version)
    .addServer('/', 'This service')
    .addBearerAuth()
    .build();
  return withProblems(toOpenApi31(SwaggerModule.createDocument(app, config)));
}

/** Says once for all operations what an error looks like. */
function withProblems(document: OpenAPIObject): OpenAPIObject {
  document.components ??= {};
  document.components.schemas = { ...document.components.schemas, Problem: PROBLEM_SCHEMA };
  for (const item of Object.values(document.paths)) {
    for (const method of METHODS) {
      const operation = item[method];
      if (!operation) continue;
      operation.responses['default'] ??= {
        description: 'What went wrong and what to do about it',
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      };
    }
  }
  return document;
}
