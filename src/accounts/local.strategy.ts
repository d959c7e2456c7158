import { Injectable } from '@nestjs/common';
import { PassportStrategy } from '@nestjs/passport';
import type { Request } from 'express';
import { Strategy } from 'passport-local';
import { signInRefused } from './accounts.problems.js';
import type { SignedIn } from './current-user.js';
import { SessionsService } from './sessions.service.js';

/** Passport's check of club, e-mail address and password. */
@Injectable()
export class LocalStrategy extends PassportStrategy(Strategy) {
  constructor(private readonly sessions: SessionsService) {
    super({ usernameField: 'email', passwordField: 'password', passReqToCallback: true });
  }

  /** @throws 401 `sign-in-refused` */
  async validate(request: Request, email: string, password: string): Promise<SignedIn> {
    const person = await this.sessions.authenticate(String(request.body.club), email, password);
    if (person === null) throw signInRefused();
    return person;
  }
}
