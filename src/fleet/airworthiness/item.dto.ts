import {
  DayField,
  FlagField,
  HoursField,
  IdField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import type { ItemFact, ItemKind } from '../../rules/index.js';
import { ITEM_KINDS, ITEM_SCOPES } from '../vocabulary.js';
import { ComplianceView } from './compliance.dto.js';

/** What an airworthiness item says of itself. Of several intervals, whichever comes first counts. */
export class NewItem {
  @WordField(ITEM_KINDS)
  kind: ItemKind;

  @TextField({ max: 200 })
  title: string;

  @TextField({ max: 200, nullable: true, description: 'Section, directive number or club paper' })
  reference?: string | null;

  @WordField(ITEM_SCOPES, { description: 'Flights it binds' })
  scope: ItemFact['scope'];

  @WholeField({ min: 1, max: 600, nullable: true, description: 'To the end of the month' })
  calendarMonths?: number | null;

  @WholeField({ min: 1, max: 600, nullable: true, description: 'To the same day of the month' })
  plainMonths?: number | null;

  @WholeField({ min: 1, max: 20_000, nullable: true })
  days?: number | null;

  @HoursField({ nullable: true, description: 'Hours of the inspection meter, more than 0' })
  intervalH?: number | null;

  @DayField({ nullable: true })
  fixedDueOn?: string | null;

  @HoursField({
    nullable: true,
    description:
      "Hours of the inspection meter at which it is due whatever was done before: a directive's first compliance",
  })
  fixedDueH?: number | null;

  @HoursField({
    optional: true,
    description: 'Overrun the rule allows, owed back (14 CFR 91.409(b)); 0 unless said otherwise',
  })
  toleranceH?: number;

  @FlagField({ optional: true, description: 'False: settled by one compliance. True unless said otherwise' })
  recurring?: boolean;

  @FlagField({
    optional: true,
    description: 'A directive that forbids special flight permits (14 CFR 39.23)',
  })
  ferryProhibited?: boolean;

  @IdField({ nullable: true, description: 'Equipment of this aircraft that it hangs on' })
  equipmentId?: string | null;

  @DayField({ nullable: true, description: 'First day it is asked for; always unless given' })
  since?: string | null;

  @DayField({ nullable: true, description: 'From this day on it is not asked for any more' })
  retiredOn?: string | null;
}

/** PATCH of an item. */
export class ItemChanges extends ChangesOf(NewItem) {}

/** An item as an answer. */
export class ItemView extends ViewOf(NewItem) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'The directive it comes from and is kept in step with',
  })
  directiveId: string | null;

  @Shown({
    type: () => ComplianceView,
    nullable: true,
    description: 'The newest compliance that is not void',
  })
  lastCompliance: ComplianceView | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of items. */
export class ItemPage extends PageShape {
  @Shown({ type: () => ItemView, isArray: true })
  items: ItemView[];
}
