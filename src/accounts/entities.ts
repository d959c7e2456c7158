import { Account, RefreshToken } from './account.entity.js';

/** Entities of this folder, for the data source. */
export const ACCOUNT_ENTITIES = [Account, RefreshToken];
