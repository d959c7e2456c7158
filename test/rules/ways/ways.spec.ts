/** Ways to yes in scenes a member knows. The people, the aircraft and the places are invented. */
import { known, unknownFact } from '../../../src/rules/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import * as records from '../../../src/rules/workshop/records.js';
import { acts, atNight, lose, plain, policyWith, scene, ways, withPassengers } from './scene.js';

/** Leaving passengers at home is out of the question, and the club asks for no landings in the model. */
const nobodyStays = { 'club.cost.points.passenger-left': 100_000, 'club.model-recency.landings': 0 };

describe('one act may put several rules right', () => {
  test('one flight at night with an instructor: the review, and three full-stop landings that count for three rules', () => {
    const found = ways(
      scene(11, (sheet) => {
        atNight(sheet);
        withPassengers(sheet);
        lose(sheet, 'log', 'reviews');
      }),
    );
    const way = plain(found)!;
    expect(acts(way).sort()).toEqual(['fly-flight-review', 'fly-landings-night']);
    expect(way.sorties).toEqual([
      expect.objectContaining({
        dual: true,
        night: true,
        says: 'One flight with an instructor at night for 2 of the steps.',
      }),
    ]);
    const landings = way.steps.find(({ act }) => act === 'fly-landings-night')!;
    // 14 CFR 61.57(a) and (b), and the club's own recency in the model.
    expect(landings.cures).toEqual([
      'recency.passengers.day',
      'recency.passengers.night',
      'club.model_recency',
    ]);
    expect(way.answer).toBe('yes-with-conditions');
    // 0.4 h there and back, 1 h of review and 0.6 h of landings at 150 + 60; an hour of the instructor on the ground.
    expect(way.cost).toEqual({ hours: 3, money: 480, clubMoney: 0, days: 3, points: 0, total: 570 });
  });

  test('a medical puts right whatever hangs on it', () => {
    const way = plain(ways(scene(10, (sheet) => lose(sheet, 'medicals'))))!;
    expect(way.steps).toEqual([
      expect.objectContaining({
        act: 'pass-medical-exam',
        by: 'medical-examiner',
        person: 'member-1',
        startsOn: '2027-03-07T18:00:00Z',
        cures: ['medical.certificate'],
      }),
    ]);
  });
});

describe('order comes of judging each practice flight', () => {
  test('landings on your own wait for the medical; the steps say which opens which', () => {
    // An instructor at 1000 an hour, so that nobody is taken along for it.
    const policy = policyWith({ ...nobodyStays, 'club.cost.instructor-hour': 1000 });
    const found = ways(
      scene(12, (sheet) => {
        withPassengers(sheet);
        lose(sheet, 'log', 'medicals');
      }),
      { policy },
    );
    const way = plain(found)!;
    expect(acts(way)).toEqual(['pass-medical-exam', 'fly-landings-day']);
    expect(way.steps[0]!.opens).toEqual(['fly-landings-day']);
    expect(way.steps[1]!.startsOn >= way.steps[0]!.doneBy).toBe(true);
    expect(way.sorties[0]).toMatchObject({ dual: false, says: 'A flight on your own.' });
  });

  test('where there is no time left after the medical, they are flown before it with an instructor', () => {
    const found = ways(
      scene(7, (sheet) => {
        withPassengers(sheet);
        lose(sheet, 'log', 'medicals');
      }),
      { policy: policyWith(nobodyStays) },
    );
    const way = plain(found)!;
    expect(way.sorties[0]).toMatchObject({ dual: true, departs: '2027-03-03T18:00:00Z' });
    expect(way.steps.at(-1)!.act).toBe('pass-medical-exam');
  });

  test('the inspection comes before the flight that needs the aircraft', () => {
    const way = plain(
      ways(
        scene(12, (sheet) => {
          withPassengers(sheet);
          lose(sheet, 'log');
          sheet.aircraft.items = known(
            (sheet.aircraft.items.known ? sheet.aircraft.items.value : []).map((item) =>
              item.kind === 'annual' ? { ...item, lastDoneOn: '2025-01-01' } : item,
            ),
            sheet.knownAt,
          );
        }),
      ),
    )!;
    expect(acts(way)).toEqual(['sign-annual', expect.stringMatching(/^fly-landings/)]);
    expect(way.steps[0]!.opens).toHaveLength(1);
    expect(way.cost.clubMoney).toBe(1600);
  });
});

describe('a safety pilot is crew under the hood alone', () => {
  /** Instrument tasks of seven calendar months ago, and no landings since. */
  const rustyOnInstruments = scene(12, (sheet) => {
    withPassengers(sheet);
    sheet.flight = { ...sheet.flight, flightRules: 'IFR' };
    const tasks = { approaches: 6, holding: true, interceptTrack: true };
    const flown = { ...records.LOG, on: '2026-08-20', departedAt: '2026-08-20T18:00:00Z', ...tasks };
    const rated = { ...records.CERTIFICATE, instrument: ['airplane' as const] };
    sheet.people['member-1']!.log = known([flown], sheet.knownAt);
    sheet.people['member-1']!.certificates = known([rated], sheet.knownAt);
  });
  const lone = { ...nobodyStays, 'club.cost.points.plan-changed': 100_000 };

  test('so landings on your own are another flight than instrument tasks (14 CFR 61.57(a), 91.109(c))', () => {
    const found = ways(rustyOnInstruments, {
      policy: policyWith({ ...lone, 'club.cost.instructor-hour': 1000 }),
    });
    const way = plain(found)!;
    expect(acts(way).sort()).toEqual(['fly-instrument-tasks', 'fly-landings-day']);
    expect(way.sorties.map(({ dual }) => dual)).toEqual([false, false]);
    expect(way.sorties.map(({ says }) => says).sort()).toEqual([
      'A flight on your own.',
      'A flight with a safety pilot.',
    ]);
  });

  test('and with an instructor who costs nothing, a check and the landings are one', () => {
    const found = ways(rustyOnInstruments, {
      policy: policyWith({ ...lone, 'club.cost.instructor-hour': 0 }),
    });
    const way = plain(found)!;
    expect(acts(way).sort()).toEqual(['fly-landings-day', 'pass-instrument-proficiency-check']);
    expect(way.sorties).toEqual([expect.objectContaining({ dual: true })]);
  });
});

describe('changing the flight is an act too', () => {
  test('another aircraft, with what it needs there', () => {
    const other = { ...baseSheet().aircraft, id: 'aircraft-2' };
    const found = ways(
      scene(3, (sheet) => {
        sheet.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' as const }], sheet.knownAt);
      }),
      { alternatives: [{ aircraft: other, route: null }], policy: policyWith({ 'club.lead.repair': 9 }) },
    );
    expect(plain(found)).toMatchObject({
      steps: [{ act: 'take-other-aircraft', title: 'Take NX101B (Harrow Lark 160) instead.' }],
      flight: { aircraftId: 'aircraft-2' },
      cost: { points: 25, total: 25 },
    });
  });

  test('leaving passengers at home, landing before the night, or flying the landings: different kinds of way', () => {
    const found = ways(
      scene(11, (sheet) => {
        atNight(sheet);
        withPassengers(sheet);
      }),
    );
    expect(found.plans.map(acts)).toEqual([
      ['land-before-night'],
      ['depart-after-night'],
      ['fly-landings-night'],
    ]);
    // An instructor still to be found would cost more than a plain yes, and is not worth showing.
    expect(found.plans.map(({ rests }) => rests)).toEqual([[], [], []]);
  });

  test('an instructor who is named makes it a yes; one still to be found does not, and says so', () => {
    const sheet = scene(1, (one) => lose(one, 'medicals'));
    const open = ways(sheet);
    expect(open.plans).toEqual([
      expect.objectContaining({ answer: 'dual-only', rests: ['instructor'], restSays: [expect.any(String)] }),
    ]);
    const named = ways(sheet, { instructors: [sheet.people['instructor-1']!] });
    expect(plain(named)).toMatchObject({
      steps: [{ title: 'Take Iris Instructor along as instructor and pilot in command.' }],
      answer: 'yes-with-conditions',
    });
    const unfit = { ...sheet.people['instructor-1']!, medicals: known([], sheet.knownAt) };
    expect(plain(ways(sheet, { instructors: [unfit] }))).toBeUndefined();
  });

  test('a lesson that waits for an instructor is answered by naming one', () => {
    const sheet = scene(3, (one) => {
      one.flight = { ...one.flight, purpose: 'dual', personsOnBoard: 2 };
    });
    const none = ways(sheet);
    expect(none.answer).toBe('dual-only');
    expect(none.none?.says).toBe(
      'The flight waits for an instructor: name one who may give the instruction.',
    );
    const found = ways(sheet, { instructors: [sheet.people['instructor-1']!] });
    expect(acts(found.plans[0])).toEqual(['name-instructor']);
    expect(found.plans[0]!.answer).toMatch(/^yes/);
  });

  test('another time, when somebody else has the aircraft', () => {
    const way = plain(
      ways(
        scene(3, (sheet) => {
          sheet.aircraft.reservations = known(
            [{ ...records.RESERVATION, from: '2027-03-03T17:00:00Z', to: '2027-03-03T18:30:00Z' }],
            sheet.knownAt,
          );
        }),
      ),
    )!;
    expect(way.steps[0]).toMatchObject({
      act: 'leave-at-another-time',
      title: 'Leave at 2027-03-03 11:30 and be back by 2027-03-03 12:30.',
      cost: { points: 7.5 },
    });
    expect(way.flight).toMatchObject({ departs: '2027-03-03T18:30:00Z' });
  });
});

describe("an officer's leave", () => {
  const damaged = scene(1, (sheet) => lose(sheet, 'checkouts'));

  test('is a way where only club rules are left, and is flagged', () => {
    const found = ways(scene(5, (sheet) => lose(sheet, 'checkouts')));
    const way = found.plans.find(({ rests }) => rests.includes('officer'))!;
    expect(way).toMatchObject({
      overrides: ['club.model_checkout', 'club.annual_check'],
      cost: { points: 100, hours: 0.5, days: 1 },
    });
    expect(way.steps[0]!.title).toBe(
      'Ask an officer to set aside, with a reason: Checkout in the model; Club check.',
    );
  });

  test('is none where the club forbids it, nor for what the law asks', () => {
    const forbidden = ways(damaged, { policy: policyWith({ 'club.override.allowed': false }) });
    expect(forbidden.plans.some(({ rests }) => rests.includes('officer'))).toBe(false);
    const law = ways(scene(5, (sheet) => lose(sheet, 'medicals')));
    expect(law.plans.some(({ rests }) => rests.includes('officer'))).toBe(false);
  });
});

describe('time', () => {
  test('says plainly when there is no way before the flight, and when there would be one', () => {
    const sheet = scene(2, (one) => {
      lose(one, 'medicals');
      one.flight = { ...one.flight, purpose: 'ferry-to-inspection' };
    });
    const found = ways(sheet);
    expect(found.plans).toEqual([]);
    expect(found.none).toEqual({
      says: 'There is no way to yes before the flight.',
      because: [
        {
          rule: 'medical.certificate',
          title: expect.any(String),
          says: expect.any(String),
          why: '"Pass a medical examination for class 3" could be done by 2027-03-07 11:00 at the earliest, after the flight begins.',
        },
      ],
    });
    expect(found.later).toMatchObject({
      departs: '2027-03-07T18:00:00Z',
      says: 'For the same flight on 2027-03-07 there is a way.',
    });
    expect(acts(found.later!.way)).toEqual(['pass-medical-exam']);
  });

  test('what nothing cures is told as that', () => {
    const found = ways(
      scene(4, (sheet) => {
        sheet.people['member-1']!.certificates = known(
          [{ ...records.CERTIFICATE, suspensions: [{ id: 's', from: '2027-02-01', to: null }] }],
          sheet.knownAt,
        );
        sheet.flight = { ...sheet.flight, purpose: 'ferry-to-inspection' };
      }),
    );
    expect(found.plans).toEqual([]);
    expect(found.none!.because).toEqual([
      expect.objectContaining({
        rule: 'certificate.category_class',
        why: 'Nothing that can be done is known to put it right.',
      }),
    ]);
    expect(found.later).toBeNull();
  });

  test('what waits for something that comes too late is told with what it waits for', () => {
    const found = ways(
      scene(5, (sheet) => {
        lose(sheet, 'reviews');
        sheet.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' as const }], sheet.knownAt);
        sheet.flight = { ...sheet.flight, purpose: 'ferry-to-inspection' };
      }),
      { policy: policyWith({ 'club.lead.repair': 9 }) },
    );
    expect(found.plans).toEqual([]);
    expect(found.none!.because.map(({ rule, why }) => [rule, why])).toEqual([
      [
        'review.flight_24_months',
        '"Fly a flight review with an instructor" cannot be done as long as this stands in the way: Open squawks.',
      ],
      ['squawk.grounding', expect.stringContaining('could be done by 2027-03-09 11:00 at the earliest')],
    ]);
    // The review is flown once the aircraft is mended, so the day of the mending is a day too early.
    expect(found.later!.departs).toBe('2027-03-10T18:00:00Z');
  });

  test('what is not on record is told as missing', () => {
    const found = ways(
      scene(4, (sheet) => {
        sheet.people['member-1']!.birthDate = unknownFact('the birth date is not on record');
        sheet.flight = { ...sheet.flight, purpose: 'ferry-to-inspection' };
      }),
    );
    expect(found.none!.because[0]).toMatchObject({
      rule: 'medical.certificate',
      says: 'Cannot tell: the birth date is not on record.',
    });
  });

  test('a flight far ahead is practised for shortly before it, not today', () => {
    // 14 CFR 61.57(a): within the preceding 90 days.
    const policy = policyWith({ ...nobodyStays, 'club.booking-lead.max-days': 400 });
    const way = plain(
      ways(
        scene(120, (sheet) => {
          withPassengers(sheet);
          lose(sheet, 'log');
        }),
        { policy },
      ),
    )!;
    expect(acts(way)).toEqual(['fly-landings-day']);
    expect(way.steps[0]!.startsOn.slice(0, 10) > '2027-04-01').toBe(true);
  });

  test('nothing starts before the instant from which it can', () => {
    const sheet = scene(10, (one) => lose(one, 'medicals'));
    const way = plain(ways(sheet, { from: '2027-03-02T18:00:00Z' }))!;
    expect(way.steps[0]!.startsOn).toBe('2027-03-09T18:00:00Z');
  });
});

describe('papers and records', () => {
  const waiting = scene(4, (sheet) => {
    lose(sheet, 'medicals');
    sheet.people['member-1']!.unverified = known([records.UNVERIFIED], sheet.knownAt);
  });

  test('a paper that waits for an officer is a way, once what it shows is known', () => {
    const verified = {
      'member-1': { ...waiting.people['member-1']!, medicals: baseSheet().people['member-1']!.medicals },
    };
    expect(acts(plain(ways(waiting)))).toEqual([]);
    const way = plain(ways(waiting, { verified }))!;
    expect(way.steps).toEqual([
      expect.objectContaining({
        act: 'have-papers-verified',
        by: 'officer',
        title:
          'Show the papers to a safety officer, who verifies them: medical certificate of class 3 of 2027-02-01.',
      }),
    ]);
  });

  test('no way touches a record that whoever asks may not read', () => {
    const sheet = scene(20, (one) => {
      one.flight = {
        ...one.flight,
        purpose: 'dual',
        personsOnBoard: 2,
        instructorId: 'instructor-1',
      };
      one.people['instructor-1']!.medicals = known([], one.knownAt);
    });
    expect(acts(plain(ways(sheet)))).toEqual(['pass-medical-exam']);
    const closed = ways(sheet, { closedRecords: ['instructor-1'] });
    expect(closed.plans.flatMap(({ steps }) => steps.map(({ person }) => person))).not.toContain(
      'instructor-1',
    );
  });
});

test('a flight that needs no way has none', () => {
  const found = ways(scene(3, () => undefined));
  expect(found).toMatchObject({
    answer: 'yes-with-conditions',
    plans: [],
    none: null,
    later: null,
    bound: null,
  });
});
