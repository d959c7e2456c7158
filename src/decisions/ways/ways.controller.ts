import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { WaysDto } from './ways.dto.js';
import { WaysService } from './ways.service.js';

/** Ways to yes. Whoever may read a decision may ask for them; somebody else's record stays closed. */
@ApiTags('decisions')
@Controller('decisions/:id/ways')
export class WaysController {
  constructor(private readonly ways: WaysService) {}

  @Get()
  @ApiRoute({
    id: 'waysToYes',
    summary: 'The cheapest ways that make the answer yes, each proven on the facts as they would be',
    answer: WaysDto,
    refuses: [404, 409, 422],
  })
  find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<WaysDto> {
    return this.ways.of(user, id);
  }
}
