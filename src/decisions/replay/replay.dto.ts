import { ApiProperty } from '@nestjs/swagger';
import type { PartDifference, Replay, ReplayDifference } from './replay.js';
import { REASONS, type Reason } from './why.js';

/** A finding that comes out differently. */
export class ReplayDifferenceDto implements ReplayDifference {
  @ApiProperty()
  rule: string;
  @ApiProperty({ type: Number, nullable: true })
  storedVersion: number | null;
  @ApiProperty({ type: Number, nullable: true })
  replayedVersion: number | null;
  @ApiProperty({ type: String, nullable: true })
  stored: string | null;
  @ApiProperty({ type: String, nullable: true })
  replayed: string | null;
  @ApiProperty({ enum: REASONS })
  reason: Reason;
  @ApiProperty({ description: 'Why it differs, in a sentence' })
  why: string;
}

/** A part of the decision besides its findings that differs. */
export class PartDifferenceDto implements PartDifference {
  @ApiProperty({ example: 'horizon' })
  part: string;
  @ApiProperty()
  why: string;
}

/** The outcome of judging a stored decision again. */
export class ReplayDto implements Replay {
  @ApiProperty({ description: 'Same bytes' })
  identical: boolean;
  @ApiProperty()
  storedSha256: string;
  @ApiProperty()
  replayedSha256: string;
  @ApiProperty({
    type: [String],
    description:
      'Rules that have other versions today; the decision was judged with its own where they are kept',
  })
  changedRules: string[];
  @ApiProperty({
    description: "The law's numbers were stored with the decision; else today's were taken",
  })
  lawKept: boolean;
  @ApiProperty({ type: [ReplayDifferenceDto] })
  differences: ReplayDifferenceDto[];
  @ApiProperty({ type: [PartDifferenceDto] })
  parts: PartDifferenceDto[];
}
