import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { MeterRatesView, RatesQuery } from './rates.dto.js';
import { RatesService } from './rates.service.js';

/** Meters held against the log. */
@ApiTags('meters')
@Controller('aircraft/:aircraftId/meters/rates')
@Roles('maintenance-coordinator', 'safety-officer', 'administrator')
export class RatesController {
  constructor(private readonly rates: RatesService) {}

  @Get()
  @ApiRoute({
    id: 'readMeterRates',
    summary: 'Meter readings held against the time flown between them',
    answer: MeterRatesView,
    refuses: [403, 404],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() query: RatesQuery,
  ): Promise<MeterRatesView> {
    return this.rates.of(user, aircraftId, query);
  }
}
