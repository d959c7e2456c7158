import { Body, Controller, Delete, Get, HttpCode, Param, Post } from '@nestjs/common';
import {
  ApiBearerAuth,
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { UuidPipe } from '../platform/http/uuid.pipe.js';
import { IfMatch } from '../platform/http/versions.js';
import { AccountView, GivenPasswordDto } from './accounts.dto.js';
import { AccountsService } from './accounts.service.js';
import { ApiProblems } from './api-problems.js';
import { CurrentUser, type SignedIn } from './current-user.js';
import { Roles } from './roles.js';

/** The accounts members sign in with, for administrators. */
@ApiTags('accounts')
@ApiBearerAuth()
@Roles('administrator')
@ApiProblems(400, 401, 403, 404, 429)
@Controller('members/:memberId/account')
export class AccountsController {
  constructor(private readonly accounts: AccountsService) {}

  @Get()
  @ApiOperation({ operationId: 'getAccount', summary: "Read a member's account" })
  @ApiOkResponse({ type: AccountView })
  get(@CurrentUser() by: SignedIn, @Param('memberId', UuidPipe) memberId: string): Promise<AccountView> {
    return this.accounts.get(by, memberId);
  }

  @Post()
  @ApiOperation({ operationId: 'createAccount', summary: 'Give a member an account with a first password' })
  @ApiCreatedResponse({ type: AccountView })
  @ApiProblems(409)
  create(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: GivenPasswordDto,
  ): Promise<AccountView> {
    return this.accounts.create(by, memberId, body.password);
  }

  @Post('password')
  @HttpCode(200)
  @ApiOperation({
    operationId: 'resetPassword',
    summary: 'Give a member a new password',
    description: 'Also unlocks the account and ends every sign-in of it.',
  })
  @ApiOkResponse({ type: AccountView })
  resetPassword(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: GivenPasswordDto,
  ): Promise<AccountView> {
    return this.accounts.resetPassword(by, memberId, body.password);
  }

  @Delete()
  @HttpCode(204)
  @ApiOperation({ operationId: 'deleteAccount', summary: "Take a member's account away; the member stays" })
  @ApiNoContentResponse()
  @ApiProblems(409, 412, 428)
  remove(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.accounts.remove(by, memberId, version);
  }
}
