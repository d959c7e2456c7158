import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import { CAUTION } from '../../rules/index.js';
import { DecisionsService } from '../decisions.service.js';
import { damaged } from '../replay/damaged.js';
import { WhyDecisionDto, WhyFindingDto } from './why.dto.js';
import { why } from './why.js';

/** Why a decision came out as it did. Whoever may read a decision may ask; somebody else's record stays closed. */
@ApiTags('decisions')
@Controller('decisions/:id/why')
export class WhyController {
  constructor(private readonly decisions: DecisionsService) {}

  @Get()
  @ApiRoute({
    id: 'explainDecision',
    summary: 'Why the answer: facts read, numbers, texts in force, branches taken, who is pilot in command',
    answer: WhyDecisionDto,
    refuses: [404, 409],
  })
  async decision(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<WhyDecisionDto> {
    const stored = await this.decisions.find(user, id);
    const { knownAt } = stored.sheet;
    const explained = await damaged(async () => why(stored, user, null));
    return { decisionId: id, knownAt, ...explained, caution: CAUTION };
  }

  @Get(':rule')
  @ApiRoute({
    id: 'explainFinding',
    summary: 'Why the finding of one rule',
    answer: WhyFindingDto,
    refuses: [404, 409],
  })
  async finding(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @Param('rule') rule: string,
  ): Promise<WhyFindingDto> {
    const stored = await this.decisions.find(user, id);
    const { derivations } = await damaged(async () => why(stored, user, rule));
    const [derivation] = derivations;
    if (!derivation) {
      throw new ProblemException('not-found', {
        detail: 'The decision has no finding of that rule. Take the rule from one of its findings.',
      });
    }
    return { decisionId: id, why: derivation, caution: CAUTION };
  }
}
