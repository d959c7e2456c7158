import { type ExecutionContext, Injectable } from '@nestjs/common';
import { AuthGuard } from '@nestjs/passport';
import type { Request } from 'express';
import { RequestValidationPipe } from '../platform/http/validation.pipe.js';
import { SignInDto } from './accounts.dto.js';

/** Runs passport's local strategy. Guards come before pipes, so the body is checked here, ahead of the password. */
@Injectable()
export class SignInGuard extends AuthGuard('local') {
  private readonly pipe = new RequestValidationPipe();

  override async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<Request>();
    request.body = await this.pipe.transform(request.body, { type: 'body', metatype: SignInDto });
    return (await super.canActivate(context)) as boolean;
  }
}
