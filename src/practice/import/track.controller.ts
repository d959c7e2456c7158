import { Body, Controller, Param, Post, Res, UploadedFile, UseInterceptors } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored } from '../../platform/http/idempotency-key.js';
import { takesForms } from '../../platform/http/media-type.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { ConfirmedTrackView, ConfirmTrackDto, TrackReadingView } from './track.dto.js';
import { TrackInterceptor } from './track.interceptor.js';
import { TrackService } from './track.service.js';

takesForms(/^\/api\/v1\/members\/[^/]+\/practice\/track\/?$/);

/** Recorded tracks. */
@ApiTags('practice')
@Controller('members/:memberId/practice/track')
export class TrackController {
  constructor(private readonly tracks: TrackService) {}

  @Post()
  @UseInterceptors(TrackInterceptor)
  @ApiConsumes('multipart/form-data')
  @ApiBody({
    schema: {
      type: 'object',
      required: ['track'],
      properties: { track: { type: 'string', format: 'binary' } },
    },
  })
  @ApiRoute({
    id: 'readTrack',
    summary: 'What a recorded track shows',
    description:
      'GPX 1.1, at most 12 MB and 60,000 points. Take-offs, landings, steep turns, holds, time at night and wind, with proposals for log and practice. Nothing is stored.',
    answer: TrackReadingView,
    refuses: [403, 404, 413, 415, 422],
  })
  read(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @UploadedFile() track: { buffer: Buffer } | undefined,
  ): Promise<TrackReadingView> {
    return this.tracks.read(by, memberId, track?.buffer);
  }

  @Post('confirm')
  @ApiRoute({
    id: 'confirmTrack',
    summary: 'Enter what was chosen of a track’s proposals',
    description:
      'The flight, the practice, or both, in one transaction. An event of a file is taken over once, and a time that is logged is not logged again.',
    answer: ConfirmedTrackView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async confirm(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IdempotencyKey() key: string,
    @Body() body: ConfirmTrackDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<ConfirmedTrackView> {
    return tellStored<ConfirmedTrackView>(await this.tracks.confirm(by, key, memberId, body), response);
  }
}
