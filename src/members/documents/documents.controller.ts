import {
  Controller,
  Delete,
  Get,
  Param,
  Post,
  Query,
  Res,
  StreamableFile,
  UploadedFile,
  UseInterceptors,
} from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiParam, ApiResponse, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { takesForms } from '../../platform/http/media-type.js';
import { oneFile } from '../../platform/http/one-file.interceptor.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { KIND_PATHS } from './document-kinds.js';
import { DOCUMENT_TYPES, DocumentPage, DocumentView, UnverifiedPage } from './document.dto.js';
import { DOCUMENT_LIMIT_BYTES, documentMissing, documentTooLarge } from './document.problems.js';
import { DocumentsService } from './documents.service.js';

takesForms(/^\/api\/v1\/members\/[^/]+\/documents\/[^/]+\/[^/]+\/?$/);

const SCAN = { type: 'string', format: 'binary' } as const;
const EXTENSIONS = {
  ...{ 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' },
  'application/pdf': 'pdf',
} as const;
const DocumentInterceptor = oneFile({
  ...{ field: 'document', limitBytes: DOCUMENT_LIMIT_BYTES },
  ...{ tooLarge: documentTooLarge, missing: documentMissing },
});

/** Scans of members' papers. */
@ApiTags('papers')
@Controller()
export class DocumentsController {
  constructor(private readonly documents: DocumentsService) {}

  @Get('papers/unverified')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'listUnverifiedPapers',
    summary: 'Papers that nobody has verified',
    answer: UnverifiedPage,
    refuses: [403],
  })
  unverified(@CurrentUser() by: SignedIn, @Query() query: PageQuery): Promise<UnverifiedPage> {
    return this.documents.unverified(by, query);
  }

  @Get('members/:memberId/documents')
  @ApiRoute({
    id: 'listDocuments',
    summary: "Documents with a member's papers",
    description: 'For the member and officers; instructors are shown those of endorsements.',
    answer: DocumentPage,
    refuses: [403, 404],
  })
  list(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: PageQuery,
  ): Promise<DocumentPage> {
    return this.documents.list(by, memberId, query);
  }

  @Post('members/:memberId/documents/:kind/:paperId')
  @UseInterceptors(DocumentInterceptor)
  @ApiConsumes('multipart/form-data')
  @ApiBody({ schema: { type: 'object', required: ['document'], properties: { document: SCAN } } })
  @ApiParam({ name: 'kind', schema: { type: 'string', enum: KIND_PATHS } })
  @ApiRoute({
    id: 'addDocument',
    summary: 'Add a scan of a paper',
    description:
      'JPEG, PNG, WebP or PDF by its content, at most 8 MB each and six of a paper. Place and other notes of the camera are taken out; of a PDF only the pages are kept.',
    answer: DocumentView,
    status: 201,
    refuses: [403, 404, 409, 413, 415, 422],
  })
  add(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('kind') kind: string,
    @Param('paperId', UuidPipe) paperId: string,
    @UploadedFile() file: { buffer: Buffer } | undefined,
  ): Promise<DocumentView> {
    return this.documents.add(by, { memberId, kind, paperId }, file?.buffer);
  }

  @Get('members/:memberId/documents/:documentId')
  @ApiRoute({
    id: 'readDocument',
    summary: 'A document',
    description: 'Who read it and when is noted in the audit log.',
    ...{ answer: null, status: 200, refuses: [403, 404] },
  })
  @ApiResponse({
    status: 200,
    description: 'The document as kept. It never changes.',
    content: Object.fromEntries(DOCUMENT_TYPES.map((type) => [type, { schema: SCAN }])),
  })
  async read(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('documentId', UuidPipe) id: string,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile> {
    const { document, content } = await this.documents.read(by, { memberId, id });
    response.setHeader('Cache-Control', 'no-store');
    response.setHeader('X-Content-Type-Options', 'nosniff');
    response.setHeader('Content-Security-Policy', "default-src 'none'; sandbox");
    return new StreamableFile(content, {
      type: document.mediaType,
      length: document.sizeBytes,
      disposition: `attachment; filename="paper-${id.slice(-8)}.${EXTENSIONS[document.mediaType]}"`,
    });
  }

  @Delete('members/:memberId/documents/:documentId')
  @ApiRoute({
    id: 'removeDocument',
    summary: 'Delete a document',
    description: 'Officers may delete any; members their own until somebody has verified the paper.',
    ...{ answer: null, refuses: [403, 404, 412, 428] },
  })
  remove(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('documentId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.documents.remove(by, { memberId, id }, version);
  }
}
