/**
 * Nothing of a remedy is worked out before somebody wants to see it: most judgements are asked for their verdict alone.
 * Hypothetical acts are placed at the time the facts were gathered, so that asking for it betrays one made too early.
 */
import { crewAt, rulesetFor, startingPolicy, timeAt, toSeconds, type Rule } from '../../src/rules/index.js';
import { Moment } from '../../src/rules/engine/moment.js';
import { runRule } from '../../src/rules/engine/run.js';
import { sheetOf } from '../../src/rules/workshop/sheet-of.js';
import { readTables } from '../workshop/tables.js';

/** Rules that are about that time: how long ahead is booked, and which bookings still lie ahead of the meter's reading. */
const ABOUT_THE_TIME_OF_ASKING = [
  'ad.recurring',
  'club.booking_lead',
  'club.hours_promised',
  'inspection.hours_100',
  'inspection.progressive',
  'item.advice',
  'item.club',
  'permit.special_flight',
];

const RULESETS = {
  US: rulesetFor('US', startingPolicy()),
  EU: rulesetFor('EU', startingPolicy()),
  CA: rulesetFor('CA', startingPolicy()),
};

/** Every case of every table with the rule it is about, as its own pack has it. */
const tries = readTables().flatMap(({ table }) =>
  table.cases.map((one) => {
    const { sheet } = sheetOf(one);
    const ruleset = RULESETS[sheet.jurisdiction];
    return { rule: ruleset.rules.find(({ id }) => id === table.rule)!, one, sheet, ruleset };
  }),
);

let asked = 0;
beforeAll(() => {
  for (const name of ['knowledgeDate', 'hoursFromKnowledge'] as const) {
    const original = Moment.prototype[name] as (...args: unknown[]) => string;
    jest.spyOn(Moment.prototype, name).mockImplementation(function (this: Moment, ...args: unknown[]) {
      asked += 1;
      return original.apply(this, args);
    } as never);
  }
});
afterAll(() => jest.restoreAllMocks());

function outcomeOf({ rule, sheet, ruleset }: (typeof tries)[number]) {
  const departs = toSeconds(sheet.flight.departs);
  const time = timeAt(sheet, departs);
  const { crew } = crewAt(sheet, ruleset, departs, time);
  return runRule(rule as Rule, sheet, ruleset.book, crew, time);
}

test('remedies are offered as functions', () => {
  const eager = tries.filter((one) => {
    const remedies = outcomeOf(one).judgement?.remedies;
    return Array.isArray(remedies) && remedies.length > 0;
  });
  expect(tries.length).toBeGreaterThan(1000);
  expect([...new Set(eager.map(({ rule }) => rule.id))]).toEqual([]);
});

test('and nothing of them is made for a verdict alone', () => {
  const early = tries.filter((one) => {
    asked = 0;
    outcomeOf(one);
    return asked > 0;
  });
  expect([...new Set(early.map(({ rule }) => rule.id))].sort()).toEqual(ABOUT_THE_TIME_OF_ASKING);
});

test('a remedy that is shown does ask', () => {
  asked = 0;
  const offered = tries.flatMap((one) => {
    const remedies = outcomeOf(one).judgement?.remedies;
    return typeof remedies === 'function' ? remedies() : [];
  });
  expect(offered.length).toBeGreaterThan(300);
  expect(asked).toBeGreaterThan(300);
});
