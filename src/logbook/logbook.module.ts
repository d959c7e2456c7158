import './logbook.constraints.js';
import './import/log-import.constraints.js';
import { Module } from '@nestjs/common';
import { LogImportController } from './import/log-import.controller.js';
import { LogImportService } from './import/log-import.service.js';
import { LogController } from './log.controller.js';
import { LogService } from './log.service.js';

/** Members' logs. */
@Module({
  controllers: [LogController, LogImportController],
  providers: [LogService, LogImportService],
})
export class LogbookModule {}
