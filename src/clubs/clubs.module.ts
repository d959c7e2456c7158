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
import './rules/club-rules.constraints.js';
import { ClubRulesController } from './rules/club-rules.controller.js';
import { ClubRulesInForce } from './rules/club-rules-in-force.js';
import { ClubRulesService } from './rules/club-rules.service.js';

/** The club, its airfields and its policy. */
@Module({
  controllers: [
    ClubsController,
    AirfieldsController,
    RunwaysController,
    PolicyController,
    ClubRulesController,
  ],
  providers: [
    ClubsService,
    AirfieldsService,
    RunwaysService,
    PolicyService,
    ClubRulesService,
    ClubRulesInForce,
  ],
  exports: [PolicyService],
})
export class ClubsModule {}
