import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { PlanPracticeDto, PracticePlanView, RustListView, RustQuery } from './advice.dto.js';
import { AdviceService } from './advice.service.js';

/** What is rusty, and what to practise next. */
@ApiTags('practice')
@Controller('members/:memberId/practice')
export class AdviceController {
  constructor(private readonly advice: AdviceService) {}

  @Get('rust')
  @ApiRoute({
    id: 'readRust',
    summary: 'How rusty each manoeuvre is, by condition, and why',
    description:
      'An estimate from dates by a formula that is told with it; its numbers are club policy. It gates nothing.',
    answer: RustListView,
    refuses: [403, 404, 409],
  })
  rust(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: RustQuery,
  ): Promise<RustListView> {
    return this.advice.rust(person, memberId, query.on);
  }

  @Post('plan')
  @ApiRoute({
    id: 'planPractice',
    summary: 'Plan the next practice flight',
    description:
      'From what is rusty, what flights booked need and which checkouts they lack: what, in which order, how often, to which tolerances. Each item says why. Nothing is stored, and it permits nothing.',
    answer: PracticePlanView,
    refuses: [403, 404, 409, 422],
  })
  plan(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: PlanPracticeDto,
  ): Promise<PracticePlanView> {
    return this.advice.plan(person, memberId, body);
  }
}
