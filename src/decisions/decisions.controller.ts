import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { ApiRoute } from '../platform/http/api-route.js';
import { UuidPipe } from '../platform/http/index.js';
import { CAUTION } from '../rules/index.js';
import { DecisionDto } from './decision.dto.js';
import { DecisionsPageDto, DecisionsQuery } from './decision-list.dto.js';
import { DecisionsService } from './decisions.service.js';
import { AskDto } from './flight-request.dto.js';
import { ReplayDto } from './replay/replay.dto.js';
import { AnswersWithWaysDto } from './ways/ways.dto.js';
import { WaysService } from './ways/ways.service.js';

@ApiTags('decisions')
@Controller('decisions')
export class DecisionsController {
  constructor(
    private readonly decisions: DecisionsService,
    private readonly ways: WaysService,
  ) {}

  @Post()
  @ApiRoute({
    id: 'ask',
    summary:
      'May this member take this aircraft for this flight? Answers for the aircraft named, or for the whole fleet.',
    answer: AnswersWithWaysDto,
    refuses: [403, 404, 422],
  })
  async ask(@CurrentUser() user: SignedIn, @Body() question: AskDto): Promise<AnswersWithWaysDto> {
    const decided = await this.decisions.ask(user, question);
    return {
      decisions: decided.map((one) => DecisionDto.from(one, user)),
      ways: question.ways ? await this.ways.ofAnswers(user, decided) : null,
      caution: CAUTION,
    };
  }

  @Get()
  @ApiRoute({
    id: 'listDecisions',
    summary: 'Stored decisions of one member, newest first, without their findings',
    answer: DecisionsPageDto,
    refuses: [403, 404],
  })
  async list(@CurrentUser() user: SignedIn, @Query() query: DecisionsQuery): Promise<DecisionsPageDto> {
    return { ...(await this.decisions.list(user, query)), caution: CAUTION };
  }

  @Get(':id')
  @ApiRoute({
    id: 'getDecision',
    summary: 'A stored decision, as it was given',
    answer: DecisionDto,
    refuses: [404, 409],
  })
  async find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<DecisionDto> {
    return DecisionDto.fromStored(await this.decisions.find(user, id), user);
  }

  @Get(':id/replay')
  @ApiRoute({
    id: 'replayDecision',
    summary:
      'Judges the stored facts again with the rules of then, compares the bytes, and says why they differ',
    answer: ReplayDto,
    refuses: [404, 409],
  })
  replay(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<ReplayDto> {
    return this.decisions.replay(user, id);
  }
}
