import type { Mapping } from '../mapping.js';
import { ACS_MAPS } from './acs.js';
import { AIR_MAPS } from './air.js';
import { ENDORSEMENT_MAPS } from './endorsements.js';
import { EQUIPMENT_MAPS } from './equipment.js';
import { HOURS_MAPS } from './hours.js';
import { INSPECTION_MAPS } from './inspections.js';
import { INSTRUMENT_MAPS } from './instrument.js';
import { LIMIT_MAPS } from './limits.js';
import { MEDICAL_MAPS } from './medical.js';
import { PASSENGER_RECENCY_MAPS } from './passenger-recency.js';
import { REVIEW_MAPS } from './reviews.js';
import { SKY_MAPS } from './sky.js';
import { STUDENT_MAPS } from './student.js';
import { VOR_AND_ELT_MAPS } from './vor-and-elt.js';
import { WEATHER_AND_FUEL_MAPS } from './weather-and-fuel.js';

/** Every mapping, one list a group of rules. */
export const MAPPINGS: readonly Mapping[] = [
  ...PASSENGER_RECENCY_MAPS,
  ...INSPECTION_MAPS,
  ...HOURS_MAPS,
  ...VOR_AND_ELT_MAPS,
  ...INSTRUMENT_MAPS,
  ...REVIEW_MAPS,
  ...STUDENT_MAPS,
  ...LIMIT_MAPS,
  ...EQUIPMENT_MAPS,
  ...MEDICAL_MAPS,
  ...ENDORSEMENT_MAPS,
  ...WEATHER_AND_FUEL_MAPS,
  ...AIR_MAPS,
  ...ACS_MAPS,
  ...SKY_MAPS,
];
