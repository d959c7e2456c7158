import { DayField, NoteField, NumberField, Shown, WordField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { RecordHead, ViewOf } from '../../platform/http/views.js';
import { WEIGHING_SOURCES, type WeighingSource } from './weighing.entity.js';

/** Empty weight and its arm, from the day they hold. */
export class WeighingFigures {
  @DayField({ description: 'First day it holds; today or earlier' })
  effectiveOn: string;

  @NumberField({ min: 1, max: 1_000_000, description: 'Pounds' })
  emptyWeightLb: number;

  @NumberField({
    min: -1000,
    max: 2000,
    nullable: true,
    description: 'Inches aft of the datum; without it nothing is said of the centre of gravity',
  })
  emptyArmIn?: number | null;

  @NoteField({ optional: true, max: 500, description: 'Where the record is' })
  note?: string;
}

/** POST of a weighing. */
export class NewWeighing extends WeighingFigures {
  @WordField(['weighing', 'computed'], { description: 'Weighed on scales, or computed from the last one' })
  source: Exclude<WeighingSource, 'equipment-change'>;
}

/** A weighing as an answer. */
export class WeighingView extends ViewOf(WeighingFigures) {
  @Shown({ type: 'string', enum: [...WEIGHING_SOURCES] })
  source: WeighingSource;

  @Shown({ type: 'number', nullable: true, description: 'Weight times arm, pound-inches' })
  emptyMomentLbIn: number | null;

  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The equipment change behind it' })
  changeId: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'Since when it does not count' })
  voidedAt: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of weighings, newest record first. */
export class WeighingPage extends PageShape {
  @Shown({ type: () => WeighingView, isArray: true })
  items: WeighingView[];
}
