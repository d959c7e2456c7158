/** What acts and changes of the request cost, worked out by hand from prices that are all different. Common practice, no source. */
import { toInstant, toSeconds, type FactSheet } from '../../../src/rules/index.js';
import type { ActEntry } from '../../../src/rules/ways/acts.js';
import { billOf, daysTo, leaveBill, unitBill } from '../../../src/rules/ways/bill.js';
import {
  airBill,
  airHours,
  costOf,
  groundBill,
  minus,
  NOTHING,
  plus,
  totalOf,
} from '../../../src/rules/ways/cost.js';
import { inconvenience, requested } from '../../../src/rules/ways/inconvenience.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import type { Offer, Sortie } from '../../../src/rules/ways/state.js';
import { worldOf } from '../../../src/rules/ways/world.js';
import type { Effect } from '../../../src/rules/engine/remedy.js';
import type { Crew } from '../../../src/rules/engine/crew.js';
import { decideCrew } from '../../../src/rules/engine/crew.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { lose, policyWith, scene } from './scene.js';

const world = worldOf({
  sheet: scene(5, () => undefined),
  policy: policyWith({
    'club.cost.aircraft-hour': 100,
    'club.cost.instructor-hour': 40,
    'club.cost.document': 7,
    'club.cost.annual': 900,
    'club.cost.hours.office': 3,
    'club.cost.hours.landing': 0.5,
    'club.cost.hours.check': 2,
    'club.cost.hours.sortie': 0.5,
    'club.cost.points.officer': 11,
    'club.cost.points.passenger-left': 1000,
    'club.cost.points.hour-moved': 10,
    'club.cost.points.other-aircraft': 100,
    'club.cost.points.instructor': 3,
    'club.cost.points.instructor-to-find': 5,
    'club.cost.points.plan-changed': 8,
    'club.cost.value-of-hour': 2,
    'club.cost.value-of-day': 3,
    'club.cost.value-of-point': 4,
  }),
});
const { prices } = world;
const root = rootOf(world);

const entry = (of: Partial<ActEntry>): ActEntry => ({
  kind: 'paper',
  lead: null,
  air: null,
  ground: null,
  fee: null,
  payer: 'member',
  instructed: false,
  points: null,
  sketch: null,
  ...of,
});
const offer = (of: Partial<Offer>): Offer => ({
  act: 'x',
  title: 'X.',
  by: 'member',
  entries: [entry({})],
  change: { is: 'effects', effects: [{ op: 'set', fact: 'aircraft.use', value: null }] },
  askers: [],
  person: null,
  notBefore: 0,
  meaning: 'x',
  ...of,
});
const append = (value: object): Effect => ({ op: 'append', fact: 'pic.log', value });
const bill = (of: Partial<typeof NOTHING>) => ({ ...NOTHING, ...of });

test('bills are added and taken away part by part', () => {
  const [a, b] = [
    { hours: 5, money: 70, clubMoney: 900, points: 11 },
    { hours: 1, money: 2, clubMoney: 3, points: 4 },
  ];
  expect(plus(a, b)).toEqual({ hours: 6, money: 72, clubMoney: 903, points: 15 });
  expect(minus(a, b)).toEqual({ hours: 4, money: 68, clubMoney: 897, points: 7 });
  expect(NOTHING).toEqual({ hours: 0, money: 0, clubMoney: 0, points: 0 });
  // 70 + 900 + 5 x 2 + 11 x 4, and 6 days at 3.
  expect(totalOf(prices, a)).toBe(1024);
  expect(costOf(a, 6, prices)).toEqual({ ...a, days: 6, total: 1042 });
  // To a hundredth.
  expect(costOf(bill({ hours: 0.1 + 0.2, money: 0.125 }), 0, prices)).toEqual({
    hours: 0.3,
    money: 0.13,
    clubMoney: 0,
    points: 0,
    days: 0,
    total: 0.73,
  });
});

test.each<[string, Partial<ActEntry>, Effect[], number]>([
  ['nothing is flown', {}, [append({ landings: 3, totalTenths: 9 })], 0],
  ['by the task', { air: 'check' }, [append({ landings: 3, totalTenths: 9 })], 2],
  ['as logged, in tenths', { air: 'logged' }, [append({ totalTenths: 9 }), append({ totalTenths: 6 })], 1.5],
  ['as logged, and nothing is', { air: 'logged' }, [], 0],
  [
    'landings as many as one entry holds',
    { air: 'landing' },
    [append({ landings: 2 }), append({ landings: 3 })],
    1.5,
  ],
  ['one landing at least', { air: 'landing' }, [append({ landings: 0 })], 0.5],
  ['one landing, where none is logged', { air: 'landing' }, [append({ other: 3 })], 0.5],
  [
    'what is not added to the log is not flown',
    { air: 'landing' },
    [{ op: 'amend', fact: 'pic.log', id: 'a', fields: { landings: 3 } }],
    0.5,
  ],
])('hours in the air: %s', (_, of, effects, hours) => {
  expect(airHours(entry(of), effects, prices)).toBeCloseTo(hours, 9);
});

test.each<[string, Partial<ActEntry>, object]>([
  ['nothing', {}, {}],
  ['a fee of the member', { fee: 'document' }, { money: 7 }],
  ['a fee of the club', { fee: 'annual', payer: 'club' }, { clubMoney: 900 }],
  ['time', { ground: 'office' }, { hours: 3 }],
  [
    'time of an instructor',
    { ground: 'office', instructed: true, fee: 'document' },
    { hours: 3, money: 127 },
  ],
  ['an instructor without time on the ground', { instructed: true }, {}],
  ['asking others', { points: 'officer' }, { points: 11 }],
])('on the ground: %s', (_, of, wanted) => {
  expect(groundBill(entry(of), prices)).toEqual(bill(wanted));
});

test('in the air', () => {
  expect(airBill(2, false, prices)).toEqual(bill({ hours: 2, money: 200 }));
  expect(airBill(2, true, prices)).toEqual(bill({ hours: 2, money: 280 }));
});

describe('a unit', () => {
  const flown = offer({ entries: [entry({ air: 'check', sketch: { with: 'nobody', light: 'any' } })] });
  const taught = offer({
    entries: [
      entry({
        air: 'check',
        ground: 'office',
        instructed: true,
        sketch: { with: 'instructor', light: 'any' },
      }),
    ],
  });
  const test_ = offer({ entries: [entry({ air: 'check', sketch: { with: 'examiner', light: 'any' } })] });
  const sortie = (of: Partial<Sortie>): Sortie => ({
    dual: false,
    night: false,
    tenths: 10,
    flights: 1,
    from: 0,
    to: 3600,
    person: 'member-1',
    ...of,
  });
  const costs = (of: Offer, at: Partial<Sortie> | null) =>
    billOf(world, { offers: [of], dual: false }, 0, at && sortie(at));

  test('getting there and back is paid for each flight, by the first task', () => {
    expect(costs(flown, {})).toEqual(bill({ hours: 2.5, money: 250 }));
    expect(costs(flown, { flights: 2 })).toEqual(bill({ hours: 3, money: 300 }));
    const unit = { offers: [flown, taught], dual: true };
    expect(billOf(world, unit, 1, sortie({ dual: true }))).toEqual(bill({ hours: 5, money: 400 }));
    // The same in one sum: 2 x 2 + 0.5 in the air at 140, 3 on the ground at 40.
    expect(unitBill(world, unit, sortie({ dual: true }))).toEqual({
      ...NOTHING,
      hours: 7.5,
      money: 750,
    });
  });

  test('an instructor is paid, an examiner has his fee', () => {
    expect(costs(flown, { dual: true }).money).toBe(350);
    expect(costs(test_, { dual: true }).money).toBe(250);
    const andPaper = offer({ entries: [entry({}), ...test_.entries] });
    expect(costs(andPaper, { dual: true }).money).toBe(250);
  });

  test('on the ground it is what the acts ask for; a change of the request is priced by what changes', () => {
    expect(costs(taught, null)).toEqual(bill({ hours: 3, money: 120 }));
    const both = offer({ entries: [entry({ fee: 'document' }), entry({ points: 'officer' })] });
    expect(costs(both, null)).toEqual(bill({ money: 7, points: 11 }));
    const request = offer({
      entries: [entry({ fee: 'document' })],
      change: { is: 'effects', effects: [{ op: 'flight', fields: {} }] },
    });
    expect(costs(request, null)).toEqual(NOTHING);
  });

  test("an officer's leave costs by the rules in the way", () => {
    const damaged = rootOf({
      ...world,
      question: { ...world.question, sheet: scene(5, (one) => lose(one, 'checkouts')) },
    });
    expect(damaged.verdicts.blocking).toHaveLength(2);
    expect(leaveBill(world, damaged, { change: { is: 'leave' } })).toEqual(bill({ points: 22 }));
    expect(leaveBill(world, damaged, { change: offer({}).change })).toEqual(NOTHING);
  });

  test('days are days of the club’s calendar, to the last act', () => {
    // Known at 11:00 in Denver.
    const at = (hours: number) => ({ to: world.start + hours * 3600 });
    expect(daysTo(world, [])).toBe(0);
    expect(daysTo(world, [at(12)])).toBe(0);
    expect(daysTo(world, [at(13)])).toBe(1);
    expect(daysTo(world, [at(61), at(13)])).toBe(3);
  });
});

describe('the inconvenience of a flight that is not the one asked for', () => {
  const crewOf = ({ flight }: FactSheet): Crew => decideCrew(flight, { secondPilotIsPassenger: true });
  const asked = baseSheet();
  const changed = (fields: Partial<FactSheet['flight']>, aircraft = 'aircraft-1', before = asked) => {
    const sheet = {
      ...before,
      aircraft: { ...before.aircraft, id: aircraft },
      flight: Object.keys(fields).length === 0 ? before.flight : { ...before.flight, ...fields },
    };
    return inconvenience({ sheet: before, crew: crewOf(before) }, { sheet, crew: crewOf(sheet) }, prices);
  };
  const later = (hours: number, longer = 0) => ({
    departs: toInstant(toSeconds(asked.flight.departs) + hours * 3600),
    arrives: toInstant(toSeconds(asked.flight.arrives) + (hours + longer) * 3600),
  });
  const three = baseSheet();
  three.flight = { ...three.flight, purpose: 'passengers', personsOnBoard: 4 };
  const lesson = baseSheet();
  lesson.flight = { ...lesson.flight, purpose: 'dual', personsOnBoard: 2, instructorId: 'instructor-1' };

  test('none where nothing changed', () => {
    expect(changed({})).toEqual(NOTHING);
  });
  test('each passenger left', () => {
    expect(changed({ personsOnBoard: 2 }, 'aircraft-1', three)).toEqual(bill({ points: 2000 }));
    // More of them is a change of plan, not a gain.
    expect(changed({ personsOnBoard: 5 }, 'aircraft-1', three)).toEqual(bill({ points: 8 }));
  });
  test('each hour moved, either way, and each hour longer or shorter', () => {
    expect(changed(later(2))).toEqual(bill({ points: 20 }));
    expect(changed(later(-2))).toEqual(bill({ points: 20 }));
    expect(changed(later(0, 1))).toEqual(bill({ points: 10 }));
    expect(changed(later(1, -0.5))).toEqual(bill({ points: 15 }));
    // Three minutes are half a point, and no other change of plan.
    expect(changed(later(0.05))).toEqual(bill({ points: 0.5 }));
  });
  test('another aircraft', () => {
    expect(changed({}, 'aircraft-2')).toEqual(bill({ points: 100 }));
    expect(changed(later(1), 'aircraft-2')).toEqual(bill({ points: 110 }));
  });
  test('any other change', () => {
    expect(changed({ usesVor: true })).toEqual(bill({ points: 8 }));
  });
  test('an instructor, who is paid for the flight, and one still to be found', () => {
    const dual = { purpose: 'dual' as const, personsOnBoard: 2, plannedTenths: 15 };
    expect(changed({ ...dual, instructorId: 'instructor-1' })).toEqual(bill({ points: 3, money: 60 }));
    expect(changed(dual)).toEqual(bill({ points: 8, money: 60 }));
    expect(changed({ usesVor: true }, 'aircraft-1', lesson)).toEqual(bill({ points: 8 }));
    expect(changed({ instructorId: null }, 'aircraft-1', lesson)).toEqual(bill({ points: 5 }));
    const open = { ...lesson, flight: { ...lesson.flight, instructorId: null } };
    expect(changed({ usesVor: true }, 'aircraft-1', open)).toEqual(bill({ points: 8 }));
  });
  test('is told before anything is judged, with the request as it would be', () => {
    const change = {
      is: 'effects' as const,
      effects: [{ op: 'flight' as const, fields: { usesVor: true } }],
    };
    const found = requested(world, root, offer({ change }));
    expect(found.bill).toEqual(bill({ points: 8 }));
    expect(found.request).toMatch(/^aircraft-1 \{.*"usesVor":true/);
  });
});
