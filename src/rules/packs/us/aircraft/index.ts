/** Rules about the aircraft under 14 CFR parts 39, 43, 47 and 91. */
import { ruleList } from '../../../engine/rule.js';
import type { Parameter } from '../../../parameters/parameter.js';
import { EQUIPMENT_PARAMETERS } from '../../../parameters/us/equipment.js';
import { INSPECTIONS } from '../../../parameters/us/inspections.js';
import { REGISTRATION } from '../../../parameters/us/registration.js';
import { equipmentDayVfr } from './equipment/day-vfr.js';
import { equipmentIfr } from './equipment/ifr.js';
import { equipmentInoperative } from './equipment/inoperative.js';
import { equipmentNightVfr } from './equipment/night-vfr.js';
import { equipmentTransponder } from './equipment/transponder.js';
import { altimeterStaticTest } from './inspections/altimeter-static.js';
import { annualInspection } from './inspections/annual.js';
import { eltBattery } from './inspections/elt-battery.js';
import { eltInspection } from './inspections/elt-inspection.js';
import { hoursPromised } from './inspections/hours-promised.js';
import { hundredHourInspection } from './inspections/hundred-hour.js';
import { progressiveInspection } from './inspections/progressive.js';
import { transponderTest } from './inspections/transponder-test.js';
import { vorCheck } from './inspections/vor-check.js';
import { specialFlightPermit } from './permits/special-flight-permit.js';
import { registrationValidity } from './registration.js';

export const US_AIRCRAFT_RULES = ruleList(
  registrationValidity,
  annualInspection,
  hundredHourInspection,
  progressiveInspection,
  hoursPromised,
  altimeterStaticTest,
  transponderTest,
  eltInspection,
  eltBattery,
  vorCheck,
  specialFlightPermit,
  equipmentDayVfr,
  equipmentNightVfr,
  equipmentIfr,
  equipmentInoperative,
  equipmentTransponder,
);
export const US_AIRCRAFT_PARAMETERS: readonly Parameter[] = [
  ...INSPECTIONS,
  ...EQUIPMENT_PARAMETERS,
  ...REGISTRATION,
];
