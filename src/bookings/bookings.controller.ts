import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import { ApiBearerAuth, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { Roles } from '../accounts/roles.js';
import { IdempotencyKey, IfMatch, pageOf, readCursor, UuidPipe } from '../platform/http/index.js';
import { BlockDto, BookDto, BookingDto, BookingsPageDto, BookingsQuery } from './booking.dto.js';
import { BookService } from './book.service.js';
import { BookingsService } from './bookings.service.js';

@ApiTags('bookings')
@ApiBearerAuth()
@Controller('bookings')
export class BookingsController {
  constructor(
    private readonly bookings: BookingsService,
    private readonly booker: BookService,
  ) {}

  @Post()
  @ApiOperation({ operationId: 'book', summary: 'Judges the flight and books it, in one transaction' })
  @ApiCreatedResponse({ type: BookingDto })
  async book(
    @CurrentUser() user: SignedIn,
    @IdempotencyKey() key: string,
    @Body() request: BookDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookingDto> {
    const answer = await this.booker.book(user, key, request);
    response.status(answer.status);
    return JSON.parse(answer.body) as BookingDto;
  }

  @Get()
  @ApiOperation({ operationId: 'listBookings', summary: "The club's calendar" })
  @ApiOkResponse({ type: BookingsPageDto })
  async list(@CurrentUser() user: SignedIn, @Query() query: BookingsQuery): Promise<BookingsPageDto> {
    const rows = await this.bookings.list(user, {
      from: query.from ?? null,
      to: query.to ?? null,
      aircraftId: query.aircraftId ?? null,
      memberId: query.memberId ?? null,
      afterId: readCursor(query.cursor),
      limit: query.limit + 1,
    });
    return pageOf(
      rows.map((row) => BookingDto.from(row)),
      query.limit,
    );
  }

  @Get(':id')
  @ApiOperation({ operationId: 'getBooking', summary: 'One booking' })
  @ApiOkResponse({ type: BookingDto })
  async find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<BookingDto> {
    return BookingDto.from(await this.bookings.find(user, id));
  }

  @Post(':id/cancel')
  @HttpCode(200)
  @ApiOperation({ operationId: 'cancelBooking', summary: 'Gives the slot back' })
  @ApiOkResponse({ type: BookingDto })
  async cancel(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
  ): Promise<BookingDto> {
    return BookingDto.from(await this.bookings.cancel(user, id, ifMatch));
  }

  @Post('blocks')
  @Roles('maintenance-coordinator', 'administrator')
  @ApiOperation({
    operationId: 'blockAircraft',
    summary: 'Takes an aircraft off the calendar for maintenance or club use',
  })
  @ApiCreatedResponse({ type: BookingDto })
  async block(@CurrentUser() user: SignedIn, @Body() block: BlockDto): Promise<BookingDto> {
    return BookingDto.from(await this.bookings.block(user, block));
  }
}
