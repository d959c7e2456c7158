import {
  type CallHandler,
  type ExecutionContext,
  HttpException,
  Injectable,
  type NestInterceptor,
} from '@nestjs/common';
import { FileInterceptor } from '@nestjs/platform-express';
import type { Request } from 'express';
import type { Observable } from 'rxjs';
import { TRACK_LIMIT_BYTES, trackMissing, trackTooLarge } from './track.problems.js';

/** Room for the boundaries and headers around the file. */
const AROUND_BYTES = 4096;

/** Reads one track of a form into memory; what is too large is refused by its announced length, or as soon as it grows too large. */
@Injectable()
export class TrackInterceptor implements NestInterceptor {
  private readonly form: NestInterceptor = new (FileInterceptor('track', {
    limits: {
      fileSize: TRACK_LIMIT_BYTES,
      ...{ files: 1, fields: 0, parts: 1, headerPairs: 20, fieldNameSize: 100 },
    },
  }))();

  async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
    const request = context.switchToHttp().getRequest<Request>();
    if (Number(request.headers['content-length'] ?? 0) > TRACK_LIMIT_BYTES + AROUND_BYTES)
      throw trackTooLarge();
    try {
      return await this.form.intercept(context, next);
    } catch (error) {
      if (!(error instanceof HttpException)) throw error;
      throw error.getStatus() === 413 ? trackTooLarge() : trackMissing();
    }
  }
}
