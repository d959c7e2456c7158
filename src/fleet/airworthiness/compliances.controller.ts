import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { CompliancePage, ComplianceView, NewCompliance } from './compliance.dto.js';
import { CompliancesService } from './compliances.service.js';

/** What was done for an airworthiness item. */
@ApiTags('airworthiness')
@Controller('aircraft/:aircraftId/items/:itemId/compliances')
export class CompliancesController {
  constructor(private readonly compliances: CompliancesService) {}

  @Get()
  @ApiRoute({
    id: 'listCompliances',
    summary: 'What was done for an item, void records included',
    answer: CompliancePage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('itemId', UuidPipe) itemId: string,
    @Query() page: PageQuery,
  ): Promise<CompliancePage> {
    return this.compliances.list(user, { aircraftId, itemId }, page);
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addCompliance',
    summary: 'Record that an item was done',
    answer: ComplianceView,
    status: 201,
    refuses: [403, 404, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('itemId', UuidPipe) itemId: string,
    @Body() body: NewCompliance,
  ): Promise<ComplianceView> {
    return this.compliances.add(user, { aircraftId, itemId }, body);
  }

  @Post(':complianceId/void')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'voidCompliance',
    summary: 'Void a wrong record',
    description:
      'It stays on record and does not count any more. The newest one that is not void counts again.',
    answer: ComplianceView,
    refuses: [403, 404, 409],
  })
  void(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('itemId', UuidPipe) itemId: string,
    @Param('complianceId', UuidPipe) id: string,
  ): Promise<ComplianceView> {
    return this.compliances.void(user, { aircraftId, itemId }, id);
  }
}
