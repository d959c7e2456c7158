import { Injectable } from '@nestjs/common';
import { AircraftRecords } from '../../fleet/aircraft-records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { type NewWish, WishView } from './wish.dto.js';
import { UpgradeWish } from './wish.entity.js';

/** Upgrades the club wishes for. */
@Injectable()
export class WishesService extends AircraftRecords<UpgradeWish, NewWish, WishView> {
  constructor(db: TenantDb) {
    super(db, { entity: UpgradeWish, noun: 'upgrade wish' }, WishView);
  }
}
