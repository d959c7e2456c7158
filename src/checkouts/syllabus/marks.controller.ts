import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { MarkCorrectionDto, MarkDto, MarkPage, MarkQuery, MarkView } from './mark.dto.js';
import { MarksService } from './marks.service.js';

/** Items of a checkout, signed one by one. */
@ApiTags('checkouts')
@Controller('members/:memberId/checkout-marks')
export class MarksController {
  constructor(private readonly marks: MarksService) {}

  @Get()
  @ApiRoute({
    id: 'listCheckoutMarks',
    summary: 'What instructors signed of a member’s checkouts, newest first',
    answer: MarkPage,
    refuses: [403, 404],
  })
  list(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: MarkQuery,
  ): Promise<MarkPage> {
    return this.marks.list(by, memberId, query);
  }

  @Post()
  @Roles('instructor')
  @ApiRoute({
    id: 'signCheckoutItem',
    summary: 'Sign an item, or say what is missing',
    description:
      'Under the version in force, by an instructor who may sign the checkout, never for oneself. Never edited.',
    answer: MarkView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  sign(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: MarkDto,
  ): Promise<MarkView> {
    return this.marks.sign(by, memberId, body);
  }

  @Post(':markId/correct')
  @Roles('instructor', 'safety-officer', 'administrator')
  @ApiRoute({
    id: 'correctCheckoutItem',
    summary: 'Put another record in a record’s place, or withdraw it',
    description:
      'Both stay on record. Replaced by an instructor who may sign it, withdrawn by who signed it or an officer; not while a signed checkout rests on it.',
    answer: MarkView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  correct(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('markId', UuidPipe) id: string,
    @Body() body: MarkCorrectionDto,
  ): Promise<MarkView> {
    return this.marks.correct(by, memberId, id, body);
  }
}
