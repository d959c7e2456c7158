import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import {
  NewPolicyValue,
  PolicyQuery,
  PolicyValueChanges,
  PolicyValueView,
  PolicyView,
} from './policy.dto.js';
import { PolicyChangesView } from './policy-changes.js';
import { PolicyService } from './policy.service.js';

/** The club's own rules as dated numbers. */
@ApiTags('policy')
@Controller('policy')
export class PolicyController {
  constructor(private readonly policy: PolicyService) {}

  @Get('parameters')
  @ApiRoute({
    id: 'readPolicy',
    summary: 'Every parameter, the value in force and its history',
    answer: PolicyView,
  })
  read(@CurrentUser() user: SignedIn, @Query() query: PolicyQuery): Promise<PolicyView> {
    return this.policy.read(user, query.asOf);
  }

  @Get('parameters/:parameterId/changes')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'listPolicyChanges',
    summary: 'Who changed the values of a parameter, when, and how',
    answer: PolicyChangesView,
    refuses: [403, 404],
  })
  changes(
    @CurrentUser() user: SignedIn,
    @Param('parameterId') parameterId: string,
  ): Promise<PolicyChangesView> {
    return this.policy.changes(user, parameterId);
  }

  @Post('values')
  @Roles('administrator')
  @ApiRoute({
    id: 'addPolicyValue',
    summary: 'Set a parameter from a day on',
    description: 'Parameters of the law are refused. Values never begin in the past.',
    answer: PolicyValueView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewPolicyValue): Promise<PolicyValueView> {
    return this.policy.add(user, body);
  }

  @Patch('values/:valueId')
  @Roles('administrator')
  @ApiRoute({
    id: 'editPolicyValue',
    summary: 'Change a value that is not yet in force',
    answer: PolicyValueView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('valueId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: PolicyValueChanges,
  ): Promise<PolicyValueView> {
    return this.policy.edit(user, { id, version }, changes);
  }

  @Delete('values/:valueId')
  @Roles('administrator')
  @ApiRoute({
    id: 'removePolicyValue',
    summary: 'Take back a value that is not yet in force',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('valueId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.policy.remove(user, { id, version });
  }
}
