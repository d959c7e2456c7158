import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import {
  AircraftRatePage,
  AircraftRateView,
  InstructionRatePage,
  InstructionRateView,
  NewAircraftRate,
  NewInstructionRate,
} from './rates.dto.js';
import { RatesService } from './rates.service.js';

/** What hours of aircraft and instructors cost. Everybody of the club may know. */
@ApiTags('charges')
@Controller()
export class RatesController {
  constructor(private readonly rates: RatesService) {}

  @Get('aircraft/:aircraftId/rates')
  @ApiRoute({
    id: 'listAircraftRates',
    summary: 'What an hour of an aircraft costs, from which day; written last first',
    answer: AircraftRatePage,
    refuses: [404],
  })
  ofAircraft(
    @CurrentUser() person: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<AircraftRatePage> {
    return this.rates.ofAircraft(person, aircraftId, page);
  }

  @Post('aircraft/:aircraftId/rates')
  @Roles('administrator')
  @ApiRoute({
    id: 'setAircraftRate',
    summary: 'Set what an hour of an aircraft costs from a day on',
    description:
      'Of rates with the same first day the one written last counts. What is charged already stays as it is.',
    answer: AircraftRateView,
    status: 201,
    refuses: [403, 404, 409],
  })
  setAircraft(
    @CurrentUser() by: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewAircraftRate,
  ): Promise<AircraftRateView> {
    return this.rates.setAircraft(by, aircraftId, body);
  }

  @Get('members/:memberId/instruction-rates')
  @ApiRoute({
    id: 'listInstructionRates',
    summary: 'What an hour of an instructor costs, from which day; written last first',
    answer: InstructionRatePage,
    refuses: [404],
  })
  ofInstructor(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() page: PageQuery,
  ): Promise<InstructionRatePage> {
    return this.rates.ofInstructor(person, memberId, page);
  }

  @Post('members/:memberId/instruction-rates')
  @Roles('administrator')
  @ApiRoute({
    id: 'setInstructionRate',
    summary: 'Set what an hour of an instructor costs from a day on',
    answer: InstructionRateView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  setInstructor(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: NewInstructionRate,
  ): Promise<InstructionRateView> {
    return this.rates.setInstructor(by, memberId, body);
  }
}
