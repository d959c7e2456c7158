import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { CAUTION, rulesetFor, workLoading } from '../../rules/index.js';
import { DecisionsService } from '../decisions.service.js';
import { LoadingWorkDto } from './loading.dto.js';

/** The loading behind a decision. Whoever may read the decision may read it. */
@ApiTags('decisions')
@Controller('decisions/:id/loading')
export class LoadingWorkController {
  constructor(private readonly decisions: DecisionsService) {}

  @Get()
  @ApiRoute({
    id: 'workLoading',
    summary: 'The flight’s loading and runway distances worked out, every step shown',
    description:
      'On the decision’s own facts. What cannot be worked out says why; flight manual and pilot decide.',
    answer: LoadingWorkDto,
    refuses: [404],
  })
  async work(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<LoadingWorkDto> {
    const { sheet, policy } = await this.decisions.find(user, id);
    return { ...workLoading(sheet, rulesetFor(sheet.jurisdiction, policy)), caution: CAUTION };
  }
}
