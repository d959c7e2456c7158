import { Body, Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { TimelineDto } from './timeline-request.dto.js';
import { TimelinesDto } from './timeline.dto.js';
import { TimelinesService } from './timelines.service.js';

@ApiTags('timelines')
@Controller('decisions/timeline')
export class TimelinesController {
  constructor(private readonly timelines: TimelinesService) {}

  @Post()
  @ApiRoute({
    id: 'askTimeline',
    summary:
      'When may this member take this aircraft? The answer at every departure of a span, and the first that works',
    description:
      'Each step holds exactly: ask for a decision at any departure within it and the answer is the same, as long as the facts ' +
      'stay what they are. What is booked stands in the way like any rule. Nothing is stored: a timeline is no decision, and ' +
      'a booking asks for one of its own.',
    answer: TimelinesDto,
    refuses: [403, 404, 422],
  })
  ask(@CurrentUser() user: SignedIn, @Body() question: TimelineDto): Promise<TimelinesDto> {
    return this.timelines.ask(user, question);
  }
}
