import { Controller, Get, Param, Query, type StreamableFile } from '@nestjs/common';
import { ApiBearerAuth, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { ApiProblems } from '../../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { download, fileContent } from '../../platform/http/download.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { statementCsv } from './statement-csv.js';
import { BalancePage, BalancesQuery, StatementQuery, StatementView } from './statement.dto.js';
import { StatementService } from './statement.service.js';

/** Accounts of members. A member sees the own one, an administrator all. */
@ApiTags('charges')
@Controller()
export class StatementController {
  constructor(private readonly statements: StatementService) {}

  @Get('members/:memberId/statement')
  @ApiRoute({
    id: 'getStatement',
    summary: 'What was charged, received and put right over some days, and what is owed',
    answer: StatementView,
    refuses: [403, 404, 409, 422],
  })
  statement(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: StatementQuery,
  ): Promise<StatementView> {
    return this.statements.statement(person, memberId, query);
  }

  @Get('members/:memberId/statement.csv')
  @ApiBearerAuth()
  @ApiOperation({
    operationId: 'exportStatementCsv',
    summary: 'The same as a table, a row for each line of a charge',
  })
  @ApiOkResponse({ description: 'The file', content: fileContent('text/csv') })
  @ApiProblems(400, 401, 403, 404, 409, 422)
  async csv(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: StatementQuery,
  ): Promise<StreamableFile> {
    const statement = await this.statements.statement(person, memberId, query);
    return download(statementCsv(statement), 'text/csv', `statement-${statement.from}-${statement.to}.csv`);
  }

  @Get('charges/balances')
  @Roles('administrator')
  @ApiRoute({
    id: 'listBalances',
    summary: 'How every account stands',
    answer: BalancePage,
    refuses: [403, 409],
  })
  balances(@CurrentUser() person: SignedIn, @Query() query: BalancesQuery): Promise<BalancePage> {
    return this.statements.balances(person, query);
  }
}
