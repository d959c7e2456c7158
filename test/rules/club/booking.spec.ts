/** What the case tables of the calendar and of how far ahead one books cannot say. Club handbook, sections 4.2 and 4.3. */
import {
  ALL_RULES,
  decideCrew,
  judgeRule,
  known,
  rulesetFor,
  startingPolicy,
  toSeconds,
  type CommitmentFact,
  type FactSheet,
  type Finding,
} from '../../../src/rules/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { COMMITMENT } from '../../../src/rules/workshop/records.js';

const findingOf = (id: string, sheet: FactSheet, departs = sheet.flight.departs): Finding => {
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  const rule = ALL_RULES.find((one) => one.id === id)!;
  return judgeRule(rule, sheet, rulesetFor('US', startingPolicy()), crew, toSeconds(departs)).finding;
};

test('a flight of which nothing is said of planning is held to how far ahead one books', () => {
  const sheet = baseSheet();
  const at = '2027-06-01T18:00:00Z';
  expect(findingOf('club.booking_lead', sheet, at).branch).toBe('too-early');
  delete sheet.flight.planned;
  expect(findingOf('club.booking_lead', sheet, at).branch).toBe('too-early');
  sheet.flight.planned = true;
  expect(findingOf('club.booking_lead', sheet, at).branch).toBe('planned');
});

test.each([[['a', 'b', 'c']], [['c', 'b', 'a']], [['b', 'c', 'a']]])(
  'only what is in the way is given up, and the rest is left in the order of ids: %j',
  (ids) => {
    const at = (id: string): CommitmentFact => {
      // The flight of the base sheet is 18:00 to 19:00.
      const [from, to] = id === 'b' ? ['18', '19'] : ['20', '21'];
      return {
        ...COMMITMENT,
        ...{ id, from: `2027-03-01T${from}:00:00Z`, to: `2027-03-01T${to}:00:00Z` },
      };
    };
    const sheet = baseSheet();
    sheet.people['member-1']!.commitments = known(ids.map(at), sheet.knownAt);
    const { status, remedies } = findingOf('calendar.member_free', sheet);
    expect(status).toBe('short');
    expect(remedies.map(({ effects }) => effects)).toEqual([
      [{ op: 'set', fact: 'member.commitments', value: [at('a'), at('c')] }],
    ]);
  },
);
