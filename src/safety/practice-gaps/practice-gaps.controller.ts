import { Controller, Get, Query, type StreamableFile } from '@nestjs/common';
import { ApiResponse, ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { RustQuery } from '../../practice/advice/advice.dto.js';
import { CSV_CONTENT, csvFile } from '../csv.js';
import { PracticeGapsView } from './practice-gaps.dto.js';
import { PracticeGapsService } from './practice-gaps.service.js';

@ApiTags('safety')
@Controller('safety/practice-gaps')
@Roles('safety-officer', 'administrator')
export class PracticeGapsController {
  constructor(private readonly gaps: PracticeGapsService) {}

  @Get()
  @ApiRoute({
    id: 'readPracticeGaps',
    summary: 'Which manoeuvres are rusty across the club, in numbers',
    description:
      'By the same model as each member’s own list. Nobody is named, and of fewer than five members nothing is told.',
    answer: PracticeGapsView,
    refuses: [403, 409],
  })
  read(@CurrentUser() user: SignedIn, @Query() { on }: RustQuery): Promise<PracticeGapsView> {
    return this.gaps.read(user, on);
  }

  @Get('csv')
  @ApiRoute({
    ...{ id: 'exportPracticeGaps', answer: null, status: 200, refuses: [403, 409] },
    summary: 'The practice gaps as CSV',
    description: 'A row for each manoeuvre in a condition; empty where too few members would be told of.',
  })
  @ApiResponse({ status: 200, description: 'The file', content: CSV_CONTENT })
  async csv(@CurrentUser() user: SignedIn, @Query() { on: asked }: RustQuery): Promise<StreamableFile> {
    const { on, gaps } = await this.gaps.read(user, asked);
    return csvFile(
      `practice-gaps-${on}`,
      ['manoeuvre', 'condition', 'members', 'never', 'rusty', 'fresh', 'middle_days'],
      gaps.map((one) => [
        ...[one.title, one.condition, one.members, one.never, one.rusty, one.fresh, one.middleDays],
      ]),
    );
  }
}
