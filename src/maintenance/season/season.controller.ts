import { Body, Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { AcceptedSeason, AcceptSeason, SeasonBody, SeasonView } from './season.dto.js';
import { AcceptanceService } from './acceptance.service.js';
import { SeasonService } from './season.service.js';

/** The season's shop visits. */
@ApiTags('maintenance')
@Controller('maintenance/season')
@Roles('maintenance-coordinator', 'safety-officer', 'administrator')
export class SeasonController {
  constructor(
    private readonly seasons: SeasonService,
    private readonly acceptance: AcceptanceService,
  ) {}

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

  @Post('accept/preview')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'previewSeason',
    summary: 'What putting visits of a plan into the calendar would do to members’ flights',
    answer: AcceptedSeason,
    refuses: [403, 409, 422],
  })
  preview(@CurrentUser() user: SignedIn, @Body() body: AcceptSeason): Promise<AcceptedSeason> {
    return this.acceptance.accept(user, body, { rehearse: true });
  }

  @Post('accept')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'acceptSeason',
    summary: 'Put visits of a plan into the calendar',
    description:
      'A work order for each, together or not at all. A new plan keeps to what is in the calendar; only what is not booked yet has to be sent.',
    answer: AcceptedSeason,
    status: 201,
    refuses: [403, 409, 422],
  })
  accept(@CurrentUser() user: SignedIn, @Body() body: AcceptSeason): Promise<AcceptedSeason> {
    return this.acceptance.accept(user, body, { rehearse: false });
  }
}
