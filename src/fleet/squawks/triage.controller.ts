import { Body, Controller, Get, Param, Patch, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { DeferralChanges, DeferralView, NewDeferral } from './deferral.dto.js';
import { SquawkView } from './squawk.dto.js';
import { TriageService } from './triage.service.js';

/** What the coordinator decides about a squawk. */
@ApiTags('squawks')
@Controller('aircraft/:aircraftId/squawks/:squawkId')
export class TriageController {
  constructor(private readonly triage: TriageService) {}

  @Post('ground')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'groundSquawk',
    summary: 'Ground the aircraft for it',
    answer: SquawkView,
    refuses: [403, 404, 409],
  })
  ground(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
  ): Promise<SquawkView> {
    return this.triage.ground(user, { aircraftId, id });
  }

  @Post('defer')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'deferSquawk',
    summary: 'Defer it, with the steps of 14 CFR 91.213(d) as recorded',
    answer: SquawkView,
    refuses: [403, 404, 409, 422],
  })
  defer(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Body() body: NewDeferral,
  ): Promise<SquawkView> {
    return this.triage.defer(user, { aircraftId, id }, body);
  }

  @Get('deferral')
  @ApiRoute({ id: 'readDeferral', summary: 'The deferral of a squawk', answer: DeferralView, refuses: [404] })
  readDeferral(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
  ): Promise<DeferralView> {
    return this.triage.readDeferral(user, { aircraftId, id });
  }

  @Patch('deferral')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editDeferral',
    summary: 'Record further steps, or another deadline',
    answer: DeferralView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  editDeferral(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: DeferralChanges,
  ): Promise<DeferralView> {
    return this.triage.editDeferral(user, { aircraftId, id }, version, changes);
  }
}
