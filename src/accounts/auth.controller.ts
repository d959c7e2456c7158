import { Body, Controller, Get, HttpCode, Post, Req, UseGuards } from '@nestjs/common';
import {
  ApiBearerAuth,
  ApiBody,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { Throttle } from '@nestjs/throttler';
import { ApiProblems } from './api-problems.js';
import { AccountsService } from './accounts.service.js';
import { ChangePasswordDto, MeView, RefreshDto, SignInDto, TokensView } from './accounts.dto.js';
import { CurrentUser, type SignedIn, type SignedInRequest } from './current-user.js';
import { PASSWORD_LIMIT } from './limits.js';
import { Public } from './roles.js';
import { SessionsService } from './sessions.service.js';
import { SignInGuard } from './sign-in.guard.js';

/** Signing in, staying signed in, signing out. */
@ApiTags('auth')
@Controller('auth')
export class AuthController {
  constructor(
    private readonly sessions: SessionsService,
    private readonly accounts: AccountsService,
  ) {}

  @Post('sign-in')
  @Public()
  @UseGuards(SignInGuard)
  @Throttle(PASSWORD_LIMIT)
  @HttpCode(200)
  @ApiOperation({
    operationId: 'signIn',
    summary: 'Sign in with club, e-mail address and password',
    description: 'Five wrong passwords lock the account for 15 minutes; each further one doubles the time.',
  })
  @ApiBody({ type: SignInDto })
  @ApiOkResponse({ type: TokensView })
  @ApiProblems(400, 401, 429)
  signIn(@Req() request: SignedInRequest): Promise<TokensView> {
    return this.sessions.open(request.user!);
  }

  @Post('refresh')
  @Public()
  @Throttle(PASSWORD_LIMIT)
  @HttpCode(200)
  @ApiOperation({
    operationId: 'refreshTokens',
    summary: 'Trade a refresh token for new tokens',
    description:
      'Each refresh token counts once. Using one twice ends the whole sign-in, because somebody has copied it.',
  })
  @ApiOkResponse({ type: TokensView })
  @ApiProblems(400, 401, 429)
  refresh(@Body() body: RefreshDto): Promise<TokensView> {
    return this.sessions.refresh(body.refreshToken);
  }

  @Post('sign-out')
  @Public()
  @HttpCode(204)
  @ApiOperation({
    operationId: 'signOut',
    summary: 'End a sign-in',
    description: 'The access token in hand lasts up to 15 minutes more.',
  })
  @ApiNoContentResponse({ description: 'Signed out, or was not signed in' })
  @ApiProblems(400, 429)
  signOut(@Body() body: RefreshDto): Promise<void> {
    return this.sessions.close(body.refreshToken);
  }

  @Get('me')
  @ApiBearerAuth()
  @ApiOperation({ operationId: 'getMe', summary: 'Who am I, and in which club?' })
  @ApiOkResponse({ type: MeView })
  @ApiProblems(401)
  me(@CurrentUser() person: SignedIn): Promise<MeView> {
    return this.accounts.me(person);
  }

  @Post('password')
  @Throttle(PASSWORD_LIMIT)
  @HttpCode(200)
  @ApiBearerAuth()
  @ApiOperation({
    operationId: 'changeMyPassword',
    summary: 'Change my password',
    description: 'Ends every sign-in of mine; the answer holds the tokens of a new one.',
  })
  @ApiOkResponse({ type: TokensView })
  @ApiProblems(400, 401, 429)
  changePassword(@CurrentUser() person: SignedIn, @Body() body: ChangePasswordDto): Promise<TokensView> {
    return this.sessions.changePassword(person, body.currentPassword, body.newPassword);
  }
}
