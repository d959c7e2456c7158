import { SafetyReport } from './reports/report.entity.js';
import { SafetyStep } from './reports/step.entity.js';

/** The tables of this domain; reviews of overrides speak SQL. */
export const SAFETY_ENTITIES = [SafetyReport, SafetyStep];
