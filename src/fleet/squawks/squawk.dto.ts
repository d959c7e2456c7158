import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import { IdField, NoteField, PartsField, Shown, TextField } from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import { SQUAWK_STATES } from '../vocabulary.js';
import { AttachmentView } from './attachments/attachment.dto.js';
import { DeferralView } from './deferral.dto.js';
import { PartUsed } from './parts.dto.js';
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

/** POST of a squawk. */
export class SquawkReport extends NewSquawk {
  @IdField({
    nullable: true,
    description:
      'Booking of the flight it was found on: one of this aircraft, and your own unless you are an officer or the coordinator',
  })
  bookingId?: string | null;
}

const SIGNER = 'Name of who signed for it';
const CERTIFICATE =
  'Certificate of who signed, kept as entered. To be on record here gives nobody authority to return an aircraft to service';

/** POST …/fix. */
export class SquawkFix {
  @TextField({ max: 2000, description: 'What was done' })
  correctiveAction: string;

  @TextField({ max: 200, description: SIGNER })
  signedBy: string;

  @TextField({ max: 200, nullable: true, description: CERTIFICATE })
  signedCertificate?: string | null;

  @PartsField(() => PartUsed, { optional: true, max: 50, description: 'Parts used' })
  parts?: PartUsed[];
}

/** POST …/no-fault-found. */
export class SquawkCleared {
  @TextField({ max: 2000, description: 'What was tested, how, and what was found' })
  finding: string;

  @TextField({ max: 200, description: SIGNER })
  signedBy: string;

  @TextField({ max: 200, nullable: true, description: CERTIFICATE })
  signedCertificate?: string | null;
}

/** POST …/duplicate. */
export class SquawkDuplicate {
  @IdField({ description: 'The open squawk of the same aircraft that it is kept in' })
  ofSquawkId: string;
}

/** POST …/reopen. */
export class SquawkReopened {
  @TextField({ max: 500, pattern: /\S.{3,}\S/s, says: 'a reason of at least 5 characters' })
  because: string;
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

  @Shown({ type: 'string', nullable: true, description: 'As entered; it grants no authority' })
  signedCertificate: string | null;

  @Shown({ type: () => PartUsed, isArray: true, description: 'Used when it was last closed' })
  parts: PartUsed[];

  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'Booking of the flight it was found on',
  })
  bookingId: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The squawk it is kept in' })
  duplicateOf: string | null;

  @Shown({
    type: 'array',
    items: { type: 'string', format: 'uuid' },
    description: 'Squawks that are kept in this one',
  })
  duplicates: string[];

  @Shown({ type: 'string', nullable: true, description: 'Why it was last reopened' })
  reopenedBecause: string | null;

  @Shown({ type: () => AttachmentView, isArray: true, description: 'Photos, oldest first' })
  photos: AttachmentView[];

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
