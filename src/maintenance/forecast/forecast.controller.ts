import { Body, Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { ForecastBody, ForecastView } from './forecast.dto.js';
import { ForecastService } from './forecast.service.js';

/** What falls due when. Every member may know what keeps an aircraft in the air. */
@ApiTags('maintenance')
@Controller('maintenance/forecast')
export class ForecastController {
  constructor(private readonly forecasts: ForecastService) {}

  @Post()
  @ApiRoute({
    id: 'forecastMaintenance',
    summary: 'Hours and days left of every item, and when each is likely to fall due',
    description:
      'From the records, the bookings in hand and what was flown; with bounds, and how they held when tried on the club’s own past.',
    answer: ForecastView,
    refuses: [404],
  })
  forecast(@CurrentUser() user: SignedIn, @Body() body: ForecastBody): Promise<ForecastView> {
    return this.forecasts.forecast(user, body);
  }
}
