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
import { PHOTO_LIMIT_BYTES, photoMissing, photoTooLarge } from './attachment.problems.js';

/** Room for the boundaries and headers around the photo. */
const AROUND_BYTES = 4096;

/** Reads one photo of a form into memory; what is too large is refused by its announced length, or as soon as it grows too large. */
@Injectable()
export class PhotoInterceptor implements NestInterceptor {
  private readonly form: NestInterceptor = new (FileInterceptor('photo', {
    limits: {
      fileSize: PHOTO_LIMIT_BYTES,
      ...{ files: 1, fields: 0, parts: 1, headerPairs: 20, fieldNameSize: 100 },
    },
  }))();

  async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
    const request = context.switchToHttp().getRequest<Request>();
    if (Number(request.headers['content-length'] ?? 0) > PHOTO_LIMIT_BYTES + AROUND_BYTES)
      throw photoTooLarge();
    try {
      return await this.form.intercept(context, next);
    } catch (error) {
      // Whatever the form's reader objects to is about the form: too large, or not one photo.
      if (!(error instanceof HttpException)) throw error;
      throw error.getStatus() === 413 ? photoTooLarge() : photoMissing();
    }
  }
}
