import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { AirfieldChanges, AirfieldPage, AirfieldView, NewAirfield } from './airfield.dto.js';
import { AirfieldsService } from './airfields.service.js';

/** The airfields the club flies from and to. */
@ApiTags('airfields')
@Controller('airfields')
export class AirfieldsController {
  constructor(private readonly airfields: AirfieldsService) {}

  @Get()
  @ApiRoute({ id: 'listAirfields', summary: "The club's airfields with their runways", answer: AirfieldPage })
  list(@CurrentUser() user: SignedIn, @Query() page: PageQuery): Promise<AirfieldPage> {
    return this.airfields.list(user, page);
  }

  @Get(':airfieldId')
  @ApiRoute({
    id: 'readAirfield',
    summary: 'One airfield with its runways',
    answer: AirfieldView,
    refuses: [404],
  })
  read(@CurrentUser() user: SignedIn, @Param('airfieldId', UuidPipe) id: string): Promise<AirfieldView> {
    return this.airfields.read(user, id);
  }

  @Post()
  @Roles('administrator')
  @ApiRoute({
    id: 'addAirfield',
    summary: 'Add an airfield, with runways if at hand',
    answer: AirfieldView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewAirfield): Promise<AirfieldView> {
    return this.airfields.add(user, body);
  }

  @Patch(':airfieldId')
  @Roles('administrator')
  @ApiRoute({
    id: 'editAirfield',
    summary: 'Change an airfield',
    answer: AirfieldView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('airfieldId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: AirfieldChanges,
  ): Promise<AirfieldView> {
    return this.airfields.edit(user, id, version, changes);
  }

  @Delete(':airfieldId')
  @Roles('administrator')
  @ApiRoute({
    id: 'removeAirfield',
    summary: 'Delete an airfield and its runways',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('airfieldId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.airfields.remove(user, id, version);
  }
}
