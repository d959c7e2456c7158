/** The neutral files' words, and ours for the same. */
import type { AircraftCategory, AircraftClass } from '../../../rules/index.js';

export const CATEGORY: Record<string, AircraftCategory> = {
  airplane: 'airplane',
  rotorcraft: 'rotorcraft',
  helicopter: 'rotorcraft',
  gyroplane: 'rotorcraft',
  gyrocopter: 'rotorcraft',
  glider: 'glider',
  powered_lift: 'powered-lift',
  lighter_than_air: 'lighter-than-air',
  balloon: 'lighter-than-air',
};

export const CLASS: Record<string, AircraftClass> = {
  single_engine_land: 'single-engine-land',
  single_engine_sea: 'single-engine-sea',
  multi_engine_land: 'multi-engine-land',
  multi_engine_sea: 'multi-engine-sea',
  helicopter: 'helicopter',
  gyroplane: 'gyroplane',
  none: 'none',
};

/** The class that goes without saying for a category, where an entry names the category alone. */
export const USUAL_CLASS: Record<AircraftCategory, AircraftClass> = {
  airplane: 'single-engine-land',
  rotorcraft: 'helicopter',
  glider: 'none',
  'lighter-than-air': 'none',
  'powered-lift': 'none',
};

export const tenths = (hours: number): number => Math.round(hours * 10);

/** The files may name one thing in several ways: gives back the expected name when it is one of them, else the first. */
export function named(expected: unknown, names: readonly [string, ...string[]]): string {
  return names.find((name) => name === expected) ?? names[0];
}
