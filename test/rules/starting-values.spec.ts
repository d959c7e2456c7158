/** A club made before a number existed gets it by a migration; otherwise every rule that reads it would not know. */
import { STARTING_VALUES } from '../../migrations/0025-starting-values.js';
import { SHARING_VALUES } from '../../migrations/0028-standby.js';
import { NOTICE_VALUES } from '../../migrations/0033-notice-values.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';

/** Migrations that bring numbers to clubs that are there already. */
const BROUGHT = [...STARTING_VALUES, ...SHARING_VALUES, ...NOTICE_VALUES];

it('every club number comes to clubs that are there already, as new clubs start with it', () => {
  const brought = BROUGHT.map(([id, value, section]) => ({
    ...{ id, value, reference: `Club handbook, section ${section}` },
  }));
  const started = startingPolicy().values.map(({ id, value, reference }) => ({ id, value, reference }));
  const byId = (a: { id: string }, b: { id: string }): number => (a.id < b.id ? -1 : 1);
  expect(brought.sort(byId)).toEqual(started.sort(byId));
});
