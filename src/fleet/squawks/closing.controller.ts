import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { ClosingService } from './closing.service.js';
import { SquawkHistory } from './history/history.dto.js';
import { HistoryService } from './history/history.service.js';
import { SquawkCleared, SquawkDuplicate, SquawkFix, SquawkReopened, SquawkView } from './squawk.dto.js';

const KEPT_AS_ENTERED =
  'Who signed, and with which certificate, is kept as entered. The record grants nobody authority to return the aircraft to service.';

/** How squawks end and begin again, and what was done to them. */
@ApiTags('squawks')
@Controller('aircraft/:aircraftId/squawks/:squawkId')
export class ClosingController {
  constructor(
    private readonly closing: ClosingService,
    private readonly histories: HistoryService,
  ) {}

  @Post('fix')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'fixSquawk',
    summary: 'Record the fix, the parts used and who signed for it',
    description: KEPT_AS_ENTERED,
    answer: SquawkView,
    refuses: [403, 404, 409],
  })
  fix(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Body() body: SquawkFix,
  ): Promise<SquawkView> {
    return this.closing.fix(user, { aircraftId, id }, body);
  }

  @Post('no-fault-found')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'clearSquawk',
    summary: 'Record that no fault was found, and what was tested',
    description: KEPT_AS_ENTERED,
    answer: SquawkView,
    refuses: [403, 404, 409],
  })
  clear(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Body() body: SquawkCleared,
  ): Promise<SquawkView> {
    return this.closing.clear(user, { aircraftId, id }, body);
  }

  @Post('duplicate')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'markSquawkDuplicate',
    summary: 'Close it as a duplicate of another',
    description:
      'Kept and linked. The other must be open, ground the aircraft if this one does, and name the same equipment.',
    answer: SquawkView,
    refuses: [403, 404, 409, 422],
  })
  duplicate(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Body() body: SquawkDuplicate,
  ): Promise<SquawkView> {
    return this.closing.duplicate(user, { aircraftId, id }, body);
  }

  @Post('reopen')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'reopenSquawk',
    summary: 'Open a closed squawk again',
    description:
      'One that grounded the aircraft when it was closed grounds it again; any other stands as reported.',
    answer: SquawkView,
    refuses: [403, 404, 409],
  })
  reopen(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Body() body: SquawkReopened,
  ): Promise<SquawkView> {
    return this.closing.reopen(user, { aircraftId, id }, body);
  }

  @Get('history')
  @ApiRoute({
    id: 'readSquawkHistory',
    summary: 'Who did what to it and when, oldest first',
    answer: SquawkHistory,
    refuses: [404],
  })
  history(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Query() page: PageQuery,
  ): Promise<SquawkHistory> {
    return this.histories.read(user, { aircraftId, id }, page);
  }
}
