import { Body, Controller, Delete, Get, Param, Patch, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../../accounts/current-user.js';
import { Roles } from '../../../accounts/roles.js';
import { ApiRoute } from '../../../platform/http/api-route.js';
import { UuidPipe } from '../../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../../platform/http/versions.js';
import {
  NewTemplate,
  PutOn,
  PutOnResult,
  TemplateChanges,
  TemplateList,
  TemplateView,
} from './template.dto.js';
import { TemplatesService } from './templates.service.js';

/** Items ready to be put on an aircraft. */
@ApiTags('airworthiness')
@Controller()
export class TemplatesController {
  constructor(private readonly templates: TemplatesService) {}

  @Get('item-templates')
  @ApiRoute({
    id: 'listTemplates',
    summary: 'Items of the jurisdiction, and the club’s own, ready to be put on an aircraft',
    answer: TemplateList,
  })
  list(@CurrentUser() user: SignedIn): Promise<TemplateList> {
    return this.templates.list(user);
  }

  @Post('item-templates')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addTemplate',
    summary: 'Add a template of the club’s own',
    answer: TemplateView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewTemplate): Promise<TemplateView> {
    return this.templates.add(user, body);
  }

  @Patch('item-templates/:templateId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editTemplate',
    summary: 'Change a template of the club’s own',
    description: 'Items that came from it stay as they are.',
    answer: TemplateView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('templateId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: TemplateChanges,
  ): Promise<TemplateView> {
    return this.templates.edit(user, id, version, changes);
  }

  @Delete('item-templates/:templateId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeTemplate',
    summary: 'Delete a template of the club’s own',
    answer: null,
    refuses: [403, 404, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('templateId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.templates.remove(user, id, version);
  }

  @Post('aircraft/:aircraftId/items/from-templates')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'putTemplatesOn',
    summary: 'Put templates on an aircraft',
    description:
      'What is there already, or hangs on a piece the aircraft does not have, is left out and said.',
    answer: PutOnResult,
    status: 201,
    refuses: [403, 404, 422],
  })
  putOn(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: PutOn,
  ): Promise<PutOnResult> {
    return this.templates.putOn(user, aircraftId, body);
  }
}
