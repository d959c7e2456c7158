import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import {
  DirectiveChanges,
  DirectiveList,
  DirectiveResult,
  DirectiveStandings,
  NewDirective,
  NewFinding,
  PreviewOf,
} from './directive.dto.js';
import { DirectivesService } from './directives.service.js';

/** Airworthiness directives. */
@ApiTags('airworthiness')
@Controller()
export class DirectivesController {
  constructor(private readonly directives: DirectivesService) {}

  @Get('directives')
  @ApiRoute({ id: 'listDirectives', summary: 'Directives on record, oldest first', answer: DirectiveList })
  list(@CurrentUser() user: SignedIn): Promise<DirectiveList> {
    return this.directives.list(user);
  }

  @Get('aircraft/:aircraftId/directives')
  @ApiRoute({
    id: 'readDirectivesOf',
    summary: 'How each directive stands to an aircraft and the pieces in it, and why',
    answer: DirectiveStandings,
    refuses: [404],
  })
  ofAircraft(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
  ): Promise<DirectiveStandings> {
    return this.directives.ofAircraft(user, aircraftId);
  }

  @Post('directives/preview')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'previewDirective',
    summary: 'Which aircraft a directive would apply to, and what it would do to members’ flights',
    answer: DirectiveResult,
    refuses: [403, 409, 422],
  })
  preview(@CurrentUser() user: SignedIn, @Body() body: NewDirective): Promise<DirectiveResult> {
    return this.directives.add(user, body, { rehearse: true });
  }

  @Post('directives')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addDirective',
    summary: 'Enter a directive, and take it up on every aircraft it applies to',
    description:
      'Where records do not tell whether it applies, it is due until somebody has looked it up and recorded a finding.',
    answer: DirectiveResult,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Body() body: NewDirective,
    @Query() { preview }: PreviewOf,
  ): Promise<DirectiveResult> {
    return this.directives.add(user, body, { rehearse: false, preview });
  }

  @Patch('directives/:directiveId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editDirective',
    summary: 'Correct what was entered wrong',
    description: 'A directive that was published anew is another one, which supersedes it.',
    answer: DirectiveResult,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('directiveId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: DirectiveChanges,
  ): Promise<DirectiveResult> {
    return this.directives.edit(user, id, version, changes, { rehearse: false });
  }

  @Post('aircraft/:aircraftId/directives/:directiveId/findings')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addDirectiveFinding',
    summary: 'Record that somebody has looked up whether a directive applies',
    description: 'Kept as entered; it grants nobody authority. The newest counts.',
    answer: DirectiveResult,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  find(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('directiveId', UuidPipe) directiveId: string,
    @Body() body: NewFinding,
  ): Promise<DirectiveResult> {
    return this.directives.find(user, { aircraftId, directiveId }, body, { rehearse: false });
  }
}
