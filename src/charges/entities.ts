import { LedgerEntry } from './ledger/ledger-entry.entity.js';
import { ChargeRate } from './rates/charge-rate.entity.js';

/** Entities of this folder, for the data source. */
export const CHARGE_ENTITIES = [ChargeRate, LedgerEntry];
