import './accounts.constraints.js';
import { Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { JwtModule } from '@nestjs/jwt';
import { PassportModule } from '@nestjs/passport';
import { ThrottlerModule } from '@nestjs/throttler';
import { AccessTokens } from './access-tokens.js';
import { AccountsController } from './accounts.controller.js';
import { AccountsService } from './accounts.service.js';
import { AuthController } from './auth.controller.js';
import { JwtAuthGuard } from './jwt-auth.guard.js';
import { LIMITS, RequestLimitGuard } from './limits.js';
import { LocalStrategy } from './local.strategy.js';
import { RefreshTokens } from './refresh-tokens.js';
import { RolesGuard } from './roles.guard.js';
import { SessionsService } from './sessions.service.js';

/**
 * Who is asking, and may they? Brings the guards that every route of the service goes through, in this order: request
 * limits, access token, roles. Needs the global providers Clock, AppConfig and TenantDb.
 */
@Module({
  imports: [JwtModule.register({}), PassportModule, ThrottlerModule.forRoot(LIMITS)],
  controllers: [AuthController, AccountsController],
  providers: [
    AccessTokens,
    RefreshTokens,
    SessionsService,
    AccountsService,
    LocalStrategy,
    { provide: APP_GUARD, useClass: RequestLimitGuard },
    { provide: APP_GUARD, useClass: JwtAuthGuard },
    { provide: APP_GUARD, useClass: RolesGuard },
  ],
  exports: [AccessTokens],
})
export class AccountsModule {}
