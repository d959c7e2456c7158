import { Body, Controller, Get, HttpCode, Param, Post, Query } from '@nestjs/common';
import { ApiBearerAuth, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { ApiProblems } from '../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { Roles } from '../accounts/roles.js';
import { UuidPipe } from '../platform/http/uuid.pipe.js';
import { CheckoutDto, CheckoutPage, CheckoutQuery, CheckoutView, VoidCheckoutDto } from './checkouts.dto.js';
import { CheckoutsService } from './checkouts.service.js';

/** The club's sign-offs. */
@ApiTags('checkouts')
@ApiBearerAuth()
@ApiProblems(400, 401, 403, 404, 429)
@Controller()
export class CheckoutsController {
  constructor(private readonly checkouts: CheckoutsService) {}

  @Get('members/:memberId/checkouts')
  @ApiOperation({ operationId: 'listCheckouts', summary: "List a member's checkouts and annual checks" })
  @ApiOkResponse({ type: CheckoutPage })
  list(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: CheckoutQuery,
  ): Promise<CheckoutPage> {
    return this.checkouts.list(person, memberId, query);
  }

  @Post('members/:memberId/checkouts')
  @Roles('instructor')
  @ApiOperation({
    operationId: 'signCheckout',
    summary: 'Sign a checkout or an annual check',
    description:
      'Signed once and never edited: a wrong one is taken back and signed anew. Nobody signs their own. Where the club has laid down what it asks for, an instructor who may sign it does so once every item, the quiz and what must stand first are there.',
  })
  @ApiCreatedResponse({ type: CheckoutView })
  @ApiProblems(409, 422)
  sign(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() draft: CheckoutDto,
  ): Promise<CheckoutView> {
    return this.checkouts.sign(by, memberId, draft);
  }

  @Post('checkouts/:id/void')
  @HttpCode(200)
  @Roles('instructor', 'safety-officer', 'administrator')
  @ApiOperation({
    operationId: 'voidCheckout',
    summary: 'Take a checkout back; it stays on record with the reason',
  })
  @ApiOkResponse({ type: CheckoutView })
  @ApiProblems(409)
  void(
    @CurrentUser() by: SignedIn,
    @Param('id', UuidPipe) id: string,
    @Body() body: VoidCheckoutDto,
  ): Promise<CheckoutView> {
    return this.checkouts.void(by, id, body.reason);
  }
}
