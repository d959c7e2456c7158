import { Module } from '@nestjs/common';
import { AirfieldsController } from './airfields/airfields.controller.js';
import { AirfieldsService } from './airfields/airfields.service.js';
import { RunwaysController } from './airfields/runways.controller.js';
import { RunwaysService } from './airfields/runways.service.js';
import './clubs.constraints.js';
import { ClubsController } from './clubs.controller.js';
import { ClubsService } from './clubs.service.js';
import { PolicyController } from './policy/policy.controller.js';
import { PolicyService } from './policy/policy.service.js';

/** The club, its airfields and its policy. */
@Module({
  controllers: [ClubsController, AirfieldsController, RunwaysController, PolicyController],
  providers: [ClubsService, AirfieldsService, RunwaysService, PolicyService],
  exports: [PolicyService],
})
export class ClubsModule {}
