import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { CheckFlightsService } from './check-flights.service.js';
import { ReturnToService } from './return-to-service.dto.js';
import { ReturnToServiceService } from './return-to-service.service.js';
import {
  CheckFlight,
  NewLine,
  NewShopTimes,
  NewWorkOrder,
  WorkBegun,
  WorkCancelled,
  WorkOrderPage,
  WorkOrderQuery,
  WorkOrderResult,
  WorkOrderView,
} from './work-order.dto.js';
import { WorkOrdersService } from './work-orders.service.js';

const PREVIEW = { rehearse: true };
const DO_IT = { rehearse: false };

/** Visits to the shop: planned, in work, approved for return to service. */
@ApiTags('maintenance')
@Controller('aircraft/:aircraftId/work-orders')
export class WorkOrdersController {
  constructor(
    private readonly orders: WorkOrdersService,
    private readonly returning: ReturnToServiceService,
    private readonly checkFlights: CheckFlightsService,
  ) {}

  @Get()
  @ApiRoute({
    id: 'listWorkOrders',
    summary: 'Visits to the shop, newest first',
    answer: WorkOrderPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() query: WorkOrderQuery,
  ): Promise<WorkOrderPage> {
    return this.orders.list(user, aircraftId, query);
  }

  @Get(':orderId')
  @ApiRoute({ id: 'readWorkOrder', summary: 'One visit', answer: WorkOrderView, refuses: [404] })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
  ): Promise<WorkOrderView> {
    return this.orders.read(user, { aircraftId, id });
  }

  @Post('preview')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'previewWorkOrder',
    summary: 'What planning the visit would do to members’ flights',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 422],
  })
  previewPlan(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewWorkOrder,
  ): Promise<WorkOrderResult> {
    return this.orders.plan(user, aircraftId, body, PREVIEW);
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'planWorkOrder',
    summary: 'Plan a visit',
    description: 'Items, squawks, upgrades and a weighing in one visit, with its time in the calendar.',
    answer: WorkOrderResult,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  plan(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewWorkOrder,
  ): Promise<WorkOrderResult> {
    return this.orders.plan(user, aircraftId, body, DO_IT);
  }

  @Post(':orderId/times/preview')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'previewWorkTimes',
    summary: 'What another time would do to members’ flights',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  previewTimes(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: NewShopTimes,
  ): Promise<WorkOrderResult> {
    return this.orders.reschedule(user, { aircraftId, id }, version, body, PREVIEW);
  }

  @Patch(':orderId/times')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'setWorkTimes',
    summary: 'Give the visit another time in the calendar, or none',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  setTimes(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() body: NewShopTimes,
  ): Promise<WorkOrderResult> {
    return this.orders.reschedule(user, { aircraftId, id }, version, body, DO_IT);
  }

  @Post(':orderId/lines')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addWorkLine',
    summary: 'Add something to be done',
    answer: WorkOrderView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  addLine(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Body() line: NewLine,
  ): Promise<WorkOrderView> {
    return this.orders.addLine(user, { aircraftId, id }, line);
  }

  @Delete(':orderId/lines/:lineId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeWorkLine',
    summary: 'Take something off the visit',
    answer: WorkOrderView,
    refuses: [403, 404, 409],
  })
  removeLine(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Param('lineId', UuidPipe) lineId: string,
  ): Promise<WorkOrderView> {
    return this.orders.removeLine(user, { aircraftId, id }, lineId);
  }

  @Post(':orderId/begin')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'beginWork',
    summary: 'The shop has begun: until somebody signs, nobody flies',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 422],
  })
  begin(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Body() body: WorkBegun,
  ): Promise<WorkOrderResult> {
    return this.orders.begin(user, { aircraftId, id }, body, DO_IT);
  }

  @Post(':orderId/cancel')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'cancelWork',
    summary: 'Call a planned visit off',
    description: 'Its time in the calendar is free again. Flights that made room for it stay cancelled.',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 422],
  })
  cancel(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Body() body: WorkCancelled,
  ): Promise<WorkOrderResult> {
    return this.orders.cancel(user, { aircraftId, id }, body);
  }

  @Post(':orderId/return-to-service/preview')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'previewReturnToService',
    summary: 'What the signature would record, and what members’ flights would be answered then',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 422],
  })
  previewSignature(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Body() body: ReturnToService,
  ): Promise<WorkOrderResult> {
    return this.returning.sign(user, { aircraftId, id }, body, PREVIEW);
  }

  @Post(':orderId/return-to-service')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'returnToService',
    summary: 'Record the approval for return to service',
    description:
      'Meters, statements, intervals from the right hours, squawks, equipment and weight in one transaction. Kept as entered; it grants nobody authority.',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 422],
  })
  sign(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Body() body: ReturnToService,
  ): Promise<WorkOrderResult> {
    return this.returning.sign(user, { aircraftId, id }, body, DO_IT);
  }

  @Post(':orderId/check-flight')
  @ApiRoute({
    id: 'logCheckFlight',
    summary: 'Log the check flight after work',
    description:
      'By who flew it, with at least a private pilot certificate on record, or by the coordinator.',
    answer: WorkOrderResult,
    refuses: [403, 404, 409, 422],
  })
  checkFlight(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('orderId', UuidPipe) id: string,
    @Body() body: CheckFlight,
  ): Promise<WorkOrderResult> {
    return this.checkFlights.log(user, { aircraftId, id }, body);
  }
}
