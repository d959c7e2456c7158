/** A member and a flight with something in the way, for specs of ways to yes. */
import { known, type Fact, type FactSheet, type Policy } from '../../../src/rules/index.js';
import { startingPolicy } from '../../../src/rules/packs/club/starting-policy.js';
import type { Way, WaysQuestion, WaysToYes } from '../../../src/rules/ways/types.js';
import { waysToYes } from '../../../src/rules/ways/ways.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';

export const POLICY = startingPolicy();

/** The starting policy with some values of the club's own. */
export const policyWith = (values: Record<string, number | boolean | string>): Policy => ({
  values: [
    ...POLICY.values.filter(({ id }) => !(id in values)),
    ...Object.entries(values).map(([id, value]) => ({ id, from: '2000-01-01', value, reference: 'spec' })),
  ],
});

/** The base sheet (known at 11:00 in Denver on 28 February), its flight so many days ahead, changed by `damage`. */
export function scene(days: number, damage: (sheet: FactSheet) => void): FactSheet {
  const sheet = baseSheet();
  const day = new Date(Date.UTC(2027, 1, 28 + days)).toISOString().slice(0, 10);
  sheet.flight = { ...sheet.flight, departs: `${day}T18:00:00Z`, arrives: `${day}T19:00:00Z` };
  damage(sheet);
  return sheet;
}

/** Two hours after dark in Denver on the day of the scene. */
export function atNight(sheet: FactSheet): void {
  const next = new Date(Date.parse(sheet.flight.departs) + 86_400_000).toISOString().slice(0, 10);
  sheet.flight = { ...sheet.flight, departs: `${next}T03:30:00Z`, arrives: `${next}T04:30:00Z` };
}

export const withPassengers = (sheet: FactSheet, aboard = 3): void => {
  sheet.flight = { ...sheet.flight, purpose: 'passengers', personsOnBoard: aboard };
};

export const lose = (
  sheet: FactSheet,
  ...subjects: ('log' | 'medicals' | 'reviews' | 'checkouts')[]
): void => {
  for (const subject of subjects)
    (sheet.people['member-1']![subject] as Fact<object[]>) = known([], sheet.knownAt);
};

export const ways = (sheet: FactSheet, more: Partial<WaysQuestion> = {}): WaysToYes =>
  waysToYes({ sheet, policy: POLICY, ...more });

/** The cheapest way that hangs on nobody's leave. */
export const plain = (found: WaysToYes): Way | undefined =>
  found.plans.find(({ rests }) => rests.length === 0);

export const acts = (way: Way | undefined): string[] => way?.steps.map(({ act }) => act) ?? [];
