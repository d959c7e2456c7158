/** The club's rules as rules of the engine: versions, errors, cost, messages, evidence, ways to keep them. */
import {
  applyRemedy,
  blocks,
  compileUndated,
  decideCrew,
  judge,
  known,
  rulesOfClub,
  toInstant,
  toSeconds,
  type FactSheet,
} from '../../../src/rules/index.js';
import { startingPolicy } from '../../../src/rules/packs/club/starting-policy.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { finding, flown, flying, judged, KNOWN_AT, memberWith, NOTHING, rule, status } from './scene.js';

const AT = toSeconds(baseSheet().flight.departs);
const day = (date: string): number => toSeconds(`${date}T18:00:00Z`);

test('says what was met, what was not, and who it binds', () => {
  const asks = rule({
    title: 'Recent flying',
    requirement: 'pilot.flightsInDays(30) >= 2',
    message:
      'You flew {pilot.flightsInDays(30)} of 2 flights in the last 30 days ({pilot.hoursInDays(30)} h).',
    document: 'Handbook, section 4.2',
  });
  const short = finding([asks], memberWith(flying([flown('2027-02-20'), flown('2027-01-02')])));
  expect(short).toMatchObject({
    ...{ rule: 'club.own.test', version: 1, title: 'Recent flying', weight: 'club', overridable: true },
    ...{ binds: 'pilot', status: 'short', branch: 'not-kept', reads: ['pic.log'] },
    says: 'You flew 1 of 2 flights in the last 30 days (1 h).',
    citation: { text: 'Handbook, section 4.2', status: 'club paper' },
    counted: [{ id: 'log-2027-02-20', on: '2027-02-20', what: 'a flight' }],
  });
  const kept = finding([asks], memberWith(flying([flown('2027-02-20'), flown('2027-02-10')])));
  expect(kept).toMatchObject({ status: 'met', says: 'What the club asks is met: Recent flying.' });
  expect(kept.counted.map(({ id }) => id)).toEqual(['log-2027-02-20', 'log-2027-02-10']);
});

test.each([
  ['flight.passengers == 0', 'flight'],
  ['aircraft.tailwheel', 'aircraft'],
  ['member.standing == "good"', 'member'],
  ['aircraft.tailwheel || instructor.ageYears > 30', 'instructor'],
  ['pilot.ageYears > 30 || member.standing == "good"', 'pilot'],
])('%s binds the %s', (requirement, binds) => {
  expect(rulesOfClub([rule({ requirement })])[0]!.binds).toBe(binds);
});

test('advice never blocks; a rule of the club does, and an officer may set it aside', () => {
  const requirement = 'flight.forHire';
  expect(blocks(finding({ requirement, weight: 'advice' }))).toBe(false);
  expect(blocks(finding({ requirement }))).toBe(true);
  const policy = { ...startingPolicy(), rules: [rule({ requirement })] };
  const { answer } = judge(baseSheet(), startingPolicy());
  expect(answer).toBe('yes-with-conditions');
  expect(judge(baseSheet(), policy).answer).toBe('ask-officer');
  expect(judge(baseSheet(), { ...policy, rules: [rule({ requirement, weight: 'advice' })] }).answer).toBe(
    answer,
  );
});

test('what a message cannot fill in it says to be missing, and the verdict stands', () => {
  const sheet = memberWith({ birthDate: NOTHING });
  const asks = {
    requirement: 'flight.forHire',
    message: 'Aged {pilot.ageYears}, reviewed {string(pilot.flightReviewOn)}.',
  };
  expect(finding(asks, sheet)).toMatchObject({
    status: 'short',
    says: 'Aged (not known), reviewed 2026-01-10.',
  });
});

describe('versions', () => {
  const versions = [
    rule({
      version: 2,
      requirement: 'flight.passengers == 0',
      from: '2027-03-05',
      to: null,
      document: 'Minutes of 1 March',
    }),
    rule({ version: 1, requirement: 'flight.forHire', from: '2027-02-01', to: '2027-03-05' }),
  ];

  test('the one in force on the day of the flight judges; outside them the rule is not applicable', () => {
    const on = (date: string) => judged(versions, baseSheet(), day(date));
    expect(on('2027-01-31').finding).toMatchObject({ status: 'not-applicable', branch: 'not-in-force' });
    expect(on('2027-02-01').finding).toMatchObject({ status: 'short', version: 1 });
    expect(on('2027-03-04').finding).toMatchObject({ status: 'short', version: 1 });
    expect(on('2027-03-05').finding).toMatchObject({
      ...{ status: 'met', version: 2 },
      citation: { text: 'Minutes of 1 March' },
    });
    expect(toInstant(on('2027-03-01').nextChange!)).toBe('2027-03-05T07:00:00Z');
  });

  test('a version alone, undated, holds on every day', () => {
    const [only] = [compileUndated(versions[1]!)];
    expect(only!.bodies).toMatchObject([{ version: 1, from: null, to: null }]);
    expect(compileUndated(versions[1]!)).toBe(only);
  });

  test('decisions carry the versions, and the same policy gives the same bytes', () => {
    const policy = { ...startingPolicy(), rules: versions };
    const one = judge(baseSheet(), policy);
    const two = judge(baseSheet(), JSON.parse(JSON.stringify(policy)) as typeof policy);
    expect(JSON.stringify(two)).toBe(JSON.stringify(one));
    expect(one.digest).not.toBe(judge(baseSheet(), startingPolicy()).digest);
  });
});

describe('what cannot be judged is an error, never a pass and never silence', () => {
  test('a text that no longer fits what rules may say', () => {
    const found = finding({ requirement: 'flight.noSuchThing == 1 || true' });
    expect(found).toMatchObject({ status: 'error', rule: 'club.own.test' });
    expect(found.says).toContain("'flight' has no 'noSuchThing'");
    expect(blocks(found)).toBe(true);
  });

  test('one version that no longer fits leaves the others as they are', () => {
    const versions = [
      rule({ requirement: 'flight.noSuchThing', from: '2027-02-01', to: '2027-03-05' }),
      rule({ version: 2, from: '2027-03-05' }),
    ];
    expect(judged(versions, baseSheet(), day('2027-03-01')).finding.status).toBe('error');
    expect(judged(versions, baseSheet(), day('2027-03-06')).finding.status).toBe('met');
  });

  test('versions that overlap, as the database never lets them', () => {
    const found = finding([rule(), rule({ version: 2, from: '2021-01-01' })]);
    expect(found).toMatchObject({ status: 'error' });
    expect(found.says).toContain('overlap');
  });

  test('a code that no rule can bear', () => {
    expect(finding([rule({ code: 'Not a code' })])).toMatchObject({ status: 'error', rule: 'Not a code' });
  });

  test('a value that fails, on either side of a logical operator that does not settle it', () => {
    // A birth date that is none: the calendar refuses it.
    const sheet = memberWith({ birthDate: known('not-a-date', KNOWN_AT) });
    for (const requirement of [
      'pilot.ageYears > 0',
      'pilot.ageYears > 0 || flight.forHire',
      'flight.forHire || pilot.ageYears > 0',
      'pilot.ageYears > 0 && flight.alone',
    ])
      expect(status(requirement, sheet)).toBe('error');
    expect(status('pilot.ageYears > 0 || flight.alone', sheet)).toBe('met');
  });

  test('a failure and something not known: the failure is told, whichever comes first', () => {
    const sheet = memberWith({ birthDate: known('not-a-date', KNOWN_AT), standing: NOTHING });
    const [fails, missing] = ['pilot.ageYears > 0', 'member.standing == "good"'];
    for (const requirement of [
      `${fails} || ${missing}`,
      `${missing} || ${fails}`,
      `${fails} && ${missing}`,
      `${missing} && ${fails}`,
    ])
      expect(status(requirement, sheet)).toBe('error');
  });

  test('arithmetic that runs over', () => {
    const large = '9007199254740991';
    expect(status(`${large} * ${large} > 0 || flight.forHire`)).toBe('error');
  });
});

describe('cost while judging', () => {
  const many = (count: number) =>
    Array.from({ length: count }, (_none, at) => flown('2027-02-01', { id: `log-${at}` }));

  test('an ordinary log costs next to nothing; one beyond all measure is an error, whatever short-circuits', () => {
    const ordinary = memberWith(flying(many(3000)));
    expect(status('pilot.landingsInDays(90) >= 3', ordinary)).toBe('met');
    const vast = memberWith({
      log: { known: true, value: new Array(200_001).fill(flown('2027-02-01')), lastKnownAt: KNOWN_AT },
    });
    expect(status('pilot.landingsInDays(90) >= 3', vast)).toBe('error');
    expect(status('pilot.landingsInDays(90) >= 3 || true', vast)).toBe('error');
    expect(
      finding({ requirement: 'true', appliesWhen: 'pilot.landingsInDays(9) > 0 && false' }, vast).status,
    ).toBe('error');
  });

  test('a list out of the facts may be so long and no longer', () => {
    const endorsements = (count: number) =>
      memberWith({
        certificates: known(
          [
            {
              ...(baseSheet().people['member-1']!.certificates as { value: object[] }).value[0]!,
              typeRatings: Array.from({ length: count }, (_none, at) => `T${at}`),
            } as never,
          ],
          KNOWN_AT,
        ),
      });
    expect(status('pilot.ratings.exists(one, one == "type T5")', endorsements(99))).toBe('met');
    expect(status('pilot.ratings.exists(one, one == "type T5")', endorsements(100))).toBe('error');
  });
});

describe('ways to keep the rule', () => {
  const cures = (requirement: string, sheet: FactSheet, appliesWhen = 'true') => {
    const asks = [rule({ requirement, appliesWhen })];
    const found = finding(asks, sheet);
    expect(found.status).toBe('short');
    const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
    return found.remedies.map((remedy) => {
      const after = finding(asks, applyRemedy(sheet, crew, remedy));
      expect([remedy.act, after.status]).toEqual([
        remedy.act,
        expect.stringMatching(/^(met|not-applicable)$/),
      ]);
      return `${remedy.act}: ${remedy.title}`;
    });
  };

  test('passengers are left where that serves', () => {
    const two = memberWith({}, { purpose: 'passengers', personsOnBoard: 3 });
    expect(cures('flight.passengers == 0', two)).toEqual(['leave-passengers: Fly without passengers.']);
    expect(cures('flight.passengers <= 1', two)).toEqual(['leave-passengers: Fly without passengers.']);
  });

  test('an instructor comes along where the rule then asks nothing', () => {
    const stale = memberWith(flying([flown('2026-10-01')]));
    expect(cures('flight.daysSince(pilot.lastFlightOn) <= 60', stale, '!flight.instruction')).toEqual([
      'fly-with-instructor: Take an instructor along on this flight.',
    ]);
  });

  test('as few landings as serve are flown, late enough to count', () => {
    const stale = memberWith(flying([flown('2027-02-20', { landings: 2 })]));
    expect(cures('pilot.landingsInModelInDays(30) >= 5', stale)).toEqual([
      'fly-landings-model: Fly 3 landings in the Harrow Lark 160 with an instructor.',
    ]);
    const later = {
      ...stale,
      flight: { ...stale.flight, departs: '2027-05-01T18:00:00Z', arrives: '2027-05-01T19:00:00Z' },
    };
    expect(cures('pilot.landingsInModelInDays(30) >= 1', later)).toEqual([
      'fly-landings-model: Fly 1 landing in the Harrow Lark 160 with an instructor.',
    ]);
  });

  test('nothing is offered that does not serve', () => {
    expect(cures('pilot.ageYears >= 99', memberWith({}))).toEqual([]);
    expect(
      cures('flight.passengers == 0 && aircraft.tailwheel', memberWith({}, { personsOnBoard: 2 })),
    ).toEqual([]);
  });
});

test('time is asked through the moment: the verdict is told to change where it does', () => {
  const sheet = memberWith(flying([flown('2027-02-01')]));
  const { finding: found, nextChange } = judged({ requirement: 'pilot.flightsInDays(30) >= 1' }, sheet, AT);
  expect(found.status).toBe('met');
  // 2027-02-01 + 30 days = 2027-03-03; the flight, an hour long, must be over by the end of that day in Denver.
  expect(toInstant(nextChange!)).toBe('2027-03-04T06:00:00Z');
});
