import { Aircraft } from './aircraft/aircraft.entity.js';
import { AirworthinessItem } from './airworthiness/airworthiness-item.entity.js';
import { Compliance } from './airworthiness/compliance.entity.js';
import { Differences } from './differences/differences.entity.js';
import { Directive, DirectiveFinding } from './directives/directive.entity.js';
import { ItemTemplate } from './airworthiness/templates/template.entity.js';
import { Equipment } from './equipment/equipment.entity.js';
import { InsuranceNamedPilot, InsuranceTerms } from './insurance/insurance-terms.entity.js';
import { LoadingSheet } from './loading/loading-sheet.entity.js';
import { PerformanceSheet } from './loading/performance-sheet.entity.js';
import { MeterReading } from './meters/meter-reading.entity.js';
import { MeterReadingVoid } from './meters/meter-reading-void.entity.js';
import { AircraftModel } from './models/aircraft-model.entity.js';
import { Permit } from './papers/permit.entity.js';
import { Registration } from './papers/registration.entity.js';
import { Attachment } from './squawks/attachments/attachment.entity.js';
import { Deferral } from './squawks/deferral.entity.js';
import { SquawkPart } from './squawks/part.entity.js';
import { Squawk } from './squawks/squawk.entity.js';
import { Weighing } from './weighings/weighing.entity.js';

/** The tables of this domain. */
export const FLEET_ENTITIES = [
  Directive,
  DirectiveFinding,
  ItemTemplate,
  AircraftModel,
  Aircraft,
  Registration,
  Permit,
  InsuranceTerms,
  InsuranceNamedPilot,
  Equipment,
  MeterReading,
  MeterReadingVoid,
  Weighing,
  LoadingSheet,
  PerformanceSheet,
  AirworthinessItem,
  Compliance,
  Squawk,
  Deferral,
  SquawkPart,
  Attachment,
  Differences,
];
