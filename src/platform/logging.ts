import type { IncomingMessage } from 'node:http';
import { RequestMethod, type LoggerService } from '@nestjs/common';
import type { Params } from 'nestjs-pino';
import type { AppConfig } from './config.js';

/** Path of a request for the log: no query (it may hold a token), and long opaque segments (feed keys) hidden. */
export function loggablePath(url: string): string {
  return url.split('?')[0]!.replace(/[A-Za-z0-9_-]{37,}/g, '…');
}

/** The logger's settings. Requests are logged by `accessLog`; bodies, headers and tokens never are. */
export function loggingParams(config: Pick<AppConfig, 'logLevel'>): Params {
  return {
    forRoutes: [{ path: '{*path}', method: RequestMethod.ALL }],
    pinoHttp: {
      level: config.logLevel,
      autoLogging: false,
      genReqId: (request: IncomingMessage) => (request as IncomingMessage & { id?: string }).id ?? '',
      // What a handler logs carries the request's id and nothing else of it.
      quietReqLogger: true,
    },
  };
}

/** Contexts in which the framework tells at length how it starts. */
const FRAMEWORK_CHATTER = new Set([
  'NestFactory',
  'InstanceLoader',
  'RoutesResolver',
  'RouterExplorer',
  'NestApplication',
]);

/** Passes everything on but the framework's account of its own start, which becomes debug output. */
export function withoutChatter(logger: LoggerService): LoggerService {
  const pass =
    (level: 'log' | 'error' | 'warn' | 'debug' | 'verbose' | 'fatal') =>
    (message: unknown, ...rest: unknown[]) =>
      logger[level]?.(message, ...rest);
  return {
    log: (message: unknown, ...rest: unknown[]) =>
      FRAMEWORK_CHATTER.has(String(rest.at(-1)))
        ? logger.debug?.(message, ...rest)
        : logger.log(message, ...rest),
    error: pass('error'),
    warn: pass('warn'),
    debug: pass('debug'),
    verbose: pass('verbose'),
    fatal: pass('fatal'),
  };
}
