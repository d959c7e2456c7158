import { ApiProperty } from '@nestjs/swagger';
import type { SignedIn } from '../accounts/current-user.js';
import type { AircraftType, Decision, Finding } from '../rules/index.js';
import type { Decided } from './decision-store.js';
import { asSeenBy } from './privacy.js';
import type { StoredDecision } from './stored-decision.js';

export const ANSWERS = ['yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no'];

export class CitationDto {
  @ApiProperty({ example: '14 CFR 61.57(a)' })
  text: string;
  @ApiProperty({ enum: ['seen', 'from memory', 'common practice, no source', 'club paper'] })
  status: string;
  @ApiProperty({ required: false, description: 'How a doubtful point was decided' })
  reading?: string;
}

export class CountedDto {
  @ApiProperty({ description: 'Id of the record that was counted' })
  id: string;
  @ApiProperty({ type: String, nullable: true, format: 'date' })
  on: string | null;
  @ApiProperty()
  what: string;
}

export class RemedyDto {
  @ApiProperty({ example: 'fly-landings-day' })
  act: string;
  @ApiProperty()
  title: string;
  @ApiProperty()
  by: string;
  @ApiProperty({ type: [Object], description: 'How the facts would change' })
  effects: object[];
}

export class ParameterReadDto {
  @ApiProperty()
  id: string;
  @ApiProperty({ oneOf: [{ type: 'number' }, { type: 'boolean' }, { type: 'string' }] })
  value: number | boolean | string;
  @ApiProperty({ type: String, nullable: true, format: 'date' })
  from: string | null;
  @ApiProperty()
  reference: string;
}

export class FindingDto {
  @ApiProperty({ example: 'recency.passengers.day' })
  rule: string;
  @ApiProperty()
  version: number;
  @ApiProperty()
  title: string;
  @ApiProperty({ enum: ['law', 'club', 'advice'] })
  weight: string;
  @ApiProperty({ description: 'An officer may set it aside, with a reason' })
  overridable: boolean;
  @ApiProperty()
  binds: string;
  @ApiProperty({ enum: ['met', 'short', 'unknown', 'not-applicable', 'error'] })
  status: string;
  @ApiProperty()
  branch: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ type: CitationDto })
  citation: CitationDto;
  @ApiProperty({ type: [CountedDto] })
  counted: CountedDto[];
  @ApiProperty({ type: [String] })
  conditions: string[];
  @ApiProperty({ type: [RemedyDto] })
  remedies: RemedyDto[];
  @ApiProperty({ type: [String] })
  reads: readonly string[];
  @ApiProperty({ type: [ParameterReadDto] })
  parameters: ParameterReadDto[];
  @ApiProperty({
    type: String,
    nullable: true,
    format: 'date-time',
    description: 'Departure from which the verdict changes by time alone',
  })
  until: string | null;
}

export class HorizonDto {
  @ApiProperty({ type: String, nullable: true, format: 'date-time' })
  until: string | null;
  @ApiProperty({ type: String, nullable: true, enum: [...ANSWERS, null] })
  becomes: string | null;
  @ApiProperty({ type: [String], description: 'Rules that change the answer' })
  because: string[];
  @ApiProperty({ format: 'date-time' })
  searchedTo: string;
}

export class AircraftInDecisionDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty()
  registration: string;
  @ApiProperty()
  makeModel: string;
}

/** One decision: the answer for one aircraft with everything behind it. */
export class DecisionDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ type: AircraftInDecisionDto })
  aircraft: AircraftInDecisionDto;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty({ enum: ANSWERS })
  answer: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ format: 'date-time' })
  asOf: string;
  @ApiProperty({ format: 'date-time' })
  knownAt: string;
  @ApiProperty({ type: Object, description: 'Who is pilot in command, and why' })
  crew: object;
  @ApiProperty({ type: [FindingDto] })
  findings: FindingDto[];
  @ApiProperty({ type: [String] })
  conditions: string[];
  @ApiProperty({ type: HorizonDto })
  horizon: HorizonDto;
  @ApiProperty()
  caution: string;
  @ApiProperty({ description: 'SHA-256 of facts, policy and rule versions' })
  digest: string;

  /** As this person may read it. */
  static from({ id, sheet, decision }: Decided, viewer: SignedIn): DecisionDto {
    return DecisionDto.of(id, sheet.flight.memberId, sheet.aircraft, asSeenBy(viewer, sheet, decision));
  }

  /** As this person may read it. */
  static fromStored(stored: StoredDecision, viewer: SignedIn): DecisionDto {
    return DecisionDto.from(stored, viewer);
  }

  private static of(
    id: string,
    memberId: string,
    aircraft: Decided['sheet']['aircraft'],
    decision: Decision,
  ): DecisionDto {
    const { schema: _schema, findings, ...rest } = decision;
    const type: Partial<AircraftType> = aircraft.type.known ? aircraft.type.value : {};
    return {
      id,
      memberId,
      aircraft: { id: aircraft.id, registration: type.registration ?? '?', makeModel: type.makeModel ?? '?' },
      ...rest,
      findings: findings.map((finding: Finding): FindingDto => finding),
    };
  }
}

/** The answer to a question, best aircraft first. */
export class AnswersDto {
  @ApiProperty({ type: [DecisionDto] })
  decisions: DecisionDto[];
  @ApiProperty()
  caution: string;
}
