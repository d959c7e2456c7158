import {
  Body,
  Controller,
  Delete,
  Get,
  HttpCode,
  Param,
  Patch,
  Post,
  Query,
  type Type,
} from '@nestjs/common';
import {
  ApiBearerAuth,
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiProperty,
  ApiTags,
} from '@nestjs/swagger';
import { ApiProblems } from '../../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import type { PaperHead } from './paper.dto.js';
import type { Paper } from './paper.entity.js';
import type { PaperKind } from './paper-kind.js';
import { PapersService } from './papers.service.js';

/** The five routes of a kind of paper: list, create, edit, verify, delete. */
export function paperController<R extends Paper, D extends object, V extends PaperHead>(
  kind: PaperKind<R, D, V>,
): Type<unknown> {
  const { one, many } = kind.name;

  class PaperPage extends PageShape {
    @ApiProperty({ type: [kind.view] })
    items: V[];
  }
  Object.defineProperty(PaperPage, 'name', { value: `${one}Page` });

  @ApiTags('papers')
  @ApiBearerAuth()
  @ApiProblems(400, 401, 403, 404, 429)
  @Controller(`members/:memberId/${kind.path}`)
  class PaperController {
    constructor(readonly papers: PapersService) {}

    @Get()
    @ApiOperation({ operationId: `list${many}`, summary: `List a member's papers: ${kind.noun}` })
    @ApiOkResponse({ type: PaperPage })
    list(
      @CurrentUser() person: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Query() query: PageQuery,
    ): Promise<PaperPage> {
      return this.papers.list(kind, person, memberId, query);
    }

    @Post()
    @ApiOperation({ operationId: `create${one}`, summary: `Record a ${kind.noun}` })
    @ApiCreatedResponse({ type: kind.view })
    @ApiProblems(409, 422)
    create(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Body() draft: D,
    ): Promise<V> {
      return this.papers.create(kind, by, memberId, draft);
    }

    @Patch(':id')
    @ApiOperation({
      operationId: `update${one}`,
      summary: `Change a ${kind.noun}`,
      description: 'What is left out stays. When its owner changes it, an officer has to verify it again.',
    })
    @ApiOkResponse({ type: kind.view })
    @ApiProblems(409, 412, 422, 428)
    update(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Param('id', UuidPipe) id: string,
      @IfMatch() version: number,
      @Body() changes: Partial<D>,
    ): Promise<V> {
      return this.papers.edit(kind, by, { memberId, id }, version, changes);
    }

    @Post(':id/verify')
    @HttpCode(200)
    @Roles('safety-officer', 'administrator', ...(kind.byInstructors ? (['instructor'] as const) : []))
    @ApiOperation({
      operationId: `verify${one}`,
      summary: `Say that you have seen the original: ${kind.noun}`,
      description:
        'Nobody verifies their own papers. If-Match makes sure that what is verified is what was read.',
    })
    @ApiOkResponse({ type: kind.view })
    @ApiProblems(412, 428)
    verify(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Param('id', UuidPipe) id: string,
      @IfMatch() version: number,
    ): Promise<V> {
      return this.papers.verify(kind, by, { memberId, id }, version);
    }

    @Delete(':id')
    @HttpCode(204)
    @ApiOperation({
      operationId: `delete${one}`,
      summary: `Delete a ${kind.noun}`,
      description: 'Officers may delete any; members their own until somebody has verified it.',
    })
    @ApiNoContentResponse()
    @ApiProblems(412, 428)
    remove(
      @CurrentUser() by: SignedIn,
      @Param('memberId', UuidPipe) memberId: string,
      @Param('id', UuidPipe) id: string,
      @IfMatch() version: number,
    ): Promise<void> {
      return this.papers.remove(kind, by, { memberId, id }, version);
    }
  }

  Object.defineProperty(PaperController, 'name', { value: `${many}Controller` });
  bodyIs(PaperController, 'create', kind.draft);
  bodyIs(PaperController, 'update', kind.patch);
  return PaperController;
}

/**
 * Tells Nest the class of a method's body, its last parameter: the compiler writes `Object` for a type parameter, and
 * neither validation nor the API description could then know the fields.
 */
function bodyIs(controller: Type<unknown>, method: string, body: Type<unknown>): void {
  const types = Reflect.getMetadata('design:paramtypes', controller.prototype, method) as unknown[];
  Reflect.defineMetadata('design:paramtypes', [...types.slice(0, -1), body], controller.prototype, method);
}
