import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { DeferralGuide } from './deferral-guide.dto.js';
import { DeferralGuideService } from './deferral-guide.service.js';
import { SquawkEffects, SquawkStep } from './squawk-effects.dto.js';
import { SquawkEffectsService } from './squawk-effects.service.js';

/** What the coordinator looks at before deciding about a squawk. */
@ApiTags('squawks')
@Controller('aircraft/:aircraftId/squawks/:squawkId')
@Roles('maintenance-coordinator')
export class SquawkEffectsController {
  constructor(
    private readonly effects: SquawkEffectsService,
    private readonly guides: DeferralGuideService,
  ) {}

  @Post('effects')
  @ApiRoute({
    id: 'previewSquawkStep',
    summary: 'What a step would do to flights and bookings',
    description:
      'Asks the rules about a flight of each kind with and without the squawk, before and after the step, and judges every booking anew. Nothing is kept.',
    answer: SquawkEffects,
    refuses: [403, 404, 409, 422],
  })
  preview(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Body() body: SquawkStep,
  ): Promise<SquawkEffects> {
    return this.effects.preview(user, { aircraftId, id }, body);
  }

  @Get('deferral-guide')
  @ApiRoute({
    id: 'readDeferralGuide',
    summary: 'The steps of 14 CFR 91.213(d) for it, in their order',
    description:
      "With what the aircraft's record and the rules answer, and what a person must. Other jurisdictions: the club's own procedure.",
    answer: DeferralGuide,
    refuses: [403, 404],
  })
  guide(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
  ): Promise<DeferralGuide> {
    return this.guides.guide(user, { aircraftId, id });
  }
}
