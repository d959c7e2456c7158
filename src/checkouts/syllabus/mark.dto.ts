import {
  DayField,
  IdField,
  NoteField,
  PartField,
  Shown,
  SwitchField,
  TextField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ViewOf } from '../../platform/http/views.js';
import { PersonNamed } from '../requirements/requirement.dto.js';
import { OUTCOMES } from './mark.entity.js';

/** What was seen of an item. Who signs is the signed-in instructor. */
export class MarkSeenDto {
  @WordField(OUTCOMES, { description: "'not-yet' says in the note what is missing" })
  outcome: (typeof OUTCOMES)[number];

  @DayField({ optional: true, description: "The day it was shown; today in the club's zone unless given" })
  markedOn?: string;

  @NoteField({ optional: true, max: 1000 })
  note?: string;
}

/** An item signed, or not yet to standard. */
export class MarkDto extends MarkSeenDto {
  @IdField({ description: 'An item of a version in force' })
  itemId: string;

  @IdField({
    nullable: true,
    description: 'The change of an aircraft it is shown for, of the same equipment group',
  })
  differenceId?: string | null;
}

/** Another record in a record's place, or none. */
export class MarkCorrectionDto {
  @TextField({ max: 500, pattern: /^[\s\S]{5,}$/, says: 'at least 5 characters' })
  because: string;

  @PartField(() => MarkSeenDto, {
    nullable: true,
    description: 'Null: it is withdrawn, and nothing takes its place',
  })
  record?: MarkSeenDto | null;
}

/** A record as the API shows it. */
export class MarkView extends ViewOf(MarkDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string', format: 'uuid' })
  requirementId: string;

  @Shown({ type: 'integer' })
  versionNumber: number;

  @Shown({ type: 'string', description: 'Of the item' })
  title: string;

  @Shown({ type: () => PersonNamed })
  signedBy: PersonNamed;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The record it takes the place of' })
  corrects: string | null;

  @Shown({ type: 'string', nullable: true })
  because: string | null;

  @Shown({ type: 'boolean', description: 'It takes the place of another and leaves nothing there' })
  withdraws: boolean;

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  correctedBy: string | null;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** Narrows the list. */
export class MarkQuery extends PageQuery {
  @SwitchField({
    default: false,
    description: 'true: show corrected ones and withdrawals too',
  })
  corrected?: boolean;
}

/** One page of records, newest first. */
export class MarkPage extends PageShape {
  @Shown({ type: () => MarkView, isArray: true })
  items: MarkView[];
}
