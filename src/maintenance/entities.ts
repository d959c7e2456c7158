import { EquipmentChange } from './equipment-changes/equipment-change.entity.js';
import { UpgradeWish } from './wishes/wish.entity.js';

/** The tables of this domain. */
export const MAINTENANCE_ENTITIES = [EquipmentChange, UpgradeWish];
