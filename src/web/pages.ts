import express, { type RequestHandler } from 'express';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { WEB_ASSETS_DIR } from '../platform/paths.js';

const NOT_PAGES = /^\/(api|health|problems)(\/|$)/;

/** Static files of the pages; any other address that a browser asks for as a page gets the page, which routes by itself. */
export function pages(): RequestHandler {
  const files = express.static(WEB_ASSETS_DIR, {
    index: 'index.html',
    setHeaders: (response, path) => {
      // Names of built assets carry a digest of their content, the page itself does not.
      const lasting = path.includes('/assets/');
      response.setHeader('Cache-Control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  return (request, response, next) => {
    if (NOT_PAGES.test(request.path) || (request.method !== 'GET' && request.method !== 'HEAD'))
      return next();
    const kind = /^\/assets\/[\w.-]+\.(js|css)$/.exec(request.path)?.[1];
    if (kind) {
      // Built beside it compressed; a reader who takes no gzip gets it as it is.
      response.setHeader('Vary', 'Accept-Encoding');
      if (request.acceptsEncodings('gzip') && existsSync(join(WEB_ASSETS_DIR, `${request.path}.gz`))) {
        response.setHeader('Content-Encoding', 'gzip');
        response.type(kind);
        request.url = request.url.replace(/\.(js|css)(?=$|\?)/, '.$1.gz');
      }
    }
    files(request, response, () => {
      const page = join(WEB_ASSETS_DIR, 'index.html');
      const isFile = /\.[a-z0-9]+$/i.test(request.path);
      if (isFile || request.accepts(['json', 'html']) !== 'html' || !existsSync(page)) return next();
      response.setHeader('Cache-Control', 'no-cache');
      response.sendFile(page);
    });
  };
}
