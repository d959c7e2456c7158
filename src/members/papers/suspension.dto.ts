import { DayField, Shown } from '../../platform/http/fields.js';
import { ChangesOf, ViewOf } from '../../platform/http/views.js';

/** A time when a certificate gives no privileges. */
export class SuspensionDto {
  @DayField({ description: 'First day' })
  from: string;

  @DayField({ nullable: true, description: 'Last day; null while it is open' })
  to?: string | null;
}

/** Changes to a suspension. */
export class SuspensionChanges extends ChangesOf(SuspensionDto) {}

/** A suspension as the API shows it. */
export class SuspensionView extends ViewOf(SuspensionDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer' })
  rowVersion: number;
}
