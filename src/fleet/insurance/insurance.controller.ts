import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { EndInsuranceTerms, InsurancePage, InsuranceTermsView, NewInsuranceTerms } from './insurance.dto.js';
import { InsuranceService } from './insurance.service.js';

/** Insurance of an aircraft, as far as it is about who flies it. */
@ApiTags('insurance')
@Controller('aircraft/:aircraftId/insurance')
export class InsuranceController {
  constructor(private readonly insurance: InsuranceService) {}

  @Get()
  @ApiRoute({
    id: 'listInsurance',
    summary: 'Insurance terms of an aircraft, newest record first',
    description: 'As entered from the policy, which itself decides.',
    answer: InsurancePage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<InsurancePage> {
    return this.insurance.list(user, aircraftId, page);
  }

  @Post()
  @Roles('maintenance-coordinator', 'safety-officer', 'administrator')
  @ApiRoute({
    id: 'addInsurance',
    summary: 'Enter the terms of a policy',
    description:
      'They bind every flight on their days. Entered once and never changed: end them, and enter others.',
    answer: InsuranceTermsView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewInsuranceTerms,
  ): Promise<InsuranceTermsView> {
    return this.insurance.add(user, aircraftId, body);
  }

  @Post(':termsId/end')
  @Roles('maintenance-coordinator', 'safety-officer', 'administrator')
  @ApiRoute({
    id: 'endInsurance',
    summary: 'End terms before their last day, or take them back',
    answer: InsuranceTermsView,
    refuses: [403, 404, 409, 422],
  })
  end(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('termsId', UuidPipe) id: string,
    @Body() body: EndInsuranceTerms,
  ): Promise<InsuranceTermsView> {
    return this.insurance.end(user, { aircraftId, id }, body);
  }
}
