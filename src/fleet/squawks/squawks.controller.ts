import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { SimilarSquawks } from './duplicates/similar.dto.js';
import { SimilarService } from './duplicates/similar.service.js';
import { NewSquawk, SquawkChanges, SquawkPage, SquawkQuery, SquawkReport, SquawkView } from './squawk.dto.js';
import { SquawksService } from './squawks.service.js';

/** What was reported wrong with an aircraft. */
@ApiTags('squawks')
@Controller('aircraft/:aircraftId/squawks')
export class SquawksController {
  constructor(
    private readonly squawks: SquawksService,
    private readonly similar: SimilarService,
  ) {}

  @Get()
  @ApiRoute({ id: 'listSquawks', summary: 'Squawks, newest first', answer: SquawkPage, refuses: [404] })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() query: SquawkQuery,
  ): Promise<SquawkPage> {
    return this.squawks.list(user, aircraftId, query);
  }

  @Get(':squawkId')
  @ApiRoute({ id: 'readSquawk', summary: 'One squawk', answer: SquawkView, refuses: [404] })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
  ): Promise<SquawkView> {
    return this.squawks.read(user, { aircraftId, id });
  }

  @Post()
  @ApiRoute({
    id: 'reportSquawk',
    summary: 'Report something wrong',
    description: 'Anyone signed in may. Until the coordinator has looked at it, it stands as reported.',
    answer: SquawkView,
    status: 201,
    refuses: [404, 422],
  })
  report(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: SquawkReport,
  ): Promise<SquawkView> {
    return this.squawks.report(user, aircraftId, body);
  }

  @Post('similar')
  @ApiRoute({
    id: 'findSimilarSquawks',
    summary: 'Open squawks that may be the same fault',
    description:
      'By their words and the equipment they name. For whoever is about to report; nothing is kept.',
    answer: SimilarSquawks,
    refuses: [404, 422],
  })
  findSimilar(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewSquawk,
  ): Promise<SimilarSquawks> {
    return this.similar.find(user, aircraftId, body);
  }

  @Patch(':squawkId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editSquawk',
    summary: 'Reword an open squawk, or say which equipment it is about',
    answer: SquawkView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: SquawkChanges,
  ): Promise<SquawkView> {
    return this.squawks.edit(user, { aircraftId, id }, version, changes);
  }
}
