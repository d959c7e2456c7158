import type { FitPart } from './types.js';

const FEATURES: Record<string, string> = {
  ifr: 'equipped for instrument flight',
  instruction: 'used for instruction',
  'multi-engine': 'two engines',
  'retractable-gear': 'retractable gear',
  'high-performance': 'more than 200 horsepower',
  tailwheel: 'a tailwheel',
  pressurised: 'a pressurised cabin',
};

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** '2 empty seats (20)' */
export function partSays({ kind, count, points, features }: FitPart): string {
  const what = {
    conditions: () => many(count, 'condition to settle', 'conditions to settle'),
    'empty-seats': () => many(count, 'empty seat', 'empty seats'),
    'scarce-features': () =>
      `few others have it, and the flight does without: ${features.map((one) => FEATURES[one] ?? one).join(', ')}`,
    'odd-hours': () => `${count} h beside it left over, too short to book`,
  }[kind]();
  return `${what} (${points})`;
}
