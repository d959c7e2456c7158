import { Controller, Get, Query, type StreamableFile } from '@nestjs/common';
import { ApiResponse, ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { CSV_CONTENT, csvFile } from '../csv.js';
import { RefusalsQuery, RefusalsView } from './refusals.dto.js';
import { RefusalsService } from './refusals.service.js';

@ApiTags('safety')
@Controller('safety/refusals')
@Roles('safety-officer', 'administrator')
export class RefusalsController {
  constructor(private readonly refusals: RefusalsService) {}

  @Get()
  @ApiRoute({
    id: 'readRefusals',
    summary: 'Which rules stood in the way, week by week',
    description: 'Counted over the stored decisions that were not a yes; advice is left out.',
    answer: RefusalsView,
    refuses: [403, 422],
  })
  read(@CurrentUser() user: SignedIn, @Query() query: RefusalsQuery): Promise<RefusalsView> {
    return this.refusals.read(user, query);
  }

  @Get('csv')
  @ApiRoute({
    ...{ id: 'exportRefusals', summary: 'Refusals as CSV', answer: null, status: 200, refuses: [403, 422] },
    description: 'A row for each rule and week.',
  })
  @ApiResponse({ status: 200, description: 'The file', content: CSV_CONTENT })
  async csv(@CurrentUser() user: SignedIn, @Query() query: RefusalsQuery): Promise<StreamableFile> {
    const { through, rules } = await this.refusals.read(user, query);
    return csvFile(
      `refusals-${through}`,
      ['rule', 'title', 'week', 'decisions'],
      rules.flatMap(({ rule, title, weeks }) =>
        weeks.map(({ week, decisions }) => [rule, title, week, decisions]),
      ),
    );
  }
}
