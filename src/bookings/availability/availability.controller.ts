import { Body, Controller, Delete, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IfMatch, UuidPipe } from '../../platform/http/index.js';
import {
  FreeInstructorsQuery,
  FreeInstructorsView,
  TeachingHoursDto,
  TeachingHoursListView,
} from './availability.dto.js';
import { AvailabilityService } from './availability.service.js';

/** When instructors teach, and who is free. */
@ApiTags('bookings')
@Controller()
export class AvailabilityController {
  constructor(private readonly availability: AvailabilityService) {}

  @Get('instructors/free')
  @ApiRoute({
    id: 'listFreeInstructors',
    summary: 'Which instructors could take a lesson at that time, those who are free first',
    answer: FreeInstructorsView,
    refuses: [422],
  })
  async free(
    @CurrentUser() user: SignedIn,
    @Query() query: FreeInstructorsQuery,
  ): Promise<FreeInstructorsView> {
    return { items: await this.availability.free(user, query) };
  }

  @Get('members/:memberId/teaching-hours')
  @ApiRoute({
    id: 'readTeachingHours',
    summary: 'When an instructor teaches: each week, and on single dates',
    answer: TeachingHoursListView,
    refuses: [404],
  })
  async list(
    @CurrentUser() user: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<TeachingHoursListView> {
    return { items: await this.availability.list(user, memberId) };
  }

  @Post('members/:memberId/teaching-hours')
  @ApiRoute({
    id: 'addTeachingHours',
    summary: 'Add hours in which one teaches, or a date with other hours or none',
    description:
      'For oneself as an instructor, or as an administrator. Lessons outside are to be agreed on, or refused where the club says so (club.instructor-hours.refuse-outside).',
    answer: TeachingHoursListView,
    status: 201,
    refuses: [403, 404, 422],
  })
  async add(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: TeachingHoursDto,
  ): Promise<TeachingHoursListView> {
    return { items: await this.availability.add(by, memberId, body) };
  }

  @Delete('members/:memberId/teaching-hours/:hoursId')
  @ApiRoute({
    id: 'removeTeachingHours',
    summary: 'Take hours away again',
    answer: null,
    refuses: [403, 404, 412, 428],
  })
  remove(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('hoursId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.availability.remove(by, { memberId, id }, version);
  }
}
