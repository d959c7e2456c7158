import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { ChangedAnswersPage, ChangesQuery, DryRunBody, DryRunDto } from './dry-run.dto.js';
import { DryRunService } from './dry-run.service.js';

/** Dry runs of the club's own rules. They name other members' flights, so only those who write rules see them. */
@ApiTags('club rules')
@Controller('club-rules/:ruleId/dry-run')
@Roles('administrator', 'safety-officer')
export class DryRunController {
  constructor(private readonly runs: DryRunService) {}

  @Post()
  @ApiRoute({
    id: 'dryRunClubRule',
    summary: 'Try a draft on the decisions of the last twelve months and the bookings to come',
    description:
      'Counts what would have been answered otherwise, lists each, and says what was left out and why.',
    answer: DryRunDto,
    refuses: [403, 404, 409, 422],
  })
  run(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @Body() body: DryRunBody,
  ): Promise<DryRunDto> {
    return this.runs.run(user, id, body);
  }

  @Get()
  @ApiRoute({
    id: 'readDryRun',
    summary: 'The newest dry run of a rule',
    answer: DryRunDto,
    refuses: [403, 404],
  })
  last(@CurrentUser() user: SignedIn, @Param('ruleId', UuidPipe) id: string): Promise<DryRunDto> {
    return this.runs.last(user, id);
  }

  @Get('changes')
  @ApiRoute({
    id: 'listDryRunChanges',
    summary: 'Answers that would have been others, by the newest dry run',
    answer: ChangedAnswersPage,
    refuses: [403, 404],
  })
  changes(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @Query() query: ChangesQuery,
  ): Promise<ChangedAnswersPage> {
    return this.runs.changes(user, id, query);
  }
}
