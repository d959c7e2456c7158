import { Module } from '@nestjs/common';
import { FleetModule } from '../fleet/fleet.module.js';
import { EquipmentChangesController } from './equipment-changes/equipment-changes.controller.js';
import { EquipmentChangesService } from './equipment-changes/equipment-changes.service.js';

/** What is done to aircraft, and what follows from it for everybody else. */
@Module({
  imports: [FleetModule],
  controllers: [EquipmentChangesController],
  providers: [EquipmentChangesService],
})
export class MaintenanceModule {}
