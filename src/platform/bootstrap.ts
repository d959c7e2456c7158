/** Builds the HTTP application; the same for the running service and for tests. */
import 'reflect-metadata';
import { RequestMethod, type DynamicModule, type Type } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { Logger, PinoLogger } from 'nestjs-pino';
import type { AppConfig } from './config.js';
import { accessLog } from './http/access-log.js';
import { isJsonType, requireJson } from './http/media-type.js';
import { refuseNul } from './http/no-nul.js';
import { requestId } from './http/request-id.js';
import { securityHeaders } from './http/security-headers.js';
import { withoutChatter } from './logging.js';
import { DOCS_PATH, serveOpenApi } from './openapi/serve.js';
import { BODY_LIMIT_BYTES } from './problems/http-problems.js';

/** First part of every API path. */
export const API_PREFIX = 'api/v1';

/** Options for creating the application; tests that build it through @nestjs/testing pass them too. */
export const APP_OPTIONS = { bodyParser: false, bufferLogs: true, abortOnError: false } as const;

/**
 * Creates and configures the application; the caller calls `listen` or, in tests, `init`.
 * @param rootModule `AppModule.register(config, database)`.
 */
export async function createApp(
  rootModule: DynamicModule | Type,
  config: AppConfig,
): Promise<NestExpressApplication> {
  return configureApp(await NestFactory.create<NestExpressApplication>(rootModule, APP_OPTIONS), config);
}

/** Middleware, prefix, body limits and API description on an application made with `APP_OPTIONS`. */
export function configureApp(app: NestExpressApplication, config: AppConfig): NestExpressApplication {
  app.useLogger(withoutChatter(app.get(Logger)));
  app.set('trust proxy', config.trustProxy);
  // Only rows with a version get an ETag, a strong one; Express would add weak ones to everything.
  app.set('etag', false);
  app.set('query parser', 'simple');
  app.disable('x-powered-by');
  app.use(
    requestId,
    accessLog(() => PinoLogger.root),
    securityHeaders(DOCS_PATH),
    requireJson,
  );
  app.useBodyParser('json', {
    limit: BODY_LIMIT_BYTES,
    type: (request: { headers: Record<string, unknown> }) =>
      isJsonType(
        String(request.headers['content-type'] ?? '')
          .split(';')[0]!
          .trim(),
      ),
  });
  app.use(refuseNul);
  app.setGlobalPrefix(API_PREFIX, {
    exclude: ['health/live', 'health/ready', 'problems', 'problems/:code'].map((path) => ({
      path,
      method: RequestMethod.GET,
    })),
  });
  serveOpenApi(app);
  return app;
}
