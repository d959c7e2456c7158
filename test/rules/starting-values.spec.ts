/** A club made before a number existed gets it by a migration; otherwise every rule that reads it would not know. */
import { STARTING_VALUES } from '../../migrations/0025-starting-values.js';
import { DISPATCH_STARTING_VALUES } from '../../migrations/0026-dispatch-return.js';
import { STARTING_VALUES_OF_BOOKING_CHANGES } from '../../migrations/0027-booking-changes.js';
import { SHARING_VALUES } from '../../migrations/0028-standby.js';
import { WEATHER_VALUES } from '../../migrations/0030-weather-values.js';
import { NOTICE_VALUES } from '../../migrations/0033-notice-values.js';
import { CHARGE_VALUES } from '../../migrations/0035-charge-values.js';
import { WEATHER_ROUND_VALUES } from '../../migrations/0037-weather-rounds.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';

/** Migrations that bring numbers to clubs that are there already. */
const BROUGHT = [
  ...[...STARTING_VALUES, ...DISPATCH_STARTING_VALUES, ...STARTING_VALUES_OF_BOOKING_CHANGES],
  ...[...SHARING_VALUES, ...WEATHER_VALUES, ...NOTICE_VALUES, ...CHARGE_VALUES],
  ...WEATHER_ROUND_VALUES,
];

it('every club number comes to clubs that are there already, as new clubs start with it', () => {
  const brought = BROUGHT.map(([id, value, section]) => ({
    ...{ id, value, reference: `Club handbook, section ${section}` },
  }));
  const started = startingPolicy().values.map(({ id, value, reference }) => ({ id, value, reference }));
  const byId = (a: { id: string }, b: { id: string }): number => (a.id < b.id ? -1 : 1);
  expect(brought.sort(byId)).toEqual(started.sort(byId));
});
