import type { INestApplication } from '@nestjs/common';
import { SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { buildOpenApi } from './document.js';

/** Where the API's description can be read by people. */
export const DOCS_PATH = '/api/v1/docs';
/** Where the API's description can be fetched by programs. */
export const OPENAPI_PATH = '/api/v1/openapi.json';

/** Serves the description as JSON and as a page. It is made at the first request for it. */
export function serveOpenApi(app: INestApplication): void {
  let made: OpenAPIObject | undefined;
  SwaggerModule.setup(DOCS_PATH, app, () => (made ??= buildOpenApi(app)), {
    jsonDocumentUrl: OPENAPI_PATH,
    raw: ['json'],
    customSiteTitle: 'Bellcrank API',
  });
}
