import { DayField, Shown, TextField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';

/** A special flight permit (14 CFR 21.197). */
export class NewPermit {
  @DayField()
  validFrom: string;

  @DayField({ description: 'Last day' })
  validThrough: string;

  @TextField({ max: 500, description: 'The flight it is for, with its limits' })
  purpose: string;
}

/** PATCH of the same. */
export class PermitChanges extends ChangesOf(NewPermit) {}

/** A special flight permit as an answer. */
export class PermitView extends ViewOf(NewPermit) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of them. */
export class PermitPage extends PageShape {
  @Shown({ type: () => PermitView, isArray: true })
  items: PermitView[];
}
