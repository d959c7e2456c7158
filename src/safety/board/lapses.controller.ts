import { Controller, Get, Query, type StreamableFile } from '@nestjs/common';
import { ApiResponse, ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { CSV_CONTENT, csvFile } from '../csv.js';
import { LapsesQuery, LapsesView } from './lapses.dto.js';
import { LapsesService } from './lapses.service.js';

const COLUMNS = [
  ...['lapses_on', 'in_days', 'member', 'requirement', 'rule', 'weight', 'aircraft', 'says'],
  ...['bookings_lost', 'first_booking_lost'],
];

@ApiTags('safety')
@Controller('safety/lapses')
@Roles('safety-officer', 'administrator')
export class LapsesController {
  constructor(private readonly lapses: LapsesService) {}

  @Get()
  @ApiRoute({
    id: 'readLapses',
    summary: 'Whose requirements lapse next, and which booked flights that costs',
    description:
      'One local flight of an hour a day is tried for every member, at noon or at 22:30 for a flight by night, in every aircraft or in one. Rules are followed from change to change, with the records as they stand: flights still to come are not counted.',
    answer: LapsesView,
    refuses: [403, 404, 422],
  })
  read(@CurrentUser() user: SignedIn, @Query() query: LapsesQuery): Promise<LapsesView> {
    return this.lapses.read(user, query);
  }

  @Get('csv')
  @ApiRoute({
    ...{
      id: 'exportLapses',
      summary: 'The lapses as CSV',
      answer: null,
      status: 200,
      refuses: [403, 404, 422],
    },
    description: 'A row for each. What would read as a formula in a spreadsheet stands behind an apostrophe.',
  })
  @ApiResponse({ status: 200, description: 'The file', content: CSV_CONTENT })
  async csv(@CurrentUser() user: SignedIn, @Query() query: LapsesQuery): Promise<StreamableFile> {
    const { from, lapses } = await this.lapses.read(user, query);
    return csvFile(
      `lapses-${from}`,
      COLUMNS,
      lapses.map((one) => [
        ...[one.on, one.inDays, one.memberName, one.title, one.rule, one.weight],
        ...[one.aircraft?.join('; ') ?? 'all', one.says, one.costs.length, one.costs[0]?.departs ?? null],
      ]),
    );
  }
}
