import {
  type CallHandler,
  type ExecutionContext,
  HttpException,
  type NestInterceptor,
  type Type,
} from '@nestjs/common';
import { FileInterceptor } from '@nestjs/platform-express';
import type { Request } from 'express';
import type { Observable } from 'rxjs';

/** Room for the boundaries and headers around the file. */
const AROUND_BYTES = 4096;

/** What a form with one file is refused with. */
export interface OneFile {
  /** Name of the form's only part. */
  field: string;
  limitBytes: number;
  tooLarge: () => Error;
  missing: () => Error;
}

/** Reads one file of a form into memory; what is too large is refused by its announced length, or as soon as it grows too large. */
export function oneFile({ field, limitBytes, tooLarge, missing }: OneFile): Type<NestInterceptor> {
  return class OneFileInterceptor implements NestInterceptor {
    private readonly form: NestInterceptor = new (FileInterceptor(field, {
      limits: {
        fileSize: limitBytes,
        ...{ files: 1, fields: 0, parts: 1, headerPairs: 20, fieldNameSize: 100 },
      },
    }))();

    async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
      const request = context.switchToHttp().getRequest<Request>();
      if (Number(request.headers['content-length'] ?? 0) > limitBytes + AROUND_BYTES) throw tooLarge();
      try {
        return await this.form.intercept(context, next);
      } catch (error) {
        // Whatever the form's reader objects to is about the form: too large, or not one file.
        if (!(error instanceof HttpException)) throw error;
        throw error.getStatus() === 413 ? tooLarge() : missing();
      }
    }
  };
}
