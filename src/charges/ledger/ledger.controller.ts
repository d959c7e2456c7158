import { Body, Controller, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import type { StoredAnswer } from '../../bookings/idempotency.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, UuidPipe } from '../../platform/http/index.js';
import { EntryView, NewAdjustment, NewReceipt, ReverseEntry } from './ledger.dto.js';
import { LedgerService } from './ledger.service.js';

/** Entries of members' accounts that are no flights. */
@ApiTags('charges')
@Controller()
@Roles('administrator')
export class LedgerController {
  constructor(private readonly ledger: LedgerService) {}

  @Post('members/:memberId/receipts')
  @ApiRoute({
    id: 'recordReceipt',
    summary: 'Enter money that came in for an account',
    description: 'Never edited; a wrong one is reversed. Nobody enters their own.',
    answer: EntryView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async receive(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IdempotencyKey() key: string,
    @Body() body: NewReceipt,
    @Res({ passthrough: true }) response: Response,
  ): Promise<EntryView> {
    return entered(await this.ledger.receive(by, memberId, key, body), response);
  }

  @Post('members/:memberId/adjustments')
  @ApiRoute({
    id: 'adjustAccount',
    summary: 'Put something on an account or take it off, with the reason',
    description: 'Never edited; a wrong one is reversed. Nobody adjusts their own.',
    answer: EntryView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async adjust(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IdempotencyKey() key: string,
    @Body() body: NewAdjustment,
    @Res({ passthrough: true }) response: Response,
  ): Promise<EntryView> {
    return entered(await this.ledger.adjust(by, memberId, key, body), response);
  }

  @Post('ledger-entries/:entryId/reverse')
  @ApiRoute({
    id: 'reverseEntry',
    summary: 'Take an entry off again; both stay on record',
    description: 'A flight whose charge was reversed may be charged anew.',
    answer: EntryView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  reverse(
    @CurrentUser() by: SignedIn,
    @Param('entryId', UuidPipe) id: string,
    @Body() { reason }: ReverseEntry,
  ): Promise<EntryView> {
    return this.ledger.reverse(by, id, reason);
  }
}

function entered({ status, body }: StoredAnswer, response: Response): EntryView {
  response.status(status);
  return JSON.parse(body) as EntryView;
}
