import { Body, Controller, Post, Res } from '@nestjs/common';
import { ApiExtraModels, ApiResponse, ApiTags, getSchemaPath } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../../accounts/current-user.js';
import { Roles } from '../../../accounts/roles.js';
import { ApiRoute } from '../../../platform/http/api-route.js';
import { ClubTimelineDto } from '../timeline-request.dto.js';
import {
  ClubTimelineEndDto,
  ClubTimelineErrorDto,
  ClubTimelineHeaderDto,
  PairLineDto,
} from './club-lines.dto.js';
import { ClubTimelinesService } from './club-timelines.service.js';

const LINES = [ClubTimelineHeaderDto, PairLineDto, ClubTimelineEndDto, ClubTimelineErrorDto];

/** Whole-club timelines read everybody's papers and log, so they are for officers. */
@ApiTags('timelines')
@Controller('decisions/timeline/club')
@Roles('safety-officer', 'administrator')
export class ClubTimelinesController {
  constructor(private readonly timelines: ClubTimelinesService) {}

  @Post()
  @ApiExtraModels(...LINES)
  @ApiResponse({
    status: 200,
    description:
      'One JSON value a line: the header, a line for each member on each aircraft, and the end. An answer without `end` is not ' +
      'whole: where something went wrong on the way, `error` is the last line.',
    content: {
      'application/x-ndjson': { schema: { oneOf: LINES.map((line) => ({ $ref: getSchemaPath(line) })) } },
    },
  })
  @ApiRoute({
    id: 'streamClubTimelines',
    summary: 'Who may take which aircraft, when: members × aircraft × a span, streamed line by line',
    description:
      'The flight is asked for by each member in turn, with nobody else named. Lines come as they are found, no faster than they ' +
      'are read; close the connection to end the work. One at a time is written for a club. Nothing is stored: a timeline is no ' +
      'decision.',
    answer: null,
    status: 200,
    refuses: [403, 404, 422, 429],
  })
  stream(
    @CurrentUser() user: SignedIn,
    @Body() question: ClubTimelineDto,
    @Res() response: Response,
  ): Promise<void> {
    return this.timelines.write(user, question, response);
  }
}
