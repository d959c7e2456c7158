import { DayField, FlagField, NumberField, Shown, TextField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';

/** An upgrade that is wished for. */
export class NewWish {
  @TextField({ max: 200 })
  title: string;

  @NumberField({ min: 0.5, max: 60, description: 'Days in the shop' })
  shopDays: number;

  @NumberField({ max: 10_000, description: 'Hours of flying it is worth to the club' })
  worthHours: number;

  @DayField({ nullable: true, description: 'Day the parts are there; they are, unless given' })
  partsOn?: string | null;

  @FlagField({
    optional: true,
    description:
      'It waits for the annual inspection; false: any shop visit will do. True unless said otherwise',
  })
  withAnnual?: boolean;

  @DayField({ nullable: true, description: 'Day it was done; it is planned no more' })
  doneOn?: string | null;
}

/** PATCH of a wish. */
export class WishChanges extends ChangesOf(NewWish) {}

/** A wish as an answer. */
export class WishView extends ViewOf(NewWish) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of wishes. */
export class WishPage extends PageShape {
  @Shown({ type: () => WishView, isArray: true })
  items: WishView[];
}
