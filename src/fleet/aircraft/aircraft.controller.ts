import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { AircraftChanges, AircraftPage, AircraftQuery, AircraftView, NewAircraft } from './aircraft.dto.js';
import { AircraftService } from './aircraft.service.js';

/** The club's aircraft. */
@ApiTags('aircraft')
@Controller('aircraft')
export class AircraftController {
  constructor(private readonly aircraft: AircraftService) {}

  @Get()
  @ApiRoute({ id: 'listAircraft', summary: 'The fleet, each aircraft in short', answer: AircraftPage })
  list(@CurrentUser() user: SignedIn, @Query() query: AircraftQuery): Promise<AircraftPage> {
    return this.aircraft.list(user, query);
  }

  @Get(':aircraftId')
  @ApiRoute({ id: 'readAircraft', summary: 'One aircraft', answer: AircraftView, refuses: [404] })
  read(@CurrentUser() user: SignedIn, @Param('aircraftId', UuidPipe) id: string): Promise<AircraftView> {
    return this.aircraft.read(user, id);
  }

  @Post()
  @Roles('administrator')
  @ApiRoute({
    id: 'addAircraft',
    summary: 'Add an aircraft',
    answer: AircraftView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewAircraft): Promise<AircraftView> {
    return this.aircraft.add(user, body);
  }

  @Patch(':aircraftId')
  @Roles('administrator', 'maintenance-coordinator')
  @ApiRoute({
    id: 'editAircraft',
    summary: 'Change an aircraft',
    answer: AircraftView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: AircraftChanges,
  ): Promise<AircraftView> {
    return this.aircraft.edit(user, id, version, changes);
  }

  @Delete(':aircraftId')
  @Roles('administrator')
  @ApiRoute({
    id: 'removeAircraft',
    summary: 'Delete an aircraft that has no records',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.aircraft.remove(user, id, version);
  }
}
