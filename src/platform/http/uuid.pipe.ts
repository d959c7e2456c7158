import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { requireUuid } from '../database/tenant.js';

/** For path parameters that are identifiers: `@Param('id', UuidPipe) id: string`. 400 naming the parameter otherwise. */
@Injectable()
export class UuidPipe implements PipeTransform<unknown, string> {
  transform(value: unknown, metadata: ArgumentMetadata): string {
    requireUuid(metadata.data ?? 'id', value);
    return value.toLowerCase();
  }
}
