import { Body, Controller, Delete, Get, Param, Patch, Post, Put, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import {
  NewRequirementDto,
  RequirementChangesDto,
  RequirementPage,
  RequirementQuery,
  RequirementView,
  SyllabusDto,
  VersionList,
} from './requirement.dto.js';
import { RequirementsService } from './requirements.service.js';

/** What the club asks before a checkout is signed. */
@ApiTags('checkouts')
@Controller('checkout-requirements')
export class RequirementsController {
  constructor(private readonly requirements: RequirementsService) {}

  @Get()
  @ApiRoute({
    id: 'listRequirements',
    summary: 'What each checkout of the club asks for',
    description: 'The version in force of each; drafts are for officers.',
    answer: RequirementPage,
  })
  list(@CurrentUser() user: SignedIn, @Query() query: RequirementQuery): Promise<RequirementPage> {
    return this.requirements.list(user, query);
  }

  @Get(':requirementId')
  @ApiRoute({
    id: 'readRequirement',
    summary: 'What one checkout asks for',
    answer: RequirementView,
    refuses: [404],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) id: string,
  ): Promise<RequirementView> {
    return this.requirements.read(user, id);
  }

  @Get(':requirementId/versions')
  @ApiRoute({
    id: 'listRequirementVersions',
    summary: 'Every version that was published, newest first',
    answer: VersionList,
    refuses: [404],
  })
  versions(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) id: string,
  ): Promise<VersionList> {
    return this.requirements.versions(user, id);
  }

  @Post()
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'addRequirement',
    summary: 'Lay a checkout down, as a draft',
    description:
      'It is asked for once it is published. One for each model, group, condition and the annual check.',
    answer: RequirementView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewRequirementDto): Promise<RequirementView> {
    return this.requirements.add(user, body);
  }

  @Patch(':requirementId')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'editRequirement',
    summary: 'Change who may sign it, retire it, or take it up again',
    answer: RequirementView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: RequirementChangesDto,
  ): Promise<RequirementView> {
    return this.requirements.edit(user, id, version, changes);
  }

  @Put(':requirementId/draft')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'writeRequirementDraft',
    summary: 'Write the next version, as a draft',
    description: 'Takes the place of the draft there is. What was published stays as it is.',
    answer: RequirementView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  writeDraft(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: SyllabusDto,
  ): Promise<RequirementView> {
    return this.requirements.writeDraft(user, id, version, body);
  }

  @Delete(':requirementId/draft')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'removeRequirementDraft',
    summary: 'Drop the draft',
    description: 'What was never published goes with it.',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  removeDraft(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.requirements.removeDraft(user, id, version);
  }

  @Post(':requirementId/publish')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'publishRequirement',
    summary: 'Put the draft in force',
    description: 'It never changes from then on. Items that say the same as before stay signed.',
    answer: RequirementView,
    refuses: [403, 404, 409, 412, 428],
  })
  publish(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<RequirementView> {
    return this.requirements.publish(user, id, version);
  }
}
