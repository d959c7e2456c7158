import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { ModelChanges, ModelPage, ModelView, NewModel } from './model.dto.js';
import { ModelsService } from './models.service.js';

/** Makes and models. */
@ApiTags('models')
@Controller('models')
export class ModelsController {
  constructor(private readonly models: ModelsService) {}

  @Get()
  @ApiRoute({ id: 'listModels', summary: 'The makes and models the club knows', answer: ModelPage })
  list(@CurrentUser() user: SignedIn, @Query() page: PageQuery): Promise<ModelPage> {
    return this.models.list(user, page);
  }

  @Get(':modelId')
  @ApiRoute({ id: 'readModel', summary: 'One model', answer: ModelView, refuses: [404] })
  read(@CurrentUser() user: SignedIn, @Param('modelId', UuidPipe) id: string): Promise<ModelView> {
    return this.models.read(user, id);
  }

  @Post()
  @Roles('administrator')
  @ApiRoute({
    id: 'addModel',
    summary: 'Add a model',
    answer: ModelView,
    status: 201,
    refuses: [403, 409, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewModel): Promise<ModelView> {
    return this.models.add(user, body);
  }

  @Patch(':modelId')
  @Roles('administrator', 'maintenance-coordinator')
  @ApiRoute({
    id: 'editModel',
    summary: 'Change a model',
    answer: ModelView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: ModelChanges,
  ): Promise<ModelView> {
    return this.models.edit(user, id, version, changes);
  }

  @Delete(':modelId')
  @Roles('administrator')
  @ApiRoute({
    id: 'removeModel',
    summary: 'Delete a model that nothing names',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.models.remove(user, id, version);
  }
}
