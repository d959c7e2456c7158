import type { NextFunction, Request, RequestHandler, Response } from 'express';
import helmet from 'helmet';

const directives = (styles: string[]) => ({
  defaultSrc: ["'self'"],
  baseUri: ["'none'"],
  connectSrc: ["'self'"],
  fontSrc: ["'self'"],
  formAction: ["'self'"],
  frameAncestors: ["'none'"],
  // data: for the small icons that a build folds into the style sheet.
  imgSrc: ["'self'", 'data:'],
  objectSrc: ["'none'"],
  scriptSrc: ["'self'"],
  scriptSrcAttr: ["'none'"],
  styleSrc: styles,
});

const withPolicy = (styles: string[]) =>
  helmet({
    contentSecurityPolicy: { useDefaults: false, directives: directives(styles) },
    // Other services of the same domain may still be without TLS.
    strictTransportSecurity: { includeSubDomains: false },
    referrerPolicy: { policy: 'same-origin' },
  }) as RequestHandler;

/**
 * Security headers; the API's answers are kept by no cache, and the content security policy lets pages load from this service only.
 * @param docsPath path of the API's description page, whose generated style blocks need inline styles.
 */
export function securityHeaders(docsPath: string): RequestHandler {
  const strict = withPolicy(["'self'"]);
  const docs = withPolicy(["'self'", "'unsafe-inline'"]);
  return (request: Request, response: Response, next: NextFunction) => {
    const { path } = request;
    // People's papers, and tokens (RFC 6749, section 5.1), stay in no cache, the browser's own included.
    if (path.startsWith('/api/')) response.setHeader('Cache-Control', 'no-store');
    (path === docsPath || path.startsWith(`${docsPath}/`) ? docs : strict)(request, response, next);
  };
}
