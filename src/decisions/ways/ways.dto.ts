import { ApiProperty } from '@nestjs/swagger';
import type {
  ActKind,
  Cost,
  LaterWay,
  NoWay,
  Way,
  WaySortie,
  WayStep,
  WaysToYes,
} from '../../rules/ways/index.js';
import { ANSWERS, AnswersDto } from '../decision.dto.js';

const KINDS: ActKind[] = ['flight', 'paper', 'appointment', 'maintenance', 'change-of-request', 'office'];

/** A cost broken down, by the club's prices. */
export class WayCostDto implements Cost {
  @ApiProperty({ description: "Hours of the member's time, in the air and on the ground" })
  hours: number;
  @ApiProperty({ description: 'What the member pays' })
  money: number;
  @ApiProperty({ description: 'What the club pays' })
  clubMoney: number;
  @ApiProperty({ description: 'Days from now until it is done' })
  days: number;
  @ApiProperty({ description: 'Inconvenience' })
  points: number;
  @ApiProperty({ description: 'All of it in money, as the club values hours, days and points' })
  total: number;
}

export class WayStepDto implements WayStep {
  @ApiProperty({ example: 'fly-landings-night' })
  act: string;
  @ApiProperty()
  title: string;
  @ApiProperty({ enum: KINDS })
  kind: ActKind;
  @ApiProperty({ example: 'member' })
  by: WayStep['by'];
  @ApiProperty({ type: String, format: 'uuid', nullable: true, description: 'Whose record it changes' })
  person: string | null;
  @ApiProperty({ type: WayCostDto })
  cost: WayCostDto;
  @ApiProperty({ format: 'date-time' })
  startsOn: string;
  @ApiProperty({ format: 'date-time' })
  doneBy: string;
  @ApiProperty({ type: [String], description: 'Rules in the way of the flight that it puts right' })
  cures: string[];
  @ApiProperty({ type: [String], description: 'Acts of the plan that could not be done without it' })
  opens: string[];
  @ApiProperty({ type: Number, nullable: true, description: 'The practice flight it is flown on' })
  sortie: number | null;
}

export class WaySortieDto implements WaySortie {
  @ApiProperty()
  number: number;
  @ApiProperty({ example: 'One flight with an instructor at night for 2 of the steps.' })
  says: string;
  @ApiProperty()
  dual: boolean;
  @ApiProperty()
  night: boolean;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
}

export class WayFlightDto {
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  personsOnBoard: number;
}

/** A way to yes, judged on the facts as they would be. */
export class WayDto implements Way {
  @ApiProperty({ type: [WayStepDto] })
  steps: WayStepDto[];
  @ApiProperty({ type: [WaySortieDto], description: 'Practice flights; several steps may be flown on one' })
  sorties: WaySortieDto[];
  @ApiProperty({ type: WayCostDto })
  cost: WayCostDto;
  @ApiProperty({ enum: ANSWERS, description: 'What the engine answers on the facts as they would be' })
  answer: Way['answer'];
  @ApiProperty({ enum: ['officer', 'instructor'], isArray: true, description: 'Whom it still hangs on' })
  rests: Way['rests'];
  @ApiProperty({ type: [String] })
  restSays: string[];
  @ApiProperty({ type: [String], description: 'Rules an officer would have to set aside' })
  overrides: string[];
  @ApiProperty({ type: WayFlightDto, description: 'The flight as it would then be flown' })
  flight: WayFlightDto;
  @ApiProperty({ type: [String] })
  conditions: string[];
  @ApiProperty({ description: 'SHA-256 of the hypothetical facts, policy and rule versions' })
  provenBy: string;
}

export class NoWayRuleDto {
  @ApiProperty()
  rule: string;
  @ApiProperty()
  title: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ description: 'Why nothing puts it right before the flight' })
  why: string;
}

export class NoWayDto implements NoWay {
  @ApiProperty()
  says: string;
  @ApiProperty({ type: [NoWayRuleDto] })
  because: NoWayRuleDto[];
}

export class LaterWayDto implements LaterWay {
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty()
  says: string;
  @ApiProperty({ type: WayDto })
  way: WayDto;
}

/** The cheapest ways that make the answer yes. */
export class WaysDto implements WaysToYes {
  @ApiProperty({ enum: ['bellcrank.ways/1'] })
  schema: WaysToYes['schema'];
  @ApiProperty({ format: 'uuid' })
  decisionId: string;
  @ApiProperty({ enum: ANSWERS, description: 'The answer without any of it' })
  answer: WaysToYes['answer'];
  @ApiProperty({ example: 'dollars' })
  currency: string;
  @ApiProperty({ type: [WayDto], description: 'Cheapest first, at most three, really different' })
  plans: WayDto[];
  @ApiProperty({ type: NoWayDto, nullable: true, description: 'Why there is no way before the flight' })
  none: NoWayDto | null;
  @ApiProperty({ type: LaterWayDto, nullable: true, description: 'A way for the same flight on a later day' })
  later: LaterWayDto | null;
  @ApiProperty({
    type: String,
    nullable: true,
    enum: ['nodes', 'time', null],
    description: 'The limit at which the search stopped short: there may be further ways',
  })
  bound: WaysToYes['bound'];
  @ApiProperty({ description: 'States looked at' })
  looked: number;
  @ApiProperty()
  caution: string;
}

/** The answer to a question, with ways to yes where they were asked for. */
export class AnswersWithWaysDto extends AnswersDto {
  @ApiProperty({
    type: WaysDto,
    nullable: true,
    description: 'Where they were asked for, one aircraft was asked about and its answer is no plain yes',
  })
  ways: WaysDto | null;
}
