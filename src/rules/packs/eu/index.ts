/**
 * The European pack, begun: passenger recency (FCL.060(b)) and medical validity (MED.A.045). The validity of class ratings
 * (FCL.740) is left out, because no fact records when a rating was revalidated. Airworthiness, equipment, fuel and weather
 * are not held either: `law.easa.pack_complete` says so on every flight, so this pack never answers yes.
 */
import { ruleList } from '../../engine/rule.js';
import type { Parameter } from '../../parameters/parameter.js';
import { EU_MEDICAL } from '../../parameters/eu/medical.js';
import { EU_PASSENGER_RECENCY } from '../../parameters/eu/recency.js';
import { medicalCertificate } from './medical.js';
import { packComplete } from './pack-complete.js';
import { passengerRecency } from './passenger-recency.js';

export const EU_RULES = ruleList(packComplete, medicalCertificate, passengerRecency);
export const EU_PARAMETERS: readonly Parameter[] = [...EU_MEDICAL, ...EU_PASSENGER_RECENCY];
