import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import {
  ActivateBody,
  CheckBody,
  ClubRuleChanges,
  ClubRulesQuery,
  EndBody,
  NewClubRule,
} from './club-rule.dto.js';
import { CheckView, ClubRulesPage, ClubRuleView } from './club-rule-view.dto.js';
import { ClubRulesInForce } from './club-rules-in-force.js';
import { ClubRulesService } from './club-rules.service.js';
import { RuleSchemaView } from './schema.dto.js';
import { schemaView } from './schema.view.js';

/** The rules that the club wrote itself. Dry runs: decisions/dry-run. */
@ApiTags('club rules')
@Controller('club-rules')
export class ClubRulesController {
  constructor(
    private readonly rules: ClubRulesService,
    private readonly inForce: ClubRulesInForce,
  ) {}

  @Get('schema')
  @ApiRoute({ id: 'readRuleSchema', summary: 'What expressions may read and say', answer: RuleSchemaView })
  schema(): RuleSchemaView {
    return schemaView();
  }

  @Post('check')
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'checkClubRule',
    summary: 'Check expressions without keeping them',
    description:
      'Refused with field, line and column of every fault; else what they read and cost, and warnings.',
    answer: CheckView,
    refuses: [403, 422],
  })
  check(@CurrentUser() user: SignedIn, @Body() body: CheckBody): Promise<CheckView> {
    return this.rules.check(user, body);
  }

  @Get()
  @ApiRoute({
    id: 'listClubRules',
    summary: "The club's own rules, version by version",
    answer: ClubRulesPage,
  })
  list(@CurrentUser() user: SignedIn, @Query() query: ClubRulesQuery): Promise<ClubRulesPage> {
    return this.rules.list(user, query);
  }

  @Post()
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'addClubRule',
    summary: 'Write a rule: a draft, not yet in force',
    answer: ClubRuleView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewClubRule): Promise<ClubRuleView> {
    return this.rules.add(user, body);
  }

  @Get(':ruleId')
  @ApiRoute({ id: 'readClubRule', summary: 'One version of a rule', answer: ClubRuleView, refuses: [404] })
  read(@CurrentUser() user: SignedIn, @Param('ruleId', UuidPipe) id: string): Promise<ClubRuleView> {
    return this.rules.read(user, id);
  }

  @Patch(':ruleId')
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'editClubRule',
    summary: 'Change a draft',
    answer: ClubRuleView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: ClubRuleChanges,
  ): Promise<ClubRuleView> {
    return this.rules.edit(user, { id, version }, changes);
  }

  @Delete(':ruleId')
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'removeClubRule',
    summary: 'Throw a draft away',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.rules.remove(user, { id, version });
  }

  @Post(':ruleId/versions')
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'addClubRuleVersion',
    summary: 'Draft the next version of a rule: its texts, changed as given',
    answer: ClubRuleView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  addVersion(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @Body() changes: ClubRuleChanges,
  ): Promise<ClubRuleView> {
    return this.rules.addVersion(user, id, changes);
  }

  @Post(':ruleId/activate')
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'activateClubRule',
    summary: 'Put a draft in force from a day on',
    description:
      'It must have been tried as it is: POST .../dry-run. The version before it ends on that day.',
    answer: ClubRuleView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  activate(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() { from }: ActivateBody,
  ): Promise<ClubRuleView> {
    return this.inForce.activate(user, { id, version }, from);
  }

  @Post(':ruleId/end')
  @Roles('administrator', 'safety-officer')
  @ApiRoute({
    id: 'endClubRule',
    summary: 'End a version on a day',
    description: 'On its first day, it never takes effect, and the version it would have replaced goes on.',
    answer: ClubRuleView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  end(
    @CurrentUser() user: SignedIn,
    @Param('ruleId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() { to }: EndBody,
  ): Promise<ClubRuleView> {
    return this.inForce.end(user, { id, version }, to);
  }
}
