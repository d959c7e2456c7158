import { Body, Controller, Delete, Get, Param, Post, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { show } from '../../platform/http/views.js';
import { NewPerformanceSheet, PerformanceSheetView } from './performance-sheet.dto.js';
import { performanceSheetOf } from './sheet-checks.js';
import { PERFORMANCE_SHEETS, SheetsService, type OwnerOf } from './sheets.service.js';

const ofModel = (modelId: string): OwnerOf => ({ modelId });
const ofAircraft = (aircraftId: string): OwnerOf => ({ aircraftId });

/** What the handbook of a model says: its take-off and landing tables. */
@ApiTags('loading')
@Controller('models/:modelId/performance')
export class ModelPerformanceController {
  constructor(private readonly sheets: SheetsService) {}

  @Get()
  @ApiRoute({
    id: 'readModelPerformance',
    summary: 'Take-off and landing tables of a model',
    answer: PerformanceSheetView,
    refuses: [404],
  })
  async read(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
  ): Promise<PerformanceSheetView> {
    return show(PerformanceSheetView, await this.sheets.read(user, PERFORMANCE_SHEETS, ofModel(id)));
  }

  @Post()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'addModelPerformance',
    summary: 'Record the take-off and landing tables of a model',
    description: 'It counts for every aircraft of the model that has none of its own.',
    answer: PerformanceSheetView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async add(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @Body() body: NewPerformanceSheet,
  ): Promise<PerformanceSheetView> {
    const values = performanceSheetOf(body);
    return show(PerformanceSheetView, await this.sheets.add(user, PERFORMANCE_SHEETS, ofModel(id), values));
  }

  @Put()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'replaceModelPerformance',
    summary: 'Put another take-off and landing tables in the place of that of a model',
    answer: PerformanceSheetView,
    refuses: [403, 404, 412, 422, 428],
  })
  async replace(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: NewPerformanceSheet,
  ): Promise<PerformanceSheetView> {
    const edit = { version, values: performanceSheetOf(body) };
    return show(PerformanceSheetView, await this.sheets.replace(user, PERFORMANCE_SHEETS, ofModel(id), edit));
  }

  @Delete()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'removeModelPerformance',
    summary: 'Take the take-off and landing tables of a model off the record',
    answer: null,
    refuses: [403, 404, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('modelId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.sheets.remove(user, PERFORMANCE_SHEETS, ofModel(id), version);
  }
}

/** The take-off and landing tables of one aircraft that differs from its model. */
@ApiTags('loading')
@Controller('aircraft/:aircraftId/performance')
export class AircraftPerformanceController {
  constructor(private readonly sheets: SheetsService) {}

  @Get()
  @ApiRoute({
    id: 'readAircraftPerformance',
    summary: 'Take-off and landing tables of one aircraft',
    answer: PerformanceSheetView,
    refuses: [404],
  })
  async read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
  ): Promise<PerformanceSheetView> {
    return show(PerformanceSheetView, await this.sheets.read(user, PERFORMANCE_SHEETS, ofAircraft(id)));
  }

  @Post()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'addAircraftPerformance',
    summary: 'Record the take-off and landing tables of one aircraft',
    description: 'It counts in the place of that of the model.',
    answer: PerformanceSheetView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @Body() body: NewPerformanceSheet,
  ): Promise<PerformanceSheetView> {
    const values = performanceSheetOf(body);
    return show(
      PerformanceSheetView,
      await this.sheets.add(user, PERFORMANCE_SHEETS, ofAircraft(id), values),
    );
  }

  @Put()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'replaceAircraftPerformance',
    summary: 'Put another take-off and landing tables in the place of that of one aircraft',
    answer: PerformanceSheetView,
    refuses: [403, 404, 412, 422, 428],
  })
  async replace(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: NewPerformanceSheet,
  ): Promise<PerformanceSheetView> {
    const edit = { version, values: performanceSheetOf(body) };
    return show(
      PerformanceSheetView,
      await this.sheets.replace(user, PERFORMANCE_SHEETS, ofAircraft(id), edit),
    );
  }

  @Delete()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'removeAircraftPerformance',
    summary: 'Take the take-off and landing tables of one aircraft off the record',
    answer: null,
    refuses: [403, 404, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.sheets.remove(user, PERFORMANCE_SHEETS, ofAircraft(id), version);
  }
}
