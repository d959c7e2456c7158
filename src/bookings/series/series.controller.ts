import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored, UuidPipe } from '../../platform/http/index.js';
import { BookSeriesDto, CancelSeriesDto, EditSeriesDto, SeriesDto } from './series.dto.js';
import { SeriesService } from './series.service.js';

@ApiTags('bookings')
@Controller('booking-series')
export class SeriesController {
  constructor(private readonly series: SeriesService) {}

  @Post()
  @ApiRoute({
    id: 'bookSeries',
    summary: 'Judges and books each flight of a recurrence, and says which could not be had and why',
    answer: SeriesDto,
    refuses: [403, 404, 409, 422],
  })
  async book(
    @CurrentUser() user: SignedIn,
    @IdempotencyKey() key: string,
    @Body() asked: BookSeriesDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<SeriesDto> {
    return tellStored(await this.series.book(user, key, asked), response);
  }

  @Get(':id')
  @ApiRoute({
    id: 'readSeries',
    summary: 'The flights of a series as they stand',
    answer: SeriesDto,
    refuses: [404],
  })
  find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<SeriesDto> {
    return this.series.find(user, id);
  }

  @Post(':id/edit')
  @ApiRoute({
    id: 'editSeries',
    summary: 'Changes a flight of a series and those after it, each judged alone',
    answer: SeriesDto,
    refuses: [403, 404, 409, 422],
  })
  async edit(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IdempotencyKey() key: string,
    @Body() asked: EditSeriesDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<SeriesDto> {
    return tellStored(await this.series.edit(user, key, id, asked), response);
  }

  @Post(':id/cancel')
  @ApiRoute({
    id: 'cancelSeries',
    summary: 'Gives back a flight of a series and those after it',
    answer: SeriesDto,
    refuses: [403, 404, 409, 422],
  })
  cancel(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @Body() asked: CancelSeriesDto,
  ): Promise<SeriesDto> {
    return this.series.cancel(user, id, asked);
  }
}
