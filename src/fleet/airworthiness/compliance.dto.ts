import {
  DayField,
  HoursField,
  NumberField,
  PartField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { RecordHead, ViewOf } from '../../platform/http/views.js';
import type { ItemDetail } from '../../rules/index.js';
import { VOR_METHODS } from '../vocabulary.js';

/** What the record says beyond date and hours: VOR check (14 CFR 91.171(d)), ELT battery (14 CFR 91.207(c)). */
export class ComplianceDetail implements ItemDetail {
  @WordField(VOR_METHODS, { optional: true })
  vorMethod?: ItemDetail['vorMethod'];

  @NumberField({ min: -180, max: 180, optional: true, description: 'Bearing error' })
  vorErrorDeg?: number;

  @TextField({ max: 200, optional: true })
  vorPlace?: string;

  @TextField({ max: 200, optional: true })
  vorSignedBy?: string;

  @DayField({ optional: true, description: 'Day the battery was new' })
  eltBatteryNewOn?: string;

  @DayField({ optional: true })
  eltBatteryUsefulLifeEndsOn?: string;

  @DayField({ optional: true, description: 'As marked on the transmitter' })
  eltBatteryReplaceOn?: string;

  @WholeField({ max: 100_000, optional: true, description: 'Cumulative use since the battery was new' })
  eltUseMinutes?: number;
}

/** An item done once. */
export class NewCompliance {
  @DayField({ description: 'Today or earlier' })
  doneOn: string;

  @HoursField({
    nullable: true,
    description: 'Hours of the inspection meter; needed where the item counts hours',
  })
  doneH?: number | null;

  @HoursField({
    nullable: true,
    description:
      'Hours at which it had been due, when it was done late: the overrun shortens the next interval',
  })
  dueH?: number | null;

  @PartField(() => ComplianceDetail, { nullable: true })
  detail?: ComplianceDetail | null;

  @TextField({ max: 2000, description: 'The statement in the maintenance record' })
  statement: string;

  @TextField({ max: 200, description: 'Name and certificate of who signed' })
  signedBy: string;
}

/** A compliance as an answer. */
export class ComplianceView extends ViewOf(NewCompliance) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  itemId: string;

  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'Since when it does not count' })
  voidedAt: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of compliances, newest record first. */
export class CompliancePage extends PageShape {
  @Shown({ type: () => ComplianceView, isArray: true })
  items: ComplianceView[];
}
