import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import {
  PracticeCorrectionDto,
  PracticePage,
  PracticeQuery,
  PracticeRecordDto,
  PracticeRecordView,
} from './practice.dto.js';
import { PracticeService } from './practice.service.js';

/** What members practised. */
@ApiTags('practice')
@Controller('members/:memberId/practice')
export class PracticeController {
  constructor(private readonly practice: PracticeService) {}

  @Get()
  @ApiRoute({
    id: 'listPractice',
    summary: "List a member's practice records, newest flight first",
    description:
      'All for the member and for instructors who teach them; officers are shown what an instructor signed.',
    answer: PracticePage,
    refuses: [403, 404],
  })
  list(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: PracticeQuery,
  ): Promise<PracticePage> {
    return this.practice.list(person, memberId, query);
  }

  @Post()
  @ApiRoute({
    id: 'addPractice',
    summary: 'Record a manoeuvre practised',
    description:
      'One’s own, or signed by an instructor for somebody else. Judged against the published standard in effect on the day. Never edited: correct it by another record.',
    answer: PracticeRecordView,
    status: 201,
    refuses: [403, 404, 422],
  })
  add(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() draft: PracticeRecordDto,
  ): Promise<PracticeRecordView> {
    return this.practice.add(by, memberId, draft);
  }

  @Post(':id/correct')
  @ApiRoute({
    id: 'correctPractice',
    summary: 'Put another record in a record’s place, or withdraw it',
    description:
      'Both stay on record. What an instructor signed is replaced by an instructor, and withdrawn by whoever signed it or by an officer.',
    answer: PracticeRecordView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  correct(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('id', UuidPipe) id: string,
    @Body() body: PracticeCorrectionDto,
  ): Promise<PracticeRecordView> {
    return this.practice.correct(by, memberId, id, body);
  }
}
