import { Aircraft } from './aircraft.entity.js';

/** How aircraft are found, and what they are called in problems. */
export const AIRCRAFT = { entity: Aircraft, noun: 'aircraft' };
