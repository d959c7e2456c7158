import { ApiProperty, PickType } from '@nestjs/swagger';
import type {
  BodyExplained,
  BranchExplained,
  ParameterExplained,
  RuleExplained,
  RuleListed,
  ValueExplained,
} from '../../rules/explain/index.js';
import { CitationDto } from '../decision.dto.js';

const VALUE = { oneOf: [{ type: 'number' }, { type: 'boolean' }, { type: 'string' }] };
const WEIGHTS = ['law', 'club', 'advice'];
const STATUSES = ['met', 'short', 'unknown', 'not-applicable', 'error'];

/** A way a rule can come out. */
export class RuleBranchDto implements BranchExplained {
  @ApiProperty({ example: 'enough' })
  name: string;
  @ApiProperty({ enum: STATUSES })
  status: BranchExplained['status'];
  @ApiProperty()
  statusWord: string;
  @ApiProperty({ description: 'Its sentence; what a flight fills in is shown as …' })
  says: string;
}

/** One dated text of a rule. */
export class RuleBodyDto implements BodyExplained {
  @ApiProperty()
  version: number;
  @ApiProperty({ type: String, nullable: true, format: 'date', description: 'First date it holds' })
  from: string | null;
  @ApiProperty({ type: String, nullable: true, format: 'date', description: 'First date it no longer holds' })
  to: string | null;
  @ApiProperty({ description: 'On the day asked for' })
  inForce: boolean;
  @ApiProperty({ type: CitationDto })
  citation: BodyExplained['citation'];
  @ApiProperty({ description: 'How well the source is known, in words' })
  sourceWord: string;
}

/** One dated value of a number behind the rules. */
export class RuleValueDto implements ValueExplained {
  @ApiProperty({ type: String, nullable: true, format: 'date' })
  from: string | null;
  @ApiProperty({ type: String, nullable: true, format: 'date' })
  to: string | null;
  @ApiProperty({
    ...VALUE,
    nullable: true,
    description: 'Null ends the number: what needs it cannot be decided',
  })
  value: ValueExplained['value'];
  @ApiProperty({ description: 'With its unit', example: '90 days' })
  says: string;
  @ApiProperty()
  reference: string;
}

/** A number behind the rules, with its history. */
export class RuleParameterDto implements ParameterExplained {
  @ApiProperty({ example: 'us.passenger-recency.days' })
  id: string;
  @ApiProperty()
  title: string;
  @ApiProperty({ type: String, nullable: true })
  unit: ParameterExplained['unit'];
  @ApiProperty({ description: 'The club sets it for itself' })
  ofClub: boolean;
  @ApiProperty({ type: String, nullable: true, format: 'date', description: 'Last held against its source' })
  checkedOn: string | null;
  @ApiProperty({ type: String, nullable: true })
  status: ParameterExplained['status'];
  @ApiProperty({ type: RuleValueDto, nullable: true })
  inForce: RuleValueDto | null;
  @ApiProperty({ type: [RuleValueDto], description: 'Oldest first, those to come included' })
  history: RuleValueDto[];
}

/** A fact by name. */
export class FactNameDto {
  @ApiProperty({ example: 'pic.log' })
  key: string;
  @ApiProperty({ example: 'the pilot’s log' })
  words: string;
}

/** What can cure a finding of the rule. */
export class RuleCureDto {
  @ApiProperty({ example: 'fly-landings-day' })
  act: string;
  @ApiProperty()
  by: RuleExplained['cures'][number]['by'];
  @ApiProperty({ description: 'As one flight was told' })
  example: string;
}

/** One rule as of a day. */
export class RuleDto implements RuleExplained {
  @ApiProperty({ example: 'recency.passengers.day' })
  id: string;
  @ApiProperty()
  title: string;
  @ApiProperty({ enum: WEIGHTS })
  weight: RuleExplained['weight'];
  @ApiProperty()
  weightWord: string;
  @ApiProperty({ description: 'Whether anybody may set it aside' })
  weightSays: string;
  @ApiProperty({ example: 'pilot' })
  binds: RuleExplained['binds'];
  @ApiProperty()
  bindsWord: string;
  @ApiProperty({
    type: String,
    nullable: true,
    description: 'The condition told while the facts are not known, for rules settled just before departure',
  })
  whenUnknown: string | null;
  @ApiProperty({ type: RuleBodyDto, nullable: true, description: 'The text in force on the day; null: none' })
  inForce: RuleBodyDto | null;
  @ApiProperty({ type: [RuleBodyDto] })
  bodies: RuleBodyDto[];
  @ApiProperty({ type: [RuleBranchDto] })
  branches: RuleBranchDto[];
  @ApiProperty({ type: [FactNameDto], description: 'What it may look at' })
  reads: FactNameDto[];
  @ApiProperty({ type: [RuleParameterDto] })
  parameters: RuleParameterDto[];
  @ApiProperty({ type: [RuleCureDto] })
  cures: readonly RuleCureDto[];
}

/** A number in force. */
export class RuleNumberDto {
  @ApiProperty()
  id: string;
  @ApiProperty()
  title: string;
  @ApiProperty({ example: '90 days' })
  says: string;
  @ApiProperty()
  ofClub: boolean;
}

/** A rule in the list of the book; the rest of it is in the rule itself. */
export class RuleListedDto
  extends PickType(RuleDto, [
    'id',
    'title',
    'weight',
    'weightWord',
    'binds',
    'bindsWord',
    'inForce',
    'branches',
  ] as const)
  implements RuleListed
{
  @ApiProperty({ type: [RuleNumberDto], description: 'The numbers in force on the day' })
  numbers: RuleNumberDto[];
}

/** The club's rule book on a day. */
export class RuleBookDto {
  @ApiProperty({ format: 'date' })
  on: string;
  @ApiProperty({ enum: ['US', 'EU', 'CA'] })
  jurisdiction: string;
  @ApiProperty({ type: [RuleListedDto], description: 'The law first, then the club’s own' })
  items: RuleListedDto[];
  @ApiProperty()
  caution: string;
}

/** One rule of the book on a day. */
export class RuleInBookDto {
  @ApiProperty({ format: 'date' })
  on: string;
  @ApiProperty({ type: RuleDto })
  rule: RuleDto;
  @ApiProperty()
  caution: string;
}
