import { Body, Controller, Delete, Get, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { show } from '../../platform/http/views.js';
import { NewLoadingSheet, LoadingSheetView } from './loading-sheet.dto.js';
import { loadingSheetOf } from './sheet-checks.js';
import { LOADING_SHEETS, SheetsService, type OwnerOf } from './sheets.service.js';

const ofModel = (modelId: string): OwnerOf => ({ modelId });
const ofAircraft = (aircraftId: string): OwnerOf => ({ aircraftId });

/** What the handbook of a model says: its loading sheet. */
@ApiTags('loading')
@Controller('models/:modelId/loading')
export class ModelLoadingController {
  constructor(private readonly sheets: SheetsService) {}

  @Get()
  @ApiRoute({
    id: 'readModelLoading',
    summary: 'Loading sheet of a model',
    answer: LoadingSheetView,
    refuses: [404],
  })
  async read(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
  ): Promise<LoadingSheetView> {
    return show(LoadingSheetView, await this.sheets.read(user, LOADING_SHEETS, ofModel(id)));
  }

  @Post()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'addModelLoading',
    summary: 'Record the loading sheet of a model',
    description: 'It counts for every aircraft of the model that has none of its own.',
    answer: LoadingSheetView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async add(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @Body() body: NewLoadingSheet,
  ): Promise<LoadingSheetView> {
    const values = loadingSheetOf(body);
    return show(LoadingSheetView, await this.sheets.add(user, LOADING_SHEETS, ofModel(id), values));
  }

  @Put()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'replaceModelLoading',
    summary: 'Put another loading sheet in the place of that of a model',
    answer: LoadingSheetView,
    refuses: [403, 404, 412, 422, 428],
  })
  async replace(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: NewLoadingSheet,
  ): Promise<LoadingSheetView> {
    const edit = { version, values: loadingSheetOf(body) };
    return show(LoadingSheetView, await this.sheets.replace(user, LOADING_SHEETS, ofModel(id), edit));
  }

  @Delete()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'removeModelLoading',
    summary: 'Take the loading sheet of a model off the record',
    answer: null,
    refuses: [403, 404, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.sheets.remove(user, LOADING_SHEETS, ofModel(id), version);
  }
}

/** The loading sheet of one aircraft that differs from its model. */
@ApiTags('loading')
@Controller('aircraft/:aircraftId/loading')
export class AircraftLoadingController {
  constructor(private readonly sheets: SheetsService) {}

  @Get()
  @ApiRoute({
    id: 'readAircraftLoading',
    summary: 'Loading sheet of one aircraft',
    answer: LoadingSheetView,
    refuses: [404],
  })
  async read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
  ): Promise<LoadingSheetView> {
    return show(LoadingSheetView, await this.sheets.read(user, LOADING_SHEETS, ofAircraft(id)));
  }

  @Post()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'addAircraftLoading',
    summary: 'Record the loading sheet of one aircraft',
    description: 'It counts in the place of that of the model.',
    answer: LoadingSheetView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @Body() body: NewLoadingSheet,
  ): Promise<LoadingSheetView> {
    const values = loadingSheetOf(body);
    return show(LoadingSheetView, await this.sheets.add(user, LOADING_SHEETS, ofAircraft(id), values));
  }

  @Put()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'replaceAircraftLoading',
    summary: 'Put another loading sheet in the place of that of one aircraft',
    answer: LoadingSheetView,
    refuses: [403, 404, 412, 422, 428],
  })
  async replace(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: NewLoadingSheet,
  ): Promise<LoadingSheetView> {
    const edit = { version, values: loadingSheetOf(body) };
    return show(LoadingSheetView, await this.sheets.replace(user, LOADING_SHEETS, ofAircraft(id), edit));
  }

  @Delete()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'removeAircraftLoading',
    summary: 'Take the loading sheet of one aircraft off the record',
    answer: null,
    refuses: [403, 404, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.sheets.remove(user, LOADING_SHEETS, ofAircraft(id), version);
  }
}
