import { randomUUID } from 'node:crypto';
import type { NextFunction, Request, Response } from 'express';

/** What an inbound X-Request-Id must look like to be kept: it ends up in logs and in answers. */
const SANE = /^[A-Za-z0-9._:-]{8,100}$/;

/** Gives each request an id: the sender's X-Request-Id when it is a sane one, else a new UUID. Answered in the same header. */
export function requestId(request: Request & { id?: unknown }, response: Response, next: NextFunction): void {
  const sent = request.header('X-Request-Id');
  const id = sent !== undefined && SANE.test(sent) ? sent : randomUUID();
  request.id = id;
  response.setHeader('X-Request-Id', id);
  next();
}
