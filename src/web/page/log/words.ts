import type { Role } from './types.js';

export const ROLES: readonly (readonly [Role, string])[] = [
  ['pilot-in-command', 'in command'],
  ['dual-received', 'being taught'],
  ['instructor', 'teaching'],
  ['solo', 'solo, as a student'],
  ['second-in-command', 'second in command'],
];
export const roleSays = (role: Role): string => ROLES.find(([key]) => key === role)![1];

export const CATEGORIES = [
  ['airplane', 'airplane'],
  ['rotorcraft', 'rotorcraft'],
  ['glider', 'glider'],
  ['lighter-than-air', 'lighter than air'],
  ['powered-lift', 'powered lift'],
] as const;

const PLAIN = ['none', 'no class'] as const;
/** Classes by category (14 CFR 61.5(b)). */
export const CLASSES: Record<string, readonly (readonly [string, string])[]> = {
  airplane: [
    ['single-engine-land', 'single engine, land'],
    ['single-engine-sea', 'single engine, sea'],
    ['multi-engine-land', 'multi-engine, land'],
    ['multi-engine-sea', 'multi-engine, sea'],
  ],
  rotorcraft: [
    ['helicopter', 'helicopter'],
    ['gyroplane', 'gyroplane'],
  ],
};
export const classesOf = (category: string): readonly (readonly [string, string])[] =>
  CLASSES[category] ?? [PLAIN];
export const kindSays = (category: string, of: string): string => {
  const words = classesOf(category).find(([key]) => key === of)?.[1] ?? of;
  const name = CATEGORIES.find(([key]) => key === category)?.[1] ?? category;
  return of === 'none' ? name : `${name}, ${words}`;
};

export const DEVICES = [
  ['', 'none: an aircraft'],
  ['full-flight-simulator', 'full flight simulator'],
  ['flight-training-device', 'flight training device'],
  ['aviation-training-device', 'aviation training device'],
] as const;

/** The kinds of flight that are watched. */
const FLIGHTS: Record<string, string> = {
  'day-passengers': 'passengers by day',
  'day-solo': 'alone by day',
  'night-passengers': 'passengers at night',
  ifr: 'IFR',
};
export const flightsSay = (flights: readonly string[]): string =>
  flights.length === Object.keys(FLIGHTS).length
    ? 'every flight'
    : flights.map((one) => FLIGHTS[one] ?? one).join(', ');

/** Hours of an entry: field, and what it is called. */
export const HOURS = [
  ['totalH', 'Total'],
  ['nightH', 'Night'],
  ['crossCountryH', 'Cross-country'],
  ['actualInstrumentH', 'Instruments, actual'],
  ['simulatedInstrumentH', 'Instruments, simulated'],
  ['dualGivenH', 'Instruction given'],
] as const;

/** What is checked. */
export const CHECKS: Record<string, string> = {
  date: 'Date',
  'block-hours': 'Hours',
  speed: 'Way',
  'night-hours': 'Night',
  'night-take-offs': 'Take-offs by night',
  'night-landings': 'Full stops by night',
  'cross-country': 'Cross-country',
};

/** Counts of an entry. */
export const COUNTS = [
  ['takeoffs', 'Take-offs'],
  ['landings', 'Landings'],
  ['fullStopLandings', 'to a full stop'],
  ['nightTakeoffs', 'Take-offs by night'],
  ['nightFullStopLandings', 'Full stops by night'],
  ['approaches', 'Approaches'],
] as const;
