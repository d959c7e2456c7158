/** Acts tried on the expressions of a club's rule: how many landings, on which day, and what a hypothesis may not look at. */
import {
  decideCrew,
  judgeRule,
  known,
  rulesOfClub,
  toSeconds,
  type FactSheet,
  type Remedy,
} from '../../../src/rules/index.js';
import { BOOK, finding, flown, flying, memberWith, NOTHING, rule } from './scene.js';

const stale = memberWith(flying([flown('2026-06-01')]));
const remedies = (requirement: string, sheet: FactSheet = stale): Remedy[] => {
  const found = finding([rule({ requirement })], sheet);
  expect(found.status).toBe('short');
  return found.remedies;
};
const landings = (all: readonly Remedy[]) =>
  all
    .filter(({ act }) => act === 'fly-landings-model')
    .flatMap(({ effects }) => effects)
    .map((effect) => (effect.op === 'append' ? effect.value : null) as { landings: number; on: string });
const later = (departs: string, sheet: FactSheet = stale): FactSheet => ({
  ...sheet,
  flight: { ...sheet.flight, departs: `${departs}T18:00:00Z`, arrives: `${departs}T19:00:00Z` },
});

test.each([
  ...[1, 2, 3, 4, 5, 6].map((needed) => [needed, needed] as const),
  ...([
    [7, 8],
    [8, 8],
    [9, 10],
    [10, 10],
  ] as const),
])('where %i landings are asked for, %i are offered', (needed, offered) => {
  expect(
    landings(remedies(`pilot.landingsInModelInDays(30) >= ${needed}`)).map((one) => one.landings),
  ).toEqual([offered]);
});
test('more than ten are not', () => {
  expect(remedies('pilot.landingsInModelInDays(30) >= 11')).toEqual([]);
});

test('the flight with an instructor is told whole', () => {
  const [remedy] = remedies('pilot.landingsInModelInDays(30) >= 1');
  expect(remedy).toMatchObject({
    ...{ act: 'fly-landings-model', by: 'instructor' },
    title: 'Fly 1 landing in the Harrow Lark 160 with an instructor.',
    effects: [
      {
        ...{ op: 'append', fact: 'pic.log' },
        value: {
          ...{ id: 'planned:fly-landings-model', on: '2027-02-28', departedAt: '2027-02-28T18:00:00Z' },
          ...{ role: 'dual-received', landings: 1, takeoffs: 1, nightTenths: 0, modelId: 'model-lark' },
        },
      },
    ],
  });
});

// What is known is of 2027-02-28; a flight counts for five days here.
test.each([
  ['2027-03-01', '2027-02-28'],
  ['2027-03-07', '2027-03-07'],
  ['2027-03-12', '2027-03-07'],
  ['2027-03-14', '2027-03-14'],
  ['2027-03-28', '2027-03-28'],
  ['2027-04-25', '2027-04-25'],
  ['2027-05-23', '2027-05-23'],
  ['2027-06-20', '2027-06-20'],
])('for a flight on %s the landings are flown on %s', (departs, on) => {
  const sheet = later(departs);
  expect(landings(remedies('pilot.landingsInModelInDays(5) >= 1', sheet)).map((one) => one.on)).toEqual([on]);
});

test('none that would be flown on the day of the flight, but after it', () => {
  const sheet = later('2027-03-07');
  const early = { ...sheet, flight: { ...sheet.flight, departs: '2027-03-07T17:00:00Z' } };
  expect(remedies('pilot.landingsInModelInDays(5) >= 1', early)).toEqual([]);
});

test('two landings are told as several', () => {
  expect(remedies('pilot.landingsInModelInDays(30) >= 2').map(({ title }) => title)).toEqual([
    'Fly 2 landings in the Harrow Lark 160 with an instructor.',
  ]);
});

test('the flight stays as it was asked for but for what an act changes', () => {
  const asks = (what: string): string => `pilot.ageYears > 99 || (${what})`;
  const acts = (what: string) => remedies(asks(what)).map(({ act }) => act);
  expect(acts("pilot.landingsInModelInDays(30) >= 1 && flight.rules == 'VFR'")).toEqual([
    'fly-landings-model',
  ]);
  expect(acts("flight.instruction && flight.purpose == 'dual' && flight.rules == 'VFR'")).toEqual([
    'fly-with-instructor',
  ]);
  // Of the pilot nothing is known any more; of the aircraft everything still is.
  expect(acts('flight.instruction && aircraft.seats > 1')).toEqual(['fly-with-instructor']);
});

describe("a second pilot whom the club's policy takes for crew", () => {
  const sheet = memberWith(flying([flown('2026-06-01')]), { purpose: 'passengers', personsOnBoard: 3 });
  const two = (personsOnBoard: number): FactSheet => ({
    ...sheet,
    flight: { ...sheet.flight, secondPilotId: 'member-2', personsOnBoard },
  });
  const acts = (requirement: string, of: FactSheet, secondPilotIsPassenger = false) => {
    const [one] = rulesOfClub([rule({ requirement })]);
    const crew = decideCrew(of.flight, { secondPilotIsPassenger });
    const judged = judgeRule(one!, of, { rules: [one!], book: BOOK }, crew, toSeconds(of.flight.departs));
    expect(judged.finding.status).toBe('short');
    return judged.finding.remedies.map(({ act }) => act);
  };
  test('stays crew where the act leaves the flight alone', () => {
    expect(acts('flight.passengers == 0 && pilot.landingsInModelInDays(30) >= 1', two(2))).toEqual([
      'fly-landings-model',
    ]);
  });
  test('stays crew on a flight that is changed, so that the passengers alone are left behind', () => {
    expect(acts('flight.passengers == 0', two(3))).toEqual(['leave-passengers']);
  });
  test('and where the policy takes them for a passenger stays behind with the others', () => {
    expect(acts('flight.passengers == 0 && flight.personsOnBoard == 1', two(3), true)).toEqual([
      'leave-passengers',
    ]);
    expect(acts('flight.passengers == 0 && flight.personsOnBoard == 2', two(3), true)).toEqual([]);
  });
});

test('none where the log or the type is not known, or the rule does not look at the log', () => {
  expect(remedies('pilot.ageYears > 99')).toEqual([]);
  // Landings in whatever model: the rule does not say that it reads of the aircraft, so no flight in it can be planned.
  expect(remedies('pilot.landingsInDays(30) >= 1')).toEqual([]);
  const bare: FactSheet = { ...stale, aircraft: { ...stale.aircraft, type: NOTHING } };
  const asks = 'flight.forHire && pilot.landingsInModelInDays(30) >= 1';
  expect(remedies(asks, bare)).toEqual([]);
});

test('none that an act leaves unknown: with an instructor still to be named, nothing is known of the pilot', () => {
  const asks = 'pilot.ageYears > 99 || (flight.instruction && pilot.ageYears > 0)';
  expect(remedies(asks)).toEqual([]);
  expect(remedies('pilot.ageYears > 99 || flight.instruction').map(({ act }) => act)).toEqual([
    'fly-with-instructor',
  ]);
});

test('the easiest first: landings, then an instructor, then no passengers', () => {
  const sheet = memberWith(flying([flown('2026-06-01')]), { purpose: 'passengers', personsOnBoard: 3 });
  const asks = 'pilot.landingsInModelInDays(30) >= 1 || flight.instruction || flight.passengers == 0';
  expect(remedies(asks, sheet).map(({ act }) => act)).toEqual([
    ...['fly-landings-model', 'fly-with-instructor', 'leave-passengers'],
  ]);
});

test('what was flown before counts beside what is planned', () => {
  const sheet = memberWith(flying([flown('2027-02-20', { landings: 3 })]));
  expect(
    landings(remedies('pilot.landingsInModelInDays(30) >= 5', sheet)).map((one) => one.landings),
  ).toEqual([2]);
  const other = memberWith({ ...flying([]), log: known([], sheet.knownAt) });
  expect(
    landings(remedies('pilot.landingsInModelInDays(30) >= 2', other)).map((one) => one.landings),
  ).toEqual([2]);
});
