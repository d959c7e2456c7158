import { ApiPropertyOptional } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn } from 'class-validator';
import { Shown, SwitchField } from '../platform/http/fields.js';
import { IsId, IsLocalDate, Optional } from '../platform/http/index.js';
import { PageQuery, PageShape } from '../platform/http/pages.js';
import type { LogFact } from '../rules/facts/person.js';
import { CHECKS, OUTCOMES, type Check } from './checks/index.js';
import { LogEntryView } from './log.dto.js';
import { LOG_ROLES } from './words.js';

/** Most entries asked for by id at a time: their ids fit an address. */
export const MOST_IDS = 100;

/** Narrows the list of entries; what is left out narrows nothing. */
export class LogQuery extends PageQuery {
  @ApiPropertyOptional({ format: 'date', description: 'First day, at the place flown from' })
  @Optional()
  @IsLocalDate()
  from?: string;

  @ApiPropertyOptional({ format: 'date', description: 'Last day' })
  @Optional()
  @IsLocalDate()
  to?: string;

  @ApiPropertyOptional({ format: 'uuid', description: "One of the club's models" })
  @Optional()
  @IsId()
  modelId?: string;

  @ApiPropertyOptional({ enum: LOG_ROLES })
  @Optional()
  @IsIn(LOG_ROLES, { message: `role must be one of ${LOG_ROLES.join(', ')}` })
  role?: LogFact['role'];

  @SwitchField({
    ...{ description: 'true: entries with a flagged value only; false: those without' },
  })
  flagged?: boolean;

  @ApiPropertyOptional({
    ...{ type: String, example: '01890a5d-ac96-774b-bcce-b302099a8057,01890a5d-ac96-774b-bcce-b302099a8058' },
    description: `These entries only, as a finding counted them: ids with commas between, ${MOST_IDS} at most. Those voided since are shown too`,
  })
  @Optional()
  @Transform(({ value }) => (typeof value === 'string' ? value.toLowerCase().split(',') : value))
  @IsArray()
  @ArrayMaxSize(MOST_IDS, { message: `ids must hold at most ${MOST_IDS}` })
  @IsId({ each: true, message: 'each of ids must be an identifier (UUID)' })
  ids?: string[];

  @SwitchField({ default: false, description: 'true: show the voided entries too' })
  voided?: boolean;
}

/** One value of an entry, held against what can be worked out. */
export class LogCheckView implements Check {
  @Shown({ type: 'string', enum: [...CHECKS] })
  check: Check['check'];

  @Shown({ type: 'string', description: 'The field it is about', example: 'nightH' })
  field: string;

  @Shown({
    type: 'string',
    enum: [...OUTCOMES],
    description: 'flagged: it cannot be, or hardly; not-checkable: something needed is not on record',
  })
  outcome: Check['outcome'];

  @Shown({ type: 'string', example: '2.0 h' })
  written: string;

  @Shown({ type: 'string', nullable: true, example: '0.4 h (0.2 to 0.6 h wherever it was flown)' })
  computed: string | null;

  @Shown({ type: 'string', description: 'What it comes to, or why it could not be checked' })
  says: string;

  @Shown({ type: 'string', nullable: true, description: 'Where the computed value comes from' })
  source: string | null;
}

/** An entry with what came of checking it. The checks change nothing of it. */
export class CheckedEntryView extends LogEntryView {
  @Shown({ type: () => LogCheckView, isArray: true })
  checks: LogCheckView[];
}

/** One page of entries, newest flight first. */
export class LogPage extends PageShape {
  @Shown({ type: () => CheckedEntryView, isArray: true })
  items: CheckedEntryView[];
}
