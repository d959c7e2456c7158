import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { CAUTION, rulesetFor, workWeather } from '../../rules/index.js';
import { DecisionsService } from '../decisions.service.js';
import { WeatherWorkDto } from './weather-work.dto.js';

/** The weather behind a decision. Whoever may read the decision may read it. */
@ApiTags('decisions')
@Controller('decisions/:id/weather')
export class WeatherWorkController {
  constructor(private readonly decisions: DecisionsService) {}

  @Get()
  @ApiRoute({
    id: 'workWeather',
    summary: 'The flight’s weather: reports word for word, wind on each runway, and each phase of the flight',
    description:
      'On the decision’s own facts. What no report or forecast tells is not assumed; the pilot in command gets the weather before departure.',
    answer: WeatherWorkDto,
    refuses: [404],
  })
  async work(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<WeatherWorkDto> {
    const { sheet, policy } = await this.decisions.find(user, id);
    return { ...workWeather(sheet, rulesetFor(sheet.jurisdiction, policy)), caution: CAUTION };
  }
}
