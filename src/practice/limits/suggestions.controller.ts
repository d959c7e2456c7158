import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { LimitSuggestionsView } from './suggestions.dto.js';
import { LimitSuggestionsService } from './suggestions.service.js';

/** Limits suggested from what was flown. */
@ApiTags('practice')
@Controller('members/:memberId/limits/suggestions')
export class LimitSuggestionsController {
  constructor(private readonly suggestions: LimitSuggestionsService) {}

  @Get()
  @ApiRoute({
    id: 'suggestLimits',
    summary: 'What limits a member’s recent flying suggests, and from which records',
    description:
      'The hardest of what went well in the last days (club.limits.suggested-days), never beyond what was flown; no value where nothing is on record. Nothing is set.',
    answer: LimitSuggestionsView,
    refuses: [403, 404, 409],
  })
  suggest(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<LimitSuggestionsView> {
    return this.suggestions.suggest(person, memberId);
  }
}
