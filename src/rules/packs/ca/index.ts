/**
 * The Canadian pack, begun: the recency of CARs 401.05. Licences, medicals, airworthiness, equipment, fuel and weather are
 * not held: `law.canada.pack_complete` says so on every flight, so this pack never answers yes.
 */
import { ruleList } from '../../engine/rule.js';
import type { Parameter } from '../../parameters/parameter.js';
import { CA_RECENCY } from '../../parameters/ca/recency.js';
import { packComplete } from './pack-complete.js';
import { passengerRecency } from './passenger-recency.js';
import { recentCommand } from './recent-command.js';
import { recurrentTraining } from './recurrent-training.js';

export const CA_RULES = ruleList(packComplete, recentCommand, recurrentTraining, passengerRecency);
export const CA_PARAMETERS: readonly Parameter[] = CA_RECENCY;
