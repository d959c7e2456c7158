/** What rules say of themselves: facts and numbers that there are, and when they are asked. Club handbook, section 4. */
import { ALL_RULES, rulesetFor, startingPolicy, type Jurisdiction } from '../../src/rules/index.js';
import { isFactName } from '../../src/rules/workshop/case-facts.js';

test('exactly these rules are asked only when a booking is made', () => {
  expect(
    ALL_RULES.filter((rule) => rule.onlyWhenBooking)
      .map(({ id }) => id)
      .sort(),
  ).toEqual([
    'club.booking_lead',
    'club.fair_use.hours_ahead',
    'club.fair_use.open_bookings',
    'club.fair_use.weekend_bookings',
  ]);
});

test('each rule reads facts that there are', () => {
  for (const { id, reads } of ALL_RULES)
    expect([id, reads.filter((key) => !isFactName(key))]).toEqual([id, []]);
});

test.each<Jurisdiction>(['US', 'EU', 'CA'])('%s: each rule reads numbers that there are', (jurisdiction) => {
  const { rules, book } = rulesetFor(jurisdiction, startingPolicy());
  expect(rules.length).toBeGreaterThan(40);
  for (const { id, parameters } of rules)
    expect([id, parameters.filter((one) => book.declaration(one) === undefined)]).toEqual([id, []]);
});
