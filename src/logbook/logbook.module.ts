import './logbook.constraints.js';
import { Module } from '@nestjs/common';
import { LogController } from './log.controller.js';
import { LogService } from './log.service.js';

/** Members' logs. */
@Module({ controllers: [LogController], providers: [LogService] })
export class LogbookModule {}
