/** What the search thinks of by itself: another aircraft, an instructor, papers that wait, an officer's leave, another time. */
import {
  known,
  toInstant,
  toSeconds,
  unknownFact,
  type FactSheet,
  type PersonFacts,
} from '../../../src/rules/index.js';
import type { AircraftFacts } from '../../../src/rules/facts/aircraft.js';
import { catalogue, partsOf } from '../../../src/rules/ways/acts.js';
import { onlyOverridable } from '../../../src/rules/ways/advance.js';
import { otherAircraft } from '../../../src/rules/ways/own/aircraft.js';
import { officersLeave, waitingPapers } from '../../../src/rules/ways/own/office.js';
import { instructors, withoutPassengers } from '../../../src/rules/ways/own/people.js';
import { ownRequests } from '../../../src/rules/ways/own/requests.js';
import { anotherTime } from '../../../src/rules/ways/own/times.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import type { Offer, State } from '../../../src/rules/ways/state.js';
import type { WaysQuestion } from '../../../src/rules/ways/types.js';
import { successors } from '../../../src/rules/ways/successors.js';
import { worldOf, type World } from '../../../src/rules/ways/world.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import * as records from '../../../src/rules/workshop/records.js';
import { lose, policyWith, POLICY, scene, withPassengers } from './scene.js';
import { taken } from './toy.js';

const ask = (
  what: (world: World, state: State) => readonly Offer[],
  sheet: FactSheet,
  more: Partial<WaysQuestion> & { aim?: World['aim'] } = {},
): readonly Offer[] => {
  const { aim = 'plain', ...question } = more;
  const world = { ...worldOf({ sheet, policy: POLICY, ...question }), aim };
  return what(world, rootOf(world));
};
const titles = (offers: readonly Offer[]): string[] => offers.map(({ title }) => title);

test('acts that put several things right are made of what they touch, each once and in the same order', () => {
  expect(catalogue('keep-within-anything')).toBe(catalogue('land-before-night'));
  expect(catalogue('anything-keep-within-')).toBeUndefined();
  const solo = catalogue('get-endorsement-solo');
  const medical = catalogue('pass-medical-exam');
  expect(partsOf('keep-within-x', ['pic.medicals', 'pic.endorsements', 'pic.medicals'], catalogue)).toEqual([
    solo,
    medical,
  ]);
  expect(partsOf('keep-within-x', ['pic.basicMed', 'pic.ratings'], catalogue)).toEqual([
    catalogue('complete-basicmed'),
    catalogue('get-night-rating'),
  ]);
  expect(partsOf('keep-within-x', ['pic.log'], catalogue)).toEqual([catalogue('ask-officer')]);
  expect(partsOf('keep-within-x', [], catalogue)).toEqual([catalogue('land-before-night')]);
  expect(partsOf('pass-medical-exam', ['pic.basicMed'], catalogue)).toEqual([medical]);
  expect(partsOf('x-keep-within-', ['pic.medicals'], catalogue)).toEqual([catalogue('ask-officer')]);
});

describe('another aircraft', () => {
  const grounding = (of: AircraftFacts): AircraftFacts => ({
    ...of,
    squawks: known([{ ...records.SQUAWK, state: 'grounding' as const }], '2027-02-28T18:00:00Z'),
  });
  const base = baseSheet().aircraft;
  const one = (
    id: string,
    registration: string,
    change: Partial<AircraftFacts> = {},
    modelId = 'model-lark',
  ) => {
    const type = base.type.known
      ? { ...base.type, value: { ...base.type.value, registration, modelId } }
      : base.type;
    return { aircraft: { ...base, id, type, ...change }, route: null };
  };
  const sheet = scene(3, (of) => {
    of.aircraft = grounding(of.aircraft);
    lose(of, 'medicals');
  });
  const found = (...alternatives: NonNullable<WaysQuestion['alternatives']>): string[] =>
    titles(ask(otherAircraft, sheet, { alternatives }));

  test('is one that something in the way does not stop, whatever else is left', () => {
    expect(ask(otherAircraft, sheet)).toEqual([]);
    expect(found(one('aircraft-2', 'NX2'))).toEqual(['Take NX2 (Harrow Lark 160) instead.']);
    expect(found(one('aircraft-1', 'NX2'))).toEqual([]);
    expect(found(one('aircraft-2', 'NX2', { squawks: grounding(base).squawks }))).toEqual([]);
    expect(found(one('aircraft-2', 'NX2', { type: unknownFact('not on record') }))).toEqual([]);
  });

  test('of those that fare alike the same model, then the first by registration, then by id', () => {
    const lark = one('aircraft-2', 'NX3');
    const other = one('aircraft-3', 'NX2', {}, 'model-other');
    // Checked out in neither, in a club that asks for no landings in the model.
    const policy = policyWith({ 'club.model-recency.landings': 0 });
    const unchecked = structuredClone(sheet);
    lose(unchecked, 'checkouts');
    for (const alternatives of [
      [other, lark],
      [lark, other],
    ])
      expect(titles(ask(otherAircraft, unchecked, { alternatives, policy }))).toEqual([
        'Take NX3 (Harrow Lark 160) instead.',
      ]);
    expect(found(lark, one('aircraft-3', 'NX2'))).toEqual(['Take NX2 (Harrow Lark 160) instead.']);
    expect(found(one('aircraft-3', 'NX2'), lark)).toEqual(['Take NX2 (Harrow Lark 160) instead.']);
    const twins = [one('aircraft-9', 'NX2'), one('aircraft-8', 'NX2')];
    const [twin] = ask(otherAircraft, sheet, { alternatives: twins });
    expect(twin!.change).toMatchObject({ is: 'parts', aircraft: { id: 'aircraft-8' }, flight: {} });
    // One that fares otherwise is another choice.
    const worse = one('aircraft-4', 'NX1', { items: unknownFact('not on record') });
    expect(found(lark, worse)).toEqual([
      'Take NX1 (Harrow Lark 160) instead.',
      'Take NX3 (Harrow Lark 160) instead.',
    ]);
    const unknown = scene(3, (of) => {
      of.aircraft = { ...grounding(of.aircraft), type: unknownFact('not on record') };
    });
    const both = [one('aircraft-3', 'NX2', {}, 'model-other'), lark];
    expect(titles(ask(otherAircraft, unknown, { alternatives: both }))[0]).toBe(
      'Take NX2 (Harrow Lark 160) instead.',
    );
  });

  test('four at most', () => {
    const changes: Partial<AircraftFacts>[] = [
      { items: unknownFact('x') },
      { equipment: unknownFact('x') },
      { items: unknownFact('x'), equipment: unknownFact('x') },
      { use: unknownFact('x') },
      { use: unknownFact('x'), equipment: unknownFact('x') },
      {},
    ];
    const offered = found(
      ...changes.map((change, index) => one(`aircraft-${index + 2}`, `NX${index}`, change)),
    );
    expect(offered).toHaveLength(4);
    expect(offered[0]).toContain('NX0');
  });

  test('comes from where it lives', () => {
    const far = { ...sheet.flight.route[0]!, id: 'far', code: 'XQFA' };
    const [offer] = ask(otherAircraft, sheet, {
      alternatives: [{ ...one('aircraft-2', 'NX2'), route: [far, far] }],
    });
    expect(offer).toMatchObject({
      act: 'take-other-aircraft',
      by: 'member',
      askers: [],
      person: null,
      change: { is: 'parts', flight: { route: [far, far] } },
      meaning: 'take-other-aircraft  Take NX2 (Harrow Lark 160) instead.',
    });
  });

  test('is thought of before anything else is changed', () => {
    const alternatives = [one('aircraft-2', 'NX2')];
    const world = worldOf({ sheet, policy: POLICY, alternatives });
    const root = rootOf(world);
    const acts = (state: State): string[] => ownRequests(world, state).map(({ act }) => act);
    expect(acts(root)).toEqual(['take-other-aircraft']);
    expect(acts({ ...root, parent: root, key: 'another' })).toEqual([]);
    expect(ownRequests(world, root)).toBe(ownRequests(world, root));
    // Told beforehand by what it comes to.
    const step = successors(world, root, []).find(({ name }) => name.includes('take-other-aircraft'))!;
    expect(taken(step.take()).key).toBe(step.key);
    // With another aim it is another question.
    expect(ownRequests({ ...world, aim: 'instructor' }, root).map(({ act }) => act)).toEqual([
      'take-other-aircraft',
      'fly-with-instructor',
    ]);
  });
});

describe('an instructor', () => {
  const unfit = scene(5, (of) => lose(of, 'medicals'));
  const iris = baseSheet().people['instructor-1']!;
  const called = (id: string, name: string, change: Partial<PersonFacts> = {}): PersonFacts => ({
    ...iris,
    id,
    name,
    ...change,
  });
  const lesson = (instructorId: string | null): FactSheet =>
    scene(5, (of) => {
      of.flight = { ...of.flight, purpose: 'dual', personsOnBoard: 2, instructorId };
    });

  test('who is named takes a seat and is pilot in command', () => {
    const [offer] = ask(instructors, unfit, { instructors: [iris] });
    expect(offer).toMatchObject({
      act: 'fly-with-instructor',
      title: 'Take Iris Instructor along as instructor and pilot in command.',
      by: 'instructor',
      change: {
        is: 'parts',
        people: [iris],
        flight: {
          purpose: 'dual',
          instructorId: 'instructor-1',
          secondPilotId: null,
          actingPilotId: null,
          secondPilotRequired: false,
          personsOnBoard: 2,
        },
      },
    });
  });

  test('still to be found, only where that is what is looked for', () => {
    expect(ask(instructors, unfit)).toEqual([]);
    const open = ask(instructors, unfit, { aim: 'instructor', instructors: [iris] });
    expect(open).toHaveLength(1);
    expect(open[0]).toMatchObject({
      act: 'fly-with-instructor',
      title: 'Take an instructor along, who acts as pilot in command.',
      by: 'instructor',
      change: {
        is: 'effects',
        effects: [
          {
            op: 'flight',
            fields: {
              purpose: 'dual',
              instructorId: null,
              secondPilotId: null,
              actingPilotId: null,
              secondPilotRequired: false,
              personsOnBoard: 2,
            },
          },
        ],
      },
      meaning: expect.stringMatching(/^fly-with-instructor {2}\[\{"fields":\{"actingPilotId":null/),
    });
  });

  test('for a lesson that waits for one', () => {
    const named = ask(instructors, lesson(null), { instructors: [iris] });
    expect(named).toEqual([
      expect.objectContaining({
        act: 'name-instructor',
        title: 'Name Iris Instructor as the instructor.',
        change: { is: 'parts', people: [iris], flight: { instructorId: 'instructor-1' } },
      }),
    ]);
    expect(ask(instructors, lesson(null), { aim: 'instructor' })).toEqual([]);
    expect(ask(instructors, lesson('instructor-1'), { instructors: [iris] })).toEqual([]);
  });

  test('on flights that may become a lesson only', () => {
    const of = (purpose: FactSheet['flight']['purpose']): number =>
      ask(instructors, { ...unfit, flight: { ...unfit.flight, purpose } }, { instructors: [iris] }).length;
    expect([of('solo'), of('passengers')]).toEqual([1, 1]);
    expect([of('maintenance'), of('ferry-to-inspection')]).toEqual([0, 0]);
  });

  test('in order of name, then of id; three at most; never the member; only whose own papers are in order', () => {
    const people = [
      called('a', 'Cleo'),
      called('b2', 'Bo'),
      called('b1', 'Bo'),
      called('d', 'Dee'),
      called('member-1', 'Ann'),
    ];
    const ids = (list: PersonFacts[], sheet = unfit): unknown[] =>
      ask(instructors, sheet, { instructors: list }).map(
        ({ change }) => change.is === 'parts' && change.flight?.instructorId,
      );
    expect(ids(people)).toEqual(['b1', 'b2', 'a']);
    expect(ids([...people].reverse())).toEqual(['b1', 'b2', 'a']);
    const noMedical = { medicals: known([], unfit.knownAt) };
    expect(ids([called('z', 'Al', noMedical), called('a', 'Cleo')])).toEqual(['a']);
    const noCertificate = { instructor: known([], unfit.knownAt) };
    expect(ids([called('z', 'Al', noCertificate), called('a', 'Cleo')])).toEqual(['a']);
    // What stands in the way of the aircraft is not the instructor's.
    const grounded = scene(5, (of) => {
      of.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' as const }], of.knownAt);
    });
    expect(ids([called('a', 'Cleo')], grounded)).toEqual(['a']);
  });
});

describe('passengers', () => {
  test('may stay at home, where there are any', () => {
    expect(
      ask(
        withoutPassengers,
        scene(5, () => undefined),
      ),
    ).toEqual([]);
    const acts = (aboard: number): string[] =>
      ask(
        withoutPassengers,
        scene(5, (of) => withPassengers(of, aboard)),
      ).map(({ act }) => act);
    expect(acts(2)).toEqual(['leave-passengers']);
    expect(acts(3)).toEqual(['leave-passengers']);
    const [offer] = ask(
      withoutPassengers,
      scene(5, (of) => withPassengers(of, 3)),
    );
    expect(offer!.change).toMatchObject({ is: 'effects', effects: [{ op: 'flight' }] });
  });
});

describe('papers that wait', () => {
  const waiting =
    (papers: { what: string; on: string | null }[], id = 'member-1') =>
    (of: FactSheet): void => {
      of.people[id]!.unverified = known(
        papers.map((paper, index) => ({ ...records.UNVERIFIED, id: `u${index}`, ...paper })),
        of.knownAt,
      );
    };
  const verified = {
    'member-1': baseSheet().people['member-1']!,
    'instructor-1': baseSheet().people['instructor-1']!,
  };
  const two = scene(5, (of) => {
    waiting([
      { what: 'review', on: null },
      { what: 'medical', on: '2027-02-01' },
    ])(of);
    waiting([{ what: 'certificate', on: null }], 'instructor-1')(of);
  });

  test('are one act a person, in words, in order', () => {
    const found = ask(waitingPapers, two, { verified });
    expect(found.map(({ person, title, by, change }) => [person, title, by, change])).toEqual([
      [
        'instructor-1',
        'Show the papers to a safety officer, who verifies them: certificate.',
        'officer',
        { is: 'parts', papers: verified['instructor-1'] },
      ],
      [
        'member-1',
        'Show the papers to a safety officer, who verifies them: medical of 2027-02-01, review.',
        'officer',
        { is: 'parts', papers: verified['member-1'] },
      ],
    ]);
    expect(found[1]!.meaning).toBe(`have-papers-verified member-1 ${found[1]!.title}`);
    const turned = Object.fromEntries(Object.entries(verified).reverse());
    expect(titles(ask(waitingPapers, two, { verified: turned }))).toEqual(titles(found));
  });

  test('none where none wait, where it is not known, where nobody may look, or of somebody not on the flight', () => {
    const none = scene(5, () => undefined);
    expect(ask(waitingPapers, none, { verified })).toEqual([]);
    const unknown = scene(5, (of) => {
      of.people['member-1']!.unverified = unknownFact('not on record');
    });
    expect(ask(waitingPapers, unknown, { verified })).toEqual([]);
    expect(ask(waitingPapers, two)).toEqual([]);
    const closed = ask(waitingPapers, two, { verified, closedRecords: ['member-1'] });
    expect(closed.map(({ person }) => person)).toEqual(['instructor-1']);
    expect(ask(waitingPapers, two, { verified: { 'member-9': verified['member-1'] } })).toEqual([]);
  });
});

describe("an officer's leave", () => {
  const unchecked = scene(5, (of) => lose(of, 'checkouts'));
  const both = scene(5, (of) => lose(of, 'checkouts', 'medicals'));
  test('is asked for where only the club’s rules are left, and the club allows it', () => {
    const [offer] = ask(officersLeave, unchecked, { aim: 'officer' });
    expect(offer).toMatchObject({
      act: 'ask-officer',
      by: 'officer',
      change: { is: 'leave' },
      title: 'Ask an officer to set aside, with a reason: Checkout in the model; Club check.',
    });
    expect(ask(officersLeave, unchecked, { aim: 'plain' })).toEqual([]);
    expect(ask(officersLeave, both, { aim: 'officer' })).toEqual([]);
    expect(
      ask(
        officersLeave,
        scene(5, () => undefined),
        { aim: 'officer' },
      ),
    ).toEqual([]);
    const policy = policyWith({ 'club.override.allowed': false });
    expect(ask(officersLeave, unchecked, { aim: 'officer', policy })).toEqual([]);
  });
  test('of all that is left, or none', () => {
    const of = (sheet: FactSheet): boolean => {
      const world = worldOf({ sheet, policy: POLICY });
      return onlyOverridable(world, rootOf(world));
    };
    expect([of(unchecked), of(both), of(scene(5, () => undefined))]).toEqual([true, false, false]);
  });
});

describe('another time', () => {
  /** The flight is from 18:00 to 19:00 on 3 March; the facts are of 18:00 on 28 February. */
  const at = (time: string, day = '2027-03-03'): string => `${day}T${time}:00Z`;
  const busy = (...spans: [string, string][]) =>
    scene(3, (of) => {
      of.aircraft.reservations = known(
        spans.map(([from, to], index) => ({ ...records.RESERVATION, id: `r${index}`, from, to })),
        of.knownAt,
      );
    });
  const times = (sheet: FactSheet, more: Partial<WaysQuestion> = {}): string[] =>
    ask(anotherTime, sheet, more).map(({ change }) => {
      const [effect] = change.is === 'effects' ? change.effects : [];
      const { departs, arrives } = effect!.op === 'flight' ? effect!.fields : {};
      expect(toSeconds(arrives!) - toSeconds(departs!)).toBe(3600);
      return departs!;
    });

  test('is the nearest at which all are free, later and earlier, on the five minutes', () => {
    expect(times(busy())).toEqual([]);
    expect(times(busy([at('17:30'), at('18:30')]))).toEqual([at('18:30'), at('16:30')]);
    expect(times(busy([at('17:32'), at('18:33')]))).toEqual([at('18:35'), at('16:30')]);
    // Back to back is free.
    expect(times(busy([at('17:30'), at('18:30')], [at('19:30'), at('20:00')]))).toEqual([
      at('18:30'),
      at('16:30'),
    ]);
    expect(times(busy([at('17:30'), at('18:30')], [at('19:29'), at('20:00')]))).toEqual([
      at('20:00'),
      at('16:30'),
    ]);
    expect(times(busy([at('17:30'), at('18:30')], [at('16:00'), at('16:31')]))).toEqual([
      at('18:30'),
      at('15:00'),
    ]);
    expect(times(busy([at('17:30'), at('18:20')], [at('18:10'), at('18:50')]))).toEqual([
      at('18:50'),
      at('16:30'),
    ]);
    expect(times(busy([at('18:10'), at('18:50')], [at('17:30'), at('18:20')]))).toEqual([
      at('18:50'),
      at('16:30'),
    ]);
  });

  test('says so in words', () => {
    const [offer] = ask(anotherTime, busy([at('17:30'), at('18:30')]));
    expect(offer).toMatchObject({
      act: 'leave-at-another-time',
      by: 'member',
      title: 'Leave at 2027-03-03 11:30 and be back by 2027-03-03 12:30.',
    });
  });

  test('is a day off at most, and never before the facts', () => {
    const day = 24 * 3600;
    const departs = toSeconds(at('18:00'));
    const until = (seconds: number) => busy([at('17:30'), toInstant(departs + seconds)]);
    expect(times(until(day))).toEqual([at('18:00', '2027-03-04'), at('16:30')]);
    expect(times(until(day + 300))).toEqual([at('16:30')]);
    const from = (start: string) => times(busy([at('17:30'), at('18:30')]), { from: start });
    expect(from(at('16:30'))).toEqual([at('18:30'), at('16:30')]);
    expect(from(at('16:31'))).toEqual([at('18:30')]);
  });

  test('minds what the member and the instructor are promised to', () => {
    const span = { from: at('17:30'), to: at('18:30') };
    const promised = (id: string) =>
      scene(3, (of) => {
        of.flight = { ...of.flight, purpose: 'dual', personsOnBoard: 2, instructorId: 'instructor-1' };
        of.people[id]!.commitments = known([{ ...records.COMMITMENT, ...span }], of.knownAt);
      });
    expect(times(promised('member-1'))).toEqual([at('18:30'), at('16:30')]);
    expect(times(promised('instructor-1'))).toEqual([at('18:30'), at('16:30')]);
    expect(times(promised('member-2'))).toEqual([]);
    const blank = busy([at('17:30'), at('18:30')]);
    blank.people['member-1']!.commitments = unknownFact('not on record');
    expect(times(blank)).toEqual([at('18:30'), at('16:30')]);
    blank.flight = { ...blank.flight, purpose: 'dual', personsOnBoard: 2, instructorId: 'member-9' };
    expect(times(blank)).toEqual([at('18:30'), at('16:30')]);
    // A calendar that nobody knows is in the way, and no other time is known to be better.
    blank.aircraft.reservations = unknownFact('not on record');
    expect(times(blank)).toEqual([]);
  });

  test('is thought of only where a calendar is in the way, whatever else is', () => {
    const both = busy([at('17:30'), at('18:30')]);
    lose(both, 'medicals');
    expect(times(both)).toEqual([at('18:30'), at('16:30')]);
    expect(times(scene(3, (of) => lose(of, 'medicals')))).toEqual([]);
  });
});
