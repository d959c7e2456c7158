import type { NextFunction, Request, RequestHandler, Response } from 'express';
import type { PinoLogger } from 'nestjs-pino';
import { loggablePath } from '../logging.js';

/**
 * One line per request, whatever answered it: method, path, status, duration, request id. Health checks are left out.
 * @param logger asked for at each request, because it exists only once the application was made.
 */
export function accessLog(
  logger: () => Pick<PinoLogger['logger'], 'info' | 'error'> | undefined,
): RequestHandler {
  return (request: Request & { id?: unknown }, response: Response, next: NextFunction) => {
    const path = loggablePath(request.originalUrl);
    if (path.startsWith('/health/')) return next();
    const begun = performance.now();
    response.once('close', () => {
      const line = {
        requestId: request.id,
        ...{ method: request.method, path, status: response.statusCode },
        ms: Math.round(performance.now() - begun),
      };
      const level = response.statusCode >= 500 ? 'error' : 'info';
      logger()?.[level](line, response.writableFinished ? 'answered' : 'client went away');
    });
    next();
  };
}
