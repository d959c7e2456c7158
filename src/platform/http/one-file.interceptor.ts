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
  /** Name of the part that is the file. */
  field: string;
  limitBytes: number;
  /** Text fields beside the file, and how long they may be. */
  texts?: { most: number; limitBytes: number };
  tooLarge: () => Error;
  missing: () => Error;
}

/** Reads one file of a form into memory; what is too large is refused by its announced length, or as soon as it grows too large. */
export function oneFile({ field, limitBytes, texts, tooLarge, missing }: OneFile): Type<NestInterceptor> {
  return class OneFileInterceptor implements NestInterceptor {
    private readonly form: NestInterceptor = new (FileInterceptor(field, {
      limits: {
        fileSize: limitBytes,
        ...{ files: 1, fields: texts?.most ?? 0, parts: 1 + (texts?.most ?? 0) },
        ...{ fieldSize: texts?.limitBytes ?? 0, headerPairs: 20, fieldNameSize: 100 },
      },
    }))();

    async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
      const request = context.switchToHttp().getRequest<Request>();
      const most = limitBytes + AROUND_BYTES + (texts ? texts.most * texts.limitBytes : 0);
      if (Number(request.headers['content-length'] ?? 0) > most) throw tooLarge();
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
