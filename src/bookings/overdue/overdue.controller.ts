import { Body, Controller, Get, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { OverdueAlerts, OverdueContacts, OverdueContactsDto } from './overdue.dto.js';
import { OverdueService } from './overdue.service.js';

/** Aircraft that are not back. */
@ApiTags('flights')
@Controller('overdue')
export class OverdueController {
  constructor(private readonly overdue: OverdueService) {}

  @Get()
  @ApiRoute({
    id: 'listOverdueAlerts',
    summary: 'Overdue aircraft that I was told of and have not put away',
    description: 'No replacement for flight following.',
    answer: OverdueAlerts,
  })
  mine(@CurrentUser() user: SignedIn): Promise<OverdueAlerts> {
    return this.overdue.mine(user);
  }

  @Post(':alertId/seen')
  @ApiRoute({ id: 'putOverdueAway', summary: 'I have seen to it', answer: null, refuses: [404] })
  seen(@CurrentUser() user: SignedIn, @Param('alertId', UuidPipe) id: string): Promise<void> {
    return this.overdue.seen(user, id);
  }

  @Get('contacts')
  @ApiRoute({
    id: 'listOverdueContacts',
    summary: 'Who is told of every overdue aircraft, besides its crew and the safety officers',
    answer: OverdueContacts,
  })
  contacts(@CurrentUser() user: SignedIn): Promise<OverdueContacts> {
    return this.overdue.contacts(user);
  }

  @Put('contacts')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'setOverdueContacts',
    summary: 'Names the people who are told, in place of those named before',
    answer: OverdueContacts,
    refuses: [403, 422],
  })
  setContacts(@CurrentUser() user: SignedIn, @Body() body: OverdueContactsDto): Promise<OverdueContacts> {
    return this.overdue.setContacts(user, body);
  }
}
