import { ApiProperty } from '@nestjs/swagger';
import { TextField, WholeField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/index.js';
import { PartDifferenceDto, ReplayDifferenceDto } from '../replay/replay.dto.js';
import type { Damaged, Different } from '../replay/replay-all.js';
import type { Verification } from './audit.service.js';
import type { ChainState, ReceiptCheck } from './chain.js';
import type { Head } from './seal.js';
import { FAULTS, type Broken, type Fault } from './verify.js';

const RECEIPT_EXAMPLE = `bellcrank-receipt/1 0190a5c2-7d1e-7c3a-9b4f-2f6d1c0a9e11 1200 ${'5e'.repeat(32)} 2026-11-25T13:00:00Z`;

export class ChainHeadDto implements Head {
  @ApiProperty({ type: 'integer', description: 'Number of the link, from 1' })
  seq: number;
  @ApiProperty({ description: 'SHA-256, lower-case hex' })
  link: string;
  @ApiProperty({ format: 'date-time' })
  sealedAt: string;
}

/** How far the chain goes. */
export class ChainDto implements ChainState {
  @ApiProperty({
    type: ChainHeadDto,
    nullable: true,
    description: 'The last link; null for a chain not begun',
  })
  head: ChainHeadDto | null;
  @ApiProperty({ type: 'integer', description: 'Links stored' })
  links: number;
  @ApiProperty({
    type: 'integer',
    description: 'Decisions and overrides not sealed yet; the service seals within a minute of a decision',
  })
  unsealed: number;
  @ApiProperty({ type: 'integer', description: 'Of those, recorded more than ten minutes ago' })
  overdue: number;
  @ApiProperty({
    type: String,
    nullable: true,
    example: RECEIPT_EXAMPLE,
    description: 'Keep it outside the service: a chain cut short or written anew does not hold it',
  })
  receipt: string | null;
}

/** What to verify. */
export class VerifyDto {
  @TextField({ optional: true, max: 200, description: 'A receipt that was kept, the whole line' })
  receipt?: string;

  @TextField({
    optional: true,
    max: 100,
    description: 'nextCursor of the verification before; none begins at the first link',
  })
  cursor?: string;
}

export class BrokenLinkDto implements Broken {
  @ApiProperty({ type: 'integer' })
  seq: number;
  @ApiProperty({ enum: FAULTS })
  fault: Fault;
  @ApiProperty({ type: String, nullable: true, enum: ['decision', 'override', null] })
  kind: Broken['kind'];
  @ApiProperty({ type: String, nullable: true, format: 'uuid' })
  recordId: string | null;
  @ApiProperty()
  says: string;
}

export class ReceiptCheckDto implements ReceiptCheck {
  @ApiProperty()
  holds: boolean;
  @ApiProperty()
  says: string;
}

/** What verifying found. */
export class VerificationDto implements Verification {
  @ApiProperty({
    description: 'Nothing wrong in what was verified, and the receipt, if one was given, holds',
  })
  whole: boolean;
  @ApiProperty({ description: 'The end of the chain was reached; else go on with nextCursor, or see broken' })
  complete: boolean;
  @ApiProperty({ type: 'integer', description: 'Number of the last link verified; 0 for none' })
  verifiedTo: number;
  @ApiProperty({ type: BrokenLinkDto, nullable: true, description: 'The first link that does not hold' })
  broken: BrokenLinkDto | null;
  @ApiProperty({ type: ReceiptCheckDto, nullable: true })
  receipt: ReceiptCheckDto | null;
  @ApiProperty({
    type: 'integer',
    description:
      'Links of this stretch whose record says it was recorded over an hour before it was sealed: what was there before sealing began, or a record put in later',
  })
  sealedLate: number;
  @ApiProperty({ type: 'integer', nullable: true, description: 'The first of them' })
  firstSealedLate: number | null;
  @ApiProperty({ type: String, nullable: true })
  nextCursor: string | null;
}

/** Which decisions to replay. */
export class ReplayAllDto {
  @WholeField({ optional: true, min: 1, max: 200, description: 'Decisions a page; 50 unless given' })
  limit?: number;

  @TextField({ optional: true, max: 400, description: 'nextCursor of the page before' })
  cursor?: string;
}

export class DifferentDto implements Different {
  @ApiProperty({ format: 'uuid' })
  decisionId: string;
  @ApiProperty()
  lawKept: boolean;
  @ApiProperty({ type: [ReplayDifferenceDto] })
  differences: ReplayDifferenceDto[];
  @ApiProperty({ type: [PartDifferenceDto] })
  parts: PartDifferenceDto[];
}

export class DamagedDto implements Damaged {
  @ApiProperty({ format: 'uuid' })
  decisionId: string;
  @ApiProperty()
  because: string;
}

/** One page of replays, in order of the decisions' ids. */
export class ReplaysDto extends PageShape {
  @ApiProperty({ type: 'integer' })
  checked: number;
  @ApiProperty({ type: 'integer', description: 'Same bytes' })
  identical: number;
  @ApiProperty({ type: [DifferentDto] })
  different: DifferentDto[];
  @ApiProperty({ type: [DamagedDto], description: 'Decisions whose record is not whole' })
  damaged: DamagedDto[];
}
