import { Injectable } from '@nestjs/common';
import { TenantDb } from '../../platform/database/tenant.js';
import { AircraftRecords } from '../aircraft-records.js';
import { type NewRegistration, RegistrationView } from './registration.dto.js';
import { Registration } from './registration.entity.js';

/** Registration certificates; the rules take the newest. */
@Injectable()
export class RegistrationsService extends AircraftRecords<Registration, NewRegistration, RegistrationView> {
  constructor(db: TenantDb) {
    super(db, { entity: Registration, noun: 'registration certificate' }, RegistrationView);
  }
}
