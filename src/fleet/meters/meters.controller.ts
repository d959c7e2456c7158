import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { MeterList, NewReading, ReadingPage, ReadingQuery, ReadingView, VoidReading } from './meter.dto.js';
import { MetersService } from './meters.service.js';

/** Meters of an aircraft. */
@ApiTags('meters')
@Controller('aircraft/:aircraftId/meters')
export class MetersController {
  constructor(private readonly meters: MetersService) {}

  @Get()
  @ApiRoute({
    id: 'readMeters',
    summary: 'The newest reading of each meter',
    answer: MeterList,
    refuses: [404],
  })
  latest(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
  ): Promise<MeterList> {
    return this.meters.latest(user, aircraftId);
  }

  @Get('readings')
  @ApiRoute({
    id: 'listReadings',
    summary: 'Readings, newest record first',
    answer: ReadingPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() query: ReadingQuery,
  ): Promise<ReadingPage> {
    return this.meters.list(user, aircraftId, query);
  }

  @Post('readings')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addReading',
    summary: 'Record a reading',
    description:
      'Readings are never edited. One below the last is refused, unless it is the first of a new meter.',
    answer: ReadingView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewReading,
  ): Promise<ReadingView> {
    return this.meters.add(user, aircraftId, body);
  }

  @Post('readings/:readingId/void')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'voidReading',
    summary: 'Take a wrong reading back',
    description:
      'By an entry of its own: the reading stays on record and does not count. Record the right one after it.',
    answer: ReadingView,
    refuses: [403, 404, 409, 422],
  })
  takeBack(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('readingId', UuidPipe) id: string,
    @Body() body: VoidReading,
  ): Promise<ReadingView> {
    return this.meters.takeBack(user, { aircraftId, id }, body);
  }
}
