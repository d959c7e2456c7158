import './checkouts.constraints.js';
import { Module } from '@nestjs/common';
import { CheckoutsController } from './checkouts.controller.js';
import { CheckoutsService } from './checkouts.service.js';

/** The club's sign-offs. */
@Module({ controllers: [CheckoutsController], providers: [CheckoutsService] })
export class CheckoutsModule {}
