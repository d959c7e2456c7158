import { ApiProperty } from '@nestjs/swagger';
import { ArrayMaxSize, ArrayMinSize, ArrayUnique, IsArray, IsString, MaxLength } from 'class-validator';
import { DayField, Shown, WordField } from '../../../platform/http/fields.js';
import { ChangesOf, RecordHead, SomeOf, ViewOf } from '../../../platform/http/views.js';
import type { EquipmentKind, ItemKind } from '../../../rules/index.js';
import { EQUIPMENT_KINDS, ITEM_KINDS } from '../../vocabulary.js';
import { ItemView, NewItem } from '../item.dto.js';

type Kind = Exclude<ItemKind, 'directive'>;

const FIELDS = [
  ...(['title', 'reference', 'scope', 'calendarMonths', 'plainMonths', 'days'] as const),
  ...(['intervalH', 'toleranceH', 'recurring'] as const),
] as const;

/** An item to be put on aircraft after aircraft. */
export class NewTemplate extends SomeOf(NewItem, FIELDS) {
  @WordField(ITEM_KINDS.filter((kind) => kind !== 'directive'), {
    description: 'Directives have a record of their own',
  })
  kind: Kind;

  @WordField(EQUIPMENT_KINDS, {
    nullable: true,
    description: 'It hangs on a piece of this kind, and is not for aircraft without one',
  })
  hangsOn?: EquipmentKind | null;
}

/** PATCH of a template. */
export class TemplateChanges extends ChangesOf(NewTemplate) {}

/** A template as an answer. */
export class TemplateView extends ViewOf(NewTemplate) {
  @Shown({ type: 'string', description: 'What it is put on an aircraft by' })
  code: string;

  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'Of the club’s own; null: it comes with the jurisdiction and is not edited',
  })
  id: string | null;

  @Shown({ type: 'integer', nullable: true })
  rowVersion: number | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  recordedAt: RecordHead['recordedAt'] | null;
}

/** All templates: the jurisdiction’s first. */
export class TemplateList {
  @Shown({ type: () => TemplateView, isArray: true })
  items: TemplateView[];
}

/** Which templates to put on an aircraft. */
export class PutOn {
  @ApiProperty({ type: [String], minItems: 1, maxItems: 60, description: 'Codes of templates' })
  @IsArray()
  @ArrayMinSize(1)
  @ArrayMaxSize(60)
  @ArrayUnique()
  @IsString({ each: true })
  @MaxLength(120, { each: true })
  codes: string[];

  @DayField({ nullable: true, description: 'First day they are asked for; always unless given' })
  since?: string | null;
}

export class LeftOut {
  @ApiProperty()
  code: string;
  @ApiProperty()
  because: string;
}

/** What was put on the aircraft, and what was not. */
export class PutOnResult {
  @ApiProperty({ type: [ItemView] })
  added: ItemView[];
  @ApiProperty({ type: [LeftOut] })
  leftOut: LeftOut[];
}
