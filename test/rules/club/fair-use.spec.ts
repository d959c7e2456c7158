/** What the case tables of fair use cannot say: what is left when bookings are given back, and seconds. Club handbook, section 4.4. */
import {
  decideCrew,
  judgeRule,
  known,
  rulesetFor,
  startingPolicy,
  toSeconds,
  type CommitmentFact,
} from '../../../src/rules/index.js';
import { asksNothing, giveBack } from '../../../src/rules/packs/club/fair-use/open.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { COMMITMENT } from '../../../src/rules/workshop/records.js';

test('a flight of which nothing is said of planning is asked about', () => {
  expect(asksNothing({ purpose: 'solo' }, 1)).toBeNull();
  expect(asksNothing({ purpose: 'solo', planned: true }, 1)).toBe('planned');
});

const booked = (id: string, from: string, to: string, of: Partial<CommitmentFact> = {}): CommitmentFact => ({
  ...COMMITMENT,
  ...{ id, from, to },
  ...of,
});

test.each([[['a', 'b', 'c']], [['c', 'b', 'a']], [['b', 'a', 'c']]])(
  'what is not given back is left, in the order of numbers: %j',
  (ids) => {
    const all = ids.map((id) => booked(id, '2027-03-05T18:00:00Z', '2027-03-05T20:00:00Z'));
    const { effects } = giveBack(
      all,
      all.filter(({ id }) => id === 'b'),
      'America/Denver',
    );
    expect(effects).toEqual([
      {
        op: 'set',
        fact: 'member.commitments',
        value: ['a', 'c'].map((id) => all.find((one) => one.id === id)),
      },
    ]);
  },
);

test('a flight a second longer than all that is allowed is cured by giving nothing back', () => {
  const policy = startingPolicy();
  policy.values = policy.values.map((one) =>
    one.id === 'club.fair-use.hours-ahead' ? { ...one, value: 1 } : one,
  );
  const ruleset = rulesetFor('US', policy);
  const rule = ruleset.rules.find(({ id }) => id === 'club.fair_use.hours_ahead')!;
  const acts = (seconds: number) => {
    const sheet = baseSheet();
    sheet.flight.arrives = `2027-03-01T19:00:0${seconds}Z`;
    sheet.people['member-1']!.commitments = known(
      [booked('a', '2027-03-05T18:00:00Z', '2027-03-05T18:50:00Z')],
      sheet.knownAt,
    );
    const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
    const { finding } = judgeRule(rule, sheet, ruleset, crew, toSeconds(sheet.flight.departs));
    return [finding.status, (finding.remedies ?? []).map(({ act }) => act)];
  };
  expect(acts(0)).toEqual(['short', ['give-up-commitment']]);
  expect(acts(1)).toEqual(['short', []]);
});
