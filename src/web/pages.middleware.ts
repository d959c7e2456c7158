import { Injectable, type NestMiddleware } from '@nestjs/common';
import express, { type NextFunction, type Request, type RequestHandler, type Response } from 'express';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { WEB_ASSETS_DIR } from '../platform/paths.js';

const NOT_PAGES = /^\/(api|health|problems)(\/|$)/;

/** Static files of the pages; any other address that a browser asks for as a page gets the page, which routes by itself. */
@Injectable()
export class PagesMiddleware implements NestMiddleware {
  private readonly files: RequestHandler = express.static(WEB_ASSETS_DIR, {
    index: 'index.html',
    setHeaders: (response, path) => {
      // Names of built assets carry a digest of their content, the page itself does not.
      response.setHeader(
        'Cache-Control',
        path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      );
    },
  });

  use(request: Request, response: Response, next: NextFunction): void {
    const path = request.originalUrl.split('?')[0] ?? '/';
    if (NOT_PAGES.test(path) || (request.method !== 'GET' && request.method !== 'HEAD')) return next();
    // Middleware of a module sees its own mount point; the files need the whole path.
    request.url = request.originalUrl;
    void this.files(request, response, () => {
      const page = join(WEB_ASSETS_DIR, 'index.html');
      if (request.accepts(['html', 'json']) === 'html' && !/\.[a-z0-9]+$/i.test(path) && existsSync(page)) {
        response.setHeader('Cache-Control', 'no-cache');
        response.sendFile(page);
        return;
      }
      next();
    });
  }
}
