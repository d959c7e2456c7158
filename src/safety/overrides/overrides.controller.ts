import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { NewOverrideReview, OverridePage, OverrideView } from './override.dto.js';
import { OverridesService } from './overrides.service.js';

@ApiTags('safety')
@Controller('safety/overrides')
@Roles('safety-officer', 'administrator')
export class OverridesController {
  constructor(private readonly overrides: OverridesService) {}

  @Get()
  @ApiRoute({
    id: 'listOverrides',
    summary: 'Overrides with their reviews, newest first',
    answer: OverridePage,
    refuses: [403],
  })
  list(@CurrentUser() user: SignedIn, @Query() page: PageQuery): Promise<OverridePage> {
    return this.overrides.list(user, page);
  }

  @Post(':overrideId/reviews')
  @ApiRoute({
    id: 'reviewOverride',
    summary: 'Set when it is looked at next, or record what was found',
    description: 'The override itself stays as it was sealed.',
    answer: OverrideView,
    status: 201,
    refuses: [403, 404, 422],
  })
  review(
    @CurrentUser() user: SignedIn,
    @Param('overrideId', UuidPipe) id: string,
    @Body() body: NewOverrideReview,
  ): Promise<OverrideView> {
    return this.overrides.review(user, id, body);
  }
}
