import { Body, Controller, Delete, Param, Patch, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { NewRunway, RunwayChanges, RunwayView } from './airfield.dto.js';
import { RunwaysService } from './runways.service.js';

/** Runways; they are read with their airfield. */
@ApiTags('airfields')
@Controller('airfields/:airfieldId/runways')
@Roles('administrator')
export class RunwaysController {
  constructor(private readonly runways: RunwaysService) {}

  @Post()
  @ApiRoute({
    id: 'addRunway',
    summary: 'Add one direction of a runway',
    answer: RunwayView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('airfieldId', UuidPipe) airfieldId: string,
    @Body() body: NewRunway,
  ): Promise<RunwayView> {
    return this.runways.add(user, airfieldId, body);
  }

  @Patch(':runwayId')
  @ApiRoute({
    id: 'editRunway',
    summary: 'Change a runway',
    answer: RunwayView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('airfieldId', UuidPipe) airfieldId: string,
    @Param('runwayId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: RunwayChanges,
  ): Promise<RunwayView> {
    return this.runways.edit(user, { airfieldId, id }, version, changes);
  }

  @Delete(':runwayId')
  @ApiRoute({ id: 'removeRunway', summary: 'Delete a runway', answer: null, refuses: [403, 404, 412, 428] })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('airfieldId', UuidPipe) airfieldId: string,
    @Param('runwayId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.runways.remove(user, { airfieldId, id }, version);
  }
}
