import { Body, Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { SeasonBody, SeasonView } from './season.dto.js';
import { SeasonService } from './season.service.js';

/** The season's shop visits. */
@ApiTags('maintenance')
@Controller('maintenance/season')
@Roles('maintenance-coordinator', 'safety-officer', 'administrator')
export class SeasonController {
  constructor(private readonly seasons: SeasonService) {}

  @Post('plan')
  @ApiRoute({
    id: 'planSeason',
    summary: 'Plan the shop visits of the weeks to come',
    description:
      'Nothing overdue, the least flying displaced, upgrades riding along; proven to be the best by the club’s own weights, and why. Books nothing.',
    answer: SeasonView,
    refuses: [403, 422],
  })
  plan(@CurrentUser() user: SignedIn, @Body() body: SeasonBody): Promise<SeasonView> {
    return this.seasons.plan(user, body);
  }
}
