import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { PapersHoldView } from './papers-hold.dto.js';
import { PapersHoldService } from './papers-hold.service.js';

/** Until when papers hold. */
@ApiTags('papers')
@Controller('members/:memberId/papers-hold')
export class PapersHoldController {
  constructor(private readonly papers: PapersHoldService) {}

  @Get()
  @ApiRoute({
    id: 'readPapersHold',
    summary: 'Until when each paper holds, and for what',
    description:
      "By the law of the club's country as it stands today, from the durations the rules themselves use. Papers not verified yet are among them.",
    answer: PapersHoldView,
    refuses: [403, 404],
  })
  read(@CurrentUser() by: SignedIn, @Param('memberId', UuidPipe) memberId: string): Promise<PapersHoldView> {
    return this.papers.read(by, memberId);
  }
}
