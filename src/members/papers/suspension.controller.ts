import { Body, Controller, Delete, HttpCode, Param, Patch, Post, type Type } from '@nestjs/common';
import {
  ApiBearerAuth,
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { ApiProblems } from '../../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { SuspensionChanges, SuspensionDto, SuspensionView } from './suspension.dto.js';
import { type Suspendable, SuspensionsService } from './suspensions.service.js';

/** Suspensions below one kind of certificate. @param one for operation ids: 'Certificate' */
export function suspensionController(kind: Suspendable & { path: string }, one: string): Type<unknown> {
  @ApiTags('papers')
  @ApiBearerAuth()
  @Roles('safety-officer', 'administrator')
  @ApiProblems(400, 401, 403, 404, 422, 429)
  @Controller(`members/:memberId/${kind.path}/:certificateId/suspensions`)
  class SuspensionController {
    constructor(readonly suspensions: SuspensionsService) {}

    @Post()
    @ApiOperation({
      operationId: `suspend${one}`,
      summary: `Record that a ${kind.noun} gives no privileges for a time`,
    })
    @ApiCreatedResponse({ type: SuspensionView })
    create(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Param('certificateId', UuidPipe) certificateId: string,
      @Body() draft: SuspensionDto,
    ): Promise<SuspensionView> {
      return this.suspensions.create(kind, by, { memberId, certificateId }, draft);
    }

    @Patch(':id')
    @ApiOperation({
      operationId: `update${one}Suspension`,
      summary: 'Change the dates of a suspension, or end it',
    })
    @ApiOkResponse({ type: SuspensionView })
    @ApiProblems(412, 428)
    update(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Param('certificateId', UuidPipe) certificateId: string,
      @Param('id', UuidPipe) id: string,
      @IfMatch() version: number,
      @Body() changes: SuspensionChanges,
    ): Promise<SuspensionView> {
      return this.suspensions.update(kind, by, { memberId, certificateId, id }, version, changes);
    }

    @Delete(':id')
    @HttpCode(204)
    @ApiOperation({
      operationId: `delete${one}Suspension`,
      summary: 'Delete a suspension that was recorded by mistake',
    })
    @ApiNoContentResponse()
    @ApiProblems(412, 428)
    remove(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Param('certificateId', UuidPipe) certificateId: string,
      @Param('id', UuidPipe) id: string,
      @IfMatch() version: number,
    ): Promise<void> {
      return this.suspensions.remove(kind, by, { memberId, certificateId, id }, version);
    }
  }
  Object.defineProperty(SuspensionController, 'name', { value: `${one}SuspensionsController` });
  return SuspensionController;
}
