import { ApiProperty } from '@nestjs/swagger';
import type {
  AnswerExplained,
  BranchTaken,
  Change,
  CrewExplained,
  Derivation,
  FactRead,
  NumberRead,
  RecordRead,
  SunSeen,
  WithInstructor,
} from '../../rules/explain/index.js';
import { ANSWERS, FindingDto, HorizonDto } from '../decision.dto.js';
import { FactNameDto, RuleBodyDto, RuleBranchDto } from './rule.dto.js';

/** One record behind a fact. */
export class WhyRecordDto implements RecordRead {
  @ApiProperty({ type: String, nullable: true, description: 'Id of the record; null: no record of its own' })
  id: string | null;
  @ApiProperty({ example: 'log entry' })
  kind: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ type: String, nullable: true, description: 'What it gave; null: looked at, not counted' })
  counted: string | null;
}

/** A fact that was read. */
export class WhyFactDto implements FactRead {
  @ApiProperty({ example: 'pic.log' })
  key: FactRead['key'];
  @ApiProperty({ example: 'the pilot’s log' })
  words: string;
  @ApiProperty({ type: String, nullable: true, description: 'Whose; null: the aircraft’s' })
  whose: string | null;
  @ApiProperty({ description: 'On record' })
  known: boolean;
  @ApiProperty({ type: String, nullable: true, description: 'What is missing' })
  because: string | null;
  @ApiProperty({ type: String, nullable: true, enum: ['recorded', 'declared', 'planned', 'projected', null] })
  firmness: FactRead['firmness'];
  @ApiProperty({ type: String, nullable: true })
  firmnessWord: string | null;
  @ApiProperty({ type: String, nullable: true, format: 'date-time' })
  lastKnownAt: string | null;
  @ApiProperty({ type: [WhyRecordDto], description: 'Those counted, then the newest of the others' })
  records: WhyRecordDto[];
  @ApiProperty({ description: 'How many more there are' })
  more: number;
  @ApiProperty({ type: String, nullable: true, description: 'What to say where no record is shown' })
  nothing: string | null;
}

/** The sun's day at a field. */
export class WhySunDto implements SunSeen {
  @ApiProperty({ description: 'Code of the airfield' })
  field: string;
  @ApiProperty({ type: [String], example: ['sunset 17:51'], description: 'By the field’s own clock' })
  says: string[];
}

/** A number that was read. */
export class WhyNumberDto implements NumberRead {
  @ApiProperty()
  id: string;
  @ApiProperty()
  title: string;
  @ApiProperty({ oneOf: [{ type: 'number' }, { type: 'boolean' }, { type: 'string' }] })
  value: NumberRead['value'];
  @ApiProperty({ description: 'With its unit', example: '90 days' })
  says: string;
  @ApiProperty({ type: String, nullable: true, format: 'date' })
  from: string | null;
  @ApiProperty({ type: String, nullable: true, format: 'date', description: 'First date of another value' })
  to: string | null;
  @ApiProperty()
  reference: string;
  @ApiProperty()
  ofClub: boolean;
  @ApiProperty({ type: String, nullable: true, format: 'date' })
  checkedOn: string | null;
}

/** A branch of the rule. */
export class WhyBranchDto extends RuleBranchDto implements BranchTaken {
  @ApiProperty({ description: 'The way the judgement went' })
  taken: boolean;
}

/** The verdict from then on. */
export class WhyThenDto {
  @ApiProperty()
  status: NonNullable<Change['then']>['status'];
  @ApiProperty()
  statusWord: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ type: [String] })
  conditions: string[];
}

/** What time alone changes. */
export class WhyChangeDto implements Change {
  @ApiProperty({ type: String, nullable: true, format: 'date-time' })
  at: string | null;
  @ApiProperty()
  says: string;
  @ApiProperty({ type: WhyThenDto, nullable: true })
  then: WhyThenDto | null;
}

/** Why one finding came out as it did. */
export class DerivationDto implements Derivation {
  @ApiProperty({ type: FindingDto })
  finding: Derivation['finding'];
  @ApiProperty()
  statusWord: string;
  @ApiProperty()
  weightWord: string;
  @ApiProperty()
  weightSays: string;
  @ApiProperty()
  bindsWord: string;
  @ApiProperty({ type: String, nullable: true, description: 'Why the facts are not shown' })
  withheld: string | null;
  @ApiProperty({ description: 'Judging again gives this very finding' })
  reproduced: boolean;
  @ApiProperty({ type: String, nullable: true })
  note: string | null;
  @ApiProperty({ type: [WhyFactDto] })
  facts: WhyFactDto[];
  @ApiProperty({ type: [FactNameDto], description: 'Facts the rule may read and did not need' })
  unread: FactNameDto[];
  @ApiProperty({ type: [String], description: 'What it took from the flight as asked' })
  request: string[];
  @ApiProperty({
    type: [WhySunDto],
    description: 'The sun’s day at each field, where the night was asked about',
  })
  sun: WhySunDto[];
  @ApiProperty({ type: [WhyNumberDto] })
  numbers: WhyNumberDto[];
  @ApiProperty({ type: RuleBodyDto, nullable: true, description: 'The text that was in force' })
  body: Derivation['body'];
  @ApiProperty({ type: [WhyBranchDto] })
  branches: WhyBranchDto[];
  @ApiProperty({ type: WhyChangeDto, nullable: true })
  change: WhyChangeDto | null;
}

/** Why the finding of one rule came out as it did. */
export class WhyFindingDto {
  @ApiProperty({ format: 'uuid' })
  decisionId: string;
  @ApiProperty({ type: DerivationDto })
  why: Derivation;
  @ApiProperty()
  caution: string;
}

export class WhyFlightDto {
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty()
  purposeWord: string;
  @ApiProperty({ type: [String] })
  says: string[];
}

export class WhyCrewDto implements CrewExplained {
  @ApiProperty({ type: String, format: 'uuid', nullable: true })
  picId: string | null;
  @ApiProperty({ type: String, nullable: true, description: 'Name of the pilot in command' })
  pic: string | null;
  @ApiProperty({ description: 'Who is pilot in command, and why' })
  says: string;
  @ApiProperty()
  passengers: number;
}

export class WhyWithInstructorDto implements WithInstructor {
  @ApiProperty({ enum: ANSWERS })
  answer: WithInstructor['answer'];
  @ApiProperty()
  says: string;
  @ApiProperty({ type: [String], description: 'Titles of the rules that stand in the way then too' })
  inTheWay: string[];
}

export class WhyHorizonDto extends HorizonDto {
  @ApiProperty()
  says: string;
}

/** The answer, taken apart. */
export class WhyAnswerDto {
  @ApiProperty({ enum: ANSWERS })
  answer: AnswerExplained['answer'];
  @ApiProperty()
  answerWord: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ type: WhyFlightDto })
  flight: WhyFlightDto;
  @ApiProperty({ type: WhyCrewDto })
  crew: WhyCrewDto;
  @ApiProperty({ type: [String], description: 'Ids of the rules that stand in the way' })
  inTheWay: string[];
  @ApiProperty({ type: [String] })
  conditions: string[];
  @ApiProperty({
    type: WhyWithInstructorDto,
    nullable: true,
    description: 'The same flight with an instructor, where that was tried',
  })
  withInstructor: WhyWithInstructorDto | null;
  @ApiProperty({ type: WhyHorizonDto })
  horizon: AnswerExplained['horizon'];
}

/** Why a decision came out as it did. */
export class WhyDecisionDto {
  @ApiProperty({ format: 'uuid' })
  decisionId: string;
  @ApiProperty({ format: 'date-time' })
  knownAt: string;
  @ApiProperty({ type: WhyAnswerDto })
  answer: WhyAnswerDto;
  @ApiProperty({ type: [DerivationDto], description: 'In the order of the findings' })
  derivations: Derivation[];
  @ApiProperty()
  caution: string;
}
