import { Body, Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { ApiBearerAuth, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { UuidPipe } from '../platform/http/index.js';
import { CAUTION } from '../rules/index.js';
import { AnswersDto, DecisionDto, ReplayDto } from './decision.dto.js';
import { DecisionsService } from './decisions.service.js';
import { AskDto } from './flight-request.dto.js';

@ApiTags('decisions')
@ApiBearerAuth()
@Controller('decisions')
export class DecisionsController {
  constructor(private readonly decisions: DecisionsService) {}

  @Post()
  @HttpCode(200)
  @ApiOperation({
    operationId: 'ask',
    summary:
      'May this member take this aircraft for this flight? Answers for the aircraft named, or for the whole fleet.',
  })
  @ApiOkResponse({ type: AnswersDto })
  async ask(@CurrentUser() user: SignedIn, @Body() question: AskDto): Promise<AnswersDto> {
    const decided = await this.decisions.ask(user, question);
    return { decisions: decided.map((one) => DecisionDto.from(one)), caution: CAUTION };
  }

  @Get(':id')
  @ApiOperation({ operationId: 'getDecision', summary: 'A stored decision, as it was given' })
  @ApiOkResponse({ type: DecisionDto })
  async find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<DecisionDto> {
    return DecisionDto.fromStored(await this.decisions.find(user, id));
  }

  @Get(':id/replay')
  @ApiOperation({
    operationId: 'replayDecision',
    summary: 'Judges the stored facts again and compares the bytes',
  })
  @ApiOkResponse({ type: ReplayDto })
  replay(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<ReplayDto> {
    return this.decisions.replay(user, id);
  }
}
