import { EquipmentChange } from './equipment-changes/equipment-change.entity.js';

/** The tables of this domain. */
export const MAINTENANCE_ENTITIES = [EquipmentChange];
