import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { EntryView } from '../ledger/ledger.dto.js';
import { ChargeFlightDto, EstimateQuery, EstimatesView, UnchargedPage } from './charges.dto.js';
import { ChargesService } from './charges.service.js';

/** What flights cost. */
@ApiTags('charges')
@Controller()
export class ChargesController {
  constructor(private readonly charges: ChargesService) {}

  @Get('charges/estimates')
  @ApiRoute({
    id: 'estimateCharges',
    summary: 'About what a flight would cost in each aircraft',
    description:
      'By the rates of the day and the hours planned; an instructor is taken to teach all of them. What is charged goes by what is flown.',
    answer: EstimatesView,
    refuses: [404, 422],
  })
  estimates(@CurrentUser() person: SignedIn, @Query() query: EstimateQuery): Promise<EstimatesView> {
    return this.charges.estimates(person, query);
  }

  @Get('charges/uncharged')
  @Roles('administrator')
  @ApiRoute({
    id: 'listUncharged',
    summary: 'Flights that came back and are not charged, oldest booking first',
    answer: UnchargedPage,
    refuses: [403],
  })
  uncharged(@CurrentUser() person: SignedIn, @Query() page: PageQuery): Promise<UnchargedPage> {
    return this.charges.uncharged(person, page);
  }

  @Post('bookings/:bookingId/charge')
  @Roles('administrator')
  @ApiRoute({
    id: 'chargeFlight',
    summary: 'Charge a flight, or charge it anew by what was really flown',
    description:
      'By the rates of the day it departed. A charge that stands is reversed first; told the same again, nothing happens.',
    answer: EntryView,
    refuses: [403, 404, 409, 422],
  })
  charge(
    @CurrentUser() by: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @Body() body: ChargeFlightDto,
  ): Promise<EntryView> {
    return this.charges.charge(by, bookingId, body);
  }
}
