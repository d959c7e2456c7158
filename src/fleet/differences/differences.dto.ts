import { DayField, Shown, TextField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';

/** A change of one aircraft's equipment that needs a differences sign-off. */
export class NewDifference {
  @TextField({ max: 200 })
  title: string;

  @DayField({ description: 'First day on which the changed equipment was in the aircraft' })
  since: string;

  @TextField({
    max: 120,
    description: "What kind of equipment changed, in words: 'glass panel', 'autopilot'",
  })
  equipmentGroup: string;

  @DayField({ nullable: true, description: 'First day on which it does not matter any more' })
  endedOn?: string | null;
}

/** PATCH of the same. */
export class DifferenceChanges extends ChangesOf(NewDifference) {}

/** A difference as an answer. */
export class DifferenceView extends ViewOf(NewDifference) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The equipment change behind it' })
  changeId: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of them. */
export class DifferencePage extends PageShape {
  @Shown({ type: () => DifferenceView, isArray: true })
  items: DifferenceView[];
}
