import { EquipmentChange } from './equipment-changes/equipment-change.entity.js';
import { Signer } from './signers/signer.entity.js';
import { UpgradeWish } from './wishes/wish.entity.js';
import { WorkLine } from './work-orders/work-line.entity.js';
import { WorkOrder } from './work-orders/work-order.entity.js';

/** The tables of this domain. */
export const MAINTENANCE_ENTITIES = [EquipmentChange, UpgradeWish, Signer, WorkOrder, WorkLine];
