/** The facts as they would be after an act, and as they will be at a time: what changes, and that nothing else does. */
import { known, toInstant, toSeconds, unknownFact, type FactSheet } from '../../../src/rules/index.js';
import { applyChange, applyDone, changedBy } from '../../../src/rules/ways/apply.js';
import { catalogue } from '../../../src/rules/ways/acts.js';
import { practiceBlockers, practiceSlot, sheetAt } from '../../../src/rules/ways/calendar.js';
import {
  inTheWay,
  practiceFlight,
  practising,
  secondsOf,
  type Practice,
} from '../../../src/rules/ways/practice.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import type { Change, Done, Sortie, State } from '../../../src/rules/ways/state.js';
import { nameOf } from '../../../src/rules/ways/verdicts.js';
import { worldOf } from '../../../src/rules/ways/world.js';
import { decideCrew } from '../../../src/rules/engine/crew.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import * as records from '../../../src/rules/workshop/records.js';
import { lose, POLICY, scene } from './scene.js';

const sheet = scene(5, () => undefined);
const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
const as: Done['as'] = { crew, flight: null };
const member = (of: FactSheet, id = 'member-1') => of.people[id]!;
const appended: Extract<Change, { is: 'effects' }> = {
  is: 'effects',
  effects: [{ op: 'append', fact: 'pic.log', value: { ...records.LOG, id: 'new' } }],
};
const sortie: Sortie = {
  dual: true,
  night: false,
  tenths: 12,
  flights: 2,
  from: toSeconds('2027-03-02T18:00:00Z'),
  to: toSeconds('2027-03-02T19:12:00Z'),
  person: 'member-1',
};
const done = (of: Partial<Done>): Done => ({
  offer: {
    act: 'x',
    title: 'X.',
    by: 'member',
    entries: [catalogue('fly-checkout')!],
    change: appended,
    askers: [],
    person: null,
    notBefore: 0,
    meaning: 'x',
  },
  change: appended,
  as,
  from: 0,
  to: 0,
  bill: { hours: 0, money: 0, clubMoney: 0, points: 0 },
  cures: [],
  sortie: null,
  books: false,
  mark: 'x',
  ...of,
});

describe('after a change', () => {
  test("an officer's leave changes no fact", () => {
    expect(applyChange(sheet, { is: 'leave' }, as)).toBe(sheet);
    expect(changedBy(sheet, { change: { is: 'leave' }, as, sortie: null })).toEqual(new Set());
  });

  test('effects on the flight wanted', () => {
    const after = applyChange(sheet, appended, as);
    const { log } = member(after);
    expect(log.known && log.value.map(({ id }) => id)).toEqual(['log-1', 'new']);
    expect(after.flight).toBe(sheet.flight);
    expect(changedBy(sheet, { change: appended, as, sortie: null })).toEqual(new Set(['member-1.log']));
    const request: typeof appended = {
      is: 'effects',
      effects: [{ op: 'flight', fields: { usesVor: true } }],
    };
    expect(applyChange(sheet, request, as).flight).toEqual({ ...sheet.flight, usesVor: true });
    expect(changedBy(sheet, { change: request, as, sortie: null })).toBe('all');
    const both: Change = { is: 'effects', effects: [...appended.effects, ...request.effects] };
    expect(changedBy(sheet, { change: both, as, sortie: null })).toBe('all');
  });

  test('effects of a practice flight are of who flies it, and the flight wanted stays', () => {
    const flight = { ...sheet.flight, memberId: 'member-2' };
    const practised = { crew: { ...crew, picId: null }, flight };
    const change: Change = {
      is: 'effects',
      effects: [
        { op: 'append', fact: 'member.log', value: { ...records.LOG, id: 'new' } },
        { op: 'append', fact: 'aircraft.permits', value: { id: 'permit' } },
      ],
    };
    const after = applyChange(sheet, change, practised);
    const { log } = member(after, 'member-2');
    expect(log.known && log.value.map(({ id }) => id)).toEqual(['log-1', 'new']);
    expect(member(after)).toBe(member(sheet));
    expect(after.flight).toBe(sheet.flight);
    expect(changedBy(sheet, { change, as: practised, sortie: null })).toEqual(
      new Set(['member-2.log', 'aircraft.permits']),
    );
    expect(changedBy(sheet, { change: appended, as, sortie: { ...sortie, person: 'member-2' } })).toEqual(
      new Set(['member-1.log', 'aircraft.reservations', 'member-2.commitments']),
    );
  });

  test('facts are named by whose they are; those of the aircraft are nobody’s, a lesson or not', () => {
    const taught = {
      ...sheet,
      flight: { ...sheet.flight, purpose: 'dual' as const, instructorId: 'instructor-1' },
    };
    const crewOf = decideCrew(taught.flight, { secondPilotIsPassenger: true });
    const name = (key: Parameters<typeof nameOf>[2]): string => nameOf(taught, crewOf, key);
    expect([name('pic.log'), name('member.log'), name('aircraft.squawks')]).toEqual([
      'instructor-1.log',
      'member-1.log',
      'aircraft.squawks',
    ]);
  });

  test('another aircraft, another person, another field of the flight', () => {
    const other = { ...sheet.aircraft, id: 'aircraft-2' };
    const taken = applyChange(sheet, { is: 'parts', aircraft: other }, as);
    expect(taken).toEqual({ ...sheet, aircraft: other });
    const guest = { ...member(sheet), id: 'member-9' };
    const named = applyChange(
      sheet,
      { is: 'parts', people: [guest], flight: { instructorId: 'member-9' } },
      as,
    );
    expect(named).toEqual({
      ...sheet,
      people: { ...sheet.people, 'member-9': guest },
      flight: { ...sheet.flight, instructorId: 'member-9' },
    });
    expect(sheet.people['member-9']).toBeUndefined();
    expect(changedBy(sheet, { change: { is: 'parts', aircraft: other }, as, sortie: null })).toBe('all');
  });
});

describe('papers that were waiting', () => {
  const now = baseSheet();
  member(now).medicals = known([{ ...records.MEDICAL, id: 'kept', class: 3 }], now.knownAt);
  member(now).reviews = unknownFact('not on record');
  member(now).unverified = known([records.UNVERIFIED], now.knownAt);
  const verified = {
    ...member(baseSheet()),
    medicals: known(
      [
        { ...records.MEDICAL, id: 'kept', class: 1 as const },
        { ...records.MEDICAL, id: 'new', class: 2 as const },
      ],
      now.knownAt,
    ),
    endorsements: unknownFact('not on record'),
    log: known([], now.knownAt),
  };
  const change: Change = { is: 'parts', papers: verified };
  const after = member(applyChange(now, change, as));

  test('are added to those that count; what counts already stays as it is', () => {
    expect(after.medicals).toEqual(
      known(
        [
          { ...records.MEDICAL, id: 'kept', class: 3 },
          { ...records.MEDICAL, id: 'new', class: 2 },
        ],
        now.knownAt,
        'planned',
      ),
    );
    // What was not known is as the papers have it, and the other way about.
    expect(after.reviews).toEqual(verified.reviews);
    expect(after.endorsements).toEqual(verified.endorsements);
    expect(after.unverified).toEqual(known([], now.knownAt, 'planned'));
    // The log is no paper.
    expect(after.log).toEqual(member(now).log);
    expect(changedBy(now, { change, as, sortie: null })).toEqual(
      new Set(
        [
          'certificates',
          'instructor',
          'medicals',
          'basicMed',
          'reviews',
          'endorsements',
          'ratings',
          'unverified',
        ].map((subject) => `member-1.${subject}`),
      ),
    );
  });

  test('of before ratings were kept, and of somebody not on the sheet', () => {
    const { ratings: _, ...without } = verified;
    expect(member(applyChange(now, { is: 'parts', papers: without }, as)).ratings).toEqual(
      member(now).ratings,
    );
    const older = structuredClone(now);
    delete member(older).ratings;
    expect(member(applyChange(older, change, as)).ratings).toEqual(verified.ratings);
    const guest = { ...verified, id: 'member-9' };
    expect(applyChange(now, { is: 'parts', papers: guest }, as).people['member-9']).toBe(guest);
  });
});

describe('a practice flight keeps aircraft and person', () => {
  test('with the hours it will put on the meter', () => {
    const after = applyDone(sheet, done({ sortie, books: true }));
    const id = `planned:practice-${sortie.from}`;
    expect(after.aircraft.reservations).toEqual(
      known(
        [
          {
            id,
            kind: 'flight',
            from: '2027-03-02T18:00:00Z',
            to: '2027-03-02T19:12:00Z',
            holder: 'Robin Member',
            expectedTenths: 24,
            purpose: 'dual',
            forHire: false,
          },
        ],
        sheet.knownAt,
        'planned',
      ),
    );
    expect(member(after).commitments).toEqual(
      known(
        [
          {
            id,
            from: '2027-03-02T18:00:00Z',
            to: '2027-03-02T19:12:00Z',
            role: 'pilot',
            what: 'a practice flight',
          },
        ],
        sheet.knownAt,
        'planned',
      ),
    );
    const alone = applyDone(sheet, done({ sortie: { ...sortie, dual: false }, books: true }));
    expect(alone.aircraft.reservations.known && alone.aircraft.reservations.value[0]!.purpose).toBe('solo');
  });

  test('once, and beside what is in the calendars', () => {
    expect(applyDone(sheet, done({ sortie, books: false })).aircraft).toBe(sheet.aircraft);
    expect(applyDone(sheet, done({ sortie: null, books: true })).aircraft).toBe(sheet.aircraft);
    const busy = baseSheet();
    busy.aircraft.reservations = known([records.RESERVATION], busy.knownAt);
    member(busy).commitments = known([records.COMMITMENT], busy.knownAt);
    const after = applyDone(busy, done({ sortie, books: true }));
    expect(after.aircraft.reservations.known && after.aircraft.reservations.value).toHaveLength(2);
    const { commitments } = member(after);
    expect(commitments.known && commitments.value).toHaveLength(2);
  });

  test('a calendar that is not on record stays so, and nobody unknown gets one', () => {
    const blank = baseSheet();
    blank.aircraft.reservations = unknownFact('not on record');
    member(blank).commitments = unknownFact('not on record');
    const after = applyDone(blank, done({ sortie, books: true }));
    expect(after.aircraft.reservations).toEqual(unknownFact('not on record'));
    expect(member(after).commitments).toEqual(unknownFact('not on record'));
    const guest = applyDone(sheet, done({ sortie: { ...sortie, person: 'member-9' }, books: true }));
    expect(Object.keys(guest.people)).toEqual(Object.keys(sheet.people));
    expect(guest.aircraft.reservations.known && guest.aircraft.reservations.value[0]!.holder).toBe('');
  });
});

const practice = (of: Partial<Practice> = {}): Practice => ({
  person: 'member-1',
  dual: false,
  night: false,
  tenths: 12,
  transponder: true,
  alsoMet: [],
  ...of,
});

describe('a practice flight', () => {
  test('is a flight from home and back by visual rules, with nobody else aboard but an instructor', () => {
    const at = toSeconds('2027-03-02T18:00:00Z');
    const flight = {
      departs: '2027-03-02T18:00:00Z',
      arrives: '2027-03-02T19:12:00Z',
      purpose: 'solo',
      flightRules: 'VFR',
      personsOnBoard: 1,
      memberId: 'member-1',
      instructorId: null,
      secondPilotId: null,
      actingPilotId: null,
      secondPilotRequired: false,
      forHire: false,
      route: [sheet.flight.route[0], sheet.flight.route[0]],
      plannedTenths: 12,
      airspace: null,
      maxAltitudeFtMsl: null,
      maxSpeedKias: null,
      usesVor: false,
      usesTransponder: true,
      overWaterBeyondGlide: false,
      weather: null,
      loading: null,
    };
    expect(secondsOf(practice())).toBe(4320);
    expect(practiceFlight(sheet, practice(), at)).toEqual(flight);
    expect(
      practiceFlight(sheet, practice({ dual: true, person: 'member-2', transponder: null }), at),
    ).toEqual({
      ...flight,
      purpose: 'dual',
      personsOnBoard: 2,
      memberId: 'member-2',
      usesTransponder: null,
    });
    const nowhere = { ...sheet, flight: { ...sheet.flight, route: [] } };
    expect(practiceFlight(nowhere, practice(), at).route).toEqual([]);
    expect(practising(sheet, practice(), at)).toEqual({ ...sheet, flight });
    const away = structuredClone(sheet);
    away.flight.route[1] = { ...away.flight.route[1]!, id: 'away' };
    expect(practiceFlight(away, practice(), at).route).toEqual(flight.route);
  });

  const { ruleset } = worldOf({ sheet, policy: POLICY });
  const inWay = (of: FactSheet, how: Partial<Practice> = {}): string[] =>
    inTheWay(of, ruleset, practice(how), toSeconds('2027-03-02T18:00:00Z')).map(
      ({ rule, practice: { dual } }) => `${ruleset.rules[rule]!.id}${dual ? ' dual' : ''}`,
    );
  const unfit = scene(5, (one) => lose(one, 'medicals'));

  test('waits for what law and club ask of who flies and of the aircraft', () => {
    expect(inWay(sheet)).toEqual([]);
    expect(inWay(unfit)).toEqual(['medical.certificate']);
    // With an instructor in command nothing is asked of the learner, unless the act says so: a test does.
    expect(inWay(unfit, { dual: true })).toEqual([]);
    expect(inWay(unfit, { dual: true, alsoMet: ['medical.'] })).toEqual(['medical.certificate']);
    expect(inWay(unfit, { dual: true, alsoMet: ['review.'] })).toEqual([]);
    expect(inWay(unfit, { dual: true, alsoMet: ['review.', 'medical.'] })).toEqual(['medical.certificate']);
    const [also] = inTheWay(
      unfit,
      ruleset,
      practice({ dual: true, alsoMet: ['medical.'] }),
      toSeconds('2027-03-02T18:00:00Z'),
    );
    expect(also!.practice).toEqual(practice());
    const unchecked = scene(5, (one) => lose(one, 'checkouts'));
    expect(inWay(unchecked)).toEqual(['club.model_checkout', 'club.annual_check']);
    const grounded = scene(5, (one) => {
      one.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' as const }], one.knownAt);
    });
    expect(inWay(grounded, { dual: true })).toEqual(['squawk.grounding dual']);
    const both = scene(5, (one) => {
      lose(one, 'medicals');
      one.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' as const }], one.knownAt);
    });
    expect(inWay(both, { dual: true, alsoMet: ['medical.'] })).toEqual([
      'squawk.grounding dual',
      'medical.certificate',
    ]);
  });

  test('how the club takes bookings says nothing of it', () => {
    // An hour ahead, and the club takes bookings from some hours on.
    const strict = worldOf({
      sheet,
      policy: {
        values: [
          ...POLICY.values.filter(({ id }) => id !== 'club.booking-lead.max-days'),
          { id: 'club.booking-lead.max-days', from: '2000-01-01', value: 1, reference: 'spec' },
        ],
      },
    }).ruleset;
    const ahead = toSeconds('2027-03-20T18:00:00Z');
    expect(inTheWay(sheet, strict, practice(), ahead).map(({ rule }) => strict.rules[rule]!.id)).toEqual([]);
  });

  describe('in time', () => {
    const world = worldOf({ sheet, policy: POLICY });
    const root = rootOf(world);
    const slot = (of: FactSheet, at: string, how: Partial<Practice> = {}): string | null => {
      const found = practiceSlot({ ...root, sheet: of }, practice(how), toSeconds(at));
      return found === null ? null : toInstant(found);
    };
    const from = '2027-03-02T17:00:00Z';
    const to = '2027-03-02T18:30:00Z';

    test('leaves when aircraft and person are both free, in its light', () => {
      expect(slot(sheet, from)).toBe(from);
      const booked = structuredClone(sheet);
      booked.aircraft.reservations = known([{ ...records.RESERVATION, from, to }], sheet.knownAt);
      expect(slot(booked, from)).toBe(to);
      const busy = structuredClone(sheet);
      member(busy).commitments = known([{ ...records.COMMITMENT, from, to }], sheet.knownAt);
      expect(slot(busy, from)).toBe(to);
      expect(slot(busy, from, { person: 'member-2' })).toBe(from);
      expect(slot(busy, from, { person: 'member-9' })).toBe(from);
      expect(slot(sheet, from, { night: true })).toBe('2027-03-03T01:55:00Z');
      // From where it begins, wherever the flight wanted goes: fifteen degrees east the night is an hour earlier.
      const away = structuredClone(sheet);
      away.flight.route[1] = { ...away.flight.route[1]!, longitudeDeg: -90 };
      expect(slot(away, from, { night: true })).toBe('2027-03-03T01:55:00Z');
      const blank = structuredClone(booked);
      blank.aircraft.reservations = unknownFact('not on record');
      member(blank).commitments = unknownFact('not on record');
      expect(slot(blank, from)).toBe(from);
    });

    test('only what is done by then has happened', () => {
      const on = (to: string, id: string): Done =>
        done({
          to: toSeconds(to),
          mark: id,
          change: { is: 'effects', effects: [{ op: 'append', fact: 'pic.log', value: { id } }] },
        });
      const acts = [on('2027-03-02T12:00:00Z', 'a'), on('2027-03-04T12:00:00Z', 'b')];
      const middle: State = { ...root, parent: root, done: acts.slice(0, 1) };
      const last: State = { ...root, parent: middle, done: acts, sheet: acts.reduce(applyDone, sheet) };
      const logAt = (at: string): string[] => {
        const { log } = member(sheetAt(last, toSeconds(at)));
        return log.known ? log.value.map(({ id }) => id) : [];
      };
      expect(logAt('2027-03-02T11:59:59Z')).toEqual(['log-1']);
      expect(logAt('2027-03-02T12:00:00Z')).toEqual(['log-1', 'a']);
      expect(logAt('2027-03-04T11:59:59Z')).toEqual(['log-1', 'a']);
      expect(logAt('2027-03-04T12:00:00Z')).toEqual(['log-1', 'a', 'b']);
      expect(sheetAt(last, toSeconds('2027-03-04T12:00:00Z'))).toBe(last.sheet);
    });

    test('what stands in its way is remembered by the time, the flight and what is done by then', () => {
      const shared = worldOf({ sheet: unfit, policy: POLICY });
      const start = rootOf(shared);
      const cured = done({
        to: toSeconds('2027-03-03T12:00:00Z'),
        change: { is: 'effects', effects: [{ op: 'append', fact: 'pic.medicals', value: records.MEDICAL }] },
      });
      const later: State = { ...start, parent: start, done: [cured], sheet: applyDone(unfit, cured) };
      const blocked = (state: State, at: string, how: Partial<Practice> = {}): number =>
        practiceBlockers(shared, state, practice(how), toSeconds(at)).length;
      expect(blocked(start, '2027-03-04T18:00:00Z')).toBe(1);
      expect(blocked(later, '2027-03-04T18:00:00Z')).toBe(0);
      expect(blocked(later, '2027-03-02T18:00:00Z')).toBe(1);
      expect(blocked(start, '2027-03-04T18:00:00Z', { dual: true })).toBe(0);
      expect(shared.practised.size).toBe(4);
      expect(blocked(start, '2027-03-04T18:00:00Z')).toBe(1);
      expect(shared.practised.size).toBe(4);
    });
  });
});
