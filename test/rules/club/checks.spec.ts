/** What the case tables of the club's checks cannot say: ids of what is planned, whole words, records of before likeness was kept. Club handbook, chapter 3. */
import {
  judgeRule,
  known,
  rulesetFor,
  startingPolicy,
  toSeconds,
  decideCrew,
  type FactSheet,
} from '../../../src/rules/index.js';
import { Moment } from '../../../src/rules/engine/moment.js';
import { plannedDay } from '../../../src/rules/packs/club/checks/planned-day.js';
import { signOffRemedy } from '../../../src/rules/packs/club/checks/sign-offs.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { CHECKOUT, LOG } from '../../../src/rules/workshop/records.js';

const KNOWN_AT = '2027-02-28T18:00:00Z';
const DAY = 86_400;
const ruleset = rulesetFor('US', startingPolicy());
/** A flight that begins so many days after the facts were gathered, at the same time of day. */
const moment = (daysAhead: number, days = 0) => {
  const knownAt = toSeconds(KNOWN_AT);
  return new Moment({
    ...{ departs: knownAt + daysAhead * DAY, durationSeconds: days * DAY, knownAt },
    zone: 'America/Denver',
  });
};

describe('when an act that lasts for ten days is planned for', () => {
  test.each([
    ['a flight of the day', 0, 0, 0],
    ['ten days later, which it still lasts to', 10, 0, 0],
    ['a day later than that: half its days later', 11, 0, 5],
    ['as long as that does', 15, 0, 5],
    ['a day later again', 16, 0, 10],
    ['a flight of as many days as it lasts, that begins on the day planned', 5, 10, 5],
    ['a flight longer than it lasts', 5, 11, null],
  ])('%s', (_, ahead, length, planned) => {
    expect(plannedDay(moment(ahead, length), 10)).toBe(planned);
  });
  test('what lasts for a day is tried day by day', () => {
    expect(plannedDay(moment(3), 1)).toBe(2);
  });
});

describe('a sign-off still to be made', () => {
  const fields = {
    kind: 'model',
    modelId: 'model-lark',
    aircraftId: null,
    equipmentGroup: null,
    condition: null,
  } as const;
  const planned = (of: Parameters<typeof signOffRemedy>[0]['fields'], daysAhead?: number) =>
    signOffRemedy({
      act: 'fly',
      title: 'Fly.',
      moment: moment(3),
      fields: of,
      ...(daysAhead === undefined ? {} : { daysAhead }),
    });

  test('one, today, for its own model alone', () => {
    expect(planned(fields).effects).toEqual([
      {
        op: 'append',
        fact: 'pic.checkouts',
        value: {
          ...fields,
          ...{
            id: 'planned:fly',
            on: '2027-02-28',
            expiresOn: null,
            signedById: 'planned',
            alsoModelIds: [],
          },
        },
      },
    ]);
  });
  test('several each with its own id, some days later', () => {
    const { effects } = planned([fields, { ...fields, modelId: 'model-wren' }, fields], 2);
    expect(effects.map((effect) => (effect.op === 'append' ? effect.value : null))).toMatchObject([
      { id: 'planned:fly', on: '2027-03-02' },
      { id: 'planned:fly:2', modelId: 'model-wren' },
      { id: 'planned:fly:3' },
    ]);
  });
});

/** The rule on the example flight, with some facts of the member replaced. */
function found(id: string, facts: Partial<FactSheet['people'][string]>) {
  const sheet = baseSheet();
  Object.assign(sheet.people['member-1']!, facts);
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  const rule = ruleset.rules.find((one) => one.id === id)!;
  return judgeRule(rule, sheet, ruleset, crew, toSeconds(sheet.flight.departs)).finding;
}

test('one landing is said of one', () => {
  const flown = (id: string, landings: number) => ({ ...LOG, id, landings });
  const { counted } = found('club.model_recency', {
    log: known([flown('b', 1), flown('a', 2)], KNOWN_AT),
  });
  expect(counted.map(({ what }) => what)).toEqual(['1 landing', '2 landings']);
});

test('a sign-off of before likeness was kept counts for its own model alone', () => {
  const { alsoModelIds: _none, ...before } = CHECKOUT;
  const of = (modelId: string) =>
    found('club.model_checkout', { checkouts: known([{ ...before, modelId }], KNOWN_AT) }).branch;
  expect(of('model-lark')).toBe('checked-out');
  expect(of('model-wren')).toBe(found('club.model_checkout', { checkouts: known([], KNOWN_AT) }).branch);
});
