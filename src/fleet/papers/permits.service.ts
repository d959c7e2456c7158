import { Injectable } from '@nestjs/common';
import { TenantDb } from '../../platform/database/tenant.js';
import { AircraftRecords } from '../aircraft-records.js';
import { type NewPermit, PermitView } from './permit.dto.js';
import { Permit } from './permit.entity.js';

/** Special flight permits. */
@Injectable()
export class PermitsService extends AircraftRecords<Permit, NewPermit, PermitView> {
  constructor(db: TenantDb) {
    super(db, { entity: Permit, noun: 'special flight permit' }, PermitView);
  }
}
