import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { ApiRoute } from '../platform/http/api-route.js';
import { IdempotencyKey, pageOf, readCursor, tellStored, UuidPipe } from '../platform/http/index.js';
import { BookDto, BookingDto, BookingsPageDto, BookingsQuery } from './booking.dto.js';
import { BookService } from './book.service.js';
import { BookingsService } from './bookings.service.js';

@ApiTags('bookings')
@Controller('bookings')
export class BookingsController {
  constructor(
    private readonly bookings: BookingsService,
    private readonly booker: BookService,
  ) {}

  @Post()
  @ApiRoute({
    id: 'book',
    summary: 'Judges the flight and books it, in one transaction',
    answer: BookingDto,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async book(
    @CurrentUser() user: SignedIn,
    @IdempotencyKey() key: string,
    @Body() request: BookDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookingDto> {
    return tellStored<BookingDto>(await this.booker.book(user, key, request), response);
  }

  @Get()
  @ApiRoute({
    id: 'listBookings',
    summary: "The club's calendar",
    answer: BookingsPageDto,
    refuses: [404, 422],
  })
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
      rows.map((row) => BookingDto.from(row, user)),
      query.limit,
    );
  }

  @Get(':id')
  @ApiRoute({ id: 'getBooking', summary: 'One booking', answer: BookingDto, refuses: [404] })
  async find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<BookingDto> {
    return BookingDto.from(await this.bookings.find(user, id), user);
  }
}
