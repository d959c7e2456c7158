import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { NewWeighing, WeighingPage, WeighingView } from './weighing.dto.js';
import { WeighingsService } from './weighings.service.js';

/** Empty weights of an aircraft. */
@ApiTags('weighings')
@Controller('aircraft/:aircraftId/weighings')
export class WeighingsController {
  constructor(private readonly weighings: WeighingsService) {}

  @Get()
  @ApiRoute({
    id: 'listWeighings',
    summary: 'Empty weights, newest record first',
    answer: WeighingPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<WeighingPage> {
    return this.weighings.list(user, aircraftId, page);
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addWeighing',
    summary: 'Record an empty weight',
    description: 'Weighed, or computed. The newest day that is not void counts.',
    answer: WeighingView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewWeighing,
  ): Promise<WeighingView> {
    return this.weighings.add(user, aircraftId, body);
  }

  @Post(':weighingId/void')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'voidWeighing',
    summary: 'Take a wrong weighing back',
    answer: WeighingView,
    refuses: [403, 404, 409],
  })
  void(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('weighingId', UuidPipe) id: string,
  ): Promise<WeighingView> {
    return this.weighings.void(user, aircraftId, id);
  }
}
