import {
  Controller,
  Get,
  Param,
  Post,
  Req,
  Res,
  StreamableFile,
  UploadedFile,
  UseInterceptors,
} from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiResponse, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { CurrentUser, type SignedIn } from '../../../accounts/current-user.js';
import { ApiRoute } from '../../../platform/http/api-route.js';
import { takesForms } from '../../../platform/http/media-type.js';
import { UuidPipe } from '../../../platform/http/uuid.pipe.js';
import { AttachmentView, MEDIA_TYPES } from './attachment.dto.js';
import { AttachmentsService } from './attachments.service.js';
import { PhotoInterceptor } from './photo.interceptor.js';

takesForms(/^\/api\/v1\/aircraft\/[^/]+\/squawks\/[^/]+\/attachments\/?$/);

const PHOTO = { type: 'string', format: 'binary' } as const;
const EXTENSIONS = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' } as const;

/** Photos of a squawk. */
@ApiTags('squawks')
@Controller('aircraft/:aircraftId/squawks/:squawkId/attachments')
export class AttachmentsController {
  constructor(private readonly attachments: AttachmentsService) {}

  @Post()
  @UseInterceptors(PhotoInterceptor)
  @ApiConsumes('multipart/form-data')
  @ApiBody({ schema: { type: 'object', required: ['photo'], properties: { photo: PHOTO } } })
  @ApiRoute({
    id: 'addSquawkPhoto',
    summary: 'Add a photo',
    description:
      'By who reported it, and the coordinator. JPEG, PNG or WebP by its content, at most 8 MB each and six of them. Place, owner and other notes of the camera are taken out before it is kept; the picture is not touched.',
    answer: AttachmentView,
    status: 201,
    refuses: [403, 404, 409, 413, 415, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @UploadedFile() photo: { buffer: Buffer } | undefined,
  ): Promise<AttachmentView> {
    return this.attachments.add(user, { aircraftId, id }, photo?.buffer);
  }

  @Get(':attachmentId')
  @ApiRoute({ id: 'readSquawkPhoto', summary: 'A photo', answer: null, status: 200, refuses: [404] })
  @ApiResponse({
    status: 200,
    description: 'The photo as kept. It never changes.',
    content: Object.fromEntries(MEDIA_TYPES.map((type) => [type, { schema: PHOTO }])),
  })
  async read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('squawkId', UuidPipe) id: string,
    @Param('attachmentId', UuidPipe) attachmentId: string,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile | undefined> {
    const known = (request.header('If-None-Match') ?? '')
      .split(',')
      .map((tag) => tag.trim().replace(/^W\//, ''));
    const has = (sha256: string): boolean => known.includes(`"${sha256}"`) || known.includes('*');
    const place = { aircraftId, id, attachmentId };
    const { photo, content } = await this.attachments.read(user, place, ({ sha256 }) => !has(sha256));
    response.setHeader('ETag', `"${photo.sha256}"`);
    // In the reader's own browser only, and asked for again each time, so that leaving the club ends it.
    response.setHeader('Cache-Control', 'private, no-cache');
    response.setHeader('Vary', 'Authorization');
    if (content === null) {
      response.status(304);
      return undefined;
    }
    response.setHeader('X-Content-Type-Options', 'nosniff');
    response.setHeader('Content-Security-Policy', "default-src 'none'; sandbox");
    return new StreamableFile(content, {
      type: photo.mediaType,
      length: photo.sizeBytes,
      disposition: `inline; filename="squawk-${photo.id.slice(-8)}.${EXTENSIONS[photo.mediaType]}"`,
    });
  }
}
