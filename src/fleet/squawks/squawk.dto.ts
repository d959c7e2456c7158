import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import { IdField, NoteField, Shown, TextField } from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import { SQUAWK_STATES } from '../vocabulary.js';
import { DeferralView } from './deferral.dto.js';
import type { SquawkState } from './squawk.entity.js';

/** What somebody reports. */
export class NewSquawk {
  @TextField({ max: 200, description: 'What is wrong, in a few words' })
  title: string;

  @NoteField({ optional: true, description: 'When it shows, what was tried' })
  detail?: string;

  @IdField({ nullable: true, description: 'Equipment of this aircraft that it is about' })
  equipmentId?: string | null;
}

/** PATCH of a squawk that is still open. */
export class SquawkChanges extends ChangesOf(NewSquawk) {}

/** POST …/fix. */
export class SquawkFix {
  @TextField({ max: 2000, description: 'What was done' })
  correctiveAction: string;

  @TextField({ max: 200, description: 'Name and certificate of who signed for it' })
  signedBy: string;
}

/** POST …/no-fault-found. */
export class SquawkCleared {
  @TextField({ max: 2000, description: 'What was looked at and how' })
  finding: string;

  @TextField({ max: 200, description: 'Name and certificate of who looked' })
  signedBy: string;
}

/** A squawk as an answer. */
export class SquawkView extends ViewOf(NewSquawk) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string', format: 'date-time' })
  reportedAt: string;

  @Shown({ type: 'string', format: 'uuid', description: 'Member' })
  reportedBy: string;

  @Shown({ type: 'string', enum: SQUAWK_STATES })
  state: SquawkState;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  closedAt: string | null;

  @Shown({ type: 'string', nullable: true, description: 'What was done, or what was found' })
  correctiveAction: string | null;

  @Shown({ type: 'string', nullable: true })
  signedBy: string | null;

  @Shown({ type: () => DeferralView, nullable: true })
  deferral: DeferralView | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

const FILTERS = ['open', ...SQUAWK_STATES];

/** Which squawks to list. */
export class SquawkQuery extends PageQuery {
  @ApiPropertyOptional({ enum: FILTERS, description: "'open': reported, grounding or deferred" })
  @IsOptional()
  @IsIn(FILTERS, { message: `state must be one of ${FILTERS.join(', ')}` })
  state?: 'open' | SquawkState;
}

/** A page of squawks, newest first. */
export class SquawkPage extends PageShape {
  @Shown({ type: () => SquawkView, isArray: true })
  items: SquawkView[];
}
