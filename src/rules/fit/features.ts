/** What some aircraft of a fleet have and others have not, and which flights need it. */
import type { AircraftFacts } from '../facts/aircraft.js';
import type { FactSheet } from '../facts/sheet.js';

export const FEATURES = [
  'ifr',
  'instruction',
  'multi-engine',
  'retractable-gear',
  'high-performance',
  'tailwheel',
  'pressurised',
] as const;
export type Feature = (typeof FEATURES)[number];

/** More than 200 horsepower (14 CFR 61.31(f)). */
const HIGH_PERFORMANCE_HP = 200;
/** Of how many aircraft one may have it for it to be scarce. */
const ONE_IN = 3;

/** What an aircraft has, as far as it is on record. */
export function featuresOf({ type, use }: Pick<AircraftFacts, 'type' | 'use'>): Feature[] {
  if (!type.known) return [];
  const it = type.value;
  const has: [Feature, boolean][] = [
    ['ifr', it.kindsOfOperation.includes('ifr')],
    ['instruction', use.known && use.value.instructionForHire],
    ['multi-engine', it.engines > 1],
    ['retractable-gear', it.retractableGear],
    ['high-performance', (it.powerPerEngineHp ?? 0) > HIGH_PERFORMANCE_HP],
    ['tailwheel', it.tailwheel],
    ['pressurised', it.pressurised],
  ];
  return has.filter(([, yes]) => yes).map(([feature]) => feature);
}

/** Whether a flight as asked for needs it. */
export function isNeeded(
  feature: Feature,
  flight: Pick<FactSheet['flight'], 'flightRules' | 'purpose'>,
): boolean {
  if (feature === 'ifr') return flight.flightRules === 'IFR';
  return feature === 'instruction' && (flight.purpose === 'dual' || flight.purpose === 'checkout');
}

/** What at most one in three aircraft in service has. */
export function scarceAmong(fleet: readonly AircraftFacts[]): Set<Feature> {
  const flying = fleet.filter(({ use }) => use.known && use.value.status === 'in-service');
  const counts = new Map<Feature, number>();
  for (const one of flying)
    for (const feature of featuresOf(one)) counts.set(feature, (counts.get(feature) ?? 0) + 1);
  return new Set(
    [...counts].filter(([, count]) => count * ONE_IN <= flying.length).map(([feature]) => feature),
  );
}
