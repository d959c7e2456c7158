import './charges.constraints.js';
import { Module } from '@nestjs/common';
import { ChargesController } from './flights/charges.controller.js';
import { ChargesService } from './flights/charges.service.js';
import { LedgerController } from './ledger/ledger.controller.js';
import { LedgerService } from './ledger/ledger.service.js';
import { RatesController } from './rates/rates.controller.js';
import { RatesService } from './rates/rates.service.js';
import { StatementController } from './statement/statement.controller.js';
import { StatementService } from './statement/statement.service.js';

/** What flying costs, and the members' accounts. Money itself is handled elsewhere. */
@Module({
  controllers: [ChargesController, LedgerController, RatesController, StatementController],
  providers: [ChargesService, LedgerService, RatesService, StatementService],
})
export class ChargesModule {}
